//! The error list of the calling thread.

use crate::guard::{Entry, Fault, errors, read_only};
use crate::status::edgenail_status as Status;
use crate::text::{put_utf8, put_utf16, size};
use std::ffi::c_char;

/// The texts of an entry of the error list.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum edgenail_error_field {
    /// The kind of fault by name, such as `out_of_range`. Names do not change.
    Code = 0,
    /// JSON pointer to the field of the input, such as `/walls/0/length`; the argument's name for misuse.
    Path = 1,
    /// The name of the wall, empty when the fault belongs to none.
    Wall = 2,
    /// What was found, as it was written.
    Found = 3,
    /// What is allowed there.
    Allowed = 4,
    /// A sentence for a person.
    Message = 5,
}

/// How many faults the thread's last call found; 0 when it did what it says.
///
/// Every call clears the list of its own thread when it starts, except the `edgenail_error_…` functions and
/// `edgenail_abi`.
#[unsafe(no_mangle)]
pub extern "C" fn edgenail_error_count() -> i64 {
    errors(|errors| i64::try_from(errors.entries.len()).unwrap_or(i64::MAX)).unwrap_or(0)
}

/// A text of an entry of the error list, in UTF-8; `field` is one of `edgenail_error_field`.
///
/// Returns `EDGENAIL_STATUS_OK`, `EDGENAIL_STATUS_NOT_FOUND`, `EDGENAIL_STATUS_BAD_CHOICE`, or
/// `EDGENAIL_STATUS_BUFFER_TOO_SMALL` with the size needed in `out_needed`. The list stays as it is.
///
/// # Safety
///
/// `buffer` has room for `capacity` bytes; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_error_text(
    index: i64,
    field: i32,
    buffer: *mut c_char,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    read_only(|| {
        let text = text(index, field)?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf8(&text, buffer, capacity, out_needed) }
    })
}

/// As `edgenail_error_text`, in UTF-16; capacity and size count code units.
///
/// # Safety
///
/// `buffer` has room for `capacity` code units; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_error_text_utf16(
    index: i64,
    field: i32,
    buffer: *mut u16,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    read_only(|| {
        let text = text(index, field)?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf16(&text, buffer, capacity, out_needed) }
    })
}

/// The error of the thread's last call as one JSON document, the same as in every other language; empty when
/// the call did what it says, and for misuse of a function.
///
/// Returns `EDGENAIL_STATUS_OK`, or `EDGENAIL_STATUS_BUFFER_TOO_SMALL` with the size needed in `out_needed`.
/// The list stays as it is.
///
/// # Safety
///
/// `buffer` has room for `capacity` bytes; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_error_json(
    buffer: *mut c_char,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    read_only(|| {
        let json = errors(|errors| errors.json.clone()).unwrap_or_default();
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf8(&json, buffer, capacity, out_needed) }
    })
}

type Reader = fn(&Entry) -> &String;

const FIELDS: [(edgenail_error_field, Reader); 6] = [
    (edgenail_error_field::Code, |entry| &entry.code),
    (edgenail_error_field::Path, |entry| &entry.path),
    (edgenail_error_field::Wall, |entry| &entry.wall),
    (edgenail_error_field::Found, |entry| &entry.found),
    (edgenail_error_field::Allowed, |entry| &entry.allowed),
    (edgenail_error_field::Message, |entry| &entry.message),
];

fn text(index: i64, field: i32) -> Result<String, Fault> {
    let index = size(index, "index")?;
    let choice = FIELDS.iter().find(|(known, _)| *known as i32 == field);
    let (_, read) =
        choice.ok_or_else(|| Fault::argument(Status::BadChoice, "field", "is none of the known ones"))?;
    errors(|errors| errors.entries.get(index).map(|entry| read(entry).clone()))
        .flatten()
        .ok_or_else(|| Fault::argument(Status::NotFound, "index", "there is no such entry"))
}
