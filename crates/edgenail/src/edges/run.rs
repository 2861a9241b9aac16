//! A stretch of panel edge with one support.

use crate::frame::MemberId;
use crate::geometry::{Interval, Point, Rect};
use crate::layout::{Joint, Side};
use crate::length::Length;
use serde::Serialize;

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

/// The nail line of an edge on a member.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Hold {
    /// The member.
    pub member: MemberId,
    /// Distance of the nail line from the panel edge.
    pub inset: Length,
    /// Wood between the nail line and the nearer edge of the member.
    pub wood: Length,
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
    /// The edge of the piece's outline that it is part of, counted round the outline.
    pub edge: u32,
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
    /// Length of the stretch. Along a rake it is the difference of two rounded distances, so that runs sum exactly.
    pub length: Length,
    /// What holds it.
    pub support: Support,
    /// Distance of the nail line from the panel edge, where something holds it.
    pub inset: Option<Length>,
    /// Wood between the nail line and the nearer edge of the member, where something holds it.
    pub wood: Option<Length>,
    /// The clear bay that an unsupported stretch lies in, face to face; it may reach beyond the panel.
    pub bay: Option<Length>,
    /// It lacks support and has to be backed: a plumb edge, an edge in a segment, or one that practice wants backed.
    pub must_back: bool,
    /// The neighbour across the seam.
    pub partner: Option<u32>,
}

impl EdgeRun {
    /// It wants backing and has none.
    pub const fn lacks_backing(&self) -> bool {
        self.must_back && matches!(self.support, Support::Nothing { .. })
    }

    /// The stretch as a rectangle, which has no width where the edge is level or plumb.
    pub fn area(&self) -> Rect {
        let y = Interval::new(self.from.y, self.to.y);
        Rect {
            x0: self.from.x,
            y0: y.lo,
            x1: self.to.x,
            y1: y.hi,
        }
    }

    /// The member that holds it.
    pub const fn member(&self) -> Option<MemberId> {
        match self.support {
            Support::Member { member } => Some(member),
            Support::Nothing { .. } => None,
        }
    }
}
