//! Rows of any table into the caller's array.

use crate::guard::{Fault, guard};
use crate::handle::{borrow, check, put};
use crate::plan::edgenail_plan;
use crate::status::edgenail_status as Status;
use crate::text::size;
use edgenail::table::{Data, Table};

/// A struct of 8-byte numbers, one for each of its columns, in their order.
pub(crate) trait Row: Sized {
    const TABLE: &str;
    const COLUMNS: &[&str];
}

/// Which rows the caller asks for, and how large its own rows are.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Page {
    pub(crate) first: i64,
    pub(crate) capacity: i64,
    pub(crate) row_size: i64,
}

/// Bytes of a number in a row.
const SLOT: usize = 8;

/// Fills the caller's rows. A caller with the shorter rows of an older header gets the front of each row.
///
/// # Safety
///
/// A plan that is not NULL is live; `rows` has room for as many rows as the page says.
pub(crate) unsafe fn fill<R: Row>(
    plan: *const edgenail_plan,
    rows: *mut R,
    page: Page,
    out_count: *mut i64,
) -> i32 {
    const { assert!(size_of::<R>() == SLOT * R::COLUMNS.len()) };
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        let plan = unsafe { borrow(plan, "plan") }?;
        check(rows, "rows")?;
        check(out_count, "out_count")?;
        let (first, capacity) = (size(page.first, "first")?, size(page.capacity, "capacity")?);
        let slots = slots::<R>(page.row_size)?;
        let missing = || Fault::argument(Status::Internal, "edgenail", "a table is missing");
        let table = plan.table(R::TABLE).ok_or_else(missing)?;
        let left = table
            .len()
            .checked_sub(first)
            .ok_or_else(|| Fault::argument(Status::NotFound, "first", "lies beyond the last row"))?;
        let count = left.min(capacity);
        let columns = columns(table, R::COLUMNS.get(..slots).unwrap_or_default())?;
        // SAFETY: `count` is at most `capacity`, so the rows lie in those that the caller promises.
        unsafe { write(&columns, first, count, rows.cast()) };
        let written = i64::try_from(count).map_err(|_| missing())?;
        // SAFETY: not NULL, and the caller promises room for a count.
        unsafe { put(out_count, written, "out_count") }
    })
}

/// Fills one row of the caller's from a table that has no other.
///
/// # Safety
///
/// `row` has room for the bytes of the slots.
pub(crate) unsafe fn fill_one<R: Row>(table: &Table, row: *mut R, slots: usize) -> Result<(), Fault> {
    const { assert!(size_of::<R>() == SLOT * R::COLUMNS.len()) };
    check(row, "row")?;
    let columns = columns(table, R::COLUMNS.get(..slots).unwrap_or_default())?;
    // SAFETY: the caller's promise is the same as ours.
    unsafe { write(&columns, 0, 1, row.cast()) };
    Ok(())
}

/// How many numbers of a row the caller's rows hold.
pub(crate) fn slots<R: Row>(row_size: i64) -> Result<usize, Fault> {
    let row_size = size(row_size, "row_size")?;
    if row_size == 0 || row_size > size_of::<R>() || row_size % SLOT != 0 {
        return Err(Fault::argument(
            Status::RowSize,
            "row_size",
            "is not the size of a row of this library",
        ));
    }
    Ok(row_size / SLOT)
}

/// Writes the numbers of rows one after the other.
///
/// # Safety
///
/// `target` has room for `count` rows of as many numbers as there are columns.
unsafe fn write(columns: &[Numbers<'_>], first: usize, count: usize, target: *mut [u8; SLOT]) {
    for row in 0..count {
        for (slot, column) in columns.iter().enumerate() {
            let bytes = column.bytes(first + row);
            // SAFETY: `row` is below `count`, so the place lies in the rows that the caller promises; an array of
            // bytes is aligned everywhere.
            unsafe { target.add(row * columns.len() + slot).write(bytes) };
        }
    }
}

/// A column of numbers.
enum Numbers<'a> {
    Int(&'a [i64]),
    Double(&'a [f64]),
}

impl Numbers<'_> {
    fn bytes(&self, row: usize) -> [u8; SLOT] {
        match self {
            Self::Int(values) => values.get(row).copied().unwrap_or_default().to_ne_bytes(),
            Self::Double(values) => values.get(row).copied().unwrap_or_default().to_ne_bytes(),
        }
    }
}

fn columns<'a>(table: &'a Table, names: &[&str]) -> Result<Vec<Numbers<'a>>, Fault> {
    let find = |name: &&str| match table.column(name).map(|column| &column.data) {
        Some(Data::Int(values)) => Ok(Numbers::Int(values)),
        Some(Data::Float(values)) => Ok(Numbers::Double(values)),
        _ => Err(Fault::argument(
            Status::Internal,
            "edgenail",
            "a column is missing",
        )),
    };
    names.iter().map(find).collect()
}
