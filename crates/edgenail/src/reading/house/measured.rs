//! What was measured on site.

use crate::house::{Measured, MeasuredOpening};
use crate::length::Length;
use crate::reading::object::Object;

/// A measured wall.
pub(super) fn measured(object: &Object<'_>) -> Measured {
    Measured {
        length: object.length_or_null("length"),
        diagonals: diagonals(object),
        out_of_plumb: object.length_or_null("out_of_plumb"),
        plumb_height: object.length_or_null("plumb_height"),
        bow: object.length_or_null("bow"),
        first_stud: object.length_or_null("first_stud"),
        openings: object.list("openings", opening),
    }
}

fn opening(object: &Object<'_>) -> MeasuredOpening {
    MeasuredOpening {
        opening: object.text("opening"),
        width: object.length_or_null("width"),
        height: object.length_or_null("height"),
        left: object.length_or_null("left"),
        diagonals: diagonals(object),
    }
}

/// Two diagonals; the table refuses lists of any other length.
fn diagonals(object: &Object<'_>) -> Option<[Length; 2]> {
    object.lengths_or_null("diagonals")?.try_into().ok()
}
