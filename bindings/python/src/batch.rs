//! Many houses, taken from a Python iterator.

use crate::plan::Planned;
use edgenail::batch::{Batch, Cancel};
use pyo3::exceptions::PyValueError;
use pyo3::prelude::*;
use pyo3::types::PyIterator;
use std::num::NonZeroUsize;
use std::ops::ControlFlow;
use std::sync::{Arc, Mutex, PoisonError, TryLockError};
use std::thread;

/// What Python raised while it was asked for a house, told of progress, or interrupted.
type Raised = Arc<Mutex<Option<PyErr>>>;

/// Houses as bytes from a Python iterator; it ends where that raises.
struct Houses {
    iterator: Py<PyIterator>,
    raised: Raised,
    /// It raised; what it would give then is not asked for.
    over: bool,
}

impl Iterator for Houses {
    type Item = Vec<u8>;

    fn next(&mut self) -> Option<Vec<u8>> {
        if self.over {
            return None;
        }
        Python::attach(|py| {
            let house = self.iterator.bind(py).clone().next()?;
            match house.and_then(|house| house.extract::<Vec<u8>>()) {
                Ok(house) => Some(house),
                Err(error) => {
                    self.over = true;
                    keep(&self.raised, error);
                    None
                }
            }
        })
    }
}

/// Houses being planned; `edgenail.Batch` is the typed view of it.
#[pyclass(frozen, module = "edgenail._edgenail")]
pub(crate) struct Batched {
    batch: Mutex<Option<Batch<'static, Houses>>>,
    cancel: Cancel,
    raised: Raised,
}

/// An outcome as (its JSON, the error's JSON and sentence, the plan).
type OutcomeParts = (String, Option<(String, String)>, Option<Planned>);

#[pymethods]
impl Batched {
    /// Plans what an iterator of bytes gives; `progress` is called with (taken, finished).
    #[new]
    #[pyo3(signature = (houses, threads, plans, progress, /))]
    fn new(
        houses: Py<PyIterator>,
        threads: Option<usize>,
        plans: bool,
        progress: Option<Py<PyAny>>,
    ) -> PyResult<Self> {
        let threads = match threads {
            Some(count) => {
                NonZeroUsize::new(count).ok_or_else(|| PyValueError::new_err("threads: at least 1"))?
            }
            None => thread::available_parallelism().unwrap_or(NonZeroUsize::MIN),
        };
        let raised = Raised::default();
        let source = Houses {
            iterator: houses,
            raised: Arc::clone(&raised),
            over: false,
        };
        let told = Arc::clone(&raised);
        let mut batch = Batch::of(source).on_threads(threads).watched_by(move |at| {
            let said = Python::attach(|py| {
                py.check_signals()?;
                if let Some(progress) = &progress {
                    progress.call1(py, (at.taken, at.finished))?;
                }
                Ok(())
            });
            said.map_or_else(
                |error| {
                    keep(&told, error);
                    ControlFlow::Break(())
                },
                ControlFlow::Continue,
            )
        });
        if plans {
            batch = batch.with_plans();
        }
        Ok(Self {
            cancel: batch.canceller(),
            batch: Mutex::new(Some(batch)),
            raised,
        })
    }

    /// The next outcome; none at the end.
    fn next(&self, py: Python<'_>) -> PyResult<Option<OutcomeParts>> {
        let outcome = py.detach(|| match self.batch.try_lock() {
            Ok(mut batch) => Ok(batch.as_mut().and_then(Iterator::next)),
            Err(TryLockError::Poisoned(_)) => Ok(None),
            Err(TryLockError::WouldBlock) => Err(()),
        });
        let Ok(outcome) = outcome else {
            return Err(PyValueError::new_err("another thread is waiting for this batch"));
        };
        let Some(outcome) = outcome else {
            let raised = self.raised.lock().unwrap_or_else(PoisonError::into_inner).take();
            return raised.map_or(Ok(None), Err);
        };
        let json = outcome.json();
        let error = outcome
            .result
            .err()
            .map(|error| (error.json(), error.to_string()));
        Ok(Some((json, error, outcome.plan.map(Planned::from))))
    }

    /// Ends the batch, for another thread that waits for it too.
    fn close(&self) {
        self.cancel.cancel();
        if let Ok(mut batch) = self.batch.try_lock() {
            batch.take();
        }
    }
}

/// Keeps the first thing that was raised.
fn keep(raised: &Raised, error: PyErr) {
    let mut kept = raised.lock().unwrap_or_else(PoisonError::into_inner);
    kept.get_or_insert(error);
}
