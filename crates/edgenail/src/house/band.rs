//! Floor bands: what lies between two storeys, or between foundation and first storey.

use super::{LayoutOrigin, Plate};
use crate::length::Length;
use serde::Serialize;

/// How floor members run.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Direction {
    /// Across the wall: their ends show in the wall's face.
    Across,
    /// Along the wall: one member lies in the wall's face.
    Along,
}

/// What the floor members are.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum MemberKindInBand {
    /// Sawn joists.
    SawnJoist,
    /// I-joists.
    IJoist,
    /// Floor trusses.
    Truss,
}

/// What a rim is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum RimKind {
    /// Sawn lumber, which shrinks.
    Sawn,
    /// Engineered lumber.
    Engineered,
}

/// The board that closes the floor band.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Rim {
    /// What it is made of.
    pub kind: RimKind,
    /// Thickness, across the wall's face.
    pub thickness: Length,
}

/// Joists or trusses of a band.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct BandMembers {
    /// How they run.
    pub direction: Direction,
    /// What they are.
    pub member: MemberKindInBand,
    /// Width of one member's end.
    pub width: Length,
    /// Height of the members and of the rim.
    pub depth: Length,
    /// Height of the chords of a truss along the wall.
    pub chord: Length,
    /// On-centre spacing; of a truss along the wall, the spacing of its webs.
    pub spacing: Length,
    /// Where their layout is pulled from.
    pub origin: LayoutOrigin,
    /// The board that closes the band, if there is one.
    pub rim: Option<Rim>,
    /// Blocks between the members, flush with the wall's face.
    pub blocking_between: bool,
}

/// One layer of a floor band.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum BandLayer {
    /// A mudsill or other plate lying flat.
    Plate(Plate),
    /// Joists or trusses.
    Members(BandMembers),
    /// The edge of the subfloor, which holds no nail.
    Subfloor {
        /// Thickness of the floor panel.
        thickness: Length,
    },
}

impl BandLayer {
    /// How much it adds to the height of the wall.
    pub const fn height(&self) -> Length {
        match self {
            Self::Plate(plate) => plate.thickness,
            Self::Members(members) => members.depth,
            Self::Subfloor { thickness } => *thickness,
        }
    }
}

/// The layers between two storeys, from the lowest up.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct FloorBand {
    /// Such as `second floor band`.
    pub name: String,
    /// From the lowest up.
    pub layers: Vec<BandLayer>,
}
