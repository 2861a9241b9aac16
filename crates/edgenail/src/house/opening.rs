//! Rough openings with their framing.

use crate::length::Length;
use serde::Serialize;

/// What an opening is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum OpeningKind {
    /// A door for people.
    Door,
    /// A window.
    Window,
    /// A garage door.
    Garage,
    /// Anything else.
    Other,
}

/// The header over an opening. It bears on the trimmers.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Header {
    /// Left end; by default the outer face of the left trimmers.
    pub from: Length,
    /// Right end; by default the outer face of the right trimmers.
    pub to: Length,
    /// Pieces side by side in the depth of the wall.
    pub plies: u32,
    /// Height of its face.
    pub depth: Length,
    /// Underside above the storey's base; by default the top of the opening.
    pub y: Length,
    /// How far its face lies behind the sheathing plane: a face that is set back holds no nail.
    pub setback: Length,
}

/// A rough opening.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Opening {
    /// Unique in the wall.
    pub name: String,
    /// What it is for.
    pub kind: OpeningKind,
    /// Left edge, from the wall's left end.
    pub left: Length,
    /// Lower edge, above the storey's base; below zero for a door past a curb.
    pub sill: Length,
    /// Clear width.
    pub width: Length,
    /// Clear height.
    pub height: Length,
    /// What carries the load over it.
    pub header: Option<Header>,
    /// Trimmers at each side.
    pub trimmers: u32,
    /// King studs at each side.
    pub kings: u32,
    /// Sill plates under it, where it does not reach the bottom plate.
    pub sills: u32,
}

/// A named rectangle on the wall.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Patch {
    /// What it is.
    pub name: String,
    /// Left edge, from the wall's left end.
    pub left: Length,
    /// Lower edge, above the storey's base.
    pub bottom: Length,
    /// Width.
    pub width: Length,
    /// Height.
    pub height: Length,
}
