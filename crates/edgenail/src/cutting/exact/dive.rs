//! A plan from a mixture: patterns are taken one after the other, and what is left is mixed anew.

use super::columns::{LITTLE_WORK, Rest, UNIT, generate};
use super::master::{Column, Master};
use super::problem::Problem;

/// Patterns, each with the place of its origin.
pub(super) type Chosen = Vec<(usize, Box<[u16]>)>;

/// Takes whole patterns out of the mixture, then the one that is used most, until nothing is left to be cut. Nothing if
/// the work is spent before or the limits of origins do not suffice.
pub(super) fn dive(
    problem: &Problem,
    mut rest: Rest,
    columns: &mut Vec<Column>,
    work: &mut u64,
) -> Option<Chosen> {
    let mut chosen = Chosen::new();
    while !rest.is_empty() {
        if *work == 0 {
            return None;
        }
        let (master, _) = generate(problem, &rest, columns, i64::MAX / UNIT, LITTLE_WORK, work);
        let before = chosen.len();
        chosen.extend(whole_parts(&master, columns, &mut rest));
        if chosen.len() == before {
            let mut most: Option<(f64, usize)> = None;
            for (column, weight) in master.used() {
                if most.is_none_or(|(best, _)| weight > best + 1e-9) {
                    most = Some((weight, column));
                }
            }
            let (_, column) = most?;
            if !take(&mut rest, &columns[column], &mut chosen) {
                return None;
            }
        }
    }
    Some(chosen)
}

/// Takes out the patterns that a mixture uses in full.
pub(super) fn whole_parts(master: &Master, columns: &[Column], rest: &mut Rest) -> Chosen {
    let mut chosen = Chosen::new();
    for (column, weight) in master.used() {
        for _ in 0..whole(weight) {
            take(rest, &columns[column], &mut chosen);
        }
    }
    chosen
}

/// Takes a pattern unless it serves nothing any more or its origin is used up.
fn take(rest: &mut Rest, column: &Column, chosen: &mut Chosen) -> bool {
    let serves = column
        .items
        .iter()
        .any(|item| rest.demand[usize::from(*item)] > 0);
    if !serves || rest.limits[column.origin] == Some(0) {
        return false;
    }
    rest.take(column.origin, &column.items);
    chosen.push((column.origin, column.items.clone()));
    true
}

/// How often a pattern is used in full.
fn whole(weight: f64) -> u32 {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "weights are counts of pieces at most and not below zero"
    )]
    let whole = libm::floor(weight + 1e-6) as u32;
    whole
}
