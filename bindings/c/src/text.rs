//! Text and arrays that cross the border: slices from pointers, copies into the caller's buffers.

use crate::guard::Fault;
use crate::handle;
use crate::status::edgenail_status as Status;
use std::ffi::c_char;

/// UTF-8 text from C.
///
/// # Safety
///
/// A pointer that is not NULL points at `length` bytes that stay unchanged during the call.
pub(crate) unsafe fn utf8<'a>(text: *const c_char, length: i64, argument: &str) -> Result<&'a str, Fault> {
    // SAFETY: the caller's promise is the same as ours.
    let bytes = unsafe { slice(text.cast::<u8>(), length, argument) }?;
    std::str::from_utf8(bytes).map_err(|_| Fault::argument(Status::NotUtf8, argument, "is not UTF-8"))
}

/// UTF-16 text from C.
///
/// # Safety
///
/// A pointer that is not NULL points at `length` code units that stay unchanged during the call.
pub(crate) unsafe fn utf16(text: *const u16, length: i64, argument: &str) -> Result<String, Fault> {
    // SAFETY: the caller's promise is the same as ours.
    let units = unsafe { slice(text, length, argument) }?;
    String::from_utf16(units).map_err(|_| {
        Fault::argument(
            Status::NotUtf16,
            argument,
            "is not UTF-16: a surrogate stands alone",
        )
    })
}

/// Copies UTF-8 text out: always tells the size needed, and copies all of it or nothing.
///
/// # Safety
///
/// As [`put_all`].
pub(crate) unsafe fn put_utf8(
    text: &str,
    buffer: *mut c_char,
    capacity: i64,
    needed: *mut i64,
) -> Result<(), Fault> {
    // SAFETY: the caller's promise is the same as ours.
    unsafe { put_all(text.as_bytes(), buffer.cast::<u8>(), capacity, needed) }
}

/// Copies text out as UTF-16.
///
/// # Safety
///
/// As [`put_all`].
pub(crate) unsafe fn put_utf16(
    text: &str,
    buffer: *mut u16,
    capacity: i64,
    needed: *mut i64,
) -> Result<(), Fault> {
    let units: Vec<u16> = text.encode_utf16().collect();
    // SAFETY: the caller's promise is the same as ours.
    unsafe { put_all(&units, buffer, capacity, needed) }
}

/// Copies values out: always tells how many there are, and copies all of them or nothing.
///
/// # Safety
///
/// `needed`, when not NULL, points at an `int64_t`; `buffer` points at room for `capacity` values, and may be
/// NULL when `capacity` is 0.
pub(crate) unsafe fn put_all<T: Copy>(
    values: &[T],
    buffer: *mut T,
    capacity: i64,
    needed: *mut i64,
) -> Result<(), Fault> {
    handle::check(needed, "out_needed")?;
    let capacity = size(capacity, "capacity")?;
    if capacity > 0 {
        handle::check(buffer, "buffer")?;
    }
    let count = i64::try_from(values.len()).map_err(|_| too_large("buffer"))?;
    // SAFETY: not NULL, and the caller promises room for a count.
    unsafe { handle::put(needed, count, "out_needed") }?;
    if values.len() > capacity {
        return Err(Fault::argument(
            Status::BufferTooSmall,
            "capacity",
            "is less than what is needed",
        ));
    }
    if !values.is_empty() {
        let bytes = size_of_val(values);
        let source = values.as_ptr().cast::<u8>();
        // SAFETY: `buffer` is not NULL and holds at least `values.len()` values by the caller's promise; the
        // copy is one of bytes, so that alignment does not matter; our memory is not the caller's.
        unsafe { source.copy_to_nonoverlapping(buffer.cast::<u8>(), bytes) };
    }
    Ok(())
}

/// A count from C as a size.
pub(crate) fn size(count: i64, argument: &str) -> Result<usize, Fault> {
    if count < 0 {
        return Err(Fault::argument(Status::BadLength, argument, "is below zero"));
    }
    usize::try_from(count).map_err(|_| too_large(argument))
}

fn too_large(argument: &str) -> Fault {
    Fault::argument(Status::BadLength, argument, "is larger than memory")
}

/// # Safety
///
/// A pointer that is not NULL points at `length` values that stay unchanged during the call.
unsafe fn slice<'a, T>(pointer: *const T, length: i64, argument: &str) -> Result<&'a [T], Fault> {
    let count = size(length, argument)?;
    if pointer.is_null() {
        return Err(handle::null(argument));
    }
    if !pointer.is_aligned() {
        return Err(Fault::argument(
            Status::BadLength,
            argument,
            "is not aligned for its type",
        ));
    }
    if count
        .checked_mul(size_of::<T>())
        .is_none_or(|bytes| isize::try_from(bytes).is_err())
    {
        return Err(too_large(argument));
    }
    // SAFETY: not NULL, aligned, within the size of an object; the caller promises that the memory is there.
    Ok(unsafe { std::slice::from_raw_parts(pointer, count) })
}
