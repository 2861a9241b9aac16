//! What is asked of the tables of faces that are no wood structural panels nailed to the framing.

use crate::capacity::assembly::{Edition, LoadKind, Method};
use crate::decimal::Decimal;
use crate::length::Length;
use crate::published::{FacingMaterial, Fastener};
use serde::Serialize;

/// An edition of one of the standards that list faces; there is no default.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub enum FacingEdition {
    /// SDPWS 2008.
    #[serde(rename = "2008")]
    Sdpws2008,
    /// SDPWS 2015.
    #[serde(rename = "2015")]
    Sdpws2015,
    /// SDPWS 2021, of which nothing was collected.
    #[serde(rename = "2021")]
    Sdpws2021,
    /// 780 CMR 2306.3, after the IBC of 2009: allowable values of stapled panels.
    #[serde(rename = "780_cmr")]
    Cmr780,
}

impl FacingEdition {
    /// As results name it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Sdpws2008 => "SDPWS 2008",
            Self::Sdpws2015 => "SDPWS 2015",
            Self::Sdpws2021 => "SDPWS 2021",
            Self::Cmr780 => "780 CMR 2306.3",
        }
    }
}

impl From<Edition> for FacingEdition {
    fn from(edition: Edition) -> Self {
        match edition {
            Edition::Sdpws2008 => Self::Sdpws2008,
            Edition::Sdpws2015 => Self::Sdpws2015,
            Edition::Sdpws2021 => Self::Sdpws2021,
        }
    }
}

/// A face, as its table tells faces apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Facing {
    /// What it is made of.
    pub material: FacingMaterial,
    /// Nominal thickness, as the table lists it.
    pub thickness: Length,
    /// What holds it; none only where the collected row names no fastener.
    pub fastener: Option<Fastener>,
    /// Spacing of fasteners along edges.
    pub edge_spacing: Length,
    /// Spacing of fasteners between: of panels, and where the row lists one.
    pub field_spacing: Option<Length>,
    /// The largest centre distance of studs in the segment.
    pub stud_spacing: Length,
    /// All edges are backed and fastened.
    pub blocked: bool,
    /// The lowest specific gravity of all members that are nailed: of panels only.
    pub specific_gravity: Option<Decimal>,
    /// The least width of the members that two panels share.
    pub seam_member: Length,
}

/// What is asked of the tables.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct FacingQuery {
    /// The edition.
    pub edition: FacingEdition,
    /// What the load comes from.
    pub load: LoadKind,
    /// How nominal becomes design.
    pub method: Method,
    /// The face.
    pub facing: Facing,
    /// The building is in seismic design category D, E or F.
    pub high_seismic: bool,
    /// Values that were recalled and not checked against print may be used.
    pub accept_unverified: bool,
}
