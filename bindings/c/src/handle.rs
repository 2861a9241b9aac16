//! Opaque objects: a box handed out, borrowed and taken back.

use crate::guard::Fault;
use crate::status::edgenail_status as Status;

/// Borrows what a pointer from C points at.
///
/// # Safety
///
/// A pointer that is not NULL points at a live object that this library made.
pub(crate) unsafe fn borrow<'a, T>(pointer: *const T, argument: &str) -> Result<&'a T, Fault> {
    // SAFETY: NULL is turned away by `as_ref`; otherwise the caller's promise is the same as ours.
    unsafe { pointer.as_ref() }.ok_or_else(|| null(argument))
}

/// Refuses a NULL pointer for an output.
pub(crate) fn check<T>(pointer: *mut T, argument: &str) -> Result<(), Fault> {
    if pointer.is_null() {
        Err(null(argument))
    } else {
        Ok(())
    }
}

/// Writes an output.
///
/// # Safety
///
/// A pointer that is not NULL points at memory that may be written and holds a `T`.
pub(crate) unsafe fn put<T>(pointer: *mut T, value: T, argument: &str) -> Result<(), Fault> {
    check(pointer, argument)?;
    // SAFETY: not NULL, and the caller promises room for a `T`; an address that is not aligned is no fault.
    unsafe { pointer.write_unaligned(value) };
    Ok(())
}

/// Hands an object out; [`take`] gets it back.
///
/// # Safety
///
/// As [`put`].
pub(crate) unsafe fn give<T>(pointer: *mut *mut T, value: T, argument: &str) -> Result<(), Fault> {
    check(pointer, argument)?;
    // SAFETY: the caller's promise is the same as ours.
    unsafe { put(pointer, Box::into_raw(Box::new(value)), argument) }
}

/// Takes an object back and drops it; NULL is nothing to drop.
///
/// # Safety
///
/// A pointer that is not NULL came from [`give`] and was not taken back before.
pub(crate) unsafe fn take<T>(pointer: *mut T) {
    if !pointer.is_null() {
        // SAFETY: the pointer came from `Box::into_raw` and is taken back once.
        drop(unsafe { Box::from_raw(pointer) });
    }
}

pub(crate) fn null(argument: &str) -> Fault {
    Fault::argument(Status::NullPointer, argument, "is NULL")
}
