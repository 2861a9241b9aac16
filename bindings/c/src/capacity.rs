//! Questions of capacity as JSON, and single numbers of their answers.

use crate::guard::{Fault, guard};
use crate::handle::{check, put};
use crate::status::edgenail_status as Status;
use crate::text::{put_utf8, put_utf16, utf8, utf16};
use edgenail::answer::{capacity_json, capacity_numbers};
use std::ffi::c_char;

/// Answers a question of capacity that a JSON document in UTF-8 asks, such as what a wall line carries. The answer is a
/// JSON document with every number, its derivation and a caution, the same bytes in every language. The fields of a question are listed in `CAPACITY_FIELDS.md`.
///
/// Returns `EDGENAIL_STATUS_OK`, `EDGENAIL_STATUS_INPUT` with the faults in the error list — what a table does not
/// list, and what was recalled and is not accepted, are faults too — `EDGENAIL_STATUS_INTERNAL`, or
/// `EDGENAIL_STATUS_BUFFER_TOO_SMALL` with the size needed in `out_needed`. No final zero is written.
///
/// # Safety
///
/// `text` points at `length` bytes; `buffer` has room for `capacity` bytes; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_capacity_json(
    text: *const c_char,
    length: i64,
    buffer: *mut c_char,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        check(out_needed, "out_needed")?;
        // SAFETY: the caller's promise is the same as ours.
        let answer = capacity_json(unsafe { utf8(text, length, "text") }?)?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf8(&answer, buffer, capacity, out_needed) }
    })
}

/// As `edgenail_capacity_json`, in UTF-16; lengths, capacity and size count code units.
///
/// # Safety
///
/// `text` points at `length` code units; `buffer` has room for `capacity` code units; `out_needed` points at an
/// `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_capacity_json_utf16(
    text: *const u16,
    length: i64,
    buffer: *mut u16,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        check(out_needed, "out_needed")?;
        // SAFETY: the caller's promise is the same as ours.
        let answer = capacity_json(&unsafe { utf16(text, length, "text") }?)?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf16(&answer, buffer, capacity, out_needed) }
    })
}

/// One number of the answer to a question, for the cell of a spreadsheet; `pointer` is a JSON pointer into the answer,
/// such as `/nominal_plf` or `/segments/0/tension_lb`.
///
/// Returns `EDGENAIL_STATUS_OK`, `EDGENAIL_STATUS_NOT_FOUND` where the answer has no number there, or what
/// `edgenail_capacity_json` returns.
///
/// # Safety
///
/// `text` points at `length` bytes, `pointer` at `pointer_length`; `out_number` points at a `double`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_capacity_number(
    text: *const c_char,
    length: i64,
    pointer: *const c_char,
    pointer_length: i64,
    out_number: *mut f64,
) -> i32 {
    guard(|| {
        check(out_number, "out_number")?;
        // SAFETY: the caller's promise is the same as ours.
        let (text, pointer) = unsafe {
            (
                utf8(text, length, "text")?,
                utf8(pointer, pointer_length, "pointer")?,
            )
        };
        let number = number(text, pointer)?;
        // SAFETY: not NULL, and the caller's promise is the same as ours.
        unsafe { put(out_number, number, "out_number") }
    })
}

/// As `edgenail_capacity_number`, from UTF-16; lengths count code units.
///
/// # Safety
///
/// `text` points at `length` code units, `pointer` at `pointer_length`; `out_number` points at a `double`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_capacity_number_utf16(
    text: *const u16,
    length: i64,
    pointer: *const u16,
    pointer_length: i64,
    out_number: *mut f64,
) -> i32 {
    guard(|| {
        check(out_number, "out_number")?;
        // SAFETY: the caller's promise is the same as ours.
        let (text, pointer) = unsafe {
            (
                utf16(text, length, "text")?,
                utf16(pointer, pointer_length, "pointer")?,
            )
        };
        let number = number(&text, &pointer)?;
        // SAFETY: not NULL, and the caller's promise is the same as ours.
        unsafe { put(out_number, number, "out_number") }
    })
}

fn number(text: &str, pointer: &str) -> Result<f64, Fault> {
    let [number] = capacity_numbers(text, [pointer])?;
    number.ok_or_else(|| Fault::argument(Status::NotFound, "pointer", "points at no number of the answer"))
}
