//! Houses of a street cut together.

use crate::guard::{Fault, guard};
use crate::handle::{borrow, check, give, null, take};
use crate::plan::edgenail_plan;
use crate::status::edgenail_status as Status;
use crate::text::{put_utf8, put_utf16, size};
use edgenail::street::Street;
use std::ffi::c_char;

/// Planned houses of one street, their sheets cut together in building order. The caller owns it, and gives it back with
/// `edgenail_street_free`. It never changes once made, and needs its plans no longer.
#[derive(Debug)]
pub struct edgenail_street {
    json: String,
    deliveries: String,
}

const _: () = {
    const fn shared_between_threads<T: Send + Sync>() {}
    shared_between_threads::<edgenail_street>();
};

/// Cuts the sheets of planned houses together, in the order in which they are built: what is left of a sheet at one house
/// serves the next. `effort_most` is what may be spent, in parts of sheets looked at; 1,000,000 is a second or less.
///
/// On success the caller owns `*out_street`. Returns `EDGENAIL_STATUS_OK`; `EDGENAIL_STATUS_INPUT` where a house has other
/// sheets, off-cuts or rules of cutting than the first, at paths that begin with its place; or a status of misuse.
/// `*out_street` is then left as it was.
///
/// # Safety
///
/// `plans` points at `count` pointers, each to a live plan; `out_street` points at a pointer.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_street_new(
    plans: *const *const edgenail_plan,
    count: i64,
    effort_most: i64,
    out_street: *mut *mut edgenail_street,
) -> i32 {
    guard(|| {
        check(out_street, "out_street")?;
        let count = size(count, "count")?;
        if plans.is_null() {
            return Err(null("plans"));
        }
        let effort = u64::try_from(effort_most)
            .map_err(|_| Fault::argument(Status::BadLength, "effort_most", "is below zero"))?;
        let houses = (0..count).map(|place| {
            // SAFETY: the caller promises `count` pointers, aligned or not, each to a live plan.
            unsafe { Ok(borrow(plans.add(place).read_unaligned(), "plans")?.plan()) }
        });
        let houses = houses.collect::<Result<Vec<_>, Fault>>()?;
        let street = Street::of(&houses, effort)?;
        let made = edgenail_street {
            json: street.json(),
            deliveries: street.table().csv(),
        };
        // SAFETY: not NULL, and the caller's promise is the same as ours.
        unsafe { give(out_street, made, "out_street") }
    })
}

/// Gives a street back. NULL is nothing to give back; giving it back twice is undefined.
///
/// # Safety
///
/// `street` is NULL or came from this library, was not given back before, and no thread uses it.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_street_free(street: *mut edgenail_street) {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        unsafe { take(street) };
        Ok(())
    });
}

/// The street as a JSON document in UTF-8: deliveries, what is carried from house to house, prices alone and together, the
/// sheets; the same bytes in every language.
///
/// Returns `EDGENAIL_STATUS_OK`, or `EDGENAIL_STATUS_BUFFER_TOO_SMALL` with the size needed in `out_needed`. No final zero
/// is written.
///
/// # Safety
///
/// `street` is live; `buffer` has room for `capacity` bytes; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_street_json(
    street: *const edgenail_street,
    buffer: *mut c_char,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf8(&borrow(street, "street")?.json, buffer, capacity, out_needed) }
    })
}

/// As `edgenail_street_json`, in UTF-16; capacity and size count code units.
///
/// # Safety
///
/// `street` is live; `buffer` has room for `capacity` code units; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_street_json_utf16(
    street: *const edgenail_street,
    buffer: *mut u16,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf16(&borrow(street, "street")?.json, buffer, capacity, out_needed) }
    })
}

/// What is delivered to each house as CSV in UTF-8 (RFC 4180): sheets if it is cut alone, and sheets delivered to it.
///
/// Returns `EDGENAIL_STATUS_OK`, or `EDGENAIL_STATUS_BUFFER_TOO_SMALL` with the size needed in `out_needed`. No final zero
/// is written.
///
/// # Safety
///
/// `street` is live; `buffer` has room for `capacity` bytes; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_street_csv(
    street: *const edgenail_street,
    buffer: *mut c_char,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        unsafe {
            put_utf8(
                &borrow(street, "street")?.deliveries,
                buffer,
                capacity,
                out_needed,
            )
        }
    })
}
