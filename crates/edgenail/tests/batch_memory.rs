//! The heap of a batch does not grow with its houses. A program of its own: it counts every allocation.

#![expect(clippy::unwrap_used, reason = "a test fails by a panic")]

use edgenail::batch::Batch;
use peak_alloc::PeakAlloc;
use std::num::NonZeroUsize;

#[global_allocator]
static HEAP: PeakAlloc = PeakAlloc;

const HOUSE: &str = r#"{"walls": [{"name": "a", "length": "8 ft"}]}"#;

/// The most bytes in use at once while so many houses are planned.
fn most(houses: usize, threads: usize) -> usize {
    let before = HEAP.current_usage();
    HEAP.reset_peak_usage();
    let batch = Batch::of((0..houses).map(|_| HOUSE)).on_threads(NonZeroUsize::new(threads).unwrap());
    assert_eq!(batch.filter(|outcome| outcome.result.is_ok()).count(), houses);
    HEAP.peak_usage() - before
}

#[test]
fn ten_times_the_houses_take_no_more_memory() {
    let few = most(64, 1);
    let many = most(640, 1);
    assert!(many < few + few / 4, "{few} bytes for 64 houses, {many} for 640");
    // How the peaks of two threads meet is chance, but each has one of its own at most.
    let both = most(640, 2);
    assert!(
        both < 2 * many + many / 4,
        "{many} bytes for 640 houses on one thread, {both} on two"
    );
}
