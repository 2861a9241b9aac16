//! What is above the uppermost plate of a section.

use super::LayoutOrigin;
use crate::length::Length;
use serde::Serialize;

/// A slope, rise over run.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Pitch {
    /// Rise.
    pub rise: Length,
    /// Run, above zero.
    pub run: Length,
}

/// How a rake wall is framed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum RakeBuild {
    /// Studs cut to suit under sloping plates.
    RakedPlates,
    /// Level plates with a ladder of short studs on top, under sloping plates.
    Ladder,
}

/// A wall whose top follows the roof. Its highest point is the base point of both slopes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Rake {
    /// Where the highest point stands, from the wall's left end; at an end of the section for a single slope.
    pub ridge_x: Length,
    /// Height of the highest point above where a flat wall of these studs would end.
    pub peak: Length,
    /// Slope to the left of the ridge.
    pub left: Pitch,
    /// Slope to the right of the ridge.
    pub right: Pitch,
    /// How it is framed.
    pub build: RakeBuild,
}

/// A gable truss standing on the uppermost plate.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct GableTruss {
    /// Where its peak stands, from the wall's left end.
    pub ridge_x: Length,
    /// Height at the ends, above the plate.
    pub heel: Length,
    /// Slope on both sides.
    pub pitch: Pitch,
    /// Face height of its chords.
    pub chord: Length,
    /// Face width of its webs.
    pub web_width: Length,
    /// On-centre spacing of its upright webs.
    pub web_spacing: Length,
    /// How far its face lies behind the sheathing plane; above zero it holds no nail.
    pub setback: Length,
    /// The triangle is sheathed too.
    pub sheathed: bool,
    /// How far the wall's sheets stick up past the plate to hold the truss, where the triangle is not sheathed.
    pub hold_up: Length,
}

/// Roof trusses or rafters that bear on the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct EaveTrusses {
    /// On-centre spacing.
    pub spacing: Length,
    /// Where their layout is pulled from.
    pub origin: LayoutOrigin,
    /// Face width of a heel.
    pub width: Length,
    /// Height of the heels above the plate.
    pub heel: Length,
    /// Blocks stand between the heels.
    pub blocked: bool,
    /// Left open above the blocks for air.
    pub vent_space: Length,
    /// How far the sheets reach up past the plate.
    pub hold_up: Length,
}

/// What is above the uppermost plate.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Top {
    /// Nothing that concerns the sheathing.
    Flat,
    /// The wall follows the roof.
    Rake(Rake),
    /// A gable truss.
    GableTruss(GableTruss),
    /// The heels of roof trusses or rafters.
    EaveTrusses(EaveTrusses),
}
