//! A layout that somebody else made.

use super::RunningChoice;
use crate::length::Length;
use serde::Serialize;

/// A course of sheets between two levels, with its vertical seams.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct GivenBand {
    /// Lower level.
    pub bottom: Length,
    /// Upper level.
    pub top: Length,
    /// How its sheets run; `either` is not allowed here.
    pub running: RunningChoice,
    /// Name of the sheet in stock.
    pub sheet: String,
    /// Centre lines of its vertical seams.
    pub seams: Vec<Length>,
}

/// One panel, measured on site or drawn by hand: the outline's rectangle before openings are cut.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct GivenPiece {
    /// Left edge.
    pub left: Length,
    /// Lower edge.
    pub bottom: Length,
    /// Width.
    pub width: Length,
    /// Height.
    pub height: Length,
    /// How it runs; `either` is not allowed here.
    pub running: RunningChoice,
    /// Name of the sheet in stock.
    pub sheet: String,
}

/// A layout to be checked: courses with seams, or single panels.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum GivenLayout {
    /// Courses with seams.
    Bands {
        /// From the lowest up.
        bands: Vec<GivenBand>,
    },
    /// Single panels.
    Pieces {
        /// In any order.
        pieces: Vec<GivenPiece>,
    },
}
