//! What can be bought or is on hand.

use crate::amount::Amount;
use crate::decimal::Decimal;
use crate::length::Length;
use serde::Serialize;

/// Along which side a sheet is strong.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum StrengthAxis {
    /// Along its length, as usual.
    Length,
    /// Along its width.
    Width,
}

/// A sheet as it is delivered: true sizes.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Sheet {
    /// Unique in the stock.
    pub name: String,
    /// True width.
    pub width: Length,
    /// True length.
    pub length: Length,
    /// Performance category, such as `7/16`. A name, not a length.
    pub category: String,
    /// Grade, such as `sheathing`.
    pub grade: String,
    /// Span rating, such as `24/16`; empty where none is stamped.
    pub span_rating: String,
    /// Along which side it is strong.
    pub strength_axis: StrengthAxis,
    /// Plies of plywood; `None` for panels without plies, or where they are not known.
    pub plies: Option<u32>,
    /// Both faces may show: the sheet may be turned over.
    pub faces_alike: bool,
    /// A piece may be cut with its strength axis either way.
    pub may_turn: bool,
    /// The joint gap that its maker asks for, where it differs from practice.
    pub gap: Option<Length>,
    /// Price of one sheet.
    pub price: Amount,
    /// How many there are; `None` for as many as are wanted.
    pub on_hand: Option<u32>,
    /// Pounds a square foot.
    pub pounds_per_square_foot: Decimal,
    /// Sheets in a delivered unit.
    pub unit_count: u32,
}

/// Protection of a nail against corrosion.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Coating {
    /// None.
    Bright,
    /// Hot-dipped galvanized.
    HotDipped,
    /// Stainless steel.
    Stainless,
}

impl Coating {
    /// Accepted in preservative-treated lumber (IRC R317.3.1).
    pub const fn resists_corrosion(self) -> bool {
        matches!(self, Self::HotDipped | Self::Stainless)
    }
}

/// What drives a nail.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum NailTool {
    /// A nail gun: collated nails.
    Gun,
    /// A hammer: loose nails.
    Hand,
}

/// A nail as it is sold.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Nail {
    /// Unique in the stock.
    pub name: String,
    /// Shank diameter, inches.
    pub shank: Decimal,
    /// Head diameter, inches.
    pub head: Decimal,
    /// Length.
    pub length: Length,
    /// Protection.
    pub coating: Coating,
    /// What drives it.
    pub tool: NailTool,
    /// Nails in a box.
    pub per_box: u32,
    /// Price of a box.
    pub price: Amount,
}

/// Lumber for blocks and added studs, by the stick.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Stick {
    /// Unique in the stock.
    pub name: String,
    /// The narrow side of the cross-section.
    pub thickness: Length,
    /// The wide side of the cross-section.
    pub depth: Length,
    /// Length of the stick.
    pub length: Length,
    /// Price of one stick.
    pub price: Amount,
}

/// A piece left from an earlier job.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Offcut {
    /// Name of the sheet that it came from.
    pub sheet: String,
    /// Along the sheet's width.
    pub width: Length,
    /// Along the sheet's length.
    pub length: Length,
}

/// What can be bought or is on hand.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Stock {
    /// Sheets.
    pub sheets: Vec<Sheet>,
    /// Nails.
    pub nails: Vec<Nail>,
    /// Lumber.
    pub sticks: Vec<Stick>,
    /// Pieces left from earlier jobs.
    pub offcuts: Vec<Offcut>,
}
