//! Work on a list, shared between threads.

use std::num::NonZeroUsize;
use std::panic::resume_unwind;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;

/// What `make` gives for each place from 0 to `count`, in that order, worked out by at most so many threads.
///
/// Whichever thread is free takes the next place, so that the result is the same for any number of them. A thread that
/// cannot be started is done without.
pub(super) fn shared<T: Send>(
    count: usize,
    threads: NonZeroUsize,
    make: impl Fn(usize) -> T + Sync,
) -> Vec<T> {
    let threads = threads.get().min(count);
    // Alone no thread is begun, nor is the caller's own registered: its record would outlive a C program's last call.
    if threads <= 1 {
        return (0..count).map(make).collect();
    }
    let next = AtomicUsize::new(0);
    let work = || {
        let places = std::iter::repeat_with(|| next.fetch_add(1, Ordering::Relaxed));
        let own = places.take_while(|place| *place < count);
        own.map(|place| (place, make(place))).collect::<Vec<_>>()
    };
    let mut made = thread::scope(|scope| {
        let others: Vec<_> = (1..threads)
            .map_while(|_| thread::Builder::new().spawn_scoped(scope, work).ok())
            .collect();
        let mut made = work();
        for other in others {
            made.extend(other.join().unwrap_or_else(|panic| resume_unwind(panic)));
        }
        made
    });
    made.sort_unstable_by_key(|(place, _)| *place);
    made.into_iter().map(|(_, made)| made).collect()
}

#[cfg(test)]
mod tests {
    use super::shared;
    use std::num::NonZeroUsize;

    #[test]
    fn the_order_is_that_of_the_list_for_any_number_of_threads() {
        for threads in [1, 2, 8, 100] {
            for count in [0, 1, 2, 7, 50] {
                let made = shared(count, NonZeroUsize::new(threads).unwrap(), |place| place * place);
                let alone: Vec<usize> = (0..count).map(|place| place * place).collect();
                assert_eq!(made, alone, "{threads} threads");
            }
        }
    }
}
