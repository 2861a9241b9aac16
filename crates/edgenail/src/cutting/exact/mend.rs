//! A cheaper plan from one that is known: a few sheets, the most wasteful among them, are cut anew from less.

use super::columns::{Rest, UNIT, Values, generate};
use super::cover::{Covered, cover};
use super::dive::Chosen;
use super::master::Column;
use super::problem::Problem;
use std::cmp::Reverse;
use std::collections::BTreeSet;

/// Tries groups of sheets in turn; the first that can be cut from less gives the plan that is returned. `round` counts the
/// groups over all calls.
pub(super) fn mend(
    problem: &Problem,
    values: &Values,
    plan: &Chosen,
    columns: &mut Vec<Column>,
    round: &mut usize,
    work: &mut u64,
) -> Option<Chosen> {
    let mut by_waste: Vec<usize> = (0..plan.len()).collect();
    by_waste.sort_by_key(|sheet| (Reverse(waste(problem, values, plan, *sheet)), *sheet));
    let mut tried = BTreeSet::new();
    let last = *round + ROUNDS;
    while *round < last && *work > 0 {
        let group = group(plan, &by_waste, *round);
        *round += 1;
        if group.len() == plan.len() || !tried.insert(group.clone()) {
            continue;
        }
        if let Some(cheaper) = cut_anew(problem, plan, &group, columns, work) {
            let kept = plan
                .iter()
                .enumerate()
                .filter(|(sheet, _)| !group.contains(sheet));
            return Some(kept.map(|(_, sheet)| sheet.clone()).chain(cheaper).collect());
        }
    }
    None
}

/// Groups that are tried for one plan.
const ROUNDS: usize = 200;

/// What a sheet's price is above the worth of its pieces.
fn waste(problem: &Problem, values: &Values, plan: &Chosen, sheet: usize) -> i64 {
    let (origin, items) = &plan[sheet];
    let worth: i64 = items.iter().map(|item| values.items[usize::from(*item)]).sum();
    problem.origins[*origin].price * UNIT + values.excess[*origin] - worth
}

/// The most wasteful sheets and others from a place that differs in every round, until they have enough pieces.
fn group(plan: &Chosen, by_waste: &[usize], round: usize) -> Vec<usize> {
    let sizes = [24, 32, 40, 18];
    let most = sizes[round % sizes.len()];
    let (mut pieces, mut group) = (0, Vec::new());
    let wasteful = by_waste.len().min(4 + round / sizes.len() % 8);
    let others = by_waste.len() - wasteful;
    let place = |number: usize| wasteful + (round * 7 + number * (1 + round % 5)) % others.max(1);
    let order = (0..wasteful).chain((0..others).map(place));
    for sheet in order.filter_map(|place| by_waste.get(place)) {
        if group.contains(sheet) {
            continue;
        }
        pieces += plan[*sheet].1.len();
        if pieces > most {
            break;
        }
        group.push(*sheet);
    }
    group.sort_unstable();
    group
}

/// Cuts the pieces of a group from less, if that is possible.
fn cut_anew(
    problem: &Problem,
    plan: &Chosen,
    group: &[usize],
    columns: &mut Vec<Column>,
    work: &mut u64,
) -> Option<Chosen> {
    let mut rest = Rest::all(problem);
    rest.demand.fill(0);
    for (sheet, (origin, items)) in plan.iter().enumerate() {
        if group.contains(&sheet) {
            for item in items {
                rest.demand[usize::from(*item)] += 1;
            }
        } else if let Some(Some(limit)) = rest.limits.get_mut(*origin) {
            *limit = limit.saturating_sub(1);
        }
    }
    let prices = group.iter().map(|sheet| problem.origins[plan[*sheet].0].price);
    let price = prices.sum::<i64>();
    let (_, values) = generate(problem, &rest, columns, price, GROUP_WORK, work);
    let values = values?;
    for part in [8, 1] {
        let mut share = (*work).min(GROUP_WORK);
        *work -= share;
        let covered = cover(problem, &rest, &values, price - 1, part, &mut share, |_| true);
        *work += share;
        match covered {
            Covered::Cheaper(chosen) => return Some(chosen),
            Covered::None => return None,
            Covered::Stopped => {}
        }
    }
    None
}

/// What may be spent on one group.
const GROUP_WORK: u64 = 150_000;
