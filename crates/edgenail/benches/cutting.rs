//! How fast lists are cut, and how many are proven: published instances would be too few, so generated ones.
//!
//! `cargo bench -p edgenail --bench cutting` prints one line for each set of lists; one thread.

#![expect(clippy::print_stdout, reason = "a benchmark prints what it measured")]

use edgenail::cutting::{Proof, cut_by};
use edgenail::generate::cut_job;
use std::time::{Duration, Instant};

/// So many lists of so many pieces, cut with so much effort.
struct Set {
    name: &'static str,
    lists: u64,
    pieces: fn(u64) -> usize,
    effort: u64,
}

const SETS: [Set; 2] = [
    Set {
        name: "1,000 lists of 10 to 40 pieces",
        lists: 1_000,
        pieces: |seed| 10 + usize::try_from(seed * 7 % 31).unwrap_or(0),
        effort: 5_000_000,
    },
    Set {
        name: "200 houses of 300 pieces",
        lists: 200,
        pieces: |_| 300,
        effort: 100_000_000,
    },
];

fn main() {
    // Run as a test, one list of each set shows that it works.
    let least = std::env::args().any(|argument| argument == "--test");
    for set in SETS {
        let lists = if least { 1 } else { set.lists };
        let mut times: Vec<Duration> = Vec::new();
        let (mut proven, mut over, mut gaps) = (0, 0, Vec::new());
        for seed in 0..lists {
            let mut job = cut_job(seed, (set.pieces)(seed));
            job.rules.effort_most = set.effort;
            let begun = Instant::now();
            let plan = cut_by(&job.stock, &job.rules, &job.blanks);
            times.push(begun.elapsed());
            over += u32::from(plan.sheets.len() > plan.bounds.area as usize);
            match plan.proof {
                Proof::Proven => proven += 1,
                Proof::Gap { amount } => gaps.push((amount.ten_thousandths() / 160_000, seed)),
                Proof::Stopped { gap, .. } => gaps.push((gap.ten_thousandths() / 160_000, seed)),
            }
        }
        times.sort_unstable();
        let at = |percent: usize| {
            times
                .get((times.len() - 1) * percent / 100)
                .copied()
                .unwrap_or_default()
        };
        println!(
            "{}: {proven} proven, {over} above the area bound; median {:?}, 99 % {:?}, longest {:?}",
            set.name,
            at(50),
            at(99),
            at(100)
        );
        let within = gaps.iter().filter(|(sheets, _)| *sheets <= 1).count();
        let rest: Vec<_> = gaps.iter().filter(|(sheets, _)| *sheets > 1).collect();
        println!("  {within} more within one sheet; the rest (sheets, seed): {rest:?}");
    }
}
