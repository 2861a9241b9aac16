//! Batches of generated houses: walls a second a core, what a second thread brings, the most memory in use.
//! `cargo bench -p edgenail --bench batch [-- WALLS…] [effort=N]`; without counts 1,000, 10,000 and 100,000 walls are planned.
//! With `effort=N` every wall's search ends there: `practice.effort_most`.
//!
//! The houses are those of `edgenail::generate`, whose own time is not counted. Time of a core is read from the system, so
//! that other work on the machine does not count either; what a second thread brings needs two idle cores.

#![expect(
    clippy::print_stdout,
    clippy::cast_precision_loss,
    reason = "a bench prints, and counts less than 2^52 of anything"
)]

use edgenail::batch::Batch;
use edgenail::generate::house_json;
use serde_json::Value;
use std::fs;
use std::num::NonZeroUsize;
use std::time::Instant;

/// Different houses; longer batches plan them again and again.
const HOUSES: u64 = 2_000;
/// Walls planned to compare one thread with two, each so many times in turn.
const COMPARED: (u64, usize) = (1_000, 3);

fn main() {
    let effort = std::env::args().find_map(|word| word.strip_prefix("effort=")?.parse().ok());
    let houses: Vec<String> = (0..HOUSES).map(|seed| house(seed, effort)).collect();
    let counts: Vec<u64> = std::env::args().filter_map(|word| word.parse().ok()).collect();
    let one = NonZeroUsize::MIN;
    let two = one.saturating_add(1);
    let mut best = [f64::INFINITY; 2];
    for _ in 0..COMPARED.1 {
        for (best, threads) in best.iter_mut().zip([one, two]) {
            *best = best.min(run(&houses, COMPARED.0, threads).0);
        }
    }
    println!("two threads are {:.2} times as fast as one", best[0] / best[1]);
    let counts = if counts.is_empty() {
        vec![1_000, 10_000, 100_000]
    } else {
        counts
    };
    for count in counts {
        let (seconds, core_seconds, walls, faults) = run(&houses, count, two);
        println!(
            "{walls} walls, two threads: {:.0} walls a second, {:.0} a second of a core; {faults} houses without a plan; most \
             memory so far {}",
            walls as f64 / seconds,
            walls as f64 / core_seconds,
            most_memory().map_or_else(|| "unknown".to_owned(), |kb| format!("{:.1} MB", kb / 1000.0)),
        );
    }
}

/// A generated house, its searches limited where that is asked for.
fn house(seed: u64, effort: Option<u64>) -> String {
    let text = house_json(seed).0;
    match (effort, serde_json::from_str::<Value>(&text)) {
        (Some(effort), Ok(mut house)) => {
            house["practice"]["effort_most"] = effort.into();
            house.to_string()
        }
        _ => text,
    }
}

/// Plans houses with so many walls: seconds, seconds of all cores, walls, houses without a plan.
fn run(houses: &[String], count: u64, threads: NonZeroUsize) -> (f64, f64, u64, u64) {
    let (start, core) = (Instant::now(), core_seconds());
    let (mut walls, mut faults) = (0, 0);
    for outcome in Batch::of(houses.iter().cycle()).on_threads(threads) {
        match outcome.result {
            Ok(figures) => walls += figures.walls,
            Err(_) => faults += 1,
        }
        if walls >= count {
            break;
        }
    }
    (
        start.elapsed().as_secs_f64(),
        core_seconds() - core,
        walls,
        faults,
    )
}

/// Seconds that this program has used of all cores (proc(5): the 14th and 15th word, in hundredths).
fn core_seconds() -> f64 {
    let stat = fs::read_to_string("/proc/self/stat").unwrap_or_default();
    let after_name = stat.rsplit_once(')').map_or("", |(_, rest)| rest);
    let words = after_name.split_whitespace().skip(11).take(2);
    words.filter_map(|word| word.parse::<f64>().ok()).sum::<f64>() / 100.0
}

/// The most memory that this program has held, in kB (proc(5): `VmHWM`).
fn most_memory() -> Option<f64> {
    let status = fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find(|line| line.starts_with("VmHWM"))?;
    line.split_whitespace().nth(1)?.parse().ok()
}
