//! Questions of capacity: as JSON, and as single numbers for the cell of a spreadsheet.

use crate::guard::{Fault, guard};
use crate::handle::{check, put};
use crate::status::edgenail_status as Status;
use crate::text::{put_utf8, put_utf16, utf8, utf16};
use edgenail::answer::{capacity_json, capacity_numbers};
use std::ffi::c_char;

/// What a load comes from.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum edgenail_load {
    /// Wind.
    Wind = 1,
    /// Earthquake.
    Seismic = 2,
}

/// How a nominal value becomes a design value.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum edgenail_method {
    /// Allowable stress design.
    Asd = 1,
    /// Load and resistance factor design.
    Lrfd = 2,
}

/// Sheathing grade.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum edgenail_grade {
    /// Sheathing.
    Sheathing = 1,
    /// Structural I.
    StructuralI = 2,
}

/// What panels are made of.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum edgenail_panel_material {
    /// Oriented strand board.
    Osb = 1,
    /// Plywood of three plies.
    Plywood3 = 2,
    /// Plywood of four or more plies.
    Plywood4 = 3,
}

/// Coating of a nail.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum edgenail_coating {
    /// Bright.
    Bright = 1,
    /// Hot-dipped galvanized.
    HotDipped = 2,
    /// Stainless.
    Stainless = 3,
}

const LOADS: [&str; 2] = ["wind", "seismic"];
const METHODS: [&str; 2] = ["asd", "lrfd"];
const GRADES: [&str; 2] = ["sheathing", "structural_i"];
const MATERIALS: [&str; 3] = ["osb", "plywood3", "plywood4"];
const COATINGS: [&str; 3] = ["bright", "hot_dipped", "stainless"];

/// Answers a question of capacity that a JSON document in UTF-8 asks: unit shear, wall line, hold-down, nail, panel under
/// wind, drift, or a cell of a published table. The answer is a JSON document with every number, its derivation and a
/// caution, the same bytes in every language. The fields of a question are listed in `CAPACITY_FIELDS.md`.
///
/// Returns `EDGENAIL_STATUS_OK`, `EDGENAIL_STATUS_INPUT` with the faults in the error list — what a table does not
/// list, and what was recalled and is not accepted, are faults too — `EDGENAIL_STATUS_INTERNAL`, or
/// `EDGENAIL_STATUS_BUFFER_TOO_SMALL` with the size needed in `out_needed`. No final zero is written.
///
/// # Safety
///
/// `text` points at `length` bytes; `buffer` has room for `capacity` bytes; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_capacity_json(
    text: *const c_char,
    length: i64,
    buffer: *mut c_char,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        check(out_needed, "out_needed")?;
        // SAFETY: the caller's promise is the same as ours.
        let answer = capacity_json(unsafe { utf8(text, length, "text") }?)?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf8(&answer, buffer, capacity, out_needed) }
    })
}

/// As `edgenail_capacity_json`, in UTF-16; lengths, capacity and size count code units.
///
/// # Safety
///
/// `text` points at `length` code units; `buffer` has room for `capacity` code units; `out_needed` points at an
/// `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_capacity_json_utf16(
    text: *const u16,
    length: i64,
    buffer: *mut u16,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        check(out_needed, "out_needed")?;
        // SAFETY: the caller's promise is the same as ours.
        let answer = capacity_json(&unsafe { utf16(text, length, "text") }?)?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf16(&answer, buffer, capacity, out_needed) }
    })
}

/// One number of the answer to a question, for the cell of a spreadsheet; `pointer` is a JSON pointer into the answer,
/// such as `/nominal_plf` or `/segments/0/tension_lb`.
///
/// Returns `EDGENAIL_STATUS_OK`, `EDGENAIL_STATUS_NOT_FOUND` where the answer has no number there, or what
/// `edgenail_capacity_json` returns.
///
/// # Safety
///
/// `text` points at `length` bytes, `pointer` at `pointer_length`; `out_number` points at a `double`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_capacity_number(
    text: *const c_char,
    length: i64,
    pointer: *const c_char,
    pointer_length: i64,
    out_number: *mut f64,
) -> i32 {
    guard(|| {
        check(out_number, "out_number")?;
        // SAFETY: the caller's promise is the same as ours.
        let (text, pointer) = unsafe {
            (
                utf8(text, length, "text")?,
                utf8(pointer, pointer_length, "pointer")?,
            )
        };
        let [number] = capacity_numbers(text, [pointer])?;
        let missing = || Fault::argument(Status::NotFound, "pointer", "points at no number of the answer");
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put(out_number, number.ok_or_else(missing)?, "out_number") }
    })
}

/// Nominal and design unit shear of one sheathed face in pounds per foot, from the table of wood structural panels.
///
/// `edition` is 2008, 2015 or 2021; `load` is one of `edgenail_load`, `method` of `edgenail_method`, `grade` of
/// `edgenail_grade`, `material` of `edgenail_panel_material`, `coating` of `edgenail_coating`. All sizes are in inches:
/// nominal thickness of the panel; shank, head and length of the nail; spacing of nails at panel edges and between;
/// largest centre distance of studs; least width of a member that two panels share. `specific_gravity` is the lowest of
/// all members nailed. The others are 1 for yes and 0 for no: all panel edges backed; panels across the studs; framing
/// wetter than 19 % when built; seismic design category D, E or F; recalled values may be used.
///
/// `out_stiffness` receives the apparent shear stiffness in kips per inch. Returns `EDGENAIL_STATUS_OK`,
/// `EDGENAIL_STATUS_INPUT` with the faults in the error list, or `EDGENAIL_STATUS_BAD_CHOICE`.
///
/// # Safety
///
/// `out_nominal`, `out_design` and `out_stiffness` point at a `double` each.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_unit_shear(
    edition: i32,
    load: i32,
    method: i32,
    grade: i32,
    material: i32,
    thickness: f64,
    shank: f64,
    head: f64,
    nail_length: f64,
    coating: i32,
    edge_spacing: f64,
    field_spacing: f64,
    stud_spacing: f64,
    blocked: i32,
    across_studs: i32,
    specific_gravity: f64,
    seam_member: f64,
    wet_framing: i32,
    high_seismic: i32,
    accept_unverified: i32,
    out_nominal: *mut f64,
    out_design: *mut f64,
    out_stiffness: *mut f64,
) -> i32 {
    guard(|| {
        check(out_nominal, "out_nominal")?;
        check(out_design, "out_design")?;
        check(out_stiffness, "out_stiffness")?;
        let question = format!(
            "{{\"kind\":\"unit_shear\",\"edition\":\"{edition}\",\"load\":\"{}\",\"method\":\"{}\",\"high_seismic\":{},\
             \"accept_unverified\":{},\"assembly\":{{\"grade\":\"{}\",\"thickness\":\"{thickness} in\",\"material\":\"{}\",\
             \"nail\":{{\"shank\":\"{shank}\",\"head\":\"{head}\",\"length\":\"{nail_length} in\",\"coating\":\"{}\"}},\
             \"edge_spacing\":\"{edge_spacing} in\",\"field_spacing\":\"{field_spacing} in\",\
             \"stud_spacing\":\"{stud_spacing} in\",\"blocked\":{},\"across_studs\":{},\
             \"specific_gravity\":\"{specific_gravity}\",\"seam_member\":\"{seam_member} in\",\"wet_framing\":{}}}}}",
            word(&LOADS, load, "load")?,
            word(&METHODS, method, "method")?,
            flag(high_seismic, "high_seismic")?,
            flag(accept_unverified, "accept_unverified")?,
            word(&GRADES, grade, "grade")?,
            word(&MATERIALS, material, "material")?,
            word(&COATINGS, coating, "coating")?,
            flag(blocked, "blocked")?,
            flag(across_studs, "across_studs")?,
            flag(wet_framing, "wet_framing")?,
        );
        let [nominal, design, stiffness] = numbers(
            &question,
            ["/nominal_plf", "/design_plf", "/stiffness_kips_per_in"],
        )?;
        // SAFETY: not NULL, and the caller's promise is the same as ours.
        unsafe {
            put(out_nominal, nominal, "out_nominal")?;
            put(out_design, design, "out_design")?;
            put(out_stiffness, stiffness, "out_stiffness")
        }
    })
}

/// Hold-down tension in pounds at the end of a segment, with its real arm; below zero nothing pulls.
///
/// `shear` is the unit shear in pounds per foot; `length` and `height` of the segment are in feet; `dead` is the
/// factored dead load along its top in pounds per foot; `inset`, in feet, is from the outer faces to the hold-down's rod
/// and to the middle of the compression post, together. Returns `EDGENAIL_STATUS_OK`, or `EDGENAIL_STATUS_INPUT` with
/// the faults in the error list.
///
/// # Safety
///
/// `out_tension` points at a `double`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_hold_down(
    shear: f64,
    length: f64,
    height: f64,
    dead: f64,
    inset: f64,
    out_tension: *mut f64,
) -> i32 {
    guard(|| {
        check(out_tension, "out_tension")?;
        let question = format!(
            "{{\"kind\":\"hold_down\",\"shear\":\"{shear}\",\"length\":\"{length} ft\",\"height\":\"{height} ft\",\
             \"dead\":\"{dead}\",\"inset\":\"{inset} ft\"}}"
        );
        let [tension] = numbers(&question, ["/tension_lb"])?;
        // SAFETY: not NULL, and the caller's promise is the same as ours.
        unsafe { put(out_tension, tension, "out_tension") }
    })
}

/// Drift of a segment's top in inches by the three-term equation.
///
/// `shear` is the unit shear in pounds per foot; `height` and `length` are in feet; `elasticity` of the end posts is in
/// pounds per square inch, `post_area` in square inches; `anchor` is the hold-down's elongation in inches; `stiffness` is
/// the apparent shear stiffness in kips per inch. The equation was recalled: `accept_unverified` has to be 1. Returns
/// `EDGENAIL_STATUS_OK`, or `EDGENAIL_STATUS_INPUT` with the faults in the error list.
///
/// # Safety
///
/// `out_drift` points at a `double`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_drift(
    shear: f64,
    height: f64,
    length: f64,
    elasticity: f64,
    post_area: f64,
    anchor: f64,
    stiffness: f64,
    accept_unverified: i32,
    out_drift: *mut f64,
) -> i32 {
    guard(|| {
        check(out_drift, "out_drift")?;
        let question = format!(
            "{{\"kind\":\"drift\",\"shear\":\"{shear}\",\"height\":\"{height} ft\",\"length\":\"{length} ft\",\
             \"elasticity\":\"{elasticity}\",\"post_area\":\"{post_area}\",\"anchor\":\"{anchor} in\",\
             \"equation\":{{\"kind\":\"three_terms\",\"stiffness\":\"{stiffness}\"}},\"accept_unverified\":{}}}",
            flag(accept_unverified, "accept_unverified")?
        );
        let [drift] = numbers(&question, ["/drift_in"])?;
        // SAFETY: not NULL, and the caller's promise is the same as ours.
        unsafe { put(out_drift, drift, "out_drift") }
    })
}

/// Numbers that every answer of this kind has.
fn numbers<const N: usize>(question: &str, pointers: [&str; N]) -> Result<[f64; N], Fault> {
    let found = capacity_numbers(question, pointers)?;
    if found.iter().any(Option::is_none) {
        return Err(Fault::from(edgenail::Error::Internal {
            message: "the answer lacks a number".to_owned(),
        }));
    }
    Ok(found.map(Option::unwrap_or_default))
}

/// The word of a number from 1.
fn word(words: &[&'static str], number: i32, argument: &str) -> Result<&'static str, Fault> {
    usize::try_from(number)
        .ok()
        .and_then(|number| number.checked_sub(1))
        .and_then(|index| words.get(index))
        .copied()
        .ok_or_else(|| Fault::argument(Status::BadChoice, argument, "is none of the known ones"))
}

fn flag(number: i32, argument: &str) -> Result<bool, Fault> {
    match number {
        0 => Ok(false),
        1 => Ok(true),
        _ => Err(Fault::argument(Status::BadChoice, argument, "is neither 0 nor 1")),
    }
}
