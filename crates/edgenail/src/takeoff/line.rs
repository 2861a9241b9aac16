//! Lines of a take-off.

use super::{Part, Place};
use crate::amount::Amount;
use crate::decimal::Decimal;
use serde::Serialize;

/// What a line is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum TakeoffWhat {
    /// Whole sheets to order.
    Sheets,
    /// What the sheathed area alone would ask for, for comparison.
    AreaMethod,
    /// Pieces of sheathing.
    Pieces,
    /// Blocks.
    Blocks,
    /// Those blocks that are cut from what added studs leave of their sticks.
    BlocksFromScrap,
    /// Studs added to carry seams, and what widens members.
    AddedStuds,
    /// Lumber for blocks and added studs.
    Sticks,
    /// Nails.
    Nails,
    /// Work, of one kind.
    Labour,
}

/// What pieces of sheathing serve, with their nails and their work.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Serves {
    /// What is not told apart.
    All,
    /// A segment of a shear wall.
    Shear,
    /// A braced panel.
    Braced,
    /// Sheathing that no segment counts on.
    Rest,
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
    /// What `used` counts: sheets, nails, square feet, cuts.
    pub unit: String,
    /// What `ordered` counts.
    pub order_unit: String,
    /// Pounds of what is used.
    pub pounds: Decimal,
    /// Money for what is ordered; for pieces, for the sheets that are counted with them.
    pub money: Amount,
    /// Minutes of work.
    pub minutes: Amount,
    /// How the figure came about.
    pub because: String,
    /// What the pieces serve.
    pub serves: Serves,
    /// Where pieces are set from; only of the work of setting them.
    pub place: Option<Place>,
    /// What is added to what is used before it is rounded to what is sold: spare sheets, lost nails.
    pub extra: i64,
    /// Whole sheets: of an area, rounded up; of pieces, each sheet of the cut plan where its first piece hangs.
    pub sheets: i64,
    /// Square feet of sheathing.
    pub square_feet: Decimal,
    /// Lineal feet of lumber.
    pub feet: Decimal,
    /// What layouts were charged for it in the unit of the objective. What only the cutting of the whole house
    /// tells — whole sheets, whole boxes, fetched off-cuts — is in no layout's charge.
    pub charged: Amount,
    /// The kind of work.
    #[serde(skip)]
    pub part: Option<Part>,
}

/// All lines.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Takeoff {
    /// For the house, then by storey, then by wall.
    pub lines: Vec<TakeoffLine>,
}

impl Takeoff {
    /// What the layout of a wall was charged, by its lines.
    pub fn charged(&self, wall: &str) -> Amount {
        let scope = wall_scope(wall);
        let own = self.lines.iter().filter(|line| line.scope == scope);
        own.map(|line| line.charged).sum()
    }
}

pub(super) fn wall_scope(name: &str) -> String {
    format!("wall: {name}")
}
