//! Which sheet every piece comes from.
//!
//! [`blanks`] lists the rectangles to be cut for a house, [`cut`] places them on sheets and off-cuts with cuts that
//! run from edge to edge. [`replay`] goes through a tree of cuts as a saw would and is the definition of a legal one;
//! [`check`] holds a whole plan to it. [`cuts_of_piece`] counts the saw work of one piece for prices and take-off.

mod best;
mod blank;
mod bound;
mod check;
mod exact;
mod fill;
mod left;
mod list;
mod notch;
mod open;
mod pack;
mod plan;
mod policy;
mod replay;
mod scale;
mod sheet;
mod sticks;
mod work;

pub use blank::blanks;
pub use check::{PlanFault, check};
pub use fill::{FilledSheet, fill_sheet};
pub use left::offcuts_left;
pub use list::{CutRow, Hand, cut_list};
pub use notch::{Notch, NotchCut, notches};
pub use plan::{
    Blank, Bounds, CutNode, CutPlan, CutRules, CutSheet, Drop, Leftover, Source, Uncut, WhyUncut,
};
pub use replay::{CutFault, Part, Placed, replay};
pub use sheet::interchangeable;
pub use sticks::{StickCut, SticksPlan, cut_sticks};
pub use work::{CutWork, cuts_of_blank, cuts_of_piece};

pub use crate::proof::Proof;

use crate::house::{Practice, Stock};

/// Cuts blanks from stock: off-cuts on hand and drops first, then sheets.
///
/// A blank comes from its own kind of sheet or from an [`interchangeable`] one. Several orders of placing are tried; of
/// these plans the one is kept that leaves the fewest blanks uncut, then costs least, then takes the fewest sheets, then
/// the fewest cuts, then leaves the largest single off-cut. Where it costs more than the bounds, a cheaper one is
/// looked for until there is none, which [`CutPlan::proof`] then says, or [`CutRules::effort_most`] is spent. The result
/// does not depend on the order of the list.
///
/// ```
/// use edgenail::cutting::{Blank, CutRules, Proof, cut_by};
/// use edgenail::{Amount, Decimal, Length};
/// use edgenail::house::{Sheet, Stock, StrengthAxis};
/// let sheet = Sheet {
///     name: "4x8".into(),
///     width: Length::inches(48),
///     length: Length::inches(96),
///     category: "7/16".into(),
///     grade: "sheathing".into(),
///     span_rating: "24/16".into(),
///     strength_axis: StrengthAxis::Length,
///     plies: None,
///     faces_alike: true,
///     may_turn: false,
///     gap: None,
///     price: Amount::whole(16),
///     on_hand: None,
///     pounds_per_square_foot: Decimal::tenths(14),
///     unit_count: 66,
/// };
/// let stock = Stock { sheets: vec![sheet], nails: vec![], sticks: vec![], offcuts: vec![] };
/// let rules = CutRules {
///     kerf: Length::sixteenths(2),
///     offcut_width_least: Length::inches(16),
///     offcut_length_least: Length::inches(24),
///     effort_most: 1_000_000,
/// };
/// let half = |order, width| Blank {
///     wall: 0, piece: order, order, sheet: 0, width, length: Length::inches(96), may_turn: false, drops: vec![],
/// };
/// // Two halves of 24 in. and a kerf are more than 48 in.; two of 23 7/8 are not.
/// let halves = |width| cut_by(&stock, &rules, &[half(0, width), half(1, width)]);
/// assert_eq!(halves(Length::inches(24)).sheets.len(), 2);
/// assert_eq!(halves(Length::sixteenths(382)).sheets.len(), 1);
/// assert_eq!(halves(Length::inches(24)).proof, Proof::Proven);
/// ```
pub fn cut_by(stock: &Stock, rules: &CutRules, blanks: &[Blank]) -> CutPlan {
    let mut blanks = blanks.to_vec();
    blanks.sort_by_key(|blank| (blank.order, blank.wall, blank.piece));
    best::best(stock, rules, blanks)
}

/// As [`cut_by`], with the rules that practice states.
pub fn cut(stock: &Stock, practice: &Practice, blanks: &[Blank]) -> CutPlan {
    cut_by(stock, &CutRules::of(practice), blanks)
}

#[cfg(test)]
mod tests;
