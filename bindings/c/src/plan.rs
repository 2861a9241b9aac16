//! Plans.

use crate::guard::{Fault, guard};
use crate::handle::{borrow, check, give, put, take};
use crate::status::edgenail_status as Status;
use crate::text::{put_utf8, put_utf16, utf8, utf16};
use edgenail::report::{Definition, definitions};
use edgenail::table::Table;
use std::ffi::c_char;
use std::sync::OnceLock;

/// The plan of a house. It never changes once made: any number of threads may read it at once. The caller
/// owns it, and gives it back with `edgenail_plan_free`.
#[derive(Debug)]
pub struct edgenail_plan {
    plan: edgenail::Plan,
    json: OnceLock<String>,
    tables: Vec<(Definition, OnceLock<Option<Table>>)>,
}

const _: () = {
    const fn shared_between_threads<T: Send + Sync>() {}
    shared_between_threads::<edgenail_plan>();
};

impl edgenail_plan {
    fn new(text: &str) -> Result<Self, Fault> {
        Ok(Self::from(edgenail::plan_json(text)?))
    }

    /// The document, made once.
    fn json(&self) -> &str {
        self.json.get_or_init(|| self.plan.json())
    }

    /// The plan itself.
    pub(crate) fn plan(&self) -> &edgenail::Plan {
        &self.plan
    }

    /// The definitions of the tables.
    pub(crate) fn definitions(&self) -> impl ExactSizeIterator<Item = &Definition> {
        self.tables.iter().map(|(definition, _)| definition)
    }

    /// The table of this name, made once: a caller asks for it column by column.
    pub(crate) fn table(&self, name: &str) -> Option<&Table> {
        let (_, table) = self
            .tables
            .iter()
            .find(|(definition, _)| definition.name == name)?;
        table.get_or_init(|| self.plan.table(name)).as_ref()
    }
}

impl From<edgenail::Plan> for edgenail_plan {
    fn from(plan: edgenail::Plan) -> Self {
        let tables = definitions()
            .into_iter()
            .map(|definition| (definition, OnceLock::new()))
            .collect();
        Self {
            plan,
            json: OnceLock::new(),
            tables,
        }
    }
}

/// Plans the house that a JSON document in UTF-8 describes.
///
/// On success the caller owns `*out_plan`. Returns `EDGENAIL_STATUS_OK`, `EDGENAIL_STATUS_INPUT` with the
/// faults in the error list, `EDGENAIL_STATUS_NO_LAYOUT`, `EDGENAIL_STATUS_INTERNAL`, or a status of misuse;
/// `*out_plan` is then left as it was.
///
/// # Safety
///
/// `text` points at `length` bytes; `out_plan` points at a pointer.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_plan_new_json(
    text: *const c_char,
    length: i64,
    out_plan: *mut *mut edgenail_plan,
) -> i32 {
    guard(|| {
        check(out_plan, "out_plan")?;
        // SAFETY: the caller's promise is the same as ours.
        let plan = edgenail_plan::new(unsafe { utf8(text, length, "text") }?)?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { give(out_plan, plan, "out_plan") }
    })
}

/// As `edgenail_plan_new_json`, from UTF-16; `length` counts code units.
///
/// # Safety
///
/// `text` points at `length` code units; `out_plan` points at a pointer.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_plan_new_json_utf16(
    text: *const u16,
    length: i64,
    out_plan: *mut *mut edgenail_plan,
) -> i32 {
    guard(|| {
        check(out_plan, "out_plan")?;
        // SAFETY: the caller's promise is the same as ours.
        let plan = edgenail_plan::new(&unsafe { utf16(text, length, "text") }?)?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { give(out_plan, plan, "out_plan") }
    })
}

/// Gives a plan back. NULL is nothing to give back; giving a plan back twice is undefined.
///
/// # Safety
///
/// `plan` is NULL or came from this library, was not given back before, and no thread uses it.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_plan_free(plan: *mut edgenail_plan) {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        unsafe { take(plan) };
        Ok(())
    });
}

/// The whole plan as a JSON document in UTF-8, with the same bytes in every language.
///
/// Returns `EDGENAIL_STATUS_OK`, or `EDGENAIL_STATUS_BUFFER_TOO_SMALL` with the size needed in `out_needed`.
/// No final zero is written.
///
/// # Safety
///
/// `plan` is a live plan; `buffer` has room for `capacity` bytes; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_plan_json(
    plan: *const edgenail_plan,
    buffer: *mut c_char,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf8(borrow(plan, "plan")?.json(), buffer, capacity, out_needed) }
    })
}

/// As `edgenail_plan_json`, in UTF-16; capacity and size count code units.
///
/// # Safety
///
/// `plan` is a live plan; `buffer` has room for `capacity` code units; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_plan_json_utf16(
    plan: *const edgenail_plan,
    buffer: *mut u16,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf16(borrow(plan, "plan")?.json(), buffer, capacity, out_needed) }
    })
}

/// The drawing of a wall with its sheathing as an SVG document in UTF-8; `wall` is the wall's name.
///
/// Returns `EDGENAIL_STATUS_OK`, `EDGENAIL_STATUS_NOT_FOUND`, or `EDGENAIL_STATUS_BUFFER_TOO_SMALL` with the
/// size needed in `out_needed`. No final zero is written.
///
/// # Safety
///
/// `plan` is a live plan; `wall` points at `wall_length` bytes; `buffer` has room for `capacity` bytes;
/// `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_plan_wall_svg(
    plan: *const edgenail_plan,
    wall: *const c_char,
    wall_length: i64,
    buffer: *mut c_char,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        let svg = unsafe { of_wall(plan, utf8(wall, wall_length, "wall")?, edgenail::Plan::wall_svg) }?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf8(&svg, buffer, capacity, out_needed) }
    })
}

/// The drawing of a wall's frame, its members and what is added before the sheets, as an SVG document in UTF-8;
/// `wall` is the wall's name.
///
/// Returns what `edgenail_plan_wall_svg` returns. No final zero is written.
///
/// # Safety
///
/// As `edgenail_plan_wall_svg`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_plan_frame_svg(
    plan: *const edgenail_plan,
    wall: *const c_char,
    wall_length: i64,
    buffer: *mut c_char,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        let svg = unsafe { of_wall(plan, utf8(wall, wall_length, "wall")?, edgenail::Plan::frame_svg) }?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf8(&svg, buffer, capacity, out_needed) }
    })
}

/// Why this layout of a wall and not another, as text in UTF-8 to be read by a person: each alternative with the parts of
/// its cost that are not the same; `wall` is the wall's name. The table `differences` holds the same as numbers.
///
/// Returns what `edgenail_plan_wall_svg` returns. No final zero is written.
///
/// # Safety
///
/// As `edgenail_plan_wall_svg`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_plan_why(
    plan: *const edgenail_plan,
    wall: *const c_char,
    wall_length: i64,
    buffer: *mut c_char,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        let text = unsafe { of_wall(plan, utf8(wall, wall_length, "wall")?, edgenail::Plan::why) }?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf8(&text, buffer, capacity, out_needed) }
    })
}

/// As `edgenail_plan_why`, name and text in UTF-16; lengths, capacity and size count code units.
///
/// # Safety
///
/// `plan` is a live plan; `wall` points at `wall_length` code units; `buffer` has room for `capacity` code units;
/// `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_plan_why_utf16(
    plan: *const edgenail_plan,
    wall: *const u16,
    wall_length: i64,
    buffer: *mut u16,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        let text = unsafe { of_wall(plan, &utf16(wall, wall_length, "wall")?, edgenail::Plan::why) }?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf16(&text, buffer, capacity, out_needed) }
    })
}

/// How many pages the drawing of all sheets that are cut has: at least one.
///
/// Returns `EDGENAIL_STATUS_OK`, or a status of misuse; `*out_count` is then left as it was.
///
/// # Safety
///
/// `plan` is a live plan; `out_count` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_plan_cut_sheet_pages(
    plan: *const edgenail_plan,
    out_count: *mut i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        let pages = unsafe { borrow(plan, "plan") }?.plan.cut_sheet_pages();
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put(out_count, i64::try_from(pages).unwrap_or(i64::MAX), "out_count") }
    })
}

/// A page of the drawing of all sheets that are cut, as an SVG document in UTF-8; pages count from 0.
///
/// Returns `EDGENAIL_STATUS_OK`, `EDGENAIL_STATUS_NOT_FOUND` for a page below 0 or past the last, or
/// `EDGENAIL_STATUS_BUFFER_TOO_SMALL` with the size needed in `out_needed`. No final zero is written.
///
/// # Safety
///
/// `plan` is a live plan; `buffer` has room for `capacity` bytes; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_plan_cut_sheets_svg(
    plan: *const edgenail_plan,
    page: i64,
    buffer: *mut c_char,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        let plan = unsafe { borrow(plan, "plan") }?;
        let missing = || Fault::argument(Status::NotFound, "page", "there is no such page of cut sheets");
        let page = usize::try_from(page).map_err(|_| missing())?;
        let svg = plan.plan.cut_sheets_svg(page).ok_or_else(missing)?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf8(&svg, buffer, capacity, out_needed) }
    })
}

/// What a plan says of the wall of this name.
///
/// # Safety
///
/// `plan` is a live plan.
unsafe fn of_wall(
    plan: *const edgenail_plan,
    wall: &str,
    say: impl FnOnce(&edgenail::Plan, &str) -> Option<String>,
) -> Result<String, Fault> {
    // SAFETY: the caller's promise is the same as ours.
    let plan = unsafe { borrow(plan, "plan") }?;
    let missing = || Fault::argument(Status::NotFound, "wall", "there is no wall of this name");
    say(&plan.plan, wall).ok_or_else(missing)
}
