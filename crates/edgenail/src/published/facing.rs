//! Rows of the tables of faces that are no wood structural panels nailed straight to the framing.

use super::Cell;
use crate::decimal::Decimal;
use crate::length::Length;
use serde::Serialize;

/// The table that a row stands in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub enum FacingTable {
    /// SDPWS 2008 and 2015 Table 4.3A: nominal values.
    #[serde(rename = "SDPWS 2008/2015 Table 4.3A")]
    Sdpws43A,
    /// SDPWS 2008 and 2015 Table 4.3B, collected as allowable values for earthquake: half the nominal ones.
    #[serde(rename = "SDPWS 2008/2015 Table 4.3B")]
    Sdpws43B,
    /// SDPWS 2008 and 2015 Table 4.3C: nominal values, one for wind and earthquake.
    #[serde(rename = "SDPWS 2008/2015 Table 4.3C")]
    Sdpws43C,
    /// 780 CMR Table 2306.3, after the IBC of 2009: allowable values.
    #[serde(rename = "780 CMR Table 2306.3")]
    Cmr23063,
}

impl FacingTable {
    /// As results name it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Sdpws43A => "SDPWS 2008/2015 Table 4.3A",
            Self::Sdpws43B => "SDPWS 2008/2015 Table 4.3B",
            Self::Sdpws43C => "SDPWS 2008/2015 Table 4.3C",
            Self::Cmr23063 => "780 CMR Table 2306.3",
        }
    }
}

/// What a face is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum FacingMaterial {
    /// One ply of gypsum wallboard.
    GypsumWallboard,
    /// Two plies of gypsum wallboard, the thickness that of one.
    TwoPlyGypsumWallboard,
    /// Gypsum sheathing in boards 2 ft wide.
    #[serde(rename = "gypsum_sheathing_2_ft")]
    GypsumSheathing2Ft,
    /// Gypsum sheathing in boards 4 ft wide.
    #[serde(rename = "gypsum_sheathing_4_ft")]
    GypsumSheathing4Ft,
    /// Plaster of 1/2 in. on gypsum lath, the thickness that of the lath.
    GypsumLathAndPlaster,
    /// Portland cement plaster on wire lath.
    PortlandCementPlaster,
    /// Structural fiberboard.
    StructuralFiberboard,
    /// Particleboard of grade M-S or M-2.
    Particleboard,
    /// Plywood siding, nailed to the framing.
    PlywoodSiding,
    /// Wood structural panels marked Structural I over gypsum of 1/2 or 5/8 in.
    StructuralIOverGypsum,
    /// Other wood structural panels over gypsum of 1/2 or 5/8 in.
    SheathingOverGypsum,
    /// Plywood siding over gypsum of 1/2 or 5/8 in.
    PlywoodSidingOverGypsum,
    /// Wood structural panels marked Structural I, stapled to the framing.
    StapledStructuralI,
    /// The same, stapled over gypsum of 1/2 or 5/8 in.
    StapledStructuralIOverGypsum,
}

impl FacingMaterial {
    /// As results name it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::GypsumWallboard => "gypsum wallboard",
            Self::TwoPlyGypsumWallboard => "gypsum wallboard of two plies",
            Self::GypsumSheathing2Ft => "gypsum sheathing 2 ft wide",
            Self::GypsumSheathing4Ft => "gypsum sheathing 4 ft wide",
            Self::GypsumLathAndPlaster => "gypsum lath and plaster",
            Self::PortlandCementPlaster => "portland cement plaster",
            Self::StructuralFiberboard => "structural fiberboard",
            Self::Particleboard => "particleboard",
            Self::PlywoodSiding => "plywood siding",
            Self::StructuralIOverGypsum => "Structural I panels over gypsum",
            Self::SheathingOverGypsum => "Sheathing panels over gypsum",
            Self::PlywoodSidingOverGypsum => "plywood siding over gypsum",
            Self::StapledStructuralI => "stapled Structural I panels",
            Self::StapledStructuralIOverGypsum => "stapled Structural I panels over gypsum",
        }
    }
}

/// What holds a face, by the name that its row gives it; the row's cell has its sizes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub enum Fastener {
    /// 5d cooler nail.
    #[serde(rename = "cooler_5d")]
    Cooler5d,
    /// 6d cooler nail.
    #[serde(rename = "cooler_6d")]
    Cooler6d,
    /// 8d cooler nails in the face ply, 6d cooler nails 9 in. apart in the base ply.
    #[serde(rename = "cooler_8d_over_6d")]
    Cooler8dOver6d,
    /// No. 6 drywall screw of type S or W.
    #[serde(rename = "screw_no_6")]
    ScrewNo6,
    /// Galvanized roofing nail of 11 gauge.
    #[serde(rename = "roofing_11_gauge")]
    Roofing11Gauge,
    /// Lath nail of 0.092 in.
    #[serde(rename = "lath_nail")]
    LathNail,
    /// Nail of 0.120 in. with a 7/16 in. head for wire lath.
    #[serde(rename = "wire_lath_nail")]
    WireLathNail,
    /// 6d common or galvanized box nail.
    #[serde(rename = "6d")]
    Common6d,
    /// 8d common or galvanized box nail.
    #[serde(rename = "8d")]
    Common8d,
    /// 10d common or galvanized box nail.
    #[serde(rename = "10d")]
    Common10d,
    /// 6d galvanized casing nail.
    #[serde(rename = "casing_6d")]
    Casing6d,
    /// 8d galvanized casing nail.
    #[serde(rename = "casing_8d")]
    Casing8d,
    /// 10d galvanized casing nail.
    #[serde(rename = "casing_10d")]
    Casing10d,
    /// Staple of 16 gauge.
    #[serde(rename = "staple_16_gauge")]
    Staple16Gauge,
}

impl Fastener {
    /// As results name it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Cooler5d => "5d cooler nails",
            Self::Cooler6d => "6d cooler nails",
            Self::Cooler8dOver6d => "8d cooler nails over 6d at 9 in.",
            Self::ScrewNo6 => "No. 6 screws",
            Self::Roofing11Gauge => "11 gauge roofing nails",
            Self::LathNail => "lath nails",
            Self::WireLathNail => "wire lath nails",
            Self::Common6d => "6d nails",
            Self::Common8d => "8d nails",
            Self::Common10d => "10d nails",
            Self::Casing6d => "6d casing nails",
            Self::Casing8d => "8d casing nails",
            Self::Casing10d => "10d casing nails",
            Self::Staple16Gauge => "16 gauge staples",
        }
    }
}

/// A number of a row, with the cell that it was collected in.
#[derive(Clone, Copy, Debug)]
pub struct FacingValue {
    /// The number, in the table's unit.
    pub value: Decimal,
    /// Its cell, which may hold other numbers too.
    pub cell: &'static Cell,
}

/// A row of a table of faces.
#[derive(Clone, Copy, Debug)]
pub struct FacingRow {
    /// Its table.
    pub table: FacingTable,
    /// Its material.
    pub material: FacingMaterial,
    /// Its nominal thickness.
    pub thickness: Length,
    /// Its fastener; none where that was not collected.
    pub fastener: Option<Fastener>,
    /// Spacing of fasteners along edges.
    pub edge_spacing: Length,
    /// Spacing of fasteners between, where the row has one of its own.
    pub field_spacing: Option<Length>,
    /// The widest spacing of studs; none where the row leaves it to the standard.
    pub stud_spacing: Option<Length>,
    /// All edges are backed and fastened.
    pub blocked: bool,
    /// Unit shear for earthquake in pounds per foot, as the table has it: nominal or allowable.
    pub seismic: FacingValue,
    /// Unit shear for wind; none where it was not collected.
    pub wind: Option<FacingValue>,
    /// Apparent shear stiffness in kips per inch; none where it was not collected.
    pub stiffness: Option<FacingValue>,
}
