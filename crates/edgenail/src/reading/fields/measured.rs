//! Fields of what was measured on site.

use super::{size, text};
use crate::reading::field::{Field, Kind, Lengths, Record};

const SIZE: &Kind = &Kind::Length(Lengths::SIZE);
const DIAGONALS: Kind = Kind::List {
    of: SIZE,
    least: 2,
    most: 2,
};

const fn found(name: &'static str, range: Lengths, meaning: &'static str) -> Field {
    Field::new(name, Kind::Length(range), meaning).or_null()
}

static MEASURED_OPENING: Record = Record {
    name: "measured opening",
    meaning: "An opening as it was found",
    fields: &[
        text("opening", "Name of the opening"),
        found("width", Lengths::SIZE, "Clear width found"),
        found("height", Lengths::SIZE, "Clear height found"),
        found("left", Lengths::PLACE, "Left edge found"),
        Field::new("diagonals", DIAGONALS, "The two diagonals found").or_null(),
    ],
};

/// A measured wall.
pub(super) static MEASURED: Record = Record {
    name: "measured",
    meaning: "A wall as it was found",
    fields: &[
        size("length", "Length of the bottom plate found").or_null(),
        Field::new("diagonals", DIAGONALS, "Diagonals of the frame").or_null(),
        found(
            "out_of_plumb",
            Lengths::PLACE,
            "How far the wall leans over `plumb_height`",
        ),
        found(
            "plumb_height",
            Lengths::SIZE,
            "The height over which the lean was read",
        ),
        found(
            "bow",
            Lengths::PLACE,
            "How far a plate or stud line bows from a string",
        ),
        found(
            "first_stud",
            Lengths::PLACE,
            "The centre of the first layout stud, from the layout end",
        ),
        Field::new(
            "openings",
            Kind::list(&Kind::Object(&MEASURED_OPENING), 500),
            "Openings",
        )
        .optional(),
    ],
};
