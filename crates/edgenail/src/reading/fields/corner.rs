//! Fields of corners.

use super::storey::ENDS;
use super::text;
use crate::reading::field::{Field, Kind, Record};

static WALL_END: Record = Record {
    name: "wall end",
    meaning: "An end of a named wall",
    fields: &[
        text("wall", "The wall's name"),
        Field::new("end", ENDS, "Which end"),
    ],
};

/// A corner.
pub(super) static CORNER: Record = Record {
    name: "corner",
    meaning: "A square corner of two walls",
    fields: &[
        Field::new(
            "through",
            Kind::Object(&WALL_END),
            "The wall whose frame runs to the corner",
        ),
        Field::new(
            "butting",
            Kind::Object(&WALL_END),
            "The wall whose frame butts against the other",
        ),
        Field::new(
            "turn",
            Kind::Choice(&["outside", "inside"]),
            "Which way it turns, seen from outside",
        )
        .own("\"outside\""),
    ],
};
