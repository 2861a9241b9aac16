//! Openings and other rectangles on the wall.

use super::{
    COMMON, Field, Kind, Object, Preset, along, computed, from, height, name, required, sixteenths, size,
    value, whole,
};
use crate::house::OpeningKind;
use crate::reading::choice::Choice;

pub(super) static OPENING: Object = Object {
    name: "opening",
    tag: None,
    meaning: "A rough opening.",
    fields: &[
        required("name", name(), "Unique in the wall."),
        required("kind", Kind::Choice(OpeningKind::NAMES), "What it is for."),
        required("left", along(), "Left edge, from the wall's left end."),
        computed(
            "sill",
            height(),
            "0 for a door or garage door; others must say it",
            COMMON,
            "Lower edge, above the storey's base; below zero for a door past a curb.",
        ),
        required("width", size(), "Clear width."),
        required("height", size(), "Clear height."),
        Field {
            name: "header",
            kind: Kind::Maybe(&Kind::Object(&HEADER)),
            preset: Preset::Computed(
                "a header of the usual size, or none where there is less than 3 in. under the plates",
            ),
            source: "own value: the size is the designer's",
            meaning: "What carries the load over it; null for none.",
        },
        value("trimmers", whole(0, 10), "1", COMMON, "Trimmers at each side."),
        value("kings", whole(0, 10), "1", COMMON, "King studs at each side."),
        computed(
            "sills",
            whole(0, 4),
            "1 where the opening stays above the bottom plates, else 0",
            COMMON,
            "Sill plates under it.",
        ),
    ],
};

static HEADER: Object = Object {
    name: "header",
    tag: None,
    meaning: "The header over an opening. It bears on the trimmers.",
    fields: &[
        computed(
            "from",
            along(),
            "the outer face of the left trimmers",
            COMMON,
            "Left end.",
        ),
        computed(
            "to",
            along(),
            "the outer face of the right trimmers",
            COMMON,
            "Right end.",
        ),
        value(
            "plies",
            whole(1, 8),
            "2",
            COMMON,
            "Pieces side by side in the depth of the wall.",
        ),
        from(
            "depth",
            sixteenths(8, 16 * 96),
            "9 1/4",
            "or the room under the plates where that is less",
            "own value: the size is the designer's",
            "Height of its face.",
        ),
        computed(
            "y",
            height(),
            "the top of the opening",
            COMMON,
            "Underside above the storey's base.",
        ),
        value(
            "setback",
            sixteenths(0, 16 * 24),
            "0",
            COMMON,
            "How far its face lies behind the sheathing plane: a face that is set back holds no nail.",
        ),
    ],
};

pub(super) static PATCH: Object = Object {
    name: "patch",
    tag: None,
    meaning: "A named rectangle on the wall.",
    fields: &[
        required("name", name(), "What it is."),
        required("left", along(), "Left edge, from the wall's left end."),
        required("bottom", height(), "Lower edge, above the storey's base."),
        required("width", size(), "Width."),
        required("height", size(), "Height."),
    ],
};
