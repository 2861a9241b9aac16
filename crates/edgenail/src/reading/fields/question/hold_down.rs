//! The ends of a segment.

use super::super::document::{EXACT, UNIT};
use super::super::{Object, required, size};
use super::{DEAD, INSET, number};

pub(in crate::reading) static HOLD_DOWN: Object = Object {
    name: "hold_down",
    tag: Some("hold_down"),
    meaning: "What pulls at the end of a segment under a unit shear.",
    fields: &[
        UNIT,
        EXACT,
        required("shear", number(0, 100_000), "Unit shear in pounds per foot."),
        required(
            "length",
            size(),
            "Length of the segment between the outer faces of its end posts.",
        ),
        required(
            "height",
            size(),
            "From the underside of the bottom plate to the top of the top plates.",
        ),
        DEAD,
        INSET,
    ],
};
