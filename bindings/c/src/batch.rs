//! Many houses on all cores: pushed in, their outcomes taken out in the same order.

use crate::fill::{fill_one, slots};
use crate::guard::{Fault, guard};
use crate::handle::{borrow, check, give, put, take};
use crate::plan::edgenail_plan;
use crate::rows::edgenail_batch_row;
use crate::status::edgenail_status as Status;
use crate::text::{put_utf8, put_utf16, size, utf8, utf16};
use edgenail::batch::{Cancel, Outcome, Workers, table};
use std::ffi::c_char;
use std::num::NonZeroUsize;
use std::sync::{Mutex, MutexGuard, PoisonError};
use std::thread;
use std::vec;

/// Houses that are planned on several threads. The caller owns it, and gives it back with `edgenail_batch_free`.
///
/// Houses are pushed with `edgenail_batch_push`, their outcomes taken in the same order with `edgenail_batch_next`. It holds
/// a window of houses at a time, so that memory does not grow with their number:
///
///     while there are houses:  push while edgenail_batch_room says more than 0
///                              take one outcome with edgenail_batch_next
///     at the end:              take outcomes until EDGENAIL_STATUS_NOT_FOUND
///
/// What comes out depends on the house alone, not on its neighbours nor on the number of threads. One thread uses a batch
/// at a time; any other may call `edgenail_batch_cancel`.
#[derive(Debug)]
pub struct edgenail_batch {
    workers: Workers,
    plans: bool,
    cancel: Cancel,
    held: Mutex<Held>,
}

/// What a batch holds between calls.
#[derive(Debug, Default)]
struct Held {
    pushed: Vec<String>,
    /// The place of the first one pushed.
    first: u64,
    ready: vec::IntoIter<Outcome>,
    /// The outcome that was taken last.
    taken: Option<Outcome>,
}

const _: () = {
    const fn shared_between_threads<T: Send + Sync>() {}
    shared_between_threads::<edgenail_batch>();
};

impl edgenail_batch {
    fn held(&self) -> MutexGuard<'_, Held> {
        self.held.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn push(&self, house: String) -> Result<(), Fault> {
        let mut held = self.held();
        if self.room(&held) == 0 {
            return Err(Fault::argument(
                Status::Full,
                "batch",
                "holds as many houses as it takes; take outcomes first",
            ));
        }
        held.pushed.push(house);
        Ok(())
    }

    fn room(&self, held: &Held) -> usize {
        let ready = if held.ready.len() > 0 {
            self.workers.window()
        } else {
            held.pushed.len()
        };
        self.workers.window().saturating_sub(ready)
    }

    /// The next outcome, after the planning that it needs.
    fn next(&self) -> Result<Outcome, Fault> {
        let mut held = self.held();
        let cancelled = || Fault::argument(Status::Cancelled, "batch", "was cancelled");
        if self.cancel.is_cancelled() {
            return Err(cancelled());
        }
        if held.ready.len() == 0 {
            let houses = std::mem::take(&mut held.pushed);
            let outcomes = self
                .workers
                .plan(&houses, held.first, self.plans, &self.cancel, || {});
            held.ready = outcomes.ok_or_else(cancelled)?.into_iter();
            held.first += u64::try_from(houses.len()).unwrap_or(u64::MAX);
        }
        held.ready
            .next()
            .ok_or_else(|| Fault::argument(Status::NotFound, "batch", "has no further house"))
    }

    fn json(&self) -> Result<String, Fault> {
        let held = self.held();
        held.taken.as_ref().map(Outcome::json).ok_or_else(none_taken)
    }
}

fn none_taken() -> Fault {
    Fault::argument(Status::NotFound, "batch", "no outcome was taken yet")
}

/// Begins a batch on so many threads; 0 is as many as the machine offers. With `plans` other than 0 each outcome holds
/// its plan for `edgenail_batch_take_plan`.
///
/// On success the caller owns `*out_batch`. Returns `EDGENAIL_STATUS_OK`, or a status of misuse; `*out_batch` is then left as
/// it was.
///
/// # Safety
///
/// `out_batch` points at a pointer.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_batch_new(
    threads: i64,
    plans: i32,
    out_batch: *mut *mut edgenail_batch,
) -> i32 {
    guard(|| {
        let offered = || thread::available_parallelism().unwrap_or(NonZeroUsize::MIN);
        let threads = NonZeroUsize::new(size(threads, "threads")?).unwrap_or_else(offered);
        let batch = edgenail_batch {
            workers: Workers::new(threads),
            plans: plans != 0,
            cancel: Cancel::default(),
            held: Mutex::default(),
        };
        // SAFETY: the caller's promise is the same as ours.
        unsafe { give(out_batch, batch, "out_batch") }
    })
}

/// Gives a batch back, with what it still holds. NULL is nothing to give back; giving it back twice is undefined.
///
/// # Safety
///
/// `batch` is NULL or came from this library, was not given back before, and no thread uses it.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_batch_free(batch: *mut edgenail_batch) {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        unsafe { take(batch) };
        Ok(())
    });
}

/// How many houses may be pushed now: 0 while outcomes wait to be taken, else what is left of a window.
///
/// # Safety
///
/// `batch` is a live batch; `out_count` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_batch_room(batch: *const edgenail_batch, out_count: *mut i64) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        let batch = unsafe { borrow(batch, "batch") }?;
        let room = batch.room(&batch.held());
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put(out_count, i64::try_from(room).unwrap_or(i64::MAX), "out_count") }
    })
}

/// Adds a house, as a JSON document in UTF-8. The text is copied; it is read when its outcome is made.
///
/// Returns `EDGENAIL_STATUS_OK`, `EDGENAIL_STATUS_FULL` when there is no room, or a status of misuse.
///
/// # Safety
///
/// `batch` is a live batch; `text` points at `length` bytes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_batch_push(
    batch: *const edgenail_batch,
    text: *const c_char,
    length: i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        let (batch, text) = unsafe { (borrow(batch, "batch")?, utf8(text, length, "text")?) };
        batch.push(text.to_owned())
    })
}

/// As `edgenail_batch_push`, from UTF-16; `length` counts code units.
///
/// # Safety
///
/// `batch` is a live batch; `text` points at `length` code units.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_batch_push_utf16(
    batch: *const edgenail_batch,
    text: *const u16,
    length: i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        let (batch, text) = unsafe { (borrow(batch, "batch")?, utf16(text, length, "text")?) };
        batch.push(text)
    })
}

/// Takes the next outcome, and writes its figures in `*row`. Where none is ready, it plans all houses that were pushed,
/// and returns when the last of them is done.
///
/// `row_size` is `sizeof(edgenail_batch_row)`. Returns `EDGENAIL_STATUS_OK`, or `EDGENAIL_STATUS_NOT_FOUND` when every pushed
/// house was taken, `EDGENAIL_STATUS_CANCELLED`, or a status of misuse, `EDGENAIL_STATUS_ROW_SIZE` among them.
///
/// A house that has no plan is an outcome too: its `planned` is 0, its other numbers are -1, and `edgenail_batch_json` says
/// why.
///
/// # Safety
///
/// `batch` is a live batch; `row` has room for `row_size` bytes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_batch_next(
    batch: *const edgenail_batch,
    row: *mut edgenail_batch_row,
    row_size: i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        let batch = unsafe { borrow(batch, "batch") }?;
        check(row, "row")?;
        let slots = slots::<edgenail_batch_row>(row_size)?;
        let outcome = batch.next()?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { fill_one(&table(std::slice::from_ref(&outcome)), row, slots) }?;
        batch.held().taken = Some(outcome);
        Ok(())
    })
}

/// The outcome that was taken last as JSON in UTF-8, the same in every language: its name, its figures, or every fault.
///
/// Returns `EDGENAIL_STATUS_OK`, `EDGENAIL_STATUS_NOT_FOUND` when none was taken yet, or `EDGENAIL_STATUS_BUFFER_TOO_SMALL`
/// with the size needed in `out_needed`. No final zero is written.
///
/// # Safety
///
/// `batch` is a live batch; `buffer` has room for `capacity` bytes; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_batch_json(
    batch: *const edgenail_batch,
    buffer: *mut c_char,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf8(&borrow(batch, "batch")?.json()?, buffer, capacity, out_needed) }
    })
}

/// As `edgenail_batch_json`, in UTF-16; capacity and size count code units.
///
/// # Safety
///
/// `batch` is a live batch; `buffer` has room for `capacity` code units; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_batch_json_utf16(
    batch: *const edgenail_batch,
    buffer: *mut u16,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf16(&borrow(batch, "batch")?.json()?, buffer, capacity, out_needed) }
    })
}

/// Hands over the plan of the outcome that was taken last. The caller owns `*out_plan`, and gives it back with
/// `edgenail_plan_free`; it outlives the batch.
///
/// Returns `EDGENAIL_STATUS_OK`, or `EDGENAIL_STATUS_NOT_FOUND` when that outcome has no plan, when its plan was handed over
/// before, and in a batch that was begun without plans.
///
/// # Safety
///
/// `batch` is a live batch; `out_plan` points at a pointer.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_batch_take_plan(
    batch: *const edgenail_batch,
    out_plan: *mut *mut edgenail_plan,
) -> i32 {
    guard(|| {
        check(out_plan, "out_plan")?;
        // SAFETY: the caller's promise is the same as ours.
        let mut held = unsafe { borrow(batch, "batch") }?.held();
        let plan = held.taken.as_mut().and_then(|outcome| outcome.plan.take());
        let none = || Fault::argument(Status::NotFound, "batch", "the last outcome holds no plan");
        // SAFETY: the caller's promise is the same as ours.
        unsafe { give(out_plan, plan.ok_or_else(none)?.into(), "out_plan") }
    })
}

/// Ends a batch, from any thread: the houses that are being planned are finished, no other is begun, and
/// `edgenail_batch_next` returns `EDGENAIL_STATUS_CANCELLED` from then on.
///
/// # Safety
///
/// `batch` is a live batch.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_batch_cancel(batch: *const edgenail_batch) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        unsafe { borrow(batch, "batch") }?.cancel.cancel();
        Ok(())
    })
}
