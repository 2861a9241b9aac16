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
    for threads in [1, 2] {
        let few = most(64, threads);
        let many = most(640, threads);
        assert!(
            many < few + few / 4,
            "{threads} threads: {few} bytes for 64 houses, {many} for 640"
        );
    }
}
