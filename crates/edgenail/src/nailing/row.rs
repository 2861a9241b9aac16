//! Rows of nails.

use crate::frame::MemberId;
use crate::geometry::Point;
use serde::Serialize;

/// Why a row is there.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Zone {
    /// Along a panel edge.
    Edge,
    /// Along a plate, rim or end member of a segment where no panel edge falls.
    Boundary,
    /// Along an opening.
    Opening,
    /// On members between.
    Field,
}

/// Consecutive nails of one kind into one member: nails `first` to `last` of a line divided into `spaces` equal
/// parts. Nail i stands at `from + round(i · (to − from) / spaces)`.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct NailRow {
    /// The piece that is nailed.
    pub piece: u32,
    /// The member that is nailed into.
    pub member: MemberId,
    /// Why the row is there.
    pub zone: Zone,
    /// The nail, as a place in the stock's list.
    pub nail: u32,
    /// Start of the divided line.
    pub from: Point,
    /// End of the divided line.
    pub to: Point,
    /// Equal parts of the line; at least 1.
    pub spaces: u32,
    /// First nail of this row.
    pub first: u32,
    /// Last nail of this row.
    pub last: u32,
    /// The nail was moved along its row to clear a strap or the joint of two members.
    pub moved: bool,
}

impl NailRow {
    /// How many nails the row has.
    pub const fn count(&self) -> u32 {
        self.last - self.first + 1
    }
}

/// One nail.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Nail {
    /// Where it stands.
    pub at: Point,
    /// The row that it belongs to.
    pub row: u32,
}

/// All nails of a wall.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Nailing {
    /// The rows, piece by piece.
    pub rows: Vec<NailRow>,
}
