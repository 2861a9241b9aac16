//! How numbers of capacity came about, to be read by a person.

use crate::choice::FORM;
use crate::guard::{Fault, guard};
use crate::handle::{borrow, check};
use crate::plan::edgenail_plan;
use crate::status::edgenail_status as Status;
use crate::text::{put_utf8, put_utf16, size, utf8, utf16};
use edgenail::answer::capacity;
use edgenail::capacity::Derivation;
use std::ffi::c_char;

/// How a derivation is written.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum edgenail_form {
    /// Plain text.
    Text = 1,
    /// Markdown.
    Markdown = 2,
    /// A fragment of HTML.
    Html = 3,
}

/// The writers, in the order of the enum.
const WRITERS: [fn(&Derivation) -> String; 3] = [Derivation::text, Derivation::markdown, Derivation::html];

/// The steps that lead to the answer of a question of capacity, each with symbol, formula, inputs, value and source, in
/// UTF-8; `form` is one of `edgenail_form`. The question is as `edgenail_capacity_json` takes it, and the answer's numbers
/// stand there.
///
/// Returns what `edgenail_capacity_json` returns, or `EDGENAIL_STATUS_BAD_CHOICE`. No final zero is written.
///
/// # Safety
///
/// `text` points at `length` bytes; `buffer` has room for `capacity` bytes; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_capacity_derivation(
    text: *const c_char,
    length: i64,
    form: i32,
    buffer: *mut c_char,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        check(out_needed, "out_needed")?;
        // SAFETY: the caller's promise is the same as ours.
        let steps = of_question(unsafe { utf8(text, length, "text") }?, form)?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf8(&steps, buffer, capacity, out_needed) }
    })
}

/// As `edgenail_capacity_derivation`, in UTF-16; lengths, capacity and size count code units.
///
/// # Safety
///
/// `text` points at `length` code units; `buffer` has room for `capacity` code units; `out_needed` points at an
/// `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_capacity_derivation_utf16(
    text: *const u16,
    length: i64,
    form: i32,
    buffer: *mut u16,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        check(out_needed, "out_needed")?;
        // SAFETY: the caller's promise is the same as ours.
        let steps = of_question(&unsafe { utf16(text, length, "text") }?, form)?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf16(&steps, buffer, capacity, out_needed) }
    })
}

/// The steps that lead to a row of the table `capacity` of a plan, in UTF-8; `row` counts from 0, `form` is one of
/// `edgenail_form`.
///
/// Returns `EDGENAIL_STATUS_OK`, `EDGENAIL_STATUS_NOT_FOUND` past the last row, `EDGENAIL_STATUS_BAD_CHOICE`, or
/// `EDGENAIL_STATUS_BUFFER_TOO_SMALL` with the size needed in `out_needed`. No final zero is written.
///
/// # Safety
///
/// `plan` is a live plan; `buffer` has room for `capacity` bytes; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_plan_derivation(
    plan: *const edgenail_plan,
    row: i64,
    form: i32,
    buffer: *mut c_char,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        check(out_needed, "out_needed")?;
        // SAFETY: the caller's promise is the same as ours.
        let steps = of_plan(unsafe { borrow(plan, "plan") }?, row, form)?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf8(&steps, buffer, capacity, out_needed) }
    })
}

/// As `edgenail_plan_derivation`, in UTF-16; capacity and size count code units.
///
/// # Safety
///
/// `plan` is a live plan; `buffer` has room for `capacity` code units; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_plan_derivation_utf16(
    plan: *const edgenail_plan,
    row: i64,
    form: i32,
    buffer: *mut u16,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        check(out_needed, "out_needed")?;
        // SAFETY: the caller's promise is the same as ours.
        let steps = of_plan(unsafe { borrow(plan, "plan") }?, row, form)?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf16(&steps, buffer, capacity, out_needed) }
    })
}

fn of_question(text: &str, form: i32) -> Result<String, Fault> {
    let write = FORM.pick(form, "form", WRITERS)?;
    Ok(write(&capacity(text.as_bytes())?.derivation))
}

fn of_plan(plan: &edgenail_plan, row: i64, form: i32) -> Result<String, Fault> {
    let write = FORM.pick(form, "form", WRITERS)?;
    let missing = || Fault::argument(Status::NotFound, "row", "there is no such row");
    let line = plan
        .plan()
        .capacity()
        .get(size(row, "row")?)
        .ok_or_else(missing)?;
    Ok(write(&line.derivation))
}
