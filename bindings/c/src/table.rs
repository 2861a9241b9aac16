//! Any table of a plan, by the names of the table and of its columns.

use crate::guard::{Fault, guard};
use crate::handle::{borrow, check, put};
use crate::plan::edgenail_plan;
use crate::status::edgenail_status as Status;
use crate::text::{put_all, put_utf8, put_utf16, size, utf8};
use edgenail::table::{Column, Data, Table};
use std::ffi::c_char;

/// What the values of a column are.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum edgenail_kind {
    /// Whole numbers: lengths in 1/40640 in., counts, indices, money in 1/10,000.
    Int64 = 1,
    /// Doubles.
    Double = 2,
    /// Text.
    Text = 3,
}

/// How many tables a plan has.
///
/// # Safety
///
/// `plan` is a live plan; `out_count` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_plan_table_count(plan: *const edgenail_plan, out_count: *mut i64) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        unsafe {
            put(
                out_count,
                count(borrow(plan, "plan")?.definitions().len())?,
                "out_count",
            )
        }
    })
}

/// The name of a table.
///
/// Returns `EDGENAIL_STATUS_OK`, `EDGENAIL_STATUS_NOT_FOUND`, or `EDGENAIL_STATUS_BUFFER_TOO_SMALL` with the
/// size needed in `out_needed`.
///
/// # Safety
///
/// `plan` is a live plan; `buffer` has room for `capacity` bytes; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_plan_table_name(
    plan: *const edgenail_plan,
    index: i64,
    buffer: *mut c_char,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        let plan = unsafe { borrow(plan, "plan") }?;
        let missing = || Fault::argument(Status::NotFound, "index", "there is no such table");
        let table = plan
            .definitions()
            .nth(size(index, "index")?)
            .ok_or_else(missing)?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf8(table.name, buffer, capacity, out_needed) }
    })
}

/// How many rows and columns a table has.
///
/// Returns `EDGENAIL_STATUS_OK` or `EDGENAIL_STATUS_NOT_FOUND`.
///
/// # Safety
///
/// `plan` is a live plan; `table` points at `table_length` bytes; the outputs point at an `int64_t` each.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_plan_table_size(
    plan: *const edgenail_plan,
    table: *const c_char,
    table_length: i64,
    out_rows: *mut i64,
    out_columns: *mut i64,
) -> i32 {
    guard(|| {
        check(out_rows, "out_rows")?;
        check(out_columns, "out_columns")?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe {
            let table = find_table(plan, table, table_length)?;
            put(out_rows, count(table.len())?, "out_rows")?;
            put(out_columns, count(table.columns.len())?, "out_columns")
        }
    })
}

/// The name of a column, and the kind of its values as one of `edgenail_kind`.
///
/// Returns `EDGENAIL_STATUS_OK`, `EDGENAIL_STATUS_NOT_FOUND`, or `EDGENAIL_STATUS_BUFFER_TOO_SMALL` with the
/// size needed in `out_needed`.
///
/// # Safety
///
/// `plan` is a live plan; `table` points at `table_length` bytes; `buffer` has room for `capacity` bytes;
/// `out_kind` points at an `int32_t`, `out_needed` at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_plan_column(
    plan: *const edgenail_plan,
    table: *const c_char,
    table_length: i64,
    index: i64,
    out_kind: *mut i32,
    buffer: *mut c_char,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        check(out_kind, "out_kind")?;
        // SAFETY: the caller's promise is the same as ours.
        let table = unsafe { find_table(plan, table, table_length) }?;
        let missing = || Fault::argument(Status::NotFound, "index", "there is no such column");
        let column = table.columns.get(size(index, "index")?).ok_or_else(missing)?;
        let kind = match column.data {
            Data::Int(_) => edgenail_kind::Int64,
            Data::Float(_) => edgenail_kind::Double,
            Data::Text(_) => edgenail_kind::Text,
        };
        // SAFETY: the caller's promise is the same as ours.
        unsafe {
            put_utf8(column.head.name, buffer, capacity, out_needed)?;
            put(out_kind, kind as i32, "out_kind")
        }
    })
}

/// The unit of a column's numbers, such as `1/40640 in.`: the value stands for so many of it. Empty for text, counts and
/// indices. A macro that shows inches divides by the number after `1/`.
///
/// Returns `EDGENAIL_STATUS_OK`, `EDGENAIL_STATUS_NOT_FOUND`, or `EDGENAIL_STATUS_BUFFER_TOO_SMALL` with the size needed in
/// `out_needed`.
///
/// # Safety
///
/// `plan` is a live plan; `table` and `column` point at as many bytes as their lengths say; `buffer` has room for
/// `capacity` bytes; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_plan_column_unit(
    plan: *const edgenail_plan,
    table: *const c_char,
    table_length: i64,
    column: *const c_char,
    column_length: i64,
    buffer: *mut c_char,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        let column = unsafe { find_column(plan, table, table_length, column, column_length) }?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf8(column.head.unit.unwrap_or_default(), buffer, capacity, out_needed) }
    })
}

/// The values of a column of whole numbers.
///
/// Returns `EDGENAIL_STATUS_OK`, `EDGENAIL_STATUS_NOT_FOUND`, `EDGENAIL_STATUS_WRONG_KIND`, or
/// `EDGENAIL_STATUS_BUFFER_TOO_SMALL` with the number of rows in `out_needed`.
///
/// # Safety
///
/// `plan` is a live plan; `table` and `column` point at as many bytes as their lengths say; `buffer` has room
/// for `capacity` values; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_plan_column_int64(
    plan: *const edgenail_plan,
    table: *const c_char,
    table_length: i64,
    column: *const c_char,
    column_length: i64,
    buffer: *mut i64,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        let column = unsafe { find_column(plan, table, table_length, column, column_length) }?;
        match &column.data {
            // SAFETY: the caller's promise is the same as ours.
            Data::Int(values) => unsafe { put_all(values, buffer, capacity, out_needed) },
            _ => Err(wrong_kind("whole numbers")),
        }
    })
}

/// The values of a column of numbers as doubles. Whole numbers up to 2^53 are exact; a larger one is refused
/// with `EDGENAIL_STATUS_WRONG_KIND`.
///
/// Returns as `edgenail_plan_column_int64` does.
///
/// # Safety
///
/// As `edgenail_plan_column_int64`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_plan_column_double(
    plan: *const edgenail_plan,
    table: *const c_char,
    table_length: i64,
    column: *const c_char,
    column_length: i64,
    buffer: *mut f64,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        let column = unsafe { find_column(plan, table, table_length, column, column_length) }?;
        match &column.data {
            // SAFETY: the caller's promise is the same as ours.
            Data::Float(values) => unsafe { put_all(values, buffer, capacity, out_needed) },
            Data::Int(values) => {
                let values: Vec<f64> = values
                    .iter()
                    .map(|value| double(*value))
                    .collect::<Result<_, _>>()?;
                // SAFETY: the caller's promise is the same as ours.
                unsafe { put_all(&values, buffer, capacity, out_needed) }
            }
            Data::Text(_) => Err(wrong_kind("numbers")),
        }
    })
}

/// The value of a column at a row as text: text as it is, numbers in decimal.
///
/// Returns `EDGENAIL_STATUS_OK`, `EDGENAIL_STATUS_NOT_FOUND`, or `EDGENAIL_STATUS_BUFFER_TOO_SMALL` with the
/// size needed in `out_needed`.
///
/// # Safety
///
/// `plan` is a live plan; `table` and `column` point at as many bytes as their lengths say; `buffer` has room
/// for `capacity` bytes; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_plan_text(
    plan: *const edgenail_plan,
    table: *const c_char,
    table_length: i64,
    column: *const c_char,
    column_length: i64,
    row: i64,
    buffer: *mut c_char,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        let column = unsafe { find_column(plan, table, table_length, column, column_length) }?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf8(&value(column, row)?, buffer, capacity, out_needed) }
    })
}

/// As `edgenail_plan_text`, giving UTF-16; capacity and size count code units. Names are in UTF-8.
///
/// # Safety
///
/// As `edgenail_plan_text`, with room for `capacity` code units.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_plan_text_utf16(
    plan: *const edgenail_plan,
    table: *const c_char,
    table_length: i64,
    column: *const c_char,
    column_length: i64,
    row: i64,
    buffer: *mut u16,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        let column = unsafe { find_column(plan, table, table_length, column, column_length) }?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf16(&value(column, row)?, buffer, capacity, out_needed) }
    })
}

/// A whole table as comma-separated values (RFC 4180) in UTF-8.
///
/// Returns `EDGENAIL_STATUS_OK`, `EDGENAIL_STATUS_NOT_FOUND`, or `EDGENAIL_STATUS_BUFFER_TOO_SMALL` with the
/// size needed in `out_needed`.
///
/// # Safety
///
/// `plan` is a live plan; `table` points at `table_length` bytes; `buffer` has room for `capacity` bytes;
/// `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_plan_csv(
    plan: *const edgenail_plan,
    table: *const c_char,
    table_length: i64,
    buffer: *mut c_char,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        unsafe {
            put_utf8(
                &find_table(plan, table, table_length)?.csv(),
                buffer,
                capacity,
                out_needed,
            )
        }
    })
}

unsafe fn find_table<'a>(
    plan: *const edgenail_plan,
    table: *const c_char,
    table_length: i64,
) -> Result<&'a Table, Fault> {
    // SAFETY: the caller's promise is the same as ours.
    let (plan, name) = unsafe { (borrow(plan, "plan")?, utf8(table, table_length, "table")?) };
    let missing = || Fault::argument(Status::NotFound, "table", "there is no table of this name");
    plan.table(name).ok_or_else(missing)
}

unsafe fn find_column<'a>(
    plan: *const edgenail_plan,
    table: *const c_char,
    table_length: i64,
    column: *const c_char,
    column_length: i64,
) -> Result<&'a Column, Fault> {
    // SAFETY: the caller's promise is the same as ours.
    let table = unsafe { find_table(plan, table, table_length) }?;
    // SAFETY: the caller's promise is the same as ours.
    let name = unsafe { utf8(column, column_length, "column") }?;
    let missing = || Fault::argument(Status::NotFound, "column", "there is no column of this name");
    table.column(name).ok_or_else(missing)
}

fn value(column: &Column, row: i64) -> Result<String, Fault> {
    let row = size(row, "row")?;
    if row >= column.data.len() {
        return Err(Fault::argument(Status::NotFound, "row", "there is no such row"));
    }
    Ok(column.data.shown(row))
}

#[expect(clippy::cast_precision_loss, reason = "values beyond 2^53 are refused")]
fn double(value: i64) -> Result<f64, Fault> {
    if value.unsigned_abs() > 1 << 53 {
        Err(wrong_kind("doubles without loss"))
    } else {
        Ok(value as f64)
    }
}

fn count(count: usize) -> Result<i64, Fault> {
    i64::try_from(count).map_err(|_| Fault::argument(Status::Internal, "edgenail", "a count is too large"))
}

fn wrong_kind(wanted: &str) -> Fault {
    Fault::argument(Status::WrongKind, "column", &format!("does not hold {wanted}"))
}
