//! Generated lists of pieces.

use super::super::pack::pack;
use super::super::policy::{FirstCut, Fit, Kind, Order, Policy};
use super::*;
use crate::generate::cut_job;

/// Of lists of 10 to 40 pieces nearly all are proven, and first fit, the largest piece first, often misses the area bound.
#[test]
fn most_lists_are_proven() {
    let first_fit = Policy {
        order: Order::Area,
        first_cut: FirstCut::LargestRest,
        fit: Fit::First,
        kind: Kind::Own,
    };
    let (mut proven, mut missed, count) = (0, 0, 200_usize);
    for seed in 0..count as u64 {
        let job = cut_job(seed, 10 + usize::try_from(seed).unwrap() * 7 % 31);
        let whole = |blank: &Blank| {
            let sheet = &job.stock.sheets[0];
            (blank.width, blank.length) == (sheet.width, sheet.length)
        };
        assert!(!job.blanks.iter().any(whole));
        let plan = cut_by(&job.stock, &job.rules, &job.blanks);
        assert_eq!(check(&plan, &job.stock, job.rules.kerf), Ok(()));
        let greedy = pack(&job.stock, &job.rules, &job.blanks, first_fit);
        assert!(greedy.opens().len() >= plan.sheets.len());
        missed += usize::from(greedy.opens().len() > plan.bounds.area as usize);
        proven += usize::from(plan.proof == Proof::Proven);
    }
    assert!(proven * 100 >= count * 95, "{proven} of {count} are proven");
    assert!(missed * 3 >= count, "first fit misses the area bound of {missed}");
}

/// A house's list comes with a bound that is off by little.
#[test]
fn long_lists_miss_by_little() {
    for seed in 0..2 {
        let mut job = cut_job(seed, 300);
        job.rules.effort_most = 40_000_000;
        let plan = cut_by(&job.stock, &job.rules, &job.blanks);
        assert_eq!(check(&plan, &job.stock, job.rules.kerf), Ok(()));
        let gap = match plan.proof {
            Proof::Proven => Amount::ZERO,
            Proof::Gap { amount } => amount,
            Proof::Stopped { gap, .. } => gap,
        };
        assert!(gap <= Amount::whole(2 * 16), "seed {seed}: {gap}");
    }
}
