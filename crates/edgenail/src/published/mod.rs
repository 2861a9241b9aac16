//! Values of published standards, as they were collected, each with where it was seen and how far it may be trusted.
//!
//! The two files of comma-separated values beside this one are the collection; `rows.rs` is made of them. Nothing is
//! filled in: a cell that is not there is missing, and who asks for it is told so.

mod facing;
mod rows;

pub use facing::{FacingMaterial, FacingRow, FacingTable, FacingValue, Fastener};
pub use rows::{CELLS, FACING_ROWS, PANEL_ROWS};

use crate::decimal::Decimal;
use crate::length::Length;
use serde::Serialize;

/// How far a value may be trusted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Confidence {
    /// Two publications agree, or one agrees with another by exact arithmetic.
    TwoSources,
    /// Seen in one publication.
    Source,
    /// Recalled, not checked against print: refused unless the caller accepts it, and marked in every result.
    Memory,
}

impl Confidence {
    /// The word that results show.
    pub const fn name(self) -> &'static str {
        match self {
            Self::TwoSources => "two-sources",
            Self::Source => "source",
            Self::Memory => "memory",
        }
    }

    /// What a derivation says of it.
    pub const fn note(self) -> &'static str {
        match self {
            Self::TwoSources => "two sources",
            Self::Source => "one source",
            Self::Memory => "recalled, not checked against the printed standard",
        }
    }
}

/// Sheathing grade of a row of the nominal unit shear table.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Grade {
    /// Wood structural panels marked Structural I.
    StructuralI,
    /// Other wood structural panels.
    Sheathing,
}

impl Grade {
    /// As the table prints it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::StructuralI => "Structural I",
            Self::Sheathing => "Sheathing",
        }
    }
}

/// Size of the nail of a row.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Pennyweight {
    /// 6d.
    #[serde(rename = "6d")]
    Six,
    /// 8d.
    #[serde(rename = "8d")]
    Eight,
    /// 10d.
    #[serde(rename = "10d")]
    Ten,
}

impl Pennyweight {
    /// As the table prints it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Six => "6d",
            Self::Eight => "8d",
            Self::Ten => "10d",
        }
    }
}

/// Which editions a row belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub enum RowEdition {
    /// SDPWS 2008 and 2015, which print the same values.
    #[serde(rename = "2008/2015")]
    To2015,
    /// SDPWS 2021.
    #[serde(rename = "2021")]
    Of2021,
}

/// A row of the nominal unit shear table for wood structural panels, SDPWS Table 4.3A.
#[derive(Clone, Copy, Debug)]
pub struct PanelRow {
    /// Its edition.
    pub edition: RowEdition,
    /// Its sheathing grade.
    pub grade: Grade,
    /// Least nominal panel thickness.
    pub thickness: Length,
    /// Its nail.
    pub nail: Pennyweight,
    /// Least penetration of the nail into framing.
    pub penetration: Length,
    /// Spacing of nails along panel edges.
    pub edge_spacing: Length,
    /// Nominal unit shear for earthquake in pounds per foot; none where the edition has one value for both.
    pub seismic: Option<u32>,
    /// Nominal unit shear for wind, or the edition's one value, in pounds per foot.
    pub wind: u32,
    /// Apparent shear stiffness with oriented strand board, in kips per inch.
    pub stiffness_osb: Decimal,
    /// Apparent shear stiffness with plywood, in kips per inch.
    pub stiffness_plywood: Decimal,
    /// Where the values were seen.
    pub source: &'static str,
    /// How far they may be trusted.
    pub confidence: Confidence,
}

/// A cell of another table, in the words in which it was collected.
#[derive(Clone, Copy, Debug)]
pub struct Cell {
    /// Which table.
    pub table: &'static str,
    /// Its row and column.
    pub key: &'static str,
    /// Its value or values.
    pub value: &'static str,
    /// Where it was seen.
    pub source: &'static str,
    /// How far it may be trusted.
    pub confidence: Confidence,
}

/// The cell of this table with this key; `None` where it was not collected.
///
/// ```
/// use edgenail::published::{cell, Confidence};
/// let shank = cell("nail length x shank in", "8d common").unwrap();
/// assert_eq!(shank.value, "2-1/2 x 0.131");
/// assert_eq!(shank.confidence, Confidence::TwoSources);
/// assert!(cell("nail length x shank in", "7d common").is_none());
/// ```
pub fn cell(table: &str, key: &str) -> Option<&'static Cell> {
    CELLS.iter().find(|cell| cell.table == table && cell.key == key)
}
