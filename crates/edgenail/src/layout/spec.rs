//! What a layout is made from.

use super::Running;
use crate::geometry::Rect;
use crate::length::Length;
use serde::Serialize;

/// A course: everything between two levels, with vertical seams.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct BandSpec {
    /// Lower level: the seam's centre line, or where the sheathing ends.
    pub y0: Length,
    /// Upper level.
    pub y1: Length,
    /// How its sheets run.
    pub running: Running,
    /// Centre lines of its vertical seams, rising.
    pub seams: Vec<Length>,
    /// The sheet of each strip between seams, as a place in the stock's list: one more than there are seams.
    pub sheets: Vec<u32>,
}

/// A single panel, measured on site or drawn by hand.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct PieceSpec {
    /// The panel's rectangle before openings are cut out.
    pub rect: Rect,
    /// How it runs.
    pub running: Running,
    /// The sheet, as a place in the stock's list.
    pub sheet: u32,
}

/// What a layout is made from.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub enum LayoutSpec {
    /// Courses from the lowest up. The lowest course follows the base of every section at the same reach.
    Bands {
        /// How far the sheathing reaches below the lowest plate.
        reach: Length,
        /// From the lowest up.
        bands: Vec<BandSpec>,
    },
    /// Single panels, taken as they are.
    Pieces(Vec<PieceSpec>),
}
