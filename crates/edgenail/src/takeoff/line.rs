//! Lines of a take-off.

use crate::amount::Amount;
use crate::decimal::Decimal;
use serde::Serialize;

/// What a line is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum TakeoffWhat {
    /// Whole sheets.
    Sheets,
    /// Blocks.
    Blocks,
    /// Studs added to carry seams.
    AddedStuds,
    /// Lumber for blocks and added studs.
    Sticks,
    /// Nails.
    Nails,
    /// Work.
    Labour,
}

/// One line of a take-off.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct TakeoffLine {
    /// What it is about.
    pub what: TakeoffWhat,
    /// Name in stock, or kind of work.
    pub item: String,
    /// `house`, `storey: …` or `wall: …`.
    pub scope: String,
    /// What the plan uses.
    pub used: Decimal,
    /// What is ordered: used, loss and spare, rounded to what is sold; only in the scope of the house.
    pub ordered: Option<u32>,
    /// What `used` counts: sheets, nails, feet, minutes.
    pub unit: String,
    /// What `ordered` counts.
    pub order_unit: String,
    /// Pounds of what is used.
    pub pounds: Decimal,
    /// Money for what is ordered.
    pub money: Amount,
    /// Minutes of work.
    pub minutes: Amount,
    /// How the figure came about.
    pub because: String,
}

/// All lines.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Takeoff {
    /// For the house, then by storey, then by wall.
    pub lines: Vec<TakeoffLine>,
}
