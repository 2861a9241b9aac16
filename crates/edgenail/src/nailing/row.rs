//! Rows of nails.

use crate::frame::MemberId;
use crate::geometry::Point;
use crate::length::Length;
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
/// parts.
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
    /// The nail was moved along its row to clear a strap, a hole or the joint of two members.
    pub moved: bool,
}

impl NailRow {
    /// How many nails the row has.
    pub const fn count(&self) -> u32 {
        self.last - self.first + 1
    }

    /// Where nail `index` of the divided line stands: the nearest whole unit, ties towards the line's end.
    pub fn position(&self, index: u32) -> Point {
        Point::new(
            part_of(self.from.x, self.to.x, index, self.spaces),
            part_of(self.from.y, self.to.y, index, self.spaces),
        )
    }

    /// Where its nails stand, in order.
    pub fn positions(&self) -> impl Iterator<Item = Point> + '_ {
        (self.first..=self.last).map(|index| self.position(index))
    }
}

/// `from + (to − from) · index / spaces`, to the nearest unit, ties towards `to`.
pub(super) fn part_of(from: Length, to: Length, index: u32, spaces: u32) -> Length {
    let (way, spaces) = ((to - from).units(), i64::from(spaces.max(1)));
    let nearest = (2 * way.abs() * i64::from(index) + spaces).div_euclid(2 * spaces);
    from + Length::from_units(if way < 0 { -nearest } else { nearest })
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

impl Nailing {
    /// Every nail, row by row.
    pub fn nails(&self) -> impl Iterator<Item = Nail> + '_ {
        (0u32..)
            .zip(&self.rows)
            .flat_map(|(row, nails)| nails.positions().map(move |at| Nail { at, row }))
    }

    /// How many nails there are.
    pub fn count(&self) -> u64 {
        self.rows.iter().map(|row| u64::from(row.count())).sum()
    }
}
