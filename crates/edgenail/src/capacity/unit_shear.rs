//! Nominal and design unit shear of one sheathed face, looked up in the table of wood structural panels.

use super::assembly::{Assembly, Edition, LoadKind, Method};
use super::conditions::check;
use super::estimate::{Estimate, estimate};
use super::fault::{self, fault};
use super::fit::fits;
use super::rule::{self, Rule};
use crate::issue::{Code, Issue};
use crate::length::Length;
use crate::published::{Confidence, PANEL_ROWS, PanelRow, Pennyweight, RowEdition};
use serde::Serialize;

/// What is asked of the tables.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct UnitShearQuery {
    /// The edition.
    pub edition: Edition,
    /// What the load comes from.
    pub load: LoadKind,
    /// How nominal becomes design.
    pub method: Method,
    /// The wall.
    pub assembly: Assembly,
    /// The building is in seismic design category D, E or F.
    pub high_seismic: bool,
    /// Values that were recalled and not checked against print may be used.
    pub accept_unverified: bool,
    /// A nail that the table does not list is taken by an engineering estimate, for wind only.
    pub estimate: bool,
}

/// A unit shear and what it is made of.
#[derive(Clone, Copy, Debug)]
pub struct UnitShear {
    /// What was asked.
    pub query: UnitShearQuery,
    /// The row of the panel as built; apparent stiffness is its own.
    pub row: &'static PanelRow,
    /// The row that the unit shear is read from: thicker where a footnote allows.
    pub shear_row: &'static PanelRow,
    /// A thicker row would serve, but its footnote was recalled and is not accepted.
    pub thicker_row_left: bool,
    /// The cell, in pounds per foot.
    pub cell: f64,
    /// Factor for the framing's specific gravity.
    pub species: f64,
    /// Factor of an unblocked wall.
    pub unblocked: Option<f64>,
    /// Factor of a wall whose hold-downs sit on the inside faces of its end posts.
    pub inside_hold_downs: Option<f64>,
    /// What the nail makes of the row, where the table does not list it: the result is an estimate then.
    pub estimate: Option<Estimate>,
    /// Nominal unit shear in pounds per foot.
    pub nominal: f64,
    /// The factor that makes it a design value: a divisor in ASD, a multiplier in LRFD.
    pub factor: Rule<f64>,
    /// Design unit shear in pounds per foot.
    pub design: f64,
    /// Apparent shear stiffness in kips per inch; none of an estimate, whose nails slip by another curve.
    pub stiffness: Option<f64>,
    /// The least confidence of all that was used.
    pub confidence: Confidence,
}

/// Looks up the unit shear of a wall.
///
/// # Errors
/// What keeps the table from answering: a value that it does not list, a nail that no row accepts, a condition of the
/// standard that the wall does not keep, or a recalled value that is not accepted.
///
/// ```
/// use edgenail::capacity::{Assembly, DrivenNail, Edition, LoadKind, Method, PanelMaterial, UnitShearQuery, unit_shear};
/// use edgenail::house::Coating;
/// use edgenail::published::Grade;
/// use edgenail::{Decimal, Length};
/// let inch = Length::inches;
/// let nail = DrivenNail { shank: Decimal::thousandths(131), head: Decimal::thousandths(281), length: inch(2) + Length::sixteenths(8), coating: Coating::Bright };
/// let assembly = Assembly {
///     grade: Grade::Sheathing, thickness: Length::sixteenths(7), material: PanelMaterial::Osb, nail,
///     edge_spacing: inch(6), field_spacing: inch(6), blocked: true, stud_spacing: inch(24), across_studs: false,
///     specific_gravity: Decimal::hundredths(50), seam_member: Length::sixteenths(24), wet_framing: false,
///     inside_hold_downs: false,
/// };
/// let query = UnitShearQuery { edition: Edition::Sdpws2015, load: LoadKind::Seismic, method: Method::Asd, assembly, high_seismic: false, accept_unverified: false, estimate: false };
/// let found = unit_shear(&query).map_err(|issues| issues[0].message.clone())?;
/// assert_eq!((found.nominal, found.design), (480.0, 240.0));
/// # Ok::<(), String>(())
/// ```
pub fn unit_shear(query: &UnitShearQuery) -> Result<UnitShear, Vec<Issue>> {
    check(query)?;
    let assembly = &query.assembly;
    let (row, estimate) = row_of(query)?;
    let eight = row.nail == Pennyweight::Eight;
    let close = assembly.stud_spacing <= rule::THICKER_ROW_STUDS.value || assembly.across_studs;
    let thicker =
        (assembly.blocked && estimate.is_none() && eight && close && assembly.thickness < rule::THICKER_ROW)
            .then(|| find(row.edition, row, rule::THICKER_ROW, row.edge_spacing))
            .flatten();
    let (shear_row, thicker_row_left) = match thicker {
        Some(thicker) if query.accept_unverified => (thicker, false),
        Some(_) => (row, true),
        None => (row, false),
    };
    // An unblocked wall takes the row of studs at 24 in. and nails at 6 in., never the thicker one.
    let cell = cell(query, shear_row)?;
    let species = (1.0 - (rule::SPECIES.value - assembly.specific_gravity.as_f64())).min(1.0);
    let unblocked = if assembly.blocked {
        None
    } else {
        Some(unblocked(query)?)
    };
    // What a wall is nailed with is told by its row: a galvanized box nail of the 10d row is taken as 10d too.
    let inside =
        (row.edition == RowEdition::Of2021 && row.nail == Pennyweight::Ten && assembly.inside_hold_downs)
            .then_some(rule::INSIDE_HOLD_DOWNS.value);
    let scaled = estimate.map_or(1.0, |estimate| estimate.factor);
    let nominal = cell * species * unblocked.unwrap_or(1.0) * inside.unwrap_or(1.0) * scaled;
    let factor = design_factor(query);
    let design = match query.method {
        Method::Asd => nominal / factor.value,
        Method::Lrfd => nominal * factor.value,
    };
    let mut confidence = shear_row.confidence.max(row.confidence).max(factor.confidence);
    if species < 1.0 {
        confidence = confidence.max(rule::SPECIES.confidence);
    }
    if unblocked.is_some() {
        confidence = confidence.max(rule::UNBLOCKED.confidence);
    }
    if inside.is_some() {
        confidence = confidence.max(rule::INSIDE_HOLD_DOWNS.confidence);
    }
    if shear_row.thickness != row.thickness {
        confidence = confidence.max(rule::THICKER_ROW_STUDS.confidence);
    }
    let (stiffness, of_stiffness) = stiffness(assembly, row);
    confidence = confidence.max(of_stiffness);
    if estimate.is_some() {
        confidence = Confidence::Memory;
    }
    if query.high_seismic && nominal > rule::WIDER_SHEAR.value && assembly.seam_member < rule::THREE_X {
        return Err(vec![fault::narrow(
            assembly.seam_member,
            "a nominal unit shear above 700 plf in seismic design category D, E or F",
        )]);
    }
    if confidence == Confidence::Memory && !query.accept_unverified {
        let estimated = estimate.is_some();
        return Err(vec![fault::unverified(
            query,
            row,
            factor,
            unblocked.is_some(),
            estimated,
        )]);
    }
    Ok(UnitShear {
        query: *query,
        row,
        shear_row,
        thicker_row_left,
        cell,
        species,
        unblocked,
        inside_hold_downs: inside,
        estimate,
        nominal,
        factor,
        design,
        stiffness: estimate.is_none().then_some(stiffness),
        confidence,
    })
}

/// The row that the wall is built to: of those whose nail the wall's nail serves, the strongest; or one that is scaled for
/// the nail, where that is asked for.
fn row_of(query: &UnitShearQuery) -> Result<(&'static PanelRow, Option<Estimate>), Vec<Issue>> {
    let assembly = &query.assembly;
    let edition = match query.edition {
        Edition::Sdpws2008 | Edition::Sdpws2015 => RowEdition::To2015,
        Edition::Sdpws2021 => RowEdition::Of2021,
    };
    let of_panel = |row: &&PanelRow| {
        row.edition == edition && row.grade == assembly.grade && row.thickness == assembly.thickness
    };
    let mut best: Option<&'static PanelRow> = None;
    for row in &PANEL_ROWS {
        if of_panel(&row)
            && row.edge_spacing == assembly.edge_spacing
            && fits(&assembly.nail, row)
            && best.is_none_or(|best| best.wind < row.wind)
        {
            best = Some(row);
        }
    }
    if let Some(best) = best {
        return Ok((best, None));
    }
    let rows: Vec<&'static PanelRow> = PANEL_ROWS.iter().filter(of_panel).collect();
    if rows.is_empty() {
        return Err(vec![fault::thickness(edition, assembly)]);
    }
    if !rows.iter().any(|row| row.edge_spacing == assembly.edge_spacing) {
        return Err(vec![fault::spacing(&rows, assembly)]);
    }
    if query.estimate {
        return estimate(query, &rows).map(|(row, estimate)| (row, Some(estimate)));
    }
    Err(vec![fault::nail(&rows, assembly)])
}

/// The row of another thickness with the same grade, nail and edge nailing.
fn find(
    edition: RowEdition,
    like: &PanelRow,
    thickness: Length,
    edge_spacing: Length,
) -> Option<&'static PanelRow> {
    PANEL_ROWS.iter().find(|row| {
        row.edition == edition
            && row.grade == like.grade
            && row.nail == like.nail
            && row.thickness == thickness
            && row.edge_spacing == edge_spacing
    })
}

fn cell(query: &UnitShearQuery, row: &PanelRow) -> Result<f64, Vec<Issue>> {
    let value = match (query.load, row.edition) {
        (LoadKind::Wind, _) | (LoadKind::Seismic, RowEdition::Of2021) => Some(row.wind),
        (LoadKind::Seismic, RowEdition::To2015) => row.seismic,
    };
    value.map(f64::from).ok_or_else(|| {
        vec![fault(
            Code::UnlistedValue,
            "load",
            "seismic",
            "wind",
            "this row of the table has no collected value for seismic load",
        )]
    })
}

/// The factor of an unblocked wall: that of the next wider listed stud spacing.
fn unblocked(query: &UnitShearQuery) -> Result<f64, Vec<Issue>> {
    let assembly = &query.assembly;
    if query.edition == Edition::Sdpws2021 {
        return Err(vec![fault(
            Code::UnlistedValue,
            "edition",
            query.edition.name(),
            "SDPWS 2008 or SDPWS 2015",
            "factors of unblocked walls were collected for 2008 and 2015 only",
        )]);
    }
    let listed = rule::UNBLOCKED
        .value
        .iter()
        .find(|(studs, _, _)| assembly.stud_spacing <= Length::inches(*studs));
    match listed {
        Some((_, close, wide)) => Ok(if assembly.field_spacing <= Length::inches(6) {
            *close
        } else {
            *wide
        }),
        None => Err(vec![fault(
            Code::UnlistedValue,
            "assembly/stud_spacing",
            &fault::inches(assembly.stud_spacing),
            "12, 16, 20 or 24 in.",
            "unblocked walls are listed for studs at most 24 in. apart",
        )]),
    }
}

const fn design_factor(query: &UnitShearQuery) -> Rule<f64> {
    match (query.edition, query.method, query.load) {
        (Edition::Sdpws2008 | Edition::Sdpws2015, Method::Asd, _) => rule::ASD_TO_2015,
        (Edition::Sdpws2008 | Edition::Sdpws2015, Method::Lrfd, _) => rule::LRFD_TO_2015,
        (Edition::Sdpws2021, Method::Asd, LoadKind::Wind) => rule::ASD_WIND_2021,
        (Edition::Sdpws2021, Method::Asd, LoadKind::Seismic) => rule::ASD_SEISMIC_2021,
        (Edition::Sdpws2021, Method::Lrfd, LoadKind::Wind) => rule::LRFD_WIND_2021,
        (Edition::Sdpws2021, Method::Lrfd, LoadKind::Seismic) => rule::LRFD_SEISMIC_2021,
    }
}

/// Apparent stiffness of the panel as built. That of an unblocked wall is the row's of nails at 6 in., which it is
/// looked up with.
fn stiffness(assembly: &Assembly, row: &PanelRow) -> (f64, Confidence) {
    use super::assembly::PanelMaterial;
    let mut confidence = row.confidence;
    let mut value = match assembly.material {
        PanelMaterial::Osb => row.stiffness_osb.as_f64(),
        PanelMaterial::Plywood3 => row.stiffness_plywood.as_f64(),
        PanelMaterial::Plywood4 => {
            confidence = confidence.max(rule::MORE_PLIES.confidence);
            row.stiffness_plywood.as_f64() * rule::MORE_PLIES.value
        }
    };
    if assembly.wet_framing {
        confidence = confidence.max(rule::WET.confidence);
        value *= rule::WET.value;
    }
    (value, confidence)
}
