//! A stretch of panel edge with one support.

use crate::frame::MemberId;
use crate::geometry::Point;
use crate::layout::Joint;
use crate::length::Length;
use serde::Serialize;

/// Which side of its panel an edge is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Side {
    /// The panel lies to the right of it.
    Left,
    /// The panel lies to the left of it.
    Right,
    /// The panel lies above it.
    Bottom,
    /// The panel lies below it.
    Top,
}

/// Why an edge counts as unsupported.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Unsupported {
    /// No member is behind it.
    NoMember,
    /// A member is behind it, but too little of it for the nail line.
    TooLittleWood,
    /// The face behind it lies back from the sheathing plane or holds no nail.
    NotNailable,
    /// It hangs too far beyond the nearest nail line.
    HangsFree,
}

/// What holds a stretch of edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Support {
    /// A member holds it.
    Member {
        /// Which.
        member: MemberId,
    },
    /// Nothing does.
    Nothing {
        /// Why not.
        reason: Unsupported,
    },
}

/// A stretch of one panel edge with one support. The runs of a piece follow its outline without gaps.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct EdgeRun {
    /// Its place in the list.
    pub id: u32,
    /// The piece.
    pub piece: u32,
    /// Which side.
    pub side: Side,
    /// What the edge meets.
    pub joint: Joint,
    /// The edge runs along this opening, as a place in the frame's list of openings.
    pub opening: Option<u32>,
    /// Start of the stretch on the panel's outline: the lower or left end.
    pub from: Point,
    /// End of the stretch.
    pub to: Point,
    /// Length of the stretch.
    pub length: Length,
    /// What holds it.
    pub support: Support,
    /// Distance of the nail line from the panel edge, where something holds it.
    pub inset: Option<Length>,
    /// Wood between the nail line and the nearer edge of the member, where something holds it.
    pub wood: Option<Length>,
    /// It has to be backed: a vertical edge, an edge in a segment, or one that practice wants backed.
    pub must_back: bool,
    /// The neighbour across the seam.
    pub partner: Option<u32>,
}
