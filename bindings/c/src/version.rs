//! Which library this is.

use crate::guard::guard;
use crate::text::put_utf8;
use std::ffi::c_char;

/// The number of the binary interface that this header describes.
pub const EDGENAIL_ABI: i32 = 1;

/// The number of the binary interface of the library that was loaded.
///
/// A program compares it with `EDGENAIL_ABI` before any other call: unlike numbers must not be used together.
#[unsafe(no_mangle)]
pub extern "C" fn edgenail_abi() -> i32 {
    EDGENAIL_ABI
}

/// The version of the library that was loaded, such as `0.1.0`.
///
/// Returns `EDGENAIL_STATUS_OK`, or `EDGENAIL_STATUS_BUFFER_TOO_SMALL` with the size needed in `out_needed`.
///
/// # Safety
///
/// `buffer` has room for `capacity` bytes; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_version(buffer: *mut c_char, capacity: i64, out_needed: *mut i64) -> i32 {
    // SAFETY: the caller's promise is the same as ours.
    guard(|| unsafe { put_utf8(env!("CARGO_PKG_VERSION"), buffer, capacity, out_needed) })
}
