//! Threads that plan houses.

use super::tally::{Ending, Tally};
use super::{Cancel, Outcome};
use rayon::prelude::*;
use rayon::{ThreadPool, ThreadPoolBuilder};
use std::fmt;
use std::num::NonZeroUsize;
use std::sync::OnceLock;
use std::thread::{self, JoinHandle};

/// Houses in a window for each thread: enough that no thread waits long for the last one.
const HOUSES_EACH: usize = 32;

/// Threads that plan a window of houses at a time. They are started with the first window and end with this value.
///
/// [`Batch`](super::Batch) is the iterator on top of it.
///
/// ```
/// use edgenail::batch::{Cancel, Workers};
/// use std::num::NonZeroUsize;
/// let workers = Workers::new(NonZeroUsize::new(2).unwrap());
/// let houses: Vec<String> = (0..4).map(|seed| edgenail::generate::house_json(seed).0).collect();
/// let outcomes = workers.plan(&houses, 0, false, &Cancel::default(), || {}).unwrap();
/// assert_eq!(outcomes.iter().map(|outcome| outcome.index).collect::<Vec<_>>(), [0, 1, 2, 3]);
/// ```
pub struct Workers {
    threads: NonZeroUsize,
    pool: OnceLock<Option<Pool>>,
}

impl Workers {
    /// So many threads; for one, and where the machine cannot start them all, the caller's own.
    pub const fn new(threads: NonZeroUsize) -> Self {
        Self {
            threads,
            pool: OnceLock::new(),
        }
    }

    /// How many houses a window has.
    pub const fn window(&self) -> usize {
        self.threads.get().saturating_mul(HOUSES_EACH)
    }

    /// What becomes of these houses, in their order; the first one has the place `first`. `finished` is called on the
    /// calling thread after each. Nothing where `cancel` was asked for meanwhile.
    pub fn plan<T: AsRef<[u8]> + Sync>(
        &self,
        houses: &[T],
        first: u64,
        plans: bool,
        cancel: &Cancel,
        mut finished: impl FnMut(),
    ) -> Option<Vec<Outcome>> {
        let one = |place: usize, house: &T| {
            let index = first.saturating_add(u64::try_from(place).unwrap_or(u64::MAX));
            (!cancel.is_cancelled()).then(|| Outcome::of(index, house.as_ref(), plans))
        };
        let Some(pool) = self.pool() else {
            let alone = houses.iter().enumerate().map(|(place, house)| {
                let outcome = one(place, house)?;
                finished();
                Some(outcome)
            });
            let outcomes: Option<Vec<Outcome>> = alone.collect();
            return outcomes.filter(|_| !cancel.is_cancelled());
        };
        let tally = Tally::default();
        let mut outcomes: Option<Vec<Outcome>> = None;
        pool.in_place_scope(|scope| {
            let (outcomes, one, tally) = (&mut outcomes, &one, &tally);
            scope.spawn(move |_| {
                let _ending = Ending(tally);
                let each = houses.par_iter().enumerate().with_max_len(1);
                let planned = each.map(|(place, house)| {
                    let outcome = one(place, house);
                    if outcome.is_some() {
                        tally.add();
                    }
                    outcome
                });
                *outcomes = planned.collect();
            });
            tally.watch(finished);
        });
        outcomes.filter(|_| !cancel.is_cancelled())
    }

    /// The threads, started on demand; none where the caller works alone.
    fn pool(&self) -> Option<&ThreadPool> {
        let pool = self.pool.get_or_init(|| {
            let several = self.threads > NonZeroUsize::MIN;
            several.then(|| Pool::new(self.threads.get())).flatten()
        });
        pool.as_ref().and_then(|pool| pool.threads.as_ref())
    }
}

impl fmt::Debug for Workers {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Workers({})", self.threads)
    }
}

/// Threads that are waited for when they end, so that nothing of them outlives a program's last call.
struct Pool {
    threads: Option<ThreadPool>,
    handles: Vec<JoinHandle<()>>,
}

impl Pool {
    fn new(threads: usize) -> Option<Self> {
        let mut handles = Vec::new();
        let pool = ThreadPoolBuilder::new()
            .num_threads(threads)
            .spawn_handler(|thread| {
                let name = format!("edgenail {}", thread.index());
                handles.push(thread::Builder::new().name(name).spawn(|| thread.run())?);
                Ok(())
            })
            .build();
        Some(Self {
            threads: Some(pool.ok()?),
            handles,
        })
    }
}

impl Drop for Pool {
    fn drop(&mut self) {
        drop(self.threads.take());
        for handle in self.handles.drain(..) {
            // A thread of the pool catches what happens on it.
            let _ = handle.join();
        }
    }
}
