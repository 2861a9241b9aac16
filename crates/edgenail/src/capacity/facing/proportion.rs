//! How slender a segment with a face may be, and what slender ones lose.

use super::input::{FacingEdition, FacingQuery};
use crate::capacity::assembly::LoadKind;
use crate::published::{Cell, Confidence, FacingMaterial, FacingRow, FacingTable, cell};

/// The greatest proportion of a segment, height over length.
#[derive(Clone, Debug, PartialEq)]
pub struct Proportion {
    /// The greatest.
    pub most: f64,
    /// Where it was seen.
    pub source: &'static str,
    /// How far it may be trusted.
    pub confidence: Confidence,
    /// What slender segments lose.
    pub reductions: Vec<Reduction>,
}

/// What slender segments lose.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Reduction {
    /// The table and the segments that it holds for, in the words in which they were collected.
    pub of: (&'static str, &'static str),
    /// The factor, over height `h` and length `b_s`.
    pub formula: &'static str,
    /// Where it was seen.
    pub source: &'static str,
    /// How far it may be trusted.
    pub confidence: Confidence,
}

const TABLE: &str = "max h/b_s (2008/2015 Table 4.3.4)";

const PANEL_REDUCTIONS: [(&str, &str, FacingEdition, Option<LoadKind>); 3] = [
    (
        "aspect reduction seismic (2008; IBC 2006)",
        "WSP 2:1 < h/b <= 3.5:1",
        FacingEdition::Sdpws2008,
        Some(LoadKind::Seismic),
    ),
    (
        "aspect reduction on strength (2015/2021)",
        "WSP h/b > 2",
        FacingEdition::Sdpws2015,
        None,
    ),
    (
        "aspect reduction for distribution in proportion to strength (2015/2021)",
        "WSP h/b > 2",
        FacingEdition::Sdpws2015,
        None,
    ),
];

const FIBERBOARD_REDUCTIONS: [(&str, &str, FacingEdition, Option<LoadKind>); 3] = [
    (
        "aspect reduction for distribution (2015/2021); seismic (2008)",
        "structural fiberboard h/b > 1",
        FacingEdition::Sdpws2008,
        Some(LoadKind::Seismic),
    ),
    (
        "aspect reduction on strength (2015/2021)",
        "structural fiberboard h/b > 1",
        FacingEdition::Sdpws2015,
        None,
    ),
    (
        "aspect reduction for distribution (2015/2021); seismic (2008)",
        "structural fiberboard h/b > 1",
        FacingEdition::Sdpws2015,
        None,
    ),
];

/// What was collected for this row; recalled cells only where they are accepted.
pub(super) fn of(query: &FacingQuery, row: &FacingRow, recalled: bool) -> Option<Proportion> {
    if row.table == FacingTable::Cmr23063 {
        return None;
    }
    let (key, reductions): (_, &[_]) = match row.material {
        FacingMaterial::GypsumWallboard | FacingMaterial::TwoPlyGypsumWallboard => {
            ("sheathing=gypsum wallboard", &[])
        }
        FacingMaterial::PortlandCementPlaster => ("sheathing=portland cement plaster", &[]),
        FacingMaterial::StructuralFiberboard => ("sheathing=structural fiberboard", &FIBERBOARD_REDUCTIONS),
        FacingMaterial::Particleboard => ("sheathing=particleboard blocked", &[]),
        FacingMaterial::PlywoodSiding
        | FacingMaterial::StructuralIOverGypsum
        | FacingMaterial::SheathingOverGypsum
        | FacingMaterial::PlywoodSidingOverGypsum => ("sheathing=WSP blocked", &PANEL_REDUCTIONS),
        _ => return None,
    };
    let accepted = |cell: &&'static Cell| recalled || cell.confidence < Confidence::Memory;
    let found = cell(TABLE, key).filter(accepted)?;
    let reductions = reductions
        .iter()
        .filter(|(.., edition, load)| *edition == query.edition && load.is_none_or(|load| load == query.load))
        .filter_map(|(table, key, ..)| cell(table, key).filter(accepted))
        .map(|cell| Reduction {
            of: (cell.table, cell.key),
            formula: cell.value,
            source: cell.source,
            confidence: cell.confidence,
        });
    Some(Proportion {
        most: most(found.value, row.blocked)?,
        source: found.source,
        confidence: found.confidence,
        reductions: reductions.collect(),
    })
}

/// The number of a cell such as `2:1` or `2:1 (over 1.5:1 must be blocked)`.
fn most(value: &str, blocked: bool) -> Option<f64> {
    let said = match value.split_once("(over ") {
        Some((_, unblocked)) if !blocked => unblocked,
        _ => value,
    };
    said.split(':').next()?.parse().ok()
}
