//! The order of work on one wall, with its hold points, as plain data with its wording.
//!
//! The order is common practice, no source: storey by storey; in each, what can be done while the wall lies on the deck,
//! then what waits until it stands, until the floor above is framed, until the trusses are set. Hold points defer to the
//! inspections that the local code asks for.

mod finish;
mod left;
mod order;
mod prepare;
mod text;
mod wall;

pub use order::steps;

use crate::frame::MemberId;
use crate::layout::Side;
use serde::Serialize;

/// What is done in a step.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum StepKind {
    /// The frame is checked and mended.
    Check,
    /// The wall is raised, plumbed and braced.
    Raise,
    /// Anchors and hold-down posts are checked before sheets cover them.
    CheckAnchors,
    /// Blocks and studs are set that back panel edges.
    SetBlocks,
    /// Straps and bolts are set before sheets cover them.
    SetStraps,
    /// The line is snapped that the first course is laid to.
    SnapLine,
    /// Panels are hung and tacked.
    HangPanels,
    /// Panels are nailed to schedule, except for edges that stay open for now.
    Nail,
    /// Edges are nailed that an earlier step left open.
    NailLeftEdges,
    /// Openings and penetrations are cut out of hung panels.
    CutOut,
    /// Edges that lap a neighbour are nailed to it.
    Lap,
    /// The nailing is shown before it is covered.
    ShowNailing,
    /// Hold-down nuts are tightened before the inside is covered.
    TightenNuts,
}

impl StepKind {
    /// Work stops here until somebody has looked: anchors and hold-down posts before sheets, nailing before wrap,
    /// hold-down nuts before the inside is covered.
    pub const fn is_hold_point(self) -> bool {
        matches!(self, Self::CheckAnchors | Self::ShowNailing | Self::TightenNuts)
    }
}

/// From where a step is done.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Reach {
    /// While the wall lies on the deck.
    Deck,
    /// From the ground or the deck, the wall standing.
    Ground,
    /// From a ladder or scaffold.
    Ladder,
    /// From a lift.
    Lift,
}

/// Something beyond the steps of this wall that a step waits for.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Event {
    /// The wall of a storey is framed and stands braced: it is sheathed standing.
    StoreyStands {
        /// The storey's name.
        storey: String,
    },
    /// The floor over a storey is framed.
    FloorFramed {
        /// Name of the storey below it.
        over: String,
    },
    /// The trusses are set.
    TrussesSet,
    /// A neighbour stands beside this wall's storey.
    WallStands {
        /// Name of the neighbour.
        wall: String,
        /// Name of this wall's storey.
        storey: String,
    },
}

/// Why a panel edge stays open for now.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum OpenReason {
    /// It lies on a plate: it is nailed once the wall is plumbed.
    PlateLine,
    /// A strap crosses it: it is nailed once the wall is plumbed.
    StrapLine,
    /// What holds it lies below the wall: it is nailed once the wall is raised and plumbed.
    BelowWall,
    /// A truss or a block between trusses holds it: it is nailed once the trusses are set.
    Trusses,
    /// It is shared with a neighbour: it is nailed once the neighbour stands.
    SharedSeam,
}

/// A panel edge that stays open for now.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct OpenEdge {
    /// Mark of the panel.
    pub panel: String,
    /// Which side of it, as far as the reason holds.
    pub side: Side,
    /// Why.
    pub reason: OpenReason,
}

/// One step.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Step {
    /// Name of the wall.
    pub wall: String,
    /// Its number, from 1.
    pub number: u32,
    /// Name of the storey whose wall it is part of; names of several, of a wall in sections, are joined by `and`.
    pub storey: String,
    /// What is done.
    pub kind: StepKind,
    /// The step in a sentence or two.
    pub text: String,
    /// Marks of the panels that it concerns, in their order: those that are hung, nailed or cut; of blocks, straps and
    /// anchors, those that wait for them.
    pub panels: Vec<String>,
    /// Blocks that are set, as members of the backed frame.
    pub blocks: Vec<MemberId>,
    /// Added studs and pieces beside widened members that are set, as members of the backed frame.
    pub studs: Vec<MemberId>,
    /// Names of what else it concerns: segments, straps, openings and penetrations, a neighbour.
    pub concerns: Vec<String>,
    /// Edges of its panels that stay open for now.
    pub leaves: Vec<OpenEdge>,
    /// Edges that an earlier step left open and that are nailed now.
    pub takes_up: Vec<OpenEdge>,
    /// From where it is done.
    pub reach: Reach,
    /// How many people it takes; 0 where the plan does not say.
    pub people: u32,
    /// Work stops here until somebody has looked.
    pub hold_point: bool,
    /// Numbers of the steps that have to be done before.
    pub after: Vec<u32>,
    /// What has to have happened beyond this wall's steps.
    pub waits_for: Vec<Event>,
}

#[cfg(test)]
mod tests;
