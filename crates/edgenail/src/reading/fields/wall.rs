//! Fields of a wall.

use super::given::LAYOUTS;
use super::measured::MEASURED;
use super::practice::PRACTICE;
use super::section::SECTION;
use super::segment::SEGMENT;
use super::{size, text};
use crate::reading::field::{Field, Kind, Record};

/// A wall.
pub(super) static WALL: Record = Record {
    name: "wall",
    meaning: "One wall, drawn as seen from the sheathed face",
    fields: &[
        text("name", "Unique in the house"),
        size("length", "Length of the frame, end stud face to end stud face"),
        Field::new(
            "face",
            Kind::Choice(&["exterior", "interior", "party"]),
            "Which side the sheathing faces",
        )
        .own("\"exterior\""),
        Field::new(
            "sections",
            Kind::List {
                of: &Kind::Object(&SECTION),
                least: 1,
                most: 100,
            },
            "From left to right, without gaps",
        ),
        Field::new(
            "segments",
            Kind::list(&Kind::Object(&SEGMENT), 500),
            "Parts that the designer relies on",
        )
        .optional(),
        Field::new("measured", Kind::Object(&MEASURED), "What was measured on site").or_null(),
        Field::new(
            "given_layout",
            Kind::Variant(LAYOUTS),
            "A layout to be checked instead of searched for",
        )
        .or_null(),
        Field::new(
            "practice",
            Kind::Object(&PRACTICE),
            "What is done otherwise at this wall",
        )
        .computed("the practice of the house"),
    ],
};
