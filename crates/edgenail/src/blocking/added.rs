//! Blocks, added studs, widened members.

use crate::edges::EdgeRun;
use crate::frame::MemberId;
use crate::geometry::Rect;
use crate::length::Length;
use crate::wording::Wording;
use serde::Serialize;

/// How a block lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum BlockLie {
    /// Wide face to the sheets.
    Flat,
    /// Narrow face to the sheets.
    OnEdge,
}

/// A block between two members, set before the sheets.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Block {
    /// Its place in the list.
    pub id: u32,
    /// The face that shows, over the clear bay.
    pub rect: Rect,
    /// Cut length: the clear bay less the clearance.
    pub length: Length,
    /// How it lies.
    pub lie: BlockLie,
    /// How deep it goes behind its face.
    pub depth: Length,
    /// The stick that it is cut from, as a place in the stock's list.
    pub stick: u32,
    /// It fills the depth of the stud, as a fire block must.
    pub fills_depth: bool,
    /// Panel edges that it backs, as places in the list of runs.
    pub serves: Vec<u32>,
}

/// A stud added to carry a seam.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct AddedStud {
    /// Its place in the list.
    pub id: u32,
    /// The face that shows.
    pub rect: Rect,
    /// The stick that it is cut from, as a place in the stock's list.
    pub stick: u32,
    /// Panel edges that it backs, as places in the list of runs.
    pub serves: Vec<u32>,
}

/// A member that two panels share and that is too narrow for the nailing asked for: a second one is nailed to it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct WidenedMember {
    /// The member.
    pub member: MemberId,
    /// The face of the piece that is added beside it.
    pub rect: Rect,
    /// The stick that it is cut from, as a place in the stock's list.
    pub stick: u32,
    /// Panel edges that it backs, as places in the list of runs.
    pub serves: Vec<u32>,
    /// Why.
    pub because: Wording,
}

/// An edge that wants backing and cannot have it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Impossible {
    /// The run.
    pub run: u32,
    /// Why not.
    pub because: String,
}

/// Everything that is added to the wood.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Blocking {
    /// Blocks.
    pub blocks: Vec<Block>,
    /// Added studs.
    pub studs: Vec<AddedStud>,
    /// Widened members.
    pub widened: Vec<WidenedMember>,
    /// Edges that cannot be backed.
    pub impossible: Vec<Impossible>,
}

impl Blocking {
    /// This edge of the bare frame is one that wants backing and cannot have it.
    pub fn leaves(&self, run: &EdgeRun) -> bool {
        self.impossible.iter().any(|impossible| impossible.run == run.id)
    }
}
