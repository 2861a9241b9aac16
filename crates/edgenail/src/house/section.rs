//! A stretch of wall with one base, one stack of levels, one top.

use super::{BandLayer, FloorBand, Storey, Top};
use crate::length::Length;
use serde::Serialize;

/// What the wall's lowest plate stands on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Bearing {
    /// A slab or foundation: sheathing never bears on it.
    Concrete,
    /// A floor or wall below that this wall does not draw.
    Floor,
}

/// Where the sheathing ends at the bottom.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Bottom {
    /// What the lowest plate stands on.
    pub bears: Bearing,
    /// How far the sheathing reaches below the underside of the lowest plate: 0 flush, above zero overhanging,
    /// below zero held up or lapping. `None` leaves the choice to the search.
    pub reach: Option<Length>,
    /// Height of the lowest plate's underside above the ground outside, where it is known.
    pub above_grade: Option<Length>,
}

/// A level of a section's stack.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
#[expect(
    clippy::large_enum_variant,
    reason = "a section has few levels, and most of them are storeys"
)]
pub enum Level {
    /// Plates and studs.
    Storey(Storey),
    /// Sill, joists or trusses, rim, subfloor.
    FloorBand(FloorBand),
}

impl Level {
    /// From the underside of its lowest layer to the top of its uppermost.
    pub fn height(&self) -> Length {
        match self {
            Self::Storey(storey) => {
                let plates = storey.bottom_plates.iter().chain(&storey.top_plates);
                storey.stud.length + plates.map(|plate| plate.thickness).sum()
            }
            Self::FloorBand(band) => band.layers.iter().map(BandLayer::height).sum(),
        }
    }
}

/// A stretch of wall with one base, one stack of levels, one top.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Section {
    /// Left end.
    pub from: Length,
    /// Right end.
    pub to: Length,
    /// Height of the underside of the lowest plate above the wall's own zero line.
    pub base: Length,
    /// Where the sheathing ends at the bottom.
    pub bottom: Bottom,
    /// From bottom to top.
    pub stack: Vec<Level>,
    /// What is above the uppermost plate.
    pub top: Top,
}
