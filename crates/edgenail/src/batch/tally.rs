//! Counting what other threads finish, while one waits.

use std::sync::{Condvar, Mutex, MutexGuard, PoisonError};

/// How many houses are finished, and whether any more are to come.
///
/// A channel would do, but it registers the waiting thread with Rust, a record that outlives a C program's last call.
#[derive(Debug, Default)]
pub(super) struct Tally {
    count: Mutex<Count>,
    changed: Condvar,
}

#[derive(Clone, Copy, Debug, Default)]
struct Count {
    finished: usize,
    over: bool,
}

/// Ends the waiting when it is dropped, in a panic too.
#[derive(Debug)]
pub(super) struct Ending<'t>(pub &'t Tally);

impl Drop for Ending<'_> {
    fn drop(&mut self) {
        self.0.lock().over = true;
        self.0.changed.notify_one();
    }
}

impl Tally {
    fn lock(&self) -> MutexGuard<'_, Count> {
        self.count.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// One more is finished.
    pub fn add(&self) {
        self.lock().finished += 1;
        self.changed.notify_one();
    }

    /// Calls `finished` for each that is, until no more are to come.
    pub fn watch(&self, mut finished: impl FnMut()) {
        let mut seen = 0;
        loop {
            let unseen = |count: &mut Count| count.finished == seen && !count.over;
            let guard = self.changed.wait_while(self.lock(), unseen);
            let count = *guard.unwrap_or_else(PoisonError::into_inner);
            for _ in seen..count.finished {
                finished();
            }
            seen = count.finished;
            if count.over {
                return;
            }
        }
    }
}
