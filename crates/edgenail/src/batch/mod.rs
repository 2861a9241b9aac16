//! Many houses on all cores, one after the other through a window that bounds memory.
//!
//! [`Batch`] takes houses from an iterator, plans so many at once that every thread is busy, and hands what became of
//! them on in their order. Inside, each house is planned on one thread. What comes out depends on the house alone: not
//! on its neighbours, on the threads or on the window. A house that cannot be planned is told like any other.

mod cancel;
mod lines;
mod outcome;
mod table;
mod tally;
mod workers;

pub use cancel::Cancel;
pub use lines::{Lines, json_lines};
pub use outcome::Outcome;
pub use table::{definition, table};
pub use workers::Workers;

use std::fmt;
use std::num::NonZeroUsize;
use std::ops::ControlFlow;
use std::thread;
use std::vec;

/// How far a batch has come.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Progress {
    /// Houses that were taken from the iterator.
    pub taken: u64,
    /// Those of them that are finished, planned or not.
    pub finished: u64,
}

/// Who is told of progress, and may end the batch.
type Watch<'w> = Box<dyn FnMut(Progress) -> ControlFlow<()> + Send + 'w>;

/// Houses being planned: an iterator of what becomes of each, in their order.
///
/// Houses are JSON texts, as [`plan_bytes`](crate::plan_bytes) reads them. No more than a window of them,
/// [`Workers::window`], is in memory at a time, so that a million of them take no more than a thousand.
///
/// ```
/// use edgenail::batch::Batch;
/// use edgenail::generate::house_json;
/// let houses = (0..3).map(|seed| house_json(seed).0).chain(["{}".to_owned()]);
/// let outcomes: Vec<_> = Batch::of(houses).collect();
/// assert!(outcomes[0].result.as_ref().is_ok_and(|figures| figures.sheets > 0));
/// // What is wrong with one house stops no other, and is told with its place.
/// let error = outcomes[3].result.as_ref().unwrap_err();
/// assert_eq!((outcomes[3].index, error.issues()[0].path.as_str()), (3, "/walls"));
/// ```
pub struct Batch<'w, I> {
    houses: I,
    workers: Workers,
    plans: bool,
    watch: Watch<'w>,
    cancel: Cancel,
    progress: Progress,
    ready: vec::IntoIter<Outcome>,
}

impl<'w, I> Batch<'w, I>
where
    I: Iterator,
    I::Item: AsRef<[u8]> + Sync,
{
    /// These houses, on as many threads as the machine offers.
    pub fn of(houses: impl IntoIterator<IntoIter = I>) -> Self {
        Self {
            houses: houses.into_iter(),
            workers: Workers::new(thread::available_parallelism().unwrap_or(NonZeroUsize::MIN)),
            plans: false,
            watch: Box::new(|_| ControlFlow::Continue(())),
            cancel: Cancel::default(),
            progress: Progress::default(),
            ready: Vec::new().into_iter(),
        }
    }

    /// On so many threads. They change how long it takes, and nothing else.
    #[must_use]
    pub fn on_threads(mut self, threads: NonZeroUsize) -> Self {
        self.workers = Workers::new(threads);
        self
    }

    /// Hands on whole plans too, in [`Outcome::plan`]. A window of them is in memory at a time.
    #[must_use]
    pub fn with_plans(mut self) -> Self {
        self.plans = true;
        self
    }

    /// Tells of progress whenever a house is finished, on the thread that asks for the next outcome;
    /// [`ControlFlow::Break`] ends the batch as [`Cancel::cancel`] does.
    ///
    /// ```
    /// use edgenail::batch::Batch;
    /// use std::ops::ControlFlow;
    /// let mut finished = 0;
    /// let batch = Batch::of((0..5).map(|seed| edgenail::generate::house_json(seed).0)).watched_by(|progress| {
    ///     finished = progress.finished;
    ///     ControlFlow::Continue(())
    /// });
    /// assert_eq!(batch.count(), 5);
    /// assert_eq!(finished, 5);
    /// ```
    #[must_use]
    pub fn watched_by(mut self, watch: impl FnMut(Progress) -> ControlFlow<()> + Send + 'w) -> Self {
        self.watch = Box::new(watch);
        self
    }

    /// Ends the batch from another thread.
    pub fn canceller(&self) -> Cancel {
        self.cancel.clone()
    }

    /// How far it has come.
    pub const fn progress(&self) -> Progress {
        self.progress
    }

    /// Plans the next window; nothing where there is no more, or where the batch is cancelled meanwhile.
    fn window(&mut self) -> Option<vec::IntoIter<Outcome>> {
        let first = self.progress.taken;
        let houses: Vec<I::Item> = self.houses.by_ref().take(self.workers.window()).collect();
        if houses.is_empty() {
            return None;
        }
        self.progress.taken += u64::try_from(houses.len()).unwrap_or(u64::MAX);
        let Self {
            workers,
            plans,
            watch,
            cancel,
            progress,
            ..
        } = self;
        let outcomes = workers.plan(&houses, first, *plans, cancel, || {
            progress.finished += 1;
            if watch(*progress).is_break() {
                cancel.cancel();
            }
        });
        outcomes.map(Vec::into_iter)
    }
}

impl<I> Iterator for Batch<'_, I>
where
    I: Iterator,
    I::Item: AsRef<[u8]> + Sync,
{
    type Item = Outcome;

    fn next(&mut self) -> Option<Outcome> {
        if self.cancel.is_cancelled() {
            return None;
        }
        if let Some(outcome) = self.ready.next() {
            return Some(outcome);
        }
        self.ready = self.window()?;
        self.ready.next()
    }
}

impl<I> fmt::Debug for Batch<'_, I> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Batch")
            .field("workers", &self.workers)
            .field("plans", &self.plans)
            .field("progress", &self.progress)
            .finish_non_exhaustive()
    }
}

#[cfg(test)]
mod tests;
