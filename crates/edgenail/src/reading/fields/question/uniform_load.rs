//! Sheathing under wind across it, by the table of the standard.

use super::super::document::{EXACT, UNIT};
use super::super::{Kind, Object, required};
use super::ACCEPT;
use super::assembly::{SPACING, THICKNESS};
use super::unit_shear::{EDITION, METHOD};
use crate::capacity::{BoardMaterial, StrengthAxis};
use crate::reading::choice::Choice;
use crate::reading::question::RATING_NAMES;

pub(in crate::reading) static UNIFORM_LOAD: Object = Object {
    name: "uniform_load",
    tag: Some("uniform_load"),
    meaning: "Nominal and design pressure of wind across a wall's sheathing, by the table of the standard, of which 2008 and \
              2015 were collected; the kind `panel` works a rated panel out.",
    fields: &[
        UNIT,
        EXACT,
        EDITION,
        METHOD,
        required(
            "sheathing",
            Kind::OneOf(&[&RATED_PANEL, &BOARD]),
            "What the wall is sheathed with.",
        ),
        required(
            "stud_spacing",
            SPACING,
            "The largest centre distance of the studs; between two that are listed the wider is taken.",
        ),
        ACCEPT,
    ],
};

pub(in crate::reading) static RATED_PANEL: Object = Object {
    name: "rated_panel",
    tag: Some("panel"),
    meaning: "A rated wood structural panel.",
    fields: &[
        required("rating", Kind::Choice(&RATING_NAMES), "Span rating, as stamped."),
        required(
            "axis",
            Kind::Choice(StrengthAxis::NAMES),
            "Which way its strength axis runs.",
        ),
    ],
};

static BOARD: Object = Object {
    name: "board",
    tag: Some("board"),
    meaning: "A board that is no wood structural panel.",
    fields: &[
        required("material", Kind::Choice(BoardMaterial::NAMES), "Which."),
        required(
            "thickness",
            THICKNESS,
            "Nominal thickness, as the table lists it.",
        ),
    ],
};
