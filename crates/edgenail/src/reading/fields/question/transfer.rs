//! Force transfer around openings.

use super::super::document::{EXACT, UNIT};
use super::super::{Kind, Object, list, nullable, required, size};
use super::unit_shear::QUERY;
use super::{ACCEPT, number};

pub(in crate::reading) static TRANSFER: Object = Object {
    name: "transfer",
    tag: Some("transfer"),
    meaning: "Forces around the openings of a wall that is strapped and blocked there, by the free-body method.",
    fields: &[
        UNIT,
        EXACT,
        required("height", size(), "Height of the wall."),
        required(
            "piers",
            list(&size(), 2, 501),
            "Lengths of the full-height segments from left to right: one more than there are openings.",
        ),
        required(
            "openings",
            list(&size(), 1, 500),
            "Widths of the openings from left to right.",
        ),
        required(
            "above_and_below",
            size(),
            "Height of sheathing above and below an opening, together: the least of all openings.",
        ),
        required(
            "shear",
            number(0, 100_000_000),
            "Shear at its top in pounds, at the level of the method: nothing is converted.",
        ),
        nullable(
            "query",
            &Kind::Object(&QUERY),
            "What is asked of the tables for its one construction; null asks for forces alone.",
        ),
        ACCEPT,
    ],
};
