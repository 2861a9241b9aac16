//! What somebody else made or measured.

use super::{Kind, Object, along, empty, height, list, name, nullable, required, sixteenths, size};

/// A given course or panel must say which way it runs.
const RUNNING: Kind = Kind::Choice(&["upright", "flat"]);

pub(super) static GIVEN_BANDS: Object = Object {
    name: "given_bands",
    tag: Some("bands"),
    meaning: "Courses with seams.",
    fields: &[required(
        "bands",
        list(&Kind::Object(&GIVEN_BAND), 1, 200),
        "From the lowest up.",
    )],
};

static GIVEN_BAND: Object = Object {
    name: "given_band",
    tag: None,
    meaning: "A course of sheets between two levels, with its vertical seams.",
    fields: &[
        required("bottom", height(), "Lower level, above the wall's zero line."),
        required("top", height(), "Upper level."),
        required("running", RUNNING, "How its sheets run."),
        required("sheet", name(), "Name of the sheet in stock."),
        empty(
            "seams",
            list(&height(), 0, 2_000),
            "Centre lines of its vertical seams, from left to right.",
        ),
    ],
};

pub(in crate::reading) static GIVEN_PIECES: Object = Object {
    name: "given_pieces",
    tag: Some("pieces"),
    meaning: "Single panels.",
    fields: &[required(
        "pieces",
        list(&Kind::Object(&GIVEN_PIECE), 1, 5_000),
        "In any order.",
    )],
};

static GIVEN_PIECE: Object = Object {
    name: "given_piece",
    tag: None,
    meaning: "One panel, measured on site or drawn by hand: the outline's rectangle before openings are cut.",
    fields: &[
        required(
            "left",
            height(),
            "Left edge, from the wall's left end; below zero where it laps a corner.",
        ),
        required("bottom", height(), "Lower edge, above the wall's zero line."),
        required("width", size(), "Width."),
        required("height", size(), "Height."),
        required("running", RUNNING, "How it runs."),
        required("sheet", name(), "Name of the sheet in stock."),
    ],
};

pub(super) static MEASURED: Object = Object {
    name: "measured",
    tag: None,
    meaning: "A wall as it was found before sheathing.",
    fields: &[
        nullable("length", &size(), "Length of the bottom plate found."),
        nullable(
            "diagonals",
            &DIAGONALS,
            "Diagonals of the frame, bottom-plate corner to top-plate corner.",
        ),
        nullable(
            "out_of_plumb",
            &sixteenths(0, 16 * 120),
            "How far the wall leans over the given height.",
        ),
        nullable(
            "plumb_height",
            &size(),
            "The height over which the lean was read.",
        ),
        nullable(
            "bow",
            &sixteenths(0, 16 * 120),
            "How far a plate or stud line bows from a string.",
        ),
        nullable(
            "first_stud",
            &along(),
            "The centre of the first layout stud, from the layout end.",
        ),
        empty(
            "openings",
            list(&Kind::Object(&MEASURED_OPENING), 0, 500),
            "Openings.",
        ),
    ],
};

const DIAGONALS: Kind = list(&size(), 2, 2);

static MEASURED_OPENING: Object = Object {
    name: "measured_opening",
    tag: None,
    meaning: "An opening as it was found.",
    fields: &[
        required("opening", name(), "Name of the opening."),
        nullable("width", &size(), "Clear width found."),
        nullable("height", &size(), "Clear height found."),
        nullable("left", &along(), "Left edge found."),
        nullable("diagonals", &DIAGONALS, "The two diagonals found."),
    ],
};
