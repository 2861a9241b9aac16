//! A wall line as it is given.

use crate::capacity::pier::Sharing;
use crate::capacity::question::OtherFace;
use crate::capacity::unit_shear::UnitShearQuery;
use crate::length::Length;
use serde::Serialize;

/// How a line with openings is taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum LineMethod {
    /// Full-height segments, each held down at both ends.
    Segmented,
    /// One wall with openings, held down at its ends only.
    Perforated,
}

/// An opening of a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LineOpening {
    /// From the left end of the line.
    pub left: Length,
    /// Width; 0 where two segments stand side by side, each held down by itself.
    pub width: Length,
    /// Height; the whole wall's where nothing is sheathed above or below.
    pub height: Length,
}

/// The posts at the ends of each segment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EndPosts {
    /// Modulus of elasticity in psi.
    pub elasticity: f64,
    /// Section of one post in square inches.
    pub area: f64,
}

/// The hold-down at each end that is pulled; its figures are the maker's, at the level of the line's method.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HoldDown {
    /// What it holds in pounds.
    pub capacity: f64,
    /// How far it gives under that, with all slip, in inches; in proportion under less.
    pub elongation: f64,
}

/// One anchor of the bottom plate; its figures are the user's, at the level of the line's method.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlateAnchor {
    /// What it carries of the shear in pounds.
    pub each: f64,
    /// What it carries of the uplift in pounds.
    pub each_uplift: Option<f64>,
}

/// What comes down from the storeys above.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct FromAbove {
    /// Shear that comes through the floor, as part of the line's demand, in pounds.
    pub shear: f64,
    /// From the top of this line's plates to the underside of the bottom plate above.
    pub floor: Length,
    /// Tensions at the ends of segments above.
    pub ends: Vec<EndAbove>,
}

/// A tension that comes down from a segment above.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EndAbove {
    /// From the left end of the line below; below zero where the storey above reaches further.
    pub at: Length,
    /// In pounds; below zero nothing pulls.
    pub tension: f64,
}

/// A wall line.
#[derive(Clone, Debug, PartialEq)]
pub struct WallLine {
    /// Length between the outer faces of its end posts.
    pub length: Length,
    /// From the underside of the bottom plate to the top of the top plates.
    pub height: Length,
    /// Openings from left to right.
    pub openings: Vec<LineOpening>,
    /// How it is taken.
    pub method: LineMethod,
    /// How shear is shared.
    pub sharing: Sharing,
    /// What is asked of the tables for its one construction.
    pub query: UnitShearQuery,
    /// What its other face is sheathed with.
    pub other_face: Option<OtherFace>,
    /// Joints of the panels of the two faces lie on different members.
    pub joints_apart: bool,
    /// The shear at its top at the level of the method, in pounds, with all from above: nothing is converted.
    pub demand: f64,
    /// Factored dead load along its top that rights it, in pounds per foot; 0 where it is not known.
    pub dead: f64,
    /// From the outer faces to the hold-down's rod and the middle of the compression post, together.
    pub inset: Length,
    /// Its end posts; with a hold-down they give the drift.
    pub posts: Option<EndPosts>,
    /// Its hold-downs.
    pub hold_down: Option<HoldDown>,
    /// The anchors of its bottom plate.
    pub anchor: Option<PlateAnchor>,
    /// What the storeys above bring down.
    pub above: Option<FromAbove>,
}
