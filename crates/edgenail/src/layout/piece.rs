//! Pieces of a layout.

use super::Sides;
use crate::geometry::{Rect, Shape};
use crate::length::Length;
use serde::Serialize;

/// Which way the long side of a sheet runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Running {
    /// Long side up the studs.
    Upright,
    /// Long side across the studs.
    Flat,
}

/// One piece of sheathing.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Piece {
    /// Its place in the layout's list.
    pub id: u32,
    /// What is written on it: course letter from the bottom, number from the left, such as `A3`.
    pub mark: String,
    /// Its course, as a place in the layout's list.
    pub band: u32,
    /// The strip of the course that it comes from; for a single panel, the panel's place in the list given.
    pub strip: u32,
    /// From seam centre line to seam centre line: the cells tile the sheathed region exactly. Of a panel that was
    /// given singly, the same as its outline.
    pub cell: Shape,
    /// What is cut: the cell less half the gap at every seam and the cut-back at openings.
    pub outline: Shape,
    /// What the sides of its strip meet.
    pub sides: Sides,
    /// The sheet that it is cut from, as a place in the stock's list.
    pub sheet: u32,
    /// How the sheet runs.
    pub running: Running,
    /// Its turn in the order of hanging, from 0.
    pub hang_order: u32,
}

impl Piece {
    /// The blank that it is cut from: the outline's rectangle.
    pub fn blank(&self) -> Rect {
        self.outline.bounds()
    }
}

/// A course of a layout.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct LayoutBand {
    /// Lower level.
    pub y0: Length,
    /// Upper level.
    pub y1: Length,
    /// How its sheets run.
    pub running: Running,
    /// Centre lines of its vertical seams.
    pub seams: Vec<Length>,
}

/// Sheets on a wall.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Layout {
    /// How far the sheathing reaches below the lowest plate.
    pub reach: Length,
    /// The courses; empty for a layout of single panels.
    pub bands: Vec<LayoutBand>,
    /// The pieces, course by course from the bottom, each from the left.
    pub pieces: Vec<Piece>,
}
