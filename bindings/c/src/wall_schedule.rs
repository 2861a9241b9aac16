//! Wall schedules: rows of a sheet added one by one, then planned as a house.

use crate::choice::{LEVEL, METHOD, SHARING, flag};
use crate::guard::{Fault, guard};
use crate::handle::{borrow, check, give, put, take};
use crate::plan::edgenail_plan;
use crate::status::edgenail_status as Status;
use crate::text::{put_utf8, put_utf16, utf8, utf16};
use edgenail::house::{DesignMethod, Edition, LoadLevel, Sharing};
use edgenail::wall_schedule::{Design, Row, WallSchedule};
use std::ffi::c_char;
use std::sync::{Mutex, MutexGuard, PoisonError};

/// A wall schedule: one row a wall. The caller owns it, and gives it back with `edgenail_wall_schedule_free`.
///
/// Rows are added with `edgenail_wall_schedule_add`, each checked at once, and planned together as one house with
/// `edgenail_wall_schedule_plan`. Threads may share it; rows stand in the order in which they were added.
#[derive(Debug)]
pub struct edgenail_wall_schedule {
    held: Mutex<WallSchedule>,
}

impl edgenail_wall_schedule {
    fn held(&self) -> MutexGuard<'_, WallSchedule> {
        self.held.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// The rules of design as numbers.
struct Rules {
    edition: i32,
    method: i32,
    level: i32,
    sharing: i32,
    high_seismic: i32,
    accept_unverified: i32,
}

impl Rules {
    fn schedule(&self, name: &str) -> Result<edgenail_wall_schedule, Fault> {
        let schedule = WallSchedule::new(name, self.design()?);
        Ok(edgenail_wall_schedule {
            held: Mutex::new(schedule),
        })
    }

    fn design(&self) -> Result<Option<Design>, Fault> {
        let edition = match self.edition {
            0 => return Ok(None),
            2008 => Edition::Sdpws2008,
            2015 => Edition::Sdpws2015,
            2021 => Edition::Sdpws2021,
            _ => {
                let message = "is none of 0, 2008, 2015, 2021";
                return Err(Fault::argument(Status::BadChoice, "edition", message));
            }
        };
        Ok(Some(Design {
            edition,
            method: METHOD.pick(self.method, "method", [DesignMethod::Asd, DesignMethod::Lrfd])?,
            level: LEVEL.pick(self.level, "level", [LoadLevel::Strength, LoadLevel::Asd])?,
            sharing: SHARING.pick(
                self.sharing,
                "sharing",
                [Sharing::ReducedStrength, Sharing::EqualDeflection],
            )?,
            high_seismic: flag(self.high_seismic, "high_seismic")?,
            accept_unverified: flag(self.accept_unverified, "accept_unverified")?,
        }))
    }
}

/// Begins a wall schedule without rows for a house of this name.
///
/// `edition` of the Special Design Provisions for Wind and Seismic is 2008, 2015 or 2021; 0 asks for no capacity, and the
/// numbers after it are then not looked at. `method` is one of `edgenail_method`, `level` of `edgenail_level` (that of all
/// loads), `sharing` of `edgenail_sharing`. `high_seismic` is 1 in seismic design category D, E or F, else 0;
/// `accept_unverified` is 1 where values may be used that were recalled and not checked against print, else 0.
///
/// On success the caller owns `*out_schedule`. Returns `EDGENAIL_STATUS_OK`, `EDGENAIL_STATUS_BAD_CHOICE`, or a status of
/// misuse; `*out_schedule` is then left as it was.
///
/// # Safety
///
/// `name` points at `name_length` bytes; `out_schedule` points at a pointer.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_wall_schedule_new(
    name: *const c_char,
    name_length: i64,
    edition: i32,
    method: i32,
    level: i32,
    sharing: i32,
    high_seismic: i32,
    accept_unverified: i32,
    out_schedule: *mut *mut edgenail_wall_schedule,
) -> i32 {
    guard(|| {
        check(out_schedule, "out_schedule")?;
        let rules = Rules {
            edition,
            method,
            level,
            sharing,
            high_seismic,
            accept_unverified,
        };
        // SAFETY: the caller's promise is the same as ours.
        let schedule = rules.schedule(unsafe { utf8(name, name_length, "name") }?)?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { give(out_schedule, schedule, "out_schedule") }
    })
}

/// As `edgenail_wall_schedule_new`, the name in UTF-16; its length counts code units.
///
/// # Safety
///
/// `name` points at `name_length` code units; `out_schedule` points at a pointer.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_wall_schedule_new_utf16(
    name: *const u16,
    name_length: i64,
    edition: i32,
    method: i32,
    level: i32,
    sharing: i32,
    high_seismic: i32,
    accept_unverified: i32,
    out_schedule: *mut *mut edgenail_wall_schedule,
) -> i32 {
    guard(|| {
        check(out_schedule, "out_schedule")?;
        let rules = Rules {
            edition,
            method,
            level,
            sharing,
            high_seismic,
            accept_unverified,
        };
        // SAFETY: the caller's promise is the same as ours.
        let schedule = rules.schedule(&unsafe { utf16(name, name_length, "name") }?)?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { give(out_schedule, schedule, "out_schedule") }
    })
}

/// Gives a schedule back; plans made from it stay. NULL is nothing to give back; giving it back twice is undefined.
///
/// # Safety
///
/// `schedule` is NULL or came from this library, was not given back before, and no thread uses it.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_wall_schedule_free(schedule: *mut edgenail_wall_schedule) {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        unsafe { take(schedule) };
        Ok(())
    });
}

/// Adds a row: a wall of one storey on concrete, with one treated bottom plate, two top plates and a level top.
///
/// `name` is unique in the schedule. `length` of the frame, `plate_height` from the underside of the bottom plate to the top
/// of the top plates, each 1 1/2 in. thick, and `stud_spacing` on centre are in inches, taken to the nearest 1/40640.
/// `openings` is `left,sill,width,height; left,sill,width,height`, seen from the sheathed face: lengths such as `36` or
/// `5' 2`, bare numbers in inches, the sill above the underside of the bottom plate; 0 makes a door, any other a window.
/// `practice` is `either`, `upright`, `flat`, `either blocked`, `upright blocked` or `flat blocked`, then nailing at panel
/// edges and between in inches if it is not 6/12: `flat blocked 4/12`; blank is `either`. `segments` is
/// `left,right; left,right`: parts of full height that the designer relies on. `wind` and `seismic`, in pounds along the top
/// of the wall, may be other than 0 where the schedule was begun with an edition.
///
/// Returns `EDGENAIL_STATUS_OK`, `EDGENAIL_STATUS_INPUT` with the faults in the error list, at paths such as
/// `/openings/1/width`, or a status of misuse; the schedule is then as it was.
///
/// # Safety
///
/// `schedule` is live; each text points at as many bytes as its length says.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_wall_schedule_add(
    schedule: *const edgenail_wall_schedule,
    name: *const c_char,
    name_length: i64,
    length: f64,
    plate_height: f64,
    stud_spacing: f64,
    openings: *const c_char,
    openings_length: i64,
    practice: *const c_char,
    practice_length: i64,
    segments: *const c_char,
    segments_length: i64,
    wind: f64,
    seismic: f64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        let (schedule, row) = unsafe {
            let row = Row {
                name: utf8(name, name_length, "name")?,
                length,
                plate_height,
                stud_spacing,
                openings: utf8(openings, openings_length, "openings")?,
                practice: utf8(practice, practice_length, "practice")?,
                segments: utf8(segments, segments_length, "segments")?,
                wind,
                seismic,
            };
            (borrow(schedule, "schedule")?, row)
        };
        Ok(schedule.held().add(&row)?)
    })
}

/// As `edgenail_wall_schedule_add`, texts in UTF-16; their lengths count code units.
///
/// # Safety
///
/// `schedule` is live; each text points at as many code units as its length says.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_wall_schedule_add_utf16(
    schedule: *const edgenail_wall_schedule,
    name: *const u16,
    name_length: i64,
    length: f64,
    plate_height: f64,
    stud_spacing: f64,
    openings: *const u16,
    openings_length: i64,
    practice: *const u16,
    practice_length: i64,
    segments: *const u16,
    segments_length: i64,
    wind: f64,
    seismic: f64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        let (schedule, texts) = unsafe {
            let texts = [
                utf16(name, name_length, "name")?,
                utf16(openings, openings_length, "openings")?,
                utf16(practice, practice_length, "practice")?,
                utf16(segments, segments_length, "segments")?,
            ];
            (borrow(schedule, "schedule")?, texts)
        };
        let [name, openings, practice, segments] = texts.each_ref().map(String::as_str);
        let row = Row {
            name,
            length,
            plate_height,
            stud_spacing,
            openings,
            practice,
            segments,
            wind,
            seismic,
        };
        Ok(schedule.held().add(&row)?)
    })
}

/// How many rows a schedule has.
///
/// Returns `EDGENAIL_STATUS_OK`, or a status of misuse.
///
/// # Safety
///
/// `schedule` is live; `out_count` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_wall_schedule_count(
    schedule: *const edgenail_wall_schedule,
    out_count: *mut i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        unsafe {
            let count = borrow(schedule, "schedule")?.held().len();
            put(out_count, i64::try_from(count).unwrap_or(i64::MAX), "out_count")
        }
    })
}

/// The house that the rows describe, as the JSON that `edgenail_plan_new_json` and `edgenail_what_if_json` take.
///
/// Returns `EDGENAIL_STATUS_OK`, or `EDGENAIL_STATUS_BUFFER_TOO_SMALL` with the size needed in `out_needed`. No final zero
/// is written.
///
/// # Safety
///
/// `schedule` is live; `buffer` has room for `capacity` bytes; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_wall_schedule_json(
    schedule: *const edgenail_wall_schedule,
    buffer: *mut c_char,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        let json = unsafe { borrow(schedule, "schedule") }?.held().house_json();
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf8(&json, buffer, capacity, out_needed) }
    })
}

/// As `edgenail_wall_schedule_json`, in UTF-16; capacity and size count code units.
///
/// # Safety
///
/// `schedule` is live; `buffer` has room for `capacity` code units; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_wall_schedule_json_utf16(
    schedule: *const edgenail_wall_schedule,
    buffer: *mut u16,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        let json = unsafe { borrow(schedule, "schedule") }?.held().house_json();
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf16(&json, buffer, capacity, out_needed) }
    })
}

/// Plans the rows as one house, whose sheets are cut for all walls together. The schedule stays, and may be added to.
///
/// On success the caller owns `*out_plan`. Returns what `edgenail_plan_new_json` returns; the error list names the wall of
/// each fault.
///
/// # Safety
///
/// `schedule` is live; `out_plan` points at a pointer.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_wall_schedule_plan(
    schedule: *const edgenail_wall_schedule,
    out_plan: *mut *mut edgenail_plan,
) -> i32 {
    guard(|| {
        check(out_plan, "out_plan")?;
        // SAFETY: the caller's promise is the same as ours.
        let rows = unsafe { borrow(schedule, "schedule") }?.held().clone();
        let plan = edgenail_plan::from(rows.plan()?);
        // SAFETY: the caller's promise is the same as ours.
        unsafe { give(out_plan, plan, "out_plan") }
    })
}
