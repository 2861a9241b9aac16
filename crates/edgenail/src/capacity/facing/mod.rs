//! Unit shear of faces that the main table of wood structural panels does not list: gypsum, plaster, boards, siding, panels
//! over gypsum, stapled panels.

mod check;
mod explain;
mod input;
mod proportion;
mod row;

pub use input::{Facing, FacingEdition, FacingQuery};
pub use proportion::{Proportion, Reduction};

use super::assembly::{LoadKind, Method};
use super::fault::{self, fault};
use super::rule::{self, Rule};
use crate::issue::{Code, Issue};
use crate::published::{Confidence, FacingMaterial, FacingRow, FacingTable, FacingValue};

/// What the allowable values of 780 CMR may be raised by for wind.
pub const WIND_780_CMR: Rule<f64> = Rule::seen(
    1.4,
    "780 CMR 2306.3, allowable unit shears 40 % higher for wind",
    Confidence::Source,
);

/// What makes an allowable value of SDPWS Table 4.3B nominal.
pub const NOMINAL_43B: Rule<f64> = Rule::seen(
    2.0,
    "SDPWS 2008/2015 Table 4.3B; its nominal values are twice the published ASD values",
    Confidence::TwoSources,
);

/// A unit shear and what it is made of.
#[derive(Clone, Copy, Debug)]
pub struct FacingShear {
    /// What was asked.
    pub query: FacingQuery,
    /// The row.
    pub row: &'static FacingRow,
    /// The cell, in pounds per foot.
    pub cell: FacingValue,
    /// Factor for the framing's specific gravity; none where the source states none.
    pub species: Option<f64>,
    /// Nominal unit shear in pounds per foot; none of a table of allowable values.
    pub nominal: Option<f64>,
    /// The factor that makes it a design value; of an allowable one, what wind raises it by.
    pub factor: Option<Rule<f64>>,
    /// Design unit shear in pounds per foot.
    pub design: f64,
    /// Apparent shear stiffness in kips per inch; none where it was not collected or is [left out](Self::left_out).
    pub stiffness: Option<f64>,
    /// The least confidence of all that was used.
    pub confidence: Confidence,
}

/// Looks up the unit shear of a face that is no wood structural panel nailed to the framing.
///
/// # Errors
/// What keeps the tables from answering: a cell that was not collected, which is named with those that were; a condition
/// of the standard that the face does not keep; a recalled value that is not accepted.
///
/// ```
/// use edgenail::capacity::{Facing, FacingEdition, FacingQuery, LoadKind, Method, facing};
/// use edgenail::published::{FacingMaterial, Fastener};
/// use edgenail::Length;
/// let wallboard = Facing {
///     material: FacingMaterial::GypsumWallboard, thickness: Length::sixteenths(8), fastener: Some(Fastener::Cooler5d),
///     edge_spacing: Length::inches(7), field_spacing: None, stud_spacing: Length::inches(16), blocked: false,
///     specific_gravity: None, seam_member: Length::sixteenths(24),
/// };
/// let query = FacingQuery {
///     edition: FacingEdition::Sdpws2015, load: LoadKind::Seismic, method: Method::Asd, facing: wallboard,
///     high_seismic: false, accept_unverified: false,
/// };
/// let found = facing(&query).map_err(|issues| issues[0].message.clone())?;
/// // 780 CMR Table 2502.1 allows 100 plf.
/// assert_eq!((found.nominal, found.design), (Some(200.0), 100.0));
/// # Ok::<(), String>(())
/// ```
pub fn facing(query: &FacingQuery) -> Result<FacingShear, Vec<Issue>> {
    check::check(query)?;
    let row = row::find(query)?;
    let asked = &query.facing;
    let cell = match query.load {
        LoadKind::Seismic => row.seismic,
        // The allowable values of 780 CMR are one for both loads, raised for wind.
        LoadKind::Wind if row.table == FacingTable::Cmr23063 => row.seismic,
        LoadKind::Wind => row.wind.ok_or_else(|| vec![row::no_wind(row)])?,
    };
    let species = species(query, row)?;
    let tabulated = cell.value.as_f64() * species.unwrap_or(1.0);
    let (nominal, factor, design) = match (row.table, query.method) {
        (FacingTable::Cmr23063, Method::Lrfd) => return Err(vec![row::no_lrfd()]),
        (FacingTable::Cmr23063, Method::Asd) => match query.load {
            LoadKind::Seismic => (None, None, tabulated),
            LoadKind::Wind => (None, Some(WIND_780_CMR), tabulated * WIND_780_CMR.value),
        },
        (table, method) => {
            let nominal = if table == FacingTable::Sdpws43B {
                tabulated * NOMINAL_43B.value
            } else {
                tabulated
            };
            match method {
                Method::Asd => (
                    Some(nominal),
                    Some(rule::ASD_TO_2015),
                    nominal / rule::ASD_TO_2015.value,
                ),
                Method::Lrfd => (
                    Some(nominal),
                    Some(rule::LRFD_TO_2015),
                    nominal * rule::LRFD_TO_2015.value,
                ),
            }
        }
    };
    let comparable = nominal.unwrap_or(tabulated * NOMINAL_43B.value);
    if query.high_seismic
        && check::is_panel(asked.material)
        && comparable > rule::WIDER_SHEAR.value
        && asked.seam_member < rule::THREE_X
    {
        let because = "a nominal unit shear above 700 plf in seismic design category D, E or F";
        return Err(fault::within(
            "facing",
            vec![check::narrow(asked.seam_member, because)],
        ));
    }
    let mut confidence = cell.cell.confidence;
    if let Some(factor) = factor {
        confidence = confidence.max(factor.confidence);
    }
    if species.is_some_and(|factor| factor < 1.0) {
        confidence = confidence.max(rule::SPECIES.confidence);
    }
    if confidence == Confidence::Memory && !query.accept_unverified {
        return Err(vec![unverified(cell, factor)]);
    }
    let stiffness = row.stiffness.filter(|found| query.accepts(found.cell.confidence));
    if let Some(found) = stiffness {
        confidence = confidence.max(found.cell.confidence);
    }
    Ok(FacingShear {
        query: *query,
        row,
        cell,
        species,
        nominal,
        factor,
        design,
        stiffness: stiffness.map(|found| found.value.as_f64()),
        confidence,
    })
}

impl FacingQuery {
    /// Whether a value may be used.
    fn accepts(&self, confidence: Confidence) -> bool {
        self.accept_unverified || confidence < Confidence::Memory
    }
}

impl FacingShear {
    /// What was collected for this face and is left out of the result, because it was recalled and that is not accepted.
    pub fn left_out(&self) -> Vec<&'static str> {
        let mut left = Vec::new();
        if self.row.stiffness.is_some() && self.stiffness.is_none() {
            left.push("apparent shear stiffness");
        }
        let (proportion, all) = (self.proportion(), proportion::of(&self.query, self.row, true));
        match (proportion, all) {
            (None, Some(_)) => left.push("greatest proportion"),
            (Some(taken), Some(all)) if taken.reductions.len() < all.reductions.len() => {
                left.push("reductions for slender segments");
            }
            _ => {}
        }
        left
    }

    /// What nobody looked at, because the query does not say it or the table was not collected that far.
    pub fn not_checked(&self) -> Vec<&'static str> {
        let row = self.row;
        let mut list = vec![if row.fastener.is_some() {
            "that the fastener has the sizes that its row names, and reaches deep enough into the framing"
        } else {
            "the fastener, which was not collected with this row"
        }];
        if !check::is_panel(row.material) || row.material == FacingMaterial::Particleboard {
            list.push("the seismic design categories that the material is allowed in");
            if row.stud_spacing.is_none() {
                list.push("the widest stud spacing of this material, which was not collected");
            }
        }
        list
    }

    /// The greatest proportion of a segment with this face, and what slender ones lose; none where it was not collected or
    /// is [left out](Self::left_out).
    pub fn proportion(&self) -> Option<Proportion> {
        proportion::of(&self.query, self.row, self.query.accept_unverified)
    }
}

/// The factor for light framing, where the source of the table states one.
fn species(query: &FacingQuery, row: &FacingRow) -> Result<Option<f64>, Vec<Issue>> {
    let Some(gravity) = query.facing.specific_gravity else {
        return Ok(None);
    };
    let gravity = gravity.as_f64();
    let stated = row.material != FacingMaterial::Particleboard && row.table != FacingTable::Cmr23063;
    if stated {
        return Ok(Some((1.0 - (rule::SPECIES.value - gravity)).min(1.0)));
    }
    if gravity >= rule::SPECIES.value {
        return Ok(None);
    }
    Err(vec![fault(
        Code::UnlistedValue,
        "facing/specific_gravity",
        &gravity.to_string(),
        "0.5 or more",
        &format!(
            "what {} lose in lighter framing was not collected ({})",
            row.material.name(),
            row.table.name()
        ),
    )])
}

/// The result would rest on values that were recalled.
fn unverified(cell: FacingValue, factor: Option<Rule<f64>>) -> Issue {
    let mut recalled: Vec<String> = Vec::new();
    if cell.cell.confidence == Confidence::Memory {
        recalled.push(format!("`{}` of {}", cell.cell.key, cell.cell.table));
    }
    if let Some(factor) = factor.filter(|factor| factor.confidence == Confidence::Memory) {
        recalled.push(factor.source.to_owned());
    }
    fault(
        Code::Unverified,
        "accept_unverified",
        "false",
        "true, after checking the printed standard",
        &format!(
            "these values were recalled and not checked against the printed standard: {}",
            recalled.join("; ")
        ),
    )
}
