//! Fields of a section of a wall.

use super::band::FLOOR_BAND;
use super::place;
use super::storey::STOREY;
use super::top::TOPS;
use crate::reading::field::{Field, Kind, Lengths, Record, Variant};

/// The bottom.
static BOTTOM: Record = Record {
    name: "bottom",
    meaning: "Where the sheathing ends at the bottom",
    fields: &[
        Field::new("bears", Kind::Choice(&["concrete", "floor"]), "What the lowest plate stands on").own("\"concrete\""),
        Field::new(
            "reach",
            Kind::Length(Lengths::PLACE),
            "How far the sheathing reaches below the lowest plate, below zero held up; null leaves it to the search",
        )
        .or_null(),
        Field::new(
            "above_grade",
            Kind::Length(Lengths::PLACE),
            "Height of the lowest plate's underside above the ground outside",
        )
        .or_null(),
    ],
};

const LEVELS: &[Variant] = &[
    Variant {
        word: "storey",
        record: &STOREY,
    },
    Variant {
        word: "floor_band",
        record: &FLOOR_BAND,
    },
];

/// A section.
pub(super) static SECTION: Record = Record {
    name: "section",
    meaning: "A stretch of wall with one base, one stack of levels, one top",
    fields: &[
        place("from", "Left end").computed("the left end of a wall with one section"),
        place("to", "Right end").computed("the right end of a wall with one section"),
        place(
            "base",
            "Underside of the lowest plate above the wall's own zero line",
        )
        .computed("the zero line of a wall with one section"),
        Field::new(
            "bottom",
            Kind::Object(&BOTTOM),
            "Where the sheathing ends at the bottom",
        )
        .own("{}"),
        Field::new(
            "stack",
            Kind::List {
                of: &Kind::Variant(LEVELS),
                least: 1,
                most: 40,
            },
            "From bottom to top",
        ),
        Field::new("top", Kind::Variant(TOPS), "What is above the uppermost plate")
            .own("{\"kind\": \"flat\"}"),
    ],
};
