//! A house planned again after changes.

use crate::guard::{Fault, guard};
use crate::text::{put_utf8, put_utf16, utf8, utf16};
use std::ffi::c_char;

/// Plans the house of a JSON document before and after changes, and gives what is different as a JSON document in UTF-8,
/// with the same bytes in every language.
///
/// `changes` is a JSON Patch (RFC 6902): a list of objects with `op` (`add`, `remove`, `replace` or `test`), `path` (a JSON
/// pointer into the house) and `value`. A first call for the size plans too; a buffer that is large enough saves it.
///
/// Returns `EDGENAIL_STATUS_OK`; `EDGENAIL_STATUS_INPUT` with the faults in the error list, those of changes with paths such
/// as `/0/path`, those of the house before or after with paths into it; `EDGENAIL_STATUS_NO_LAYOUT`; or
/// `EDGENAIL_STATUS_BUFFER_TOO_SMALL` with the size needed in `out_needed`. No final zero is written.
///
/// # Safety
///
/// `house` and `changes` point at as many bytes as their lengths say; `buffer` has room for `capacity` bytes; `out_needed`
/// points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_what_if_json(
    house: *const c_char,
    house_length: i64,
    changes: *const c_char,
    changes_length: i64,
    buffer: *mut c_char,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        let house = unsafe { utf8(house, house_length, "house") }?;
        // SAFETY: the caller's promise is the same as ours.
        let changes = unsafe { utf8(changes, changes_length, "changes") }?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf8(&different(house, changes)?, buffer, capacity, out_needed) }
    })
}

/// As `edgenail_what_if_json`, in UTF-16; lengths, capacity and size count code units.
///
/// # Safety
///
/// `house` and `changes` point at as many code units as their lengths say; `buffer` has room for `capacity` code units;
/// `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_what_if_json_utf16(
    house: *const u16,
    house_length: i64,
    changes: *const u16,
    changes_length: i64,
    buffer: *mut u16,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        let house = unsafe { utf16(house, house_length, "house") }?;
        // SAFETY: the caller's promise is the same as ours.
        let changes = unsafe { utf16(changes, changes_length, "changes") }?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf16(&different(&house, &changes)?, buffer, capacity, out_needed) }
    })
}

fn different(house: &str, changes: &str) -> Result<String, Fault> {
    Ok(edgenail::changes::what_if_json(house, changes)?)
}
