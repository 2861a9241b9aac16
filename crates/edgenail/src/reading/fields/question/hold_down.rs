//! The ends of a segment.

use super::super::document::{EXACT, UNIT};
use super::super::{OWN, Object, along, required, size, value};
use super::number;

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
        value(
            "dead",
            number(0, 1_000_000),
            "0",
            OWN,
            "Factored dead load along its top that rights it, in pounds per foot.",
        ),
        required(
            "inset",
            along(),
            "From the outer faces to the hold-down's rod and to the middle of the compression post, together.",
        ),
    ],
};
