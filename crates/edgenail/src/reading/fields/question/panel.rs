//! A panel as the skin of a wall.

use super::super::document::{EXACT, UNIT};
use super::super::{Kind, Object, nullable, required, whole};
use super::assembly::SPACING;
use super::{ACCEPT, DURATION, number};
use crate::capacity::{Plies, StrengthAxis};
use crate::reading::choice::Choice;
use crate::reading::question::RATING_NAMES;

pub(in crate::reading) static PANEL: Object = Object {
    name: "panel",
    tag: Some("panel"),
    meaning: "A rated panel over equal spans under a uniform pressure across its face: bending and deflection.",
    fields: &[
        UNIT,
        EXACT,
        required("rating", Kind::Choice(&RATING_NAMES), "Span rating, as stamped."),
        required("plies", Kind::Choice(Plies::NAMES), "What it is made of."),
        required(
            "axis",
            Kind::Choice(StrengthAxis::NAMES),
            "Which way its strength axis runs.",
        ),
        required("stud_spacing", SPACING, "Centre distance of the studs."),
        required(
            "spans",
            whole(1, 3),
            "Spans that one panel covers: 1, 2, or 3 for three and more.",
        ),
        nullable(
            "deflection_ratio",
            &number(60, 2_000),
            "The span over the deflection that is allowed, such as 240; null asks for no pressure at it.",
        ),
        nullable(
            "pressure",
            &number(0, 10_000),
            "Pressure in pounds per square foot; null asks for no deflection.",
        ),
        DURATION,
        ACCEPT,
    ],
};
