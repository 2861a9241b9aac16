//! A cut plan: sheets with their trees of cuts.

use crate::amount::Amount;
use crate::length::Length;
use serde::Serialize;

/// A rectangle to be cut: one piece before its notches, in the sheet's own directions.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Blank {
    /// The wall, as a place in the house's list.
    pub wall: u32,
    /// The piece, as a place in the wall's layout.
    pub piece: u32,
    /// Its place in the building order of the whole house.
    pub order: u32,
    /// The sheet that it is cut from, as a place in the stock's list.
    pub sheet: u32,
    /// Size along the sheet's width.
    pub width: Length,
    /// Size along the sheet's length.
    pub length: Length,
    /// It may be cut with its sides exchanged.
    pub may_turn: bool,
}

/// A rectangle of a sheet and how it is parted.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum CutNode {
    /// A cut from edge to edge.
    Split {
        /// The cut runs across the sheet's length; otherwise it is a rip along it.
        across: bool,
        /// Size of the first part, along the direction that is parted.
        at: Length,
        /// What is nearer to the sheet's corner.
        first: Box<CutNode>,
        /// What lies beyond the kerf.
        second: Box<CutNode>,
    },
    /// A blank.
    Piece {
        /// Its place in the plan's list.
        blank: u32,
        /// It lies with its sides exchanged.
        turned: bool,
    },
    /// A part that is kept.
    Offcut {
        /// Its place in the plan's list of leftovers.
        leftover: u32,
    },
    /// A part that is not kept.
    Waste,
}

/// Where a cut sheet comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Source {
    /// A new sheet, as a place in the stock's list.
    Sheet {
        /// Which.
        sheet: u32,
    },
    /// An off-cut from an earlier job, as a place in the stock's list.
    Offcut {
        /// Which.
        offcut: u32,
    },
}

/// One sheet and its cuts.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct CutSheet {
    /// Where it comes from.
    pub source: Source,
    /// Its width before cutting.
    pub width: Length,
    /// Its length before cutting.
    pub length: Length,
    /// Its cuts.
    pub tree: CutNode,
}

/// A part of a sheet that is kept.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Leftover {
    /// The cut sheet that it comes from.
    pub cut_sheet: u32,
    /// The sheet's place in the stock's list.
    pub sheet: u32,
    /// Along the sheet's width.
    pub width: Length,
    /// Along the sheet's length.
    pub length: Length,
}

/// How good a result is known to be.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Proof {
    /// Nothing better exists.
    Proven,
    /// Something better by at most this may exist.
    Gap {
        /// In the unit of the bound.
        amount: Amount,
    },
    /// The limit of effort was reached.
    Stopped {
        /// In the unit of the bound.
        gap: Amount,
        /// What was spent.
        effort: u64,
    },
}

/// No plan needs fewer sheets than these.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Bounds {
    /// By area: total area of the blanks over the largest sheet's, rounded up.
    pub area: u32,
}

/// Sheets with their cuts.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct CutPlan {
    /// What is cut.
    pub blanks: Vec<Blank>,
    /// The sheets, in the order of cutting.
    pub sheets: Vec<CutSheet>,
    /// What is kept.
    pub leftovers: Vec<Leftover>,
    /// No plan needs fewer sheets.
    pub bounds: Bounds,
    /// How good the plan is known to be.
    pub proof: Proof,
}
