//! Houses before their sheets: read, framed, then planned.

use crate::guard::{Fault, guard};
use crate::handle::{borrow, check, give, take};
use crate::plan::edgenail_plan;
use crate::text::{put_utf8, put_utf16, utf8, utf16};
use edgenail::plan::Framed;
use std::ffi::c_char;

/// A house that was read, with the frames of its walls. It never changes once made: any number of threads may read it at
/// once. The caller owns it, and gives it back with `edgenail_house_free`; plans made from it stay.
///
/// The stages before a layout is searched for, in a fraction of a plan's time: what is wrong with a house, and what its
/// walls are framed of. A layout of the caller's own stands in the house, as `given_layout` of a wall: such a wall goes
/// through all further stages, whose results are the tables of the plan, without a search.
#[derive(Debug)]
pub struct edgenail_house {
    framed: Framed,
}

const _: () = {
    const fn shared_between_threads<T: Send + Sync>() {}
    shared_between_threads::<edgenail_house>();
};

impl edgenail_house {
    fn new(text: &str) -> Result<Self, Fault> {
        Ok(Self {
            framed: Framed::read(text.as_bytes())?,
        })
    }
}

/// Reads the house that a JSON document in UTF-8 describes, and frames its walls.
///
/// On success the caller owns `*out_house`. Returns `EDGENAIL_STATUS_OK`, `EDGENAIL_STATUS_INPUT` with the faults in the
/// error list, or a status of misuse; `*out_house` is then left as it was.
///
/// # Safety
///
/// `text` points at `length` bytes; `out_house` points at a pointer.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_house_new_json(
    text: *const c_char,
    length: i64,
    out_house: *mut *mut edgenail_house,
) -> i32 {
    guard(|| {
        check(out_house, "out_house")?;
        // SAFETY: the caller's promise is the same as ours.
        let house = edgenail_house::new(unsafe { utf8(text, length, "text") }?)?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { give(out_house, house, "out_house") }
    })
}

/// As `edgenail_house_new_json`, from UTF-16; `length` counts code units.
///
/// # Safety
///
/// `text` points at `length` code units; `out_house` points at a pointer.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_house_new_json_utf16(
    text: *const u16,
    length: i64,
    out_house: *mut *mut edgenail_house,
) -> i32 {
    guard(|| {
        check(out_house, "out_house")?;
        // SAFETY: the caller's promise is the same as ours.
        let house = edgenail_house::new(&unsafe { utf16(text, length, "text") }?)?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { give(out_house, house, "out_house") }
    })
}

/// Gives a house back. NULL is nothing to give back; giving it back twice is undefined.
///
/// # Safety
///
/// `house` is NULL or came from this library, was not given back before, and no thread uses it.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_house_free(house: *mut edgenail_house) {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        unsafe { take(house) };
        Ok(())
    });
}

/// The house as it was understood, with every value that was assumed, and the members of its frames, as a JSON document in
/// UTF-8. Its field `house` can be planned again.
///
/// Returns `EDGENAIL_STATUS_OK`, or `EDGENAIL_STATUS_BUFFER_TOO_SMALL` with the size needed in `out_needed`. No final zero
/// is written.
///
/// # Safety
///
/// `house` is live; `buffer` has room for `capacity` bytes; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_house_json(
    house: *const edgenail_house,
    buffer: *mut c_char,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        let json = unsafe { borrow(house, "house") }?.framed.json();
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf8(&json, buffer, capacity, out_needed) }
    })
}

/// As `edgenail_house_json`, in UTF-16; capacity and size count code units.
///
/// # Safety
///
/// `house` is live; `buffer` has room for `capacity` code units; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_house_json_utf16(
    house: *const edgenail_house,
    buffer: *mut u16,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        let json = unsafe { borrow(house, "house") }?.framed.json();
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf16(&json, buffer, capacity, out_needed) }
    })
}

/// The members of all frames as CSV in UTF-8 (RFC 4180): the table `members` of a plan, without what its sheets need added.
///
/// Returns `EDGENAIL_STATUS_OK`, or `EDGENAIL_STATUS_BUFFER_TOO_SMALL` with the size needed in `out_needed`. No final zero
/// is written.
///
/// # Safety
///
/// `house` is live; `buffer` has room for `capacity` bytes; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_house_members_csv(
    house: *const edgenail_house,
    buffer: *mut c_char,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        let members = unsafe { borrow(house, "house") }?.framed.members();
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf8(&members.csv(), buffer, capacity, out_needed) }
    })
}

/// Goes on from a house to its plan. The house stays.
///
/// On success the caller owns `*out_plan`. Returns what `edgenail_plan_new_json` returns.
///
/// # Safety
///
/// `house` is live; `out_plan` points at a pointer.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_house_plan(
    house: *const edgenail_house,
    out_plan: *mut *mut edgenail_plan,
) -> i32 {
    guard(|| {
        check(out_plan, "out_plan")?;
        // SAFETY: the caller's promise is the same as ours.
        let plan = edgenail_plan::from(unsafe { borrow(house, "house") }?.framed.plan()?);
        // SAFETY: the caller's promise is the same as ours.
        unsafe { give(out_plan, plan, "out_plan") }
    })
}
