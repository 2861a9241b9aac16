//! What layouts are ranked by, as a sum over their pieces, seams and levels.

use crate::amount::Amount;
use std::ops::{Add, AddAssign};

/// What a layout or a part of one weighs; each field goes before those under it.
///
/// Weights are added up from parts. Of what is not finished each field is at most what the finished layout has, so that a
/// sum of such weights is at most the weight of any layout that has these parts.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Weight {
    /// Findings that forbid to build it so.
    pub refused: u32,
    /// Findings that have to be mended.
    pub mend: u32,
    /// Strips that practice takes only where there is no other way.
    pub avoided: u32,
    /// What it costs, in the unit of the objective.
    pub cost: Amount,
    /// Seams near joints of the topmost plate.
    pub near_joints: u32,
    /// Pieces.
    pub pieces: u32,
}

impl Weight {
    /// Nothing but a cost.
    pub const fn of(cost: Amount) -> Self {
        Self {
            refused: 0,
            mend: 0,
            avoided: 0,
            cost,
            near_joints: 0,
            pieces: 0,
        }
    }

    /// What may not be, what has to be mended and what practice avoids.
    pub const fn wrong(&self) -> (u32, u32, u32) {
        (self.refused, self.mend, self.avoided)
    }
}

impl Add for Weight {
    type Output = Self;
    fn add(mut self, other: Self) -> Self {
        self += other;
        self
    }
}

impl AddAssign for Weight {
    fn add_assign(&mut self, other: Self) {
        self.refused += other.refused;
        self.mend += other.mend;
        self.avoided += other.avoided;
        self.cost += other.cost;
        self.near_joints += other.near_joints;
        self.pieces += other.pieces;
    }
}
