//! Fields of a layout that somebody else made.

use super::{PLACES, place, size, text};
use crate::reading::field::{Field, Kind, Record, Variant};

const RUNNING: Kind = Kind::Choice(&["upright", "flat", "either"]);

static BAND: Record = Record {
    name: "given band",
    meaning: "A course of sheets between two levels, with its vertical seams",
    fields: &[
        place("bottom", "Lower level"),
        place("top", "Upper level"),
        Field::new(
            "running",
            RUNNING,
            "How its sheets run; `either` is not allowed here",
        ),
        text("sheet", "Name of the sheet in stock"),
        Field::new(
            "seams",
            Kind::list(PLACES, 10_000),
            "Centre lines of its vertical seams",
        )
        .optional(),
    ],
};

static PIECE: Record = Record {
    name: "given piece",
    meaning: "One panel, before openings are cut",
    fields: &[
        place("left", "Left edge"),
        place("bottom", "Lower edge"),
        size("width", "Width"),
        size("height", "Height"),
        Field::new("running", RUNNING, "How it runs; `either` is not allowed here"),
        text("sheet", "Name of the sheet in stock"),
    ],
};

const fn entries(of: &'static Kind) -> Kind {
    Kind::List {
        of,
        least: 1,
        most: 10_000,
    }
}

static BANDS: Record = Record {
    name: "given bands",
    meaning: "Courses with seams",
    fields: &[Field::new(
        "bands",
        entries(&Kind::Object(&BAND)),
        "From the lowest up",
    )],
};

static PIECES: Record = Record {
    name: "given pieces",
    meaning: "Single panels",
    fields: &[Field::new(
        "pieces",
        entries(&Kind::Object(&PIECE)),
        "In any order",
    )],
};

/// The forms of a given layout.
pub(super) const LAYOUTS: &[Variant] = &[
    Variant {
        word: "bands",
        record: &BANDS,
    },
    Variant {
        word: "pieces",
        record: &PIECES,
    },
];
