//! A wall as seen from its sheathed face.

use super::{GivenLayout, Measured, Practice, Section, Segment};
use crate::length::Length;
use serde::Serialize;

/// Which side of the house a wall's sheathing faces.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Face {
    /// To the weather.
    Exterior,
    /// To a room.
    Interior,
    /// To a neighbour.
    Party,
}

/// One wall, drawn as seen from the sheathed face: x to the right from the frame's left end, y up from the
/// section's base.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Wall {
    /// Unique in the house.
    pub name: String,
    /// Length of the frame, end stud face to end stud face.
    pub length: Length,
    /// Which side the sheathing faces.
    pub face: Face,
    /// Name of the wall that shows the same frame from its other side, where both faces are sheathed.
    pub other_face: Option<String>,
    /// From left to right, without gaps: one for a plain wall, several for steps, half-levels and balloon framing.
    pub sections: Vec<Section>,
    /// Parts of the wall that the designer relies on.
    pub segments: Vec<Segment>,
    /// What was measured on site, where it was.
    pub measured: Option<Measured>,
    /// A layout drawn by hand or measured on site, to be checked instead of searched for.
    pub given_layout: Option<GivenLayout>,
    /// How this wall is worked: the house's practice with the changes made for this wall.
    pub practice: Practice,
}

impl Wall {
    /// The category of its sheets: what the first segment that says one asks for, else what practice says.
    pub fn sheet_category(&self) -> &str {
        let mut asked = self
            .segments
            .iter()
            .filter_map(|segment| segment.category.as_deref());
        asked.next().unwrap_or(&self.practice.assembly.category)
    }
}
