//! A cut plan: sheets with their trees of cuts.

use crate::amount::Amount;
use crate::house::Practice;
use crate::length::Length;
use crate::proof::Proof;
use serde::Serialize;

/// What cutting keeps to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct CutRules {
    /// What the saw takes.
    pub kerf: Length,
    /// Smaller side of an off-cut that is kept.
    pub offcut_width_least: Length,
    /// Larger side of an off-cut that is kept.
    pub offcut_length_least: Length,
    /// Parts of sheets that may be looked at for a cheaper plan.
    pub effort_most: u64,
}

impl CutRules {
    /// The rules of a practice.
    pub const fn of(practice: &Practice) -> Self {
        Self {
            kerf: practice.kerf,
            offcut_width_least: practice.offcut_width_least,
            offcut_length_least: practice.offcut_length_least,
            effort_most: practice.cutting_effort_most,
        }
    }

    /// A part of this size is kept.
    pub fn keeps(&self, width: Length, length: Length) -> bool {
        width.min(length) >= self.offcut_width_least && width.max(length) >= self.offcut_length_least
    }
}

/// What falls out where an opening is cut: stock for pieces that are hung later, since it exists only once its
/// own piece is up.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Drop {
    /// Along the sheet's width.
    pub width: Length,
    /// Along the sheet's length.
    pub length: Length,
}

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
    /// What falls out of it once it hangs, where that is large enough to be kept.
    pub drops: Vec<Drop>,
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
    /// What fell out of a piece.
    Drop {
        /// The piece's blank, as a place in the plan's list.
        blank: u32,
        /// Which of its drops.
        drop: u32,
    },
}

impl Source {
    /// Its kind, as tables write it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Sheet { .. } => "sheet",
            Self::Offcut { .. } => "offcut",
            Self::Drop { .. } => "drop",
        }
    }
}

/// One sheet and its cuts.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct CutSheet {
    /// Where it comes from.
    pub source: Source,
    /// What kind of sheet it is or was, as a place in the stock's list.
    pub sheet: u32,
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

/// What every plan for these blanks needs at least.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Bounds {
    /// Sheets by area: the blanks with their kerfs over the largest sheet that serves, less what off-cuts and drops
    /// could give, rounded up.
    pub area: u32,
    /// Sheets by dual feasible functions: as by area, but with sizes weighed by functions whose sum over the parts of
    /// any sheet is at most one. Two blanks longer than half a sheet then count as two sheets.
    pub dual: u32,
    /// Price of sheets by dual feasible functions; the number of sheets where all sheets are free.
    pub least: Amount,
    /// As `least`, but by mixtures of patterns, where they were needed to compare; never below it.
    pub patterns: Amount,
}

/// Why a blank is not cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum WhyUncut {
    /// No kind of sheet that serves is large enough.
    TooLarge,
    /// All sheets on hand are used up.
    NoneLeft,
}

/// A blank that is not cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Uncut {
    /// Its place in the plan's list.
    pub blank: u32,
    /// Why.
    pub why: WhyUncut,
}

/// Sheets with their cuts.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct CutPlan {
    /// What is cut, in building order.
    pub blanks: Vec<Blank>,
    /// The sheets, in the order of cutting.
    pub sheets: Vec<CutSheet>,
    /// What is kept.
    pub leftovers: Vec<Leftover>,
    /// What is not cut.
    pub uncut: Vec<Uncut>,
    /// What every plan for these blanks needs at least.
    pub bounds: Bounds,
    /// How good the plan is known to be, in the price of its sheets; in sheets where all sheets are free.
    pub proof: Proof,
}

impl CutPlan {
    /// How many new sheets of this kind are cut.
    pub fn new_sheets(&self, sheet: u32) -> u32 {
        let new = self
            .sheets
            .iter()
            .filter(|cut| cut.source == Source::Sheet { sheet });
        u32::try_from(new.count()).unwrap_or(u32::MAX)
    }
}
