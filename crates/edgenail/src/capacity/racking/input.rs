//! What the racking model is told: sheets and nails of one frame.

use crate::geometry::{Point, Rect};
use crate::length::Length;

/// A nail between a sheet and the frame.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RackingNail {
    /// Where it stands, in the coordinates of the wall.
    pub at: Point,
    /// The most that it carries, in pounds, at the level that the user wants answers at.
    pub strength: f64,
    /// Its force per slip while it is linear, in pounds per inch.
    pub stiffness: f64,
    /// It stands in a row along an edge of the sheet or along a plate: the plastic field of forces uses only these.
    pub edge: bool,
}

/// A sheet with its nails.
#[derive(Clone, Debug, PartialEq)]
pub struct RackingSheet {
    /// The user's number for it; of a plan, the piece.
    pub piece: u32,
    /// The rectangle around its outline.
    pub outline: Rect,
    /// Its nails.
    pub nails: Vec<RackingNail>,
}

/// Sheets on one frame of plates and posts: one storey of a wall, or a part of it that is held down at both ends.
#[derive(Clone, Debug, PartialEq)]
pub struct RackingWall {
    /// Height of the frame: the force acts so high above what the frame stands on.
    pub height: Length,
    /// Its sheets, side by side and above each other.
    pub sheets: Vec<RackingSheet>,
    /// The force along its top in pounds.
    pub force: f64,
}

/// A nail relative to the middle of its sheet, in inches: the differences are exact before they become doubles.
#[expect(clippy::cast_precision_loss, reason = "coordinates stay below 2^53 units")]
pub(super) fn from_middle(outline: &Rect, at: Point) -> (f64, f64) {
    let twice = (2 * Length::PER_INCH) as f64;
    let x = (at.x - outline.x0 + (at.x - outline.x1)).units();
    let y = (at.y - outline.y0 + (at.y - outline.y1)).units();
    (x as f64 / twice, y as f64 / twice)
}
