//! The blanks worth most that one sheet can be cut into.

use super::exact::fill;
use super::pack::place;
use super::{Blank, CutNode, CutRules, CutSheet, Source};
use crate::length::Length;
use serde::Serialize;

/// One sheet filled with the blanks that are worth most.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct FilledSheet {
    /// The sheet with its cuts; its blanks are places in the list that was given.
    pub cut: CutSheet,
    /// What its blanks are worth.
    pub worth: i64,
    /// No way of cutting the sheet is worth more. It is proven to be the best where this equals `worth`.
    pub bound: i64,
}

/// Fills a sheet of this size with the blanks that are worth most together; `worths` has one whole number for each, in
/// any unit below 2^40. Blanks that are worth nothing or less are left out, and so are drops.
///
/// ```
/// use edgenail::Length;
/// use edgenail::cutting::{Blank, CutRules, fill_sheet};
/// let rules = CutRules {
///     kerf: Length::ZERO,
///     offcut_width_least: Length::inches(16),
///     offcut_length_least: Length::inches(24),
///     effort_most: 1_000_000,
/// };
/// let blank = |order, width, length| Blank {
///     wall: 0, piece: order, order, sheet: 0, width, length, may_turn: false, drops: vec![],
/// };
/// let blanks = [
///     blank(0, Length::inches(30), Length::inches(96)),
///     blank(1, Length::inches(18), Length::inches(96)),
///     blank(2, Length::inches(24), Length::inches(96)),
/// ];
/// let filled = fill_sheet((Length::inches(48), Length::inches(96)), &rules, &blanks, &[30, 18, 24]);
/// assert_eq!((filled.worth, filled.bound), (48, 48));
/// ```
pub fn fill_sheet(size: (Length, Length), rules: &CutRules, blanks: &[Blank], worths: &[i64]) -> FilledSheet {
    let filled = fill(size, rules.kerf, blanks, worths, rules.effort_most);
    let mut kept = 0;
    let mut keep = |width, length| {
        rules.keeps(width, length).then(|| {
            kept += 1;
            place(kept - 1)
        })
    };
    FilledSheet {
        cut: CutSheet {
            source: Source::Sheet { sheet: 0 },
            sheet: 0,
            width: size.0,
            length: size.1,
            tree: filled.open.map_or(CutNode::Waste, |open| open.tree(&mut keep)),
        },
        worth: filled.worth,
        bound: filled.bound,
    }
}
