//! A wall line under its demand.

use super::super::document::{EXACT, UNIT};
use super::super::{Kind, Object, along, list, required, size};
use super::unit_shear::QUERY;
use super::{DEAD, INSET, number};
use crate::capacity::{LineMethod, Sharing};
use crate::reading::choice::Choice;

pub(in crate::reading) static WALL_LINE: Object = Object {
    name: "wall_line",
    tag: Some("wall_line"),
    meaning: "What a wall line carries, by its full-height segments or as a perforated wall.",
    fields: &[
        UNIT,
        EXACT,
        required(
            "length",
            size(),
            "Length between the outer faces of its end posts.",
        ),
        required(
            "height",
            size(),
            "From the underside of the bottom plate to the top of the top plates.",
        ),
        required(
            "openings",
            list(&Kind::Object(&OPENING), 0, 500),
            "Openings from left to right.",
        ),
        required("method", Kind::Choice(LineMethod::NAMES), "How it is taken."),
        required(
            "sharing",
            Kind::Choice(Sharing::NAMES),
            "How segments share the shear, which decides what slender ones lose.",
        ),
        required(
            "query",
            Kind::Object(&QUERY),
            "What is asked of the tables for its one construction.",
        ),
        required(
            "demand",
            number(0, 100_000_000),
            "Shear at its top in pounds, at the level of the method: nothing is converted.",
        ),
        DEAD,
        INSET,
    ],
};

static OPENING: Object = Object {
    name: "line_opening",
    tag: None,
    meaning: "An opening of a line.",
    fields: &[
        required("left", along(), "From the left end of the line."),
        required("width", size(), "Width."),
        required(
            "height",
            size(),
            "Height; the whole wall's where nothing is sheathed above or below.",
        ),
    ],
};
