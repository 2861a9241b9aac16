//! The wish to end a batch.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

/// Ends a batch: the houses that are being planned are finished, no other is begun, and what was not yet handed on of
/// their window is dropped. All copies are one wish.
///
/// ```
/// use edgenail::batch::Batch;
/// let houses = (0..100).map(|seed| edgenail::generate::house_json(seed).0);
/// let mut batch = Batch::of(houses);
/// let cancel = batch.canceller();
/// assert!(batch.next().is_some());
/// cancel.cancel();
/// assert!(batch.next().is_none());
/// ```
#[derive(Clone, Debug, Default)]
pub struct Cancel(Arc<AtomicBool>);

impl Cancel {
    /// Ends the batch, from any thread.
    pub fn cancel(&self) {
        self.0.store(true, Ordering::Relaxed);
    }

    /// Whether it was ended.
    pub fn is_cancelled(&self) -> bool {
        self.0.load(Ordering::Relaxed)
    }
}
