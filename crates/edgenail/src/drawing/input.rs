//! What drawings are made from.

use crate::blocking::Blocking;
use crate::capacity::StoreyLine;
use crate::cutting::CutPlan;
use crate::edges::EdgeRun;
use crate::finding::Finding;
use crate::frame::Frame;
use crate::house::{End, House};
use crate::layout::{Layout, Piece};
use crate::length::{Length, Style};
use crate::nailing::Nailing;

/// Where work on a wall starts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DrawnStart {
    /// The end that sheets are laid from; dimensions run from it.
    pub end: End,
    /// Height of the line that is snapped first, where there is one.
    pub datum: Option<Length>,
    /// What else a framer has to know before the first sheet, a sentence each.
    pub notes: Vec<String>,
}

/// What the drawing of a wall is made from: the finished stages of that wall.
#[derive(Clone, Copy, Debug)]
pub struct WallDrawingInput<'a> {
    /// The house, for its name, its stock and the wall's words.
    pub house: &'a House,
    /// The frame with everything that was added.
    pub frame: &'a Frame,
    /// The pieces.
    pub layout: &'a Layout,
    /// What their edges land on.
    pub edges: &'a [EdgeRun],
    /// What was added to the wood.
    pub blocking: &'a Blocking,
    /// The nails.
    pub nailing: &'a Nailing,
    /// What the walls of the house resist; those of other walls are left out.
    pub capacity: &'a [StoreyLine],
    /// What was found on this wall.
    pub findings: &'a [Finding],
    /// Where work starts.
    pub start: &'a DrawnStart,
    /// How lengths are written.
    pub style: Style,
}

/// What the drawing of cut sheets is made from.
#[derive(Clone, Copy, Debug)]
pub struct CutDrawingInput<'a> {
    /// The house, for its names and its stock.
    pub house: &'a House,
    /// The layouts of its walls: each wall's place in the house's list with its layout.
    pub layouts: &'a [(u32, &'a Layout)],
    /// The sheets and their cuts.
    pub cutting: &'a CutPlan,
    /// Draws only the sheets that this wall takes a piece from, as a place in the house's list; `None` draws all.
    pub wall: Option<u32>,
    /// How lengths are written.
    pub style: Style,
}

impl CutDrawingInput<'_> {
    /// The mark of a blank's piece in the whole house: the wall's number, then the piece's own mark.
    pub(super) fn piece_mark(&self, blank: u32) -> Option<String> {
        let wall = self.cutting.blanks.get(blank as usize)?.wall;
        Some(format!("{}-{}", wall + 1, self.piece(blank)?.mark))
    }

    /// The piece that a blank becomes.
    pub(super) fn piece(&self, blank: u32) -> Option<&Piece> {
        let blank = self.cutting.blanks.get(blank as usize)?;
        let (_, layout) = self.layouts.iter().find(|(wall, _)| *wall == blank.wall)?;
        layout.pieces.get(blank.piece as usize)
    }
}
