//! What was measured on site before sheathing.

use crate::length::Length;
use serde::Serialize;

/// An opening as it was found.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct MeasuredOpening {
    /// Name of the opening.
    pub opening: String,
    /// Clear width found.
    pub width: Option<Length>,
    /// Clear height found.
    pub height: Option<Length>,
    /// Left edge found.
    pub left: Option<Length>,
    /// The two diagonals found.
    pub diagonals: Option<[Length; 2]>,
}

/// A wall as it was found.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Measured {
    /// Length of the bottom plate found.
    pub length: Option<Length>,
    /// Diagonals of the frame, bottom-plate corner to top-plate corner.
    pub diagonals: Option<[Length; 2]>,
    /// How far the wall leans over the given height.
    pub out_of_plumb: Option<Length>,
    /// The height over which the lean was read.
    pub plumb_height: Option<Length>,
    /// How far a plate or stud line bows from a string.
    pub bow: Option<Length>,
    /// The centre of the first layout stud, from the layout end.
    pub first_stud: Option<Length>,
    /// Openings.
    pub openings: Vec<MeasuredOpening>,
}
