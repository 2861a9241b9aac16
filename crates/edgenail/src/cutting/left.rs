//! Off-cuts that a job leaves.

use super::{CutPlan, Source};
use crate::house::{Offcut, Stock};

/// What is left on hand once a plan is cut, as a stock lists it: off-cuts that it did not touch, what it keeps of
/// sheets, what fell out of pieces and served no other.
///
/// ```
/// let plan = edgenail::plan_json(edgenail::demo::HOUSE_JSON)?;
/// let mut next = plan.house().clone();
/// next.stock.offcuts = edgenail::cutting::offcuts_left(&plan.house().stock, plan.cutting());
/// let next = edgenail::plan::plan_house(next, Vec::new())?;
/// assert!(next.cost().sheets <= plan.cost().sheets);
/// # Ok::<(), edgenail::Error>(())
/// ```
pub fn offcuts_left(stock: &Stock, plan: &CutPlan) -> Vec<Offcut> {
    let used = |source: Source| plan.sheets.iter().any(|cut| cut.source == source);
    let left = |sheet: u32, width, length| {
        Some(Offcut {
            sheet: stock.sheets.get(sheet as usize)?.name.clone(),
            width,
            length,
        })
    };
    let untouched = (0..)
        .zip(&stock.offcuts)
        .filter(|(offcut, _)| !used(Source::Offcut { offcut: *offcut }));
    let kept = plan
        .leftovers
        .iter()
        .filter_map(|kept| left(kept.sheet, kept.width, kept.length));
    let is_cut = |blank: u32| plan.uncut.iter().all(|uncut| uncut.blank != blank);
    let cut = (0..).zip(&plan.blanks).filter(|(blank, _)| is_cut(*blank));
    let fallen = cut.flat_map(|(blank, of)| {
        let drops = (0..).zip(&of.drops);
        drops
            .filter(move |(drop, _)| !used(Source::Drop { blank, drop: *drop }))
            .filter_map(move |(_, drop)| left(of.sheet, drop.width, drop.length))
    });
    untouched
        .map(|(_, offcut)| offcut.clone())
        .chain(kept)
        .chain(fallen)
        .collect()
}
