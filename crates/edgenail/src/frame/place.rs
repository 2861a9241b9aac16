//! Where things are in a frame.

use crate::geometry::{Interval, Rect};
use crate::house::{Bearing, Method, OpeningKind, RimKind};
use crate::length::Length;
use serde::Serialize;

/// Where a section is.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct SectionPlace {
    /// From its left end to its right end.
    pub x: Interval,
    /// Underside of its lowest plate.
    pub base: Length,
    /// Top of its uppermost plate; under a rake, where a flat wall would end.
    pub top: Length,
    /// Highest line that sheathing may reach.
    pub sheathing_top: Length,
    /// What its lowest plate stands on.
    pub bears: Bearing,
    /// The reach below the lowest plate that the user fixed.
    pub reach: Option<Length>,
    /// A gable truss stands on it: the seam keeps clear of its plate line.
    pub gable: bool,
}

/// Where a storey is.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct StoreyPlace {
    /// Its name.
    pub name: String,
    /// Its section's place in the frame's list.
    pub section: u32,
    /// How many storeys of its section are below it.
    pub stage: u32,
    /// Underside of the lowest bottom plate.
    pub base: Length,
    /// Upper face of the uppermost bottom plate.
    pub studs_from: Length,
    /// Underside of the lowest top plate; under raked plates, of a flat wall.
    pub studs_to: Length,
    /// Upper face of the uppermost top plate; under raked plates, of a flat wall.
    pub top: Length,
    /// Underside of the uppermost top plate.
    pub topmost_from: Length,
    /// Butt joints of its topmost plate, in wall coordinates.
    pub plate_joints: Vec<Length>,
    /// Face width of its studs.
    pub stud_width: Length,
    /// Depth of its studs.
    pub stud_depth: Length,
    /// On-centre spacing.
    pub spacing: Length,
    /// Centre of its layout's zero, in wall coordinates.
    pub zero: Length,
    /// Layout runs to the left from the zero.
    pub from_right: bool,
}

impl StoreyPlace {
    /// The heights of the topmost plate.
    pub fn topmost_plate(&self) -> Interval {
        Interval::new(self.topmost_from, self.top)
    }
}

/// Where a floor band is.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct BandPlace {
    /// Its name.
    pub name: String,
    /// Its section's place in the frame's list.
    pub section: u32,
    /// From its lowest layer's underside to its uppermost layer's upper face.
    pub y: Interval,
    /// Where the rim is, if there is one.
    pub rim: Option<(Interval, RimKind)>,
    /// Blocks stand between the members.
    pub blocked: bool,
}

/// Where an opening is.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct OpeningPlace {
    /// Its name.
    pub name: String,
    /// What it is for.
    pub kind: OpeningKind,
    /// The rough opening.
    pub rect: Rect,
    /// Its storey's place in the frame's list.
    pub storey: u32,
}

/// Where a patch is.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct PatchPlace {
    /// Its name.
    pub name: String,
    /// The patch.
    pub rect: Rect,
}

/// Where a segment is.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct SegmentPlace {
    /// The designer's mark.
    pub mark: String,
    /// How it resists load.
    pub method: Method,
    /// From its left end to its right end, underside of the bottom plate to top of the topmost plate.
    pub rect: Rect,
    /// Its storey's place in the frame's list.
    pub storey: u32,
    /// Its place in the wall's list of segments.
    pub segment: u32,
}

/// How a wall's end meets its neighbour.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum EndCondition {
    /// No neighbour: sheathing ends with the frame.
    Free,
    /// The frame runs to the corner: sheathing ends with it.
    Through,
    /// The frame butts against a neighbour and the sheathing laps past it.
    Laps {
        /// How far the sheathing reaches past the frame's end.
        by: Length,
    },
    /// An inside corner: the sheathing stops at the neighbour's face.
    Inside {
        /// How far the sheathing stops short of the frame's end.
        by: Length,
    },
}
