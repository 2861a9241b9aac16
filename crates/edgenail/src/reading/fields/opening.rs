//! Fields of openings, headers and patches.

use super::storey::setback;
use super::{place, size, text};
use crate::reading::field::{Field, Kind, Lengths, Numbers, Record};

/// A header.
static HEADER: Record = Record {
    name: "header",
    meaning: "What carries the load over an opening; it bears on the trimmers",
    fields: &[
        place("from", "Left end").computed("the outer face of the left trimmers"),
        place("to", "Right end").computed("the outer face of the right trimmers"),
        Field::new(
            "plies",
            Kind::Integer(Numbers::new(1, 10)),
            "Pieces side by side in the depth of the wall",
        )
        .usually("2"),
        Field::new("depth", Kind::Length(Lengths::size(60)), "Height of its face").usually("\"9 1/4\""),
        place("y", "Underside above the storey's base").computed("the top of the opening"),
        setback("How far its face lies behind the sheathing plane"),
    ],
};

const fn studs(name: &'static str, least: i64, meaning: &'static str) -> Field {
    Field::new(name, Kind::Integer(Numbers::new(least, 10)), meaning)
}

/// An opening.
pub(super) static OPENING: Record = Record {
    name: "opening",
    meaning: "A rough opening",
    fields: &[
        text("name", "Unique in the wall"),
        Field::new(
            "kind",
            Kind::Choice(&["door", "window", "garage", "other"]),
            "What it is for",
        ),
        place("left", "Left edge, from the wall's left end"),
        place(
            "sill",
            "Lower edge above the storey's base; below zero for a door past a curb",
        ),
        size("width", "Clear width"),
        size("height", "Clear height"),
        Field::new(
            "header",
            Kind::Object(&HEADER),
            "What carries the load over it; null for none",
        )
        .usually("{}")
        .or_null(),
        studs("trimmers", 0, "Trimmers at each side").usually("1"),
        studs("kings", 0, "King studs at each side").usually("1"),
        studs("sills", 0, "Sill plates under it").computed("1 for a window, otherwise 0"),
    ],
};

/// A patch.
pub(super) static PATCH: Record = Record {
    name: "patch",
    meaning: "A named rectangle on the wall",
    fields: &[
        text("name", "What it is"),
        place("left", "Left edge, from the wall's left end"),
        place("bottom", "Lower edge, above the storey's base"),
        size("width", "Width"),
        size("height", "Height"),
    ],
};
