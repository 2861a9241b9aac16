//! Single numbers for the cells of a spreadsheet: doubles and integers in, doubles out.

use crate::choice::{AXIS, GRADE, MATERIAL, PLIES, flag};
use crate::guard::{Fault, guard};
use crate::handle::{check, put};
use edgenail::answer::capacity_numbers;

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

/// Drift of a segment's top in inches by the four-term equation, panels and nails apart, of lumber that was dry when built.
///
/// `shear`, `height`, `length`, `elasticity`, `post_area` and `anchor` are as `edgenail_drift` takes them. `nail` is the
/// size of the common nail: 6, 8 or 10 for 6d, 8d and 10d; `grade` is one of `edgenail_grade`, `material` of
/// `edgenail_panel_material`; `thickness` of the panel and `edge_spacing` of its nails are in inches. Returns
/// `EDGENAIL_STATUS_OK`, `EDGENAIL_STATUS_INPUT` with the faults in the error list, or `EDGENAIL_STATUS_BAD_CHOICE`.
///
/// # Safety
///
/// `out_drift` points at a `double`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_drift_four_terms(
    shear: f64,
    height: f64,
    length: f64,
    elasticity: f64,
    post_area: f64,
    anchor: f64,
    nail: i32,
    grade: i32,
    material: i32,
    thickness: f64,
    edge_spacing: f64,
    accept_unverified: i32,
    out_drift: *mut f64,
) -> i32 {
    guard(|| {
        check(out_drift, "out_drift")?;
        let question = format!(
            "{{\"kind\":\"drift\",\"shear\":\"{shear}\",\"height\":\"{height} ft\",\"length\":\"{length} ft\",\
             \"elasticity\":\"{elasticity}\",\"post_area\":\"{post_area}\",\"anchor\":\"{anchor} in\",\
             \"equation\":{{\"kind\":\"four_terms\",\"nail\":\"{nail}d\",\"grade\":\"{}\",\"material\":\"{}\",\
             \"thickness\":\"{thickness} in\",\"edge_spacing\":\"{edge_spacing} in\"}},\"accept_unverified\":{}}}",
            GRADE.word(grade, "grade")?,
            MATERIAL.word(material, "material")?,
            flag(accept_unverified, "accept_unverified")?
        );
        let [drift] = numbers(&question, ["/drift_in"])?;
        // SAFETY: not NULL, and the caller's promise is the same as ours.
        unsafe { put(out_drift, drift, "out_drift") }
    })
}

/// What one nail through a side member into a main member carries in pounds: lateral load, withdrawal, and its head pulled
/// through the side member; for the load's duration.
///
/// `edition` of the National Design Specification is 2005 or 2018. `shank`, `length` and `head` of the nail, thickness of
/// the side member, of what lies between, and of the main member along the nail are in inches; `head` is 0
/// where its pull-through is not asked for, and gives 0; `main_depth` is 0 where the nail ends within the main member. `bending_yield` is in pounds per square inch; 0 takes the one by diameter, which was
/// recalled. `side_gravity` and `main_gravity` are specific gravities; `load_duration` is 1.6 for wind or earthquake.
/// `accept_unverified` is 1 where recalled values may be used, else 0. Returns `EDGENAIL_STATUS_OK`,
/// `EDGENAIL_STATUS_INPUT` with the faults in the error list, or `EDGENAIL_STATUS_BAD_CHOICE`.
///
/// # Safety
///
/// `out_lateral`, `out_withdrawal` and `out_pull_through` point at a `double` each.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_nail(
    edition: i32,
    shank: f64,
    length: f64,
    head: f64,
    bending_yield: f64,
    side_thickness: f64,
    side_gravity: f64,
    between: f64,
    main_gravity: f64,
    main_depth: f64,
    load_duration: f64,
    accept_unverified: i32,
    out_lateral: *mut f64,
    out_withdrawal: *mut f64,
    out_pull_through: *mut f64,
) -> i32 {
    guard(|| {
        check(out_lateral, "out_lateral")?;
        check(out_withdrawal, "out_withdrawal")?;
        check(out_pull_through, "out_pull_through")?;
        let question = format!(
            "{{\"kind\":\"nail\",\"edition\":\"{edition}\",\"shank\":\"{shank}\",\"length\":\"{length} in\",\"head\":{},\
             \"bending_yield\":{},\"side_thickness\":\"{side_thickness} in\",\"side_gravity\":\"{side_gravity}\",\
             \"between\":\"{between} in\",\"main_gravity\":\"{main_gravity}\",\"main_depth\":{},\
             \"load_duration\":\"{load_duration}\",\"accept_unverified\":{}}}",
            unless_zero(head, ""),
            unless_zero(bending_yield, ""),
            unless_zero(main_depth, " in"),
            flag(accept_unverified, "accept_unverified")?
        );
        let [lateral, withdrawal, pull_through] =
            capacity_numbers(&question, ["/lateral_lb", "/withdrawal_lb", "/pull_through_lb"])?;
        // SAFETY: not NULL, and the caller's promise is the same as ours.
        unsafe {
            put(out_lateral, lateral.ok_or_else(lacking)?, "out_lateral")?;
            put(out_withdrawal, withdrawal.ok_or_else(lacking)?, "out_withdrawal")?;
            put(out_pull_through, pull_through.unwrap_or(0.0), "out_pull_through")
        }
    })
}

/// Pressure across its face that a rated panel carries in bending and at the deflection that is allowed, in pounds per
/// square foot, and its deflection under `pressure` in inches.
///
/// `rating` is the span rating as stamped: the spans for roofs and floors in inches, such as 24 and 16 for 24/16. `plies`
/// is one of `edgenail_plies`, `axis` of `edgenail_axis`; `stud_spacing` is in inches; `spans` that one panel covers are 1,
/// 2, or 3 for three and more; `deflection_ratio` is the span over the deflection that is allowed, such as 240.
/// `load_duration` is 1.6 for wind; `accept_unverified` is 1 where recalled values may be used, else 0. Returns
/// `EDGENAIL_STATUS_OK`, `EDGENAIL_STATUS_INPUT` with the faults in the error list, or `EDGENAIL_STATUS_BAD_CHOICE`.
///
/// # Safety
///
/// `out_bending`, `out_stiffness` and `out_deflection` point at a `double` each.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_panel_pressure(
    rating_roof: i32,
    rating_floor: i32,
    plies: i32,
    axis: i32,
    stud_spacing: f64,
    spans: i32,
    deflection_ratio: f64,
    pressure: f64,
    load_duration: f64,
    accept_unverified: i32,
    out_bending: *mut f64,
    out_stiffness: *mut f64,
    out_deflection: *mut f64,
) -> i32 {
    guard(|| {
        check(out_bending, "out_bending")?;
        check(out_stiffness, "out_stiffness")?;
        check(out_deflection, "out_deflection")?;
        let question = format!(
            "{{\"kind\":\"panel\",\"rating\":\"{rating_roof}/{rating_floor}\",\"plies\":\"{}\",\"axis\":\"{}\",\
             \"stud_spacing\":\"{stud_spacing} in\",\"spans\":{spans},\"deflection_ratio\":\"{deflection_ratio}\",\
             \"pressure\":\"{pressure}\",\"load_duration\":\"{load_duration}\",\"accept_unverified\":{}}}",
            PLIES.word(plies, "plies")?,
            AXIS.word(axis, "axis")?,
            flag(accept_unverified, "accept_unverified")?
        );
        let [bending, stiffness, deflection] =
            numbers(&question, ["/bending_psf", "/stiffness_psf", "/deflection_in"])?;
        // SAFETY: not NULL, and the caller's promise is the same as ours.
        unsafe {
            put(out_bending, bending, "out_bending")?;
            put(out_stiffness, stiffness, "out_stiffness")?;
            put(out_deflection, deflection, "out_deflection")
        }
    })
}

/// How many anchors a bottom plate takes against sliding and uplift, each for itself, and whether plate washers have to
/// reach to the sheathed edge: more than 1 in `out_washer_ratio`.
///
/// `shear` along the plate and `uplift` are in pounds per foot, `length` of the plate in feet; `each` and `each_uplift` are
/// what one anchor carries of the two in pounds, the latter 0 where nothing lifts. `nominal` unit shear of the wall is in
/// pounds per foot; 0 asks nothing of washers and gives 0. The rule for washers was recalled: `accept_unverified` has to be
/// 1 with it. The least number and spacing that a code asks for at any load are not checked.
///
/// `out_spacing` receives the widest even spacing in inches, 0 where no anchor is needed. Returns `EDGENAIL_STATUS_OK`,
/// `EDGENAIL_STATUS_INPUT` with the faults in the error list, or `EDGENAIL_STATUS_BAD_CHOICE`.
///
/// # Safety
///
/// `out_anchors`, `out_spacing` and `out_washer_ratio` point at a `double` each.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_anchorage(
    shear: f64,
    length: f64,
    each: f64,
    uplift: f64,
    each_uplift: f64,
    nominal: f64,
    accept_unverified: i32,
    out_anchors: *mut f64,
    out_spacing: *mut f64,
    out_washer_ratio: *mut f64,
) -> i32 {
    guard(|| {
        check(out_anchors, "out_anchors")?;
        check(out_spacing, "out_spacing")?;
        check(out_washer_ratio, "out_washer_ratio")?;
        let question = format!(
            "{{\"kind\":\"anchorage\",\"shear\":\"{shear}\",\"length\":\"{length} ft\",\"each\":\"{each}\",\
             \"uplift\":\"{uplift}\",\"each_uplift\":{},\"nominal\":{},\"accept_unverified\":{}}}",
            unless_zero(each_uplift, ""),
            unless_zero(nominal, ""),
            flag(accept_unverified, "accept_unverified")?
        );
        let [anchors, spacing, washers] =
            capacity_numbers(&question, ["/anchors", "/spacing_in", "/washer_ratio"])?;
        // SAFETY: not NULL, and the caller's promise is the same as ours.
        unsafe {
            put(out_anchors, anchors.ok_or_else(lacking)?, "out_anchors")?;
            put(out_spacing, spacing.unwrap_or(0.0), "out_spacing")?;
            put(out_washer_ratio, washers.unwrap_or(0.0), "out_washer_ratio")
        }
    })
}

/// A number with its unit as JSON, and null for 0.
fn unless_zero(number: f64, unit: &str) -> String {
    if number == 0.0 {
        "null".to_owned()
    } else {
        format!("\"{number}{unit}\"")
    }
}

/// Numbers that every answer of this kind has.
pub(crate) fn numbers<const N: usize>(question: &str, pointers: [&str; N]) -> Result<[f64; N], Fault> {
    let found = capacity_numbers(question, pointers)?;
    if found.iter().any(Option::is_none) {
        return Err(lacking());
    }
    Ok(found.map(Option::unwrap_or_default))
}

fn lacking() -> Fault {
    Fault::from(edgenail::Error::Internal {
        message: "the answer lacks a number".to_owned(),
    })
}
