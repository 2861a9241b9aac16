//! A wall planned from the cells of its row, for single numbers.

use crate::guard::{Fault, guard};
use crate::handle::{check, put};
use crate::text::{utf8, utf16};
use edgenail::Amount;
use edgenail::plan::Figures;
use edgenail::wall_schedule::{Row, WallSchedule};
use std::ffi::c_char;

/// Figures of a wall whose texts are in UTF-8; `sizes` are length, plate height and stud spacing.
///
/// # Safety
///
/// Each text points at as many bytes as its length says.
unsafe fn figures(
    sizes: [f64; 3],
    (openings, openings_length): (*const c_char, i64),
    (practice, practice_length): (*const c_char, i64),
) -> Result<Figures, Fault> {
    // SAFETY: the caller's promise is the same as ours.
    let openings = unsafe { utf8(openings, openings_length, "openings") }?;
    // SAFETY: the caller's promise is the same as ours.
    let practice = unsafe { utf8(practice, practice_length, "practice") }?;
    planned(sizes, openings, practice)
}

/// As [`figures`], in UTF-16.
///
/// # Safety
///
/// Each text points at as many code units as its length says.
unsafe fn figures_utf16(
    sizes: [f64; 3],
    (openings, openings_length): (*const u16, i64),
    (practice, practice_length): (*const u16, i64),
) -> Result<Figures, Fault> {
    // SAFETY: the caller's promise is the same as ours.
    let openings = unsafe { utf16(openings, openings_length, "openings") }?;
    // SAFETY: the caller's promise is the same as ours.
    let practice = unsafe { utf16(practice, practice_length, "practice") }?;
    planned(sizes, &openings, &practice)
}

fn planned(
    [length, plate_height, stud_spacing]: [f64; 3],
    openings: &str,
    practice: &str,
) -> Result<Figures, Fault> {
    let mut schedule = WallSchedule::new("wall", None);
    schedule.add(&Row {
        name: "wall",
        length,
        plate_height,
        stud_spacing,
        openings,
        practice,
        ..Row::default()
    })?;
    Ok(Figures::of(&schedule.plan()?))
}

/// An amount as a double, which holds every one that a wall can cost.
#[expect(
    clippy::cast_precision_loss,
    reason = "2^53 ten-thousandths are beyond any wall"
)]
fn units(amount: Amount) -> f64 {
    amount.ten_thousandths() as f64 / 10_000.0
}

fn whole(count: u64) -> i64 {
    i64::try_from(count).unwrap_or(i64::MAX)
}

/// What a wall takes by itself, planned from the cells of its row: new sheets, nails, blocks that are added, money for all
/// that is ordered in the currency of its prices, work in minutes, and how many findings must not be built so or must be
/// mended before sheathing goes on.
///
/// `length`, `plate_height`, `stud_spacing`, `openings` and `practice` are as `edgenail_wall_schedule_add` takes them.
/// A cell that wants one of the numbers only may call the function of that name; each of them plans the wall anew. Returns
/// `EDGENAIL_STATUS_OK`; `EDGENAIL_STATUS_INPUT` with the faults in the error list, at paths such as `/openings/1/width`;
/// `EDGENAIL_STATUS_NO_LAYOUT`; or a status of misuse.
///
/// # Safety
///
/// Each text points at as many bytes as its length says; each output points at a number of its type.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_wall_figures(
    length: f64,
    plate_height: f64,
    stud_spacing: f64,
    openings: *const c_char,
    openings_length: i64,
    practice: *const c_char,
    practice_length: i64,
    out_sheets: *mut i64,
    out_nails: *mut i64,
    out_blocks: *mut i64,
    out_money: *mut f64,
    out_minutes: *mut f64,
    out_refuse: *mut i64,
    out_mend: *mut i64,
) -> i32 {
    guard(|| {
        check(out_sheets, "out_sheets")?;
        check(out_nails, "out_nails")?;
        check(out_blocks, "out_blocks")?;
        check(out_money, "out_money")?;
        check(out_minutes, "out_minutes")?;
        check(out_refuse, "out_refuse")?;
        check(out_mend, "out_mend")?;
        let sizes = [length, plate_height, stud_spacing];
        let (openings, practice) = ((openings, openings_length), (practice, practice_length));
        // SAFETY: the caller's promise is the same as ours.
        let figures = unsafe { figures(sizes, openings, practice) }?;
        // SAFETY: not NULL, and the caller's promise is the same as ours.
        unsafe {
            put(out_sheets, whole(figures.sheets), "out_sheets")?;
            put(out_nails, whole(figures.nails), "out_nails")?;
            put(out_blocks, whole(figures.blocks), "out_blocks")?;
            put(out_money, units(figures.money), "out_money")?;
            put(out_minutes, units(figures.minutes), "out_minutes")?;
            put(out_refuse, whole(figures.refuse), "out_refuse")?;
            put(out_mend, whole(figures.mend), "out_mend")
        }
    })
}

/// As `edgenail_wall_figures`, texts in UTF-16; their lengths count code units.
///
/// # Safety
///
/// Each text points at as many code units as its length says; each output points at a number of its type.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_wall_figures_utf16(
    length: f64,
    plate_height: f64,
    stud_spacing: f64,
    openings: *const u16,
    openings_length: i64,
    practice: *const u16,
    practice_length: i64,
    out_sheets: *mut i64,
    out_nails: *mut i64,
    out_blocks: *mut i64,
    out_money: *mut f64,
    out_minutes: *mut f64,
    out_refuse: *mut i64,
    out_mend: *mut i64,
) -> i32 {
    guard(|| {
        check(out_sheets, "out_sheets")?;
        check(out_nails, "out_nails")?;
        check(out_blocks, "out_blocks")?;
        check(out_money, "out_money")?;
        check(out_minutes, "out_minutes")?;
        check(out_refuse, "out_refuse")?;
        check(out_mend, "out_mend")?;
        let sizes = [length, plate_height, stud_spacing];
        let (openings, practice) = ((openings, openings_length), (practice, practice_length));
        // SAFETY: the caller's promise is the same as ours.
        let figures = unsafe { figures_utf16(sizes, openings, practice) }?;
        // SAFETY: not NULL, and the caller's promise is the same as ours.
        unsafe {
            put(out_sheets, whole(figures.sheets), "out_sheets")?;
            put(out_nails, whole(figures.nails), "out_nails")?;
            put(out_blocks, whole(figures.blocks), "out_blocks")?;
            put(out_money, units(figures.money), "out_money")?;
            put(out_minutes, units(figures.minutes), "out_minutes")?;
            put(out_refuse, whole(figures.refuse), "out_refuse")?;
            put(out_mend, whole(figures.mend), "out_mend")
        }
    })
}

/// New sheets that a wall takes by itself, planned as `edgenail_wall_figures` plans it. Returns
/// `EDGENAIL_STATUS_OK`; `EDGENAIL_STATUS_INPUT` with the faults in the error list, at paths such as `/openings/1/width`;
/// `EDGENAIL_STATUS_NO_LAYOUT`; or a status of misuse.
///
/// # Safety
///
/// Each text points at as many bytes as its length says; `out_sheets` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_wall_sheets(
    length: f64,
    plate_height: f64,
    stud_spacing: f64,
    openings: *const c_char,
    openings_length: i64,
    practice: *const c_char,
    practice_length: i64,
    out_sheets: *mut i64,
) -> i32 {
    guard(|| {
        check(out_sheets, "out_sheets")?;
        let sizes = [length, plate_height, stud_spacing];
        let (openings, practice) = ((openings, openings_length), (practice, practice_length));
        // SAFETY: the caller's promise is the same as ours.
        let figures = unsafe { figures(sizes, openings, practice) }?;
        // SAFETY: not NULL, and the caller's promise is the same as ours.
        unsafe { put(out_sheets, whole(figures.sheets), "out_sheets") }
    })
}

/// As `edgenail_wall_sheets`, texts in UTF-16; their lengths count code units.
///
/// # Safety
///
/// Each text points at as many code units as its length says; `out_sheets` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_wall_sheets_utf16(
    length: f64,
    plate_height: f64,
    stud_spacing: f64,
    openings: *const u16,
    openings_length: i64,
    practice: *const u16,
    practice_length: i64,
    out_sheets: *mut i64,
) -> i32 {
    guard(|| {
        check(out_sheets, "out_sheets")?;
        let sizes = [length, plate_height, stud_spacing];
        let (openings, practice) = ((openings, openings_length), (practice, practice_length));
        // SAFETY: the caller's promise is the same as ours.
        let figures = unsafe { figures_utf16(sizes, openings, practice) }?;
        // SAFETY: not NULL, and the caller's promise is the same as ours.
        unsafe { put(out_sheets, whole(figures.sheets), "out_sheets") }
    })
}

/// Nails of a wall, planned as `edgenail_wall_figures` plans it. Returns
/// `EDGENAIL_STATUS_OK`; `EDGENAIL_STATUS_INPUT` with the faults in the error list, at paths such as `/openings/1/width`;
/// `EDGENAIL_STATUS_NO_LAYOUT`; or a status of misuse.
///
/// # Safety
///
/// Each text points at as many bytes as its length says; `out_nails` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_wall_nails(
    length: f64,
    plate_height: f64,
    stud_spacing: f64,
    openings: *const c_char,
    openings_length: i64,
    practice: *const c_char,
    practice_length: i64,
    out_nails: *mut i64,
) -> i32 {
    guard(|| {
        check(out_nails, "out_nails")?;
        let sizes = [length, plate_height, stud_spacing];
        let (openings, practice) = ((openings, openings_length), (practice, practice_length));
        // SAFETY: the caller's promise is the same as ours.
        let figures = unsafe { figures(sizes, openings, practice) }?;
        // SAFETY: not NULL, and the caller's promise is the same as ours.
        unsafe { put(out_nails, whole(figures.nails), "out_nails") }
    })
}

/// As `edgenail_wall_nails`, texts in UTF-16; their lengths count code units.
///
/// # Safety
///
/// Each text points at as many code units as its length says; `out_nails` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_wall_nails_utf16(
    length: f64,
    plate_height: f64,
    stud_spacing: f64,
    openings: *const u16,
    openings_length: i64,
    practice: *const u16,
    practice_length: i64,
    out_nails: *mut i64,
) -> i32 {
    guard(|| {
        check(out_nails, "out_nails")?;
        let sizes = [length, plate_height, stud_spacing];
        let (openings, practice) = ((openings, openings_length), (practice, practice_length));
        // SAFETY: the caller's promise is the same as ours.
        let figures = unsafe { figures_utf16(sizes, openings, practice) }?;
        // SAFETY: not NULL, and the caller's promise is the same as ours.
        unsafe { put(out_nails, whole(figures.nails), "out_nails") }
    })
}

/// Blocks that the plan adds to a wall, planned as `edgenail_wall_figures` plans it. Returns
/// `EDGENAIL_STATUS_OK`; `EDGENAIL_STATUS_INPUT` with the faults in the error list, at paths such as `/openings/1/width`;
/// `EDGENAIL_STATUS_NO_LAYOUT`; or a status of misuse.
///
/// # Safety
///
/// Each text points at as many bytes as its length says; `out_blocks` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_wall_blocks(
    length: f64,
    plate_height: f64,
    stud_spacing: f64,
    openings: *const c_char,
    openings_length: i64,
    practice: *const c_char,
    practice_length: i64,
    out_blocks: *mut i64,
) -> i32 {
    guard(|| {
        check(out_blocks, "out_blocks")?;
        let sizes = [length, plate_height, stud_spacing];
        let (openings, practice) = ((openings, openings_length), (practice, practice_length));
        // SAFETY: the caller's promise is the same as ours.
        let figures = unsafe { figures(sizes, openings, practice) }?;
        // SAFETY: not NULL, and the caller's promise is the same as ours.
        unsafe { put(out_blocks, whole(figures.blocks), "out_blocks") }
    })
}

/// As `edgenail_wall_blocks`, texts in UTF-16; their lengths count code units.
///
/// # Safety
///
/// Each text points at as many code units as its length says; `out_blocks` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_wall_blocks_utf16(
    length: f64,
    plate_height: f64,
    stud_spacing: f64,
    openings: *const u16,
    openings_length: i64,
    practice: *const u16,
    practice_length: i64,
    out_blocks: *mut i64,
) -> i32 {
    guard(|| {
        check(out_blocks, "out_blocks")?;
        let sizes = [length, plate_height, stud_spacing];
        let (openings, practice) = ((openings, openings_length), (practice, practice_length));
        // SAFETY: the caller's promise is the same as ours.
        let figures = unsafe { figures_utf16(sizes, openings, practice) }?;
        // SAFETY: not NULL, and the caller's promise is the same as ours.
        unsafe { put(out_blocks, whole(figures.blocks), "out_blocks") }
    })
}
