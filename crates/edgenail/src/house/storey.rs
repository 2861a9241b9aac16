//! Plates and studs of one storey.

use super::{Opening, Patch};
use crate::decimal::Decimal;
use crate::length::Length;
use serde::Serialize;

/// An end of a wall or section, as seen from the sheathed face.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum End {
    /// The left end.
    Left,
    /// The right end.
    Right,
}

/// One horizontal plate.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Plate {
    /// Height of its face.
    pub thickness: Length,
    /// Preservative-treated: takes corrosion-resistant nails (IRC R317.3).
    pub treated: bool,
}

/// A stud's size.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Stud {
    /// Width of the face that is nailed.
    pub width: Length,
    /// Depth of the wall.
    pub depth: Length,
    /// Length between the plates.
    pub length: Length,
}

/// Where on-centre layout is pulled from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct LayoutOrigin {
    /// The end that the tape is hooked on.
    pub end: End,
    /// From that end of the section to the zero of the layout, towards the middle of the wall; below zero where
    /// layout is pulled from the sheathing corner of a neighbour.
    pub offset: Length,
}

/// How many studs stand side by side at each end.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct EndStuds {
    /// At the left end.
    pub left: u32,
    /// At the right end.
    pub right: u32,
}

/// The framing lumber.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Species {
    /// Name of the species group.
    pub group: String,
    /// Specific gravity, oven-dry.
    pub specific_gravity: Decimal,
    /// Modulus of elasticity along the grain in psi; `None` where drift is not asked for.
    pub elasticity: Option<u32>,
}

/// Plates and studs of one storey.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Storey {
    /// Such as `first floor`; storeys of one name in several walls belong together.
    pub name: String,
    /// From the lowest up.
    pub bottom_plates: Vec<Plate>,
    /// The studs.
    pub stud: Stud,
    /// From the lowest up.
    pub top_plates: Vec<Plate>,
    /// Butt joints of the topmost plate, from the wall's left end; empty where they are not known.
    pub plate_joints: Vec<Length>,
    /// On-centre spacing of the studs.
    pub spacing: Length,
    /// Where layout is pulled from.
    pub origin: LayoutOrigin,
    /// Studs at the ends.
    pub end_studs: EndStuds,
    /// The lumber.
    pub species: Species,
    /// Heights above the storey's base of the centres of block rows that are framed anyway.
    pub block_rows: Vec<Length>,
    /// Rough openings.
    pub openings: Vec<Opening>,
    /// Holes that are cut in place and need no framing of their own.
    pub penetrations: Vec<Patch>,
    /// Places that stay without sheathing: a ledger, a chimney, an abutting roof.
    pub bare_zones: Vec<Patch>,
    /// Straps and bolts that no nail may hit.
    pub straps: Vec<Patch>,
}
