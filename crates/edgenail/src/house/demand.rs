//! What the house has to resist, and by which rules.

use crate::decimal::Decimal;
use crate::length::Length;
use serde::Serialize;

/// An edition of the Special Design Provisions for Wind and Seismic; there is no default.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub enum Edition {
    /// SDPWS 2008.
    #[serde(rename = "2008")]
    Sdpws2008,
    /// SDPWS 2015.
    #[serde(rename = "2015")]
    Sdpws2015,
    /// SDPWS 2021.
    #[serde(rename = "2021")]
    Sdpws2021,
}

impl Edition {
    /// As results name it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Sdpws2008 => "SDPWS 2008",
            Self::Sdpws2015 => "SDPWS 2015",
            Self::Sdpws2021 => "SDPWS 2021",
        }
    }
}

/// What a lateral load comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum LoadKind {
    /// Wind.
    Wind,
    /// Earthquake.
    Seismic,
}

/// How a nominal value becomes a design value.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum DesignMethod {
    /// Allowable stress design: divided by a reduction factor.
    Asd,
    /// Load and resistance factor design: multiplied by a resistance factor.
    Lrfd,
}

/// How shear is shared by the segments of a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Sharing {
    /// In proportion to strengths that are reduced by 2 b / h: the permitted alternative.
    ReducedStrength,
    /// So that all deflect alike; strengths are reduced for slender segments.
    EqualDeflection,
}

/// What acts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Acting {
    /// Wind along the wall.
    Wind,
    /// Earthquake along the wall.
    Seismic,
    /// Dead load on the wall.
    Dead,
}

/// At which level a lateral load is given.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum LoadLevel {
    /// Strength level, as ASCE 7-10 and later give wind and earthquake.
    Strength,
    /// Level of allowable stress design.
    Asd,
}

/// A load that comes into a wall at the top of a storey.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Load {
    /// What acts.
    pub kind: Acting,
    /// At which level it is given; `None` for dead load, which has one only.
    pub level: Option<LoadLevel>,
    /// Name of the wall.
    pub wall: String,
    /// Name of the storey at whose top it comes in.
    pub storey: String,
    /// Along the wall in pounds; dead load in pounds per foot, down.
    pub amount: Decimal,
}

/// Where one part of a wall hands its shear to the next.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Interface {
    /// Roof into the topmost plate of the highest storey.
    RoofToPlate,
    /// Bottom plate of a storey into the rim or the floor under it.
    PlateToRim,
    /// Rim or floor into the topmost plate of the storey below.
    RimToPlate,
    /// Rim or floor into the mudsill.
    RimToSill,
    /// Mudsill, or a bottom plate that stands on it, into the concrete.
    SillToConcrete,
    /// Bottom plate into a floor or wall that is not drawn.
    PlateToFloor,
}

/// What carries the shear of an interface, by the designer's figures.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Fasteners {
    /// Name of the wall.
    pub wall: String,
    /// Name of the storey whose shear it hands on: the one under a roof or a rim, the one over the others.
    pub storey: String,
    /// Which interface.
    pub interface: Interface,
    /// What they are, such as `16d common`.
    pub name: String,
    /// What one carries along the wall in pounds, at the level of the method.
    pub each: Decimal,
    /// From one to the next.
    pub spacing: Length,
}

/// Who says how segments are sheathed and nailed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Scheduling {
    /// The segments themselves.
    AsGiven,
    /// The demand: of what the stock offers, the cheapest that carries it.
    Cheapest,
}

/// What the house has to resist, and by which rules.
#[expect(
    clippy::struct_excessive_bools,
    reason = "the flags of the document, as it has them"
)]
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct LateralDemand {
    /// The edition of the standard.
    pub edition: Edition,
    /// How nominal becomes design.
    pub method: DesignMethod,
    /// The building is in seismic design category D, E or F.
    pub high_seismic: bool,
    /// The framing is wetter than 19 % when it is built.
    pub wet_framing: bool,
    /// How segments of one line share the shear.
    pub sharing: Sharing,
    /// Design spectral acceleration at short periods, for dead load that rights a wall in an earthquake.
    pub spectral_acceleration: Option<Decimal>,
    /// Values that were recalled may be used.
    pub accept_unverified: bool,
    /// A nail that the table does not list is taken by an engineering estimate, for wind only.
    pub estimate: bool,
    /// Who says how segments are sheathed and nailed.
    pub schedule: Scheduling,
    /// The loads.
    pub loads: Vec<Load>,
    /// What carries the shear of interfaces.
    pub fasteners: Vec<Fasteners>,
}
