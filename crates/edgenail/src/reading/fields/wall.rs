//! Walls and their corners.

use super::given::{GIVEN_BANDS, GIVEN_PIECES, MEASURED};
use super::practice::PRACTICE;
use super::section::SECTION;
use super::segment::SEGMENT;
use super::storey::END;
use super::{COMMON, Kind, LONGEST, OWN, Object, empty, list, name, nullable, parts, required, value};
use crate::house::{CornerTurn, Face};
use crate::length::Length;
use crate::reading::choice::Choice;

pub(super) static WALL: Object = Object {
    name: "wall",
    tag: None,
    meaning: "One wall, as seen from the sheathed face: x to the right from the frame's left end, y up.",
    fields: &[
        required("name", name(), "Unique in the house."),
        required(
            "length",
            Kind::Length {
                least: Length::inches(3),
                most: LONGEST,
            },
            "Length of the frame, end stud face to end stud face.",
        ),
        value(
            "face",
            Kind::Choice(Face::NAMES),
            "exterior",
            COMMON,
            "Which side the sheathing faces.",
        ),
        nullable(
            "other_face",
            &name(),
            "Name of the wall that shows the same frame from its other side, where both faces are sheathed: its left end is \
             this wall's right end, its zero line this wall's. Null where one face is sheathed.",
        ),
        parts(
            "sections",
            list(&Kind::Object(&SECTION), 1, 200),
            "[{}]",
            OWN,
            "From left to right, without gaps: one for a plain wall, several for steps, half-levels and balloon framing.",
        ),
        empty(
            "segments",
            list(&Kind::Object(&SEGMENT), 0, 500),
            "Parts of the wall that the designer relies on.",
        ),
        nullable(
            "measured",
            &Kind::Object(&MEASURED),
            "What was measured on site before sheathing.",
        ),
        nullable(
            "given_layout",
            &Kind::OneOf(&[&GIVEN_BANDS, &GIVEN_PIECES]),
            "A layout drawn by hand or measured on site, to be checked instead of searched for.",
        ),
        parts(
            "practice",
            Kind::Object(&PRACTICE),
            "{}",
            OWN,
            "How this wall is worked; what is missing here is as for the house.",
        ),
    ],
};

pub(super) static CORNER: Object = Object {
    name: "corner",
    tag: None,
    meaning: "A square corner of two walls.",
    fields: &[
        required(
            "through",
            Kind::Object(&WALL_END),
            "The wall whose frame runs to the corner.",
        ),
        required(
            "butting",
            Kind::Object(&WALL_END),
            "The wall whose frame butts against the other; at an outside corner its sheathing laps past it.",
        ),
        value(
            "turn",
            Kind::Choice(CornerTurn::NAMES),
            "outside",
            COMMON,
            "Which way it turns, seen from outside.",
        ),
    ],
};

static WALL_END: Object = Object {
    name: "wall_end",
    tag: None,
    meaning: "An end of a named wall.",
    fields: &[
        required("wall", name(), "The wall's name."),
        required("end", END, "Which end, as seen from the sheathed face."),
    ],
};
