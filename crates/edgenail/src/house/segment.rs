//! Parts of a wall that the designer relies on.

use crate::length::Length;
use serde::Serialize;

/// How a segment resists load, as the designer says.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Method {
    /// A segmented shear wall.
    Segmented,
    /// A full-height segment of a perforated shear wall.
    Perforated,
    /// Part of a shear wall with force transfer around openings.
    ForceTransfer,
    /// A leg of a garage portal.
    Portal,
    /// A braced wall panel of the prescriptive code.
    BracedPanel,
}

/// A shear segment or braced panel.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Segment {
    /// Name of the storey that it stands in.
    pub storey: String,
    /// Left end, outer face of its end post.
    pub from: Length,
    /// Right end, outer face of its end post.
    pub to: Length,
    /// The designer's mark.
    pub mark: String,
    /// How it resists load.
    pub method: Method,
    /// Name of a sheet in stock's category that is asked for, such as `7/16`; `None` leaves it to practice.
    pub category: Option<String>,
    /// Name of the nail in stock; `None` leaves it to practice.
    pub nail: Option<String>,
    /// Spacing of nails at panel edges and boundary rows.
    pub edge_spacing: Length,
    /// Spacing of nails on members between.
    pub field_spacing: Length,
    /// Every panel edge is backed.
    pub blocked: bool,
    /// Least face width of members that two panels share; `None` asks for nothing beyond the studs.
    pub seam_member_width: Option<Length>,
    /// Studs in each end post.
    pub end_posts: u32,
}
