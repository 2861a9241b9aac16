//! What one layout costs beside another, part by part.

use super::{Cost, CostPart, Part};
use crate::amount::Amount;
use serde::Serialize;

/// A part in which two costs are not the same.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct CostDifference {
    /// Which.
    pub part: Part,
    /// How many of what it counts.
    pub quantity: i64,
    /// How many of them the other cost has.
    pub quantity_chosen: i64,
    /// How many more than the other; below zero for fewer.
    pub quantity_difference: i64,
    /// What they cost more than those of the other, in the unit of the objective; below zero for less.
    pub amount_difference: Amount,
}

/// The parts in which a cost is not the same as that of the chosen layout, in the order of [`Part::ALL`]. Their amounts
/// sum to the difference of the totals.
///
/// ```
/// use edgenail::price::{Cost, differences};
/// let plan = edgenail::plan_json(edgenail::demo::HOUSE_JSON)?;
/// let cost = &plan.walls()[0].built.cost;
/// assert!(differences(cost, cost).is_empty());
/// let all = differences(cost, &Cost::default());
/// assert_eq!(all.iter().map(|part| part.amount_difference).sum::<edgenail::Amount>(), cost.total);
/// # Ok::<(), edgenail::Error>(())
/// ```
pub fn differences(cost: &Cost, chosen: &Cost) -> Vec<CostDifference> {
    let of = |cost: &Cost, part: Part| {
        let known = cost.parts.iter().find(|known| known.part == part);
        known.map_or((0, Amount::ZERO), |CostPart { quantity, amount, .. }| {
            (*quantity, *amount)
        })
    };
    let beside = |part: &Part| {
        let ((quantity, amount), (quantity_chosen, amount_chosen)) = (of(cost, *part), of(chosen, *part));
        CostDifference {
            part: *part,
            quantity,
            quantity_chosen,
            quantity_difference: quantity - quantity_chosen,
            amount_difference: amount - amount_chosen,
        }
    };
    let same =
        |part: &CostDifference| part.quantity_difference == 0 && part.amount_difference == Amount::ZERO;
    Part::ALL.iter().map(beside).filter(|part| !same(part)).collect()
}
