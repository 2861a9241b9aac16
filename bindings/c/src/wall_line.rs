//! Sheathed faces and wall lines for the cells of a spreadsheet.

use crate::cells::numbers;
use crate::choice::{COATING, GRADE, LINE_METHOD, LOAD, MATERIAL, METHOD, SHARING, flag};
use crate::guard::{Fault, guard};
use crate::handle::{check, put};
use crate::text::{put_utf8, put_utf16, utf8, utf16};
use edgenail::Error;
use edgenail::wall_schedule::entries;
use std::ffi::c_char;

/// A sheathed face and what is asked of its table.
struct Construction {
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
}

impl Construction {
    /// The fields of the question.
    fn fields(&self) -> Result<String, Fault> {
        let Self {
            edition,
            thickness,
            shank,
            head,
            nail_length,
            edge_spacing,
            field_spacing,
            stud_spacing,
            specific_gravity,
            seam_member,
            ..
        } = self;
        Ok(format!(
            "\"edition\":\"{edition}\",\"load\":\"{}\",\"method\":\"{}\",\"high_seismic\":{},\
             \"accept_unverified\":{},\"assembly\":{{\"grade\":\"{}\",\"thickness\":\"{thickness} in\",\"material\":\"{}\",\
             \"nail\":{{\"shank\":\"{shank}\",\"head\":\"{head}\",\"length\":\"{nail_length} in\",\"coating\":\"{}\"}},\
             \"edge_spacing\":\"{edge_spacing} in\",\"field_spacing\":\"{field_spacing} in\",\
             \"stud_spacing\":\"{stud_spacing} in\",\"blocked\":{},\"across_studs\":{},\
             \"specific_gravity\":\"{specific_gravity}\",\"seam_member\":\"{seam_member} in\",\"wet_framing\":{}}}",
            LOAD.word(self.load, "load")?,
            METHOD.word(self.method, "method")?,
            flag(self.high_seismic, "high_seismic")?,
            flag(self.accept_unverified, "accept_unverified")?,
            GRADE.word(self.grade, "grade")?,
            MATERIAL.word(self.material, "material")?,
            COATING.word(self.coating, "coating")?,
            flag(self.blocked, "blocked")?,
            flag(self.across_studs, "across_studs")?,
            flag(self.wet_framing, "wet_framing")?,
        ))
    }
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
        let construction = Construction {
            edition,
            load,
            method,
            grade,
            material,
            thickness,
            shank,
            head,
            nail_length,
            coating,
            edge_spacing,
            field_spacing,
            stud_spacing,
            blocked,
            across_studs,
            specific_gravity,
            seam_member,
            wet_framing,
            high_seismic,
            accept_unverified,
        };
        let question = format!("{{\"kind\":\"unit_shear\",{}}}", construction.fields()?);
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

/// A sheathed face and what is asked of its table as one text, for `edgenail_wall_line`; a sheet with a row for each
/// construction makes it once.
///
/// Arguments are as `edgenail_unit_shear` takes them. The text is JSON: the `unit_shear_query` of `CAPACITY_FIELDS.md`.
/// Returns `EDGENAIL_STATUS_OK`, `EDGENAIL_STATUS_BAD_CHOICE`, or `EDGENAIL_STATUS_BUFFER_TOO_SMALL` with the size needed
/// in `out_needed`; whether a table has such a face is said where the text is used.
///
/// # Safety
///
/// `buffer` has room for `capacity` bytes; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_construction(
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
    buffer: *mut c_char,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        check(out_needed, "out_needed")?;
        let construction = Construction {
            edition,
            load,
            method,
            grade,
            material,
            thickness,
            shank,
            head,
            nail_length,
            coating,
            edge_spacing,
            field_spacing,
            stud_spacing,
            blocked,
            across_studs,
            specific_gravity,
            seam_member,
            wet_framing,
            high_seismic,
            accept_unverified,
        };
        let text = format!("{{{}}}", construction.fields()?);
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf8(&text, buffer, capacity, out_needed) }
    })
}

/// As `edgenail_construction`, in UTF-16; capacity and size count code units.
///
/// # Safety
///
/// `buffer` has room for `capacity` code units; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_construction_utf16(
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
    buffer: *mut u16,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        check(out_needed, "out_needed")?;
        let construction = Construction {
            edition,
            load,
            method,
            grade,
            material,
            thickness,
            shank,
            head,
            nail_length,
            coating,
            edge_spacing,
            field_spacing,
            stud_spacing,
            blocked,
            across_studs,
            specific_gravity,
            seam_member,
            wet_framing,
            high_seismic,
            accept_unverified,
        };
        let text = format!("{{{}}}", construction.fields()?);
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf16(&text, buffer, capacity, out_needed) }
    })
}

/// What a wall line carries in pounds, the ratio of demand to it, and the hold-down tension in pounds.
///
/// `construction` is a text of `edgenail_construction`. `length`, between the outer faces of the end posts, `height` from
/// the underside of the bottom plate to the top of the top plates, and `inset`, from the outer faces to the hold-down's
/// rod and to the middle of the compression post together, are lengths such as `12' 6"`; bare numbers are inches.
/// `openings` is `left,width,height; left,width,height` from left to right, in lengths too, and may be empty.
/// `line_method` is one of `edgenail_line_method`, `sharing` of `edgenail_sharing`. `demand` is the shear at the top in
/// pounds, `dead` the factored dead load along it in pounds per foot. Below zero, nothing pulls at the hold-down.
///
/// Returns `EDGENAIL_STATUS_OK`, `EDGENAIL_STATUS_INPUT` with the faults in the error list, or
/// `EDGENAIL_STATUS_BAD_CHOICE`.
///
/// # Safety
///
/// Each text points at as many bytes as its length says; each output points at a `double`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_wall_line(
    construction: *const c_char,
    construction_length: i64,
    line_method: i32,
    sharing: i32,
    length: *const c_char,
    length_length: i64,
    height: *const c_char,
    height_length: i64,
    openings: *const c_char,
    openings_length: i64,
    demand: f64,
    dead: f64,
    inset: *const c_char,
    inset_length: i64,
    out_capacity: *mut f64,
    out_ratio: *mut f64,
    out_hold_down: *mut f64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        let line = unsafe {
            Line {
                construction: utf8(construction, construction_length, "construction")?,
                length: utf8(length, length_length, "length")?,
                height: utf8(height, height_length, "height")?,
                openings: utf8(openings, openings_length, "openings")?,
                inset: utf8(inset, inset_length, "inset")?,
                method: line_method,
                sharing,
                demand,
                dead,
            }
        };
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_line(&line, out_capacity, out_ratio, out_hold_down) }
    })
}

/// As `edgenail_wall_line`, from UTF-16; lengths of texts count code units.
///
/// # Safety
///
/// Each text points at as many code units as its length says; each output points at a `double`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_wall_line_utf16(
    construction: *const u16,
    construction_length: i64,
    line_method: i32,
    sharing: i32,
    length: *const u16,
    length_length: i64,
    height: *const u16,
    height_length: i64,
    openings: *const u16,
    openings_length: i64,
    demand: f64,
    dead: f64,
    inset: *const u16,
    inset_length: i64,
    out_capacity: *mut f64,
    out_ratio: *mut f64,
    out_hold_down: *mut f64,
) -> i32 {
    guard(|| {
        // SAFETY: the caller's promise is the same as ours.
        let texts = unsafe {
            [
                utf16(construction, construction_length, "construction")?,
                utf16(length, length_length, "length")?,
                utf16(height, height_length, "height")?,
                utf16(openings, openings_length, "openings")?,
                utf16(inset, inset_length, "inset")?,
            ]
        };
        let [construction, length, height, openings, inset] = texts.each_ref().map(String::as_str);
        let line = Line {
            construction,
            length,
            height,
            openings,
            inset,
            method: line_method,
            sharing,
            demand,
            dead,
        };
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_line(&line, out_capacity, out_ratio, out_hold_down) }
    })
}

/// A wall line as it was written.
struct Line<'a> {
    construction: &'a str,
    length: &'a str,
    height: &'a str,
    openings: &'a str,
    inset: &'a str,
    method: i32,
    sharing: i32,
    demand: f64,
    dead: f64,
}

/// # Safety
///
/// Each output points at a `double`.
unsafe fn put_line(
    line: &Line<'_>,
    out_capacity: *mut f64,
    out_ratio: *mut f64,
    out_hold_down: *mut f64,
) -> Result<(), Fault> {
    check(out_capacity, "out_capacity")?;
    check(out_ratio, "out_ratio")?;
    check(out_hold_down, "out_hold_down")?;
    let question = format!(
        "{{\"kind\":\"wall_line\",\"length\":{},\"height\":{},\"openings\":[{}],\"method\":\"{}\",\"sharing\":\"{}\",\
         \"query\":{},\"demand\":\"{}\",\"dead\":\"{}\",\"inset\":{}}}",
        quoted(line.length),
        quoted(line.height),
        opening_list(line.openings)?,
        LINE_METHOD.word(line.method, "line_method")?,
        SHARING.word(line.sharing, "sharing")?,
        line.construction,
        line.demand,
        line.dead,
        quoted(line.inset),
    );
    let [capacity, ratio, hold_down] = numbers(&question, ["/capacity_lb", "/ratio", "/hold_down_lb"])?;
    // SAFETY: not NULL, and the caller's promise is the same as ours.
    unsafe {
        put(out_capacity, capacity, "out_capacity")?;
        put(out_ratio, ratio, "out_ratio")?;
        put(out_hold_down, hold_down, "out_hold_down")
    }
}

/// `left,width,height; …` as a list of JSON.
fn opening_list(text: &str) -> Result<String, Fault> {
    let openings =
        entries(text, "openings", ["left", "width", "height"]).map_err(|issues| Error::Issues { issues })?;
    let openings = openings.iter().map(|[left, width, height]| {
        format!(
            "{{\"left\":{},\"width\":{},\"height\":{}}}",
            quoted(left),
            quoted(width),
            quoted(height)
        )
    });
    Ok(openings.collect::<Vec<_>>().join(","))
}

/// A text as JSON writes it.
fn quoted(text: &str) -> String {
    let mut json = String::from("\"");
    for letter in text.chars() {
        match letter {
            '"' | '\\' => json.extend(['\\', letter]),
            control if u32::from(control) < 0x20 => {
                let escaped = format!("\\u{:04x}", u32::from(control));
                json.push_str(&escaped);
            }
            other => json.push(other),
        }
    }
    json.push('"');
    json
}
