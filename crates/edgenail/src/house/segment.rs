//! Parts of a wall that the designer relies on.

use crate::decimal::Decimal;
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

/// A hold-down by its maker's figures, at the level of the demand's method.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct HoldDown {
    /// What it is called.
    pub name: String,
    /// What it holds in pounds.
    pub capacity: Decimal,
    /// How far it gives under that, with all slip.
    pub elongation: Length,
    /// From the inner face of its post to the middle of its rod.
    pub offset: Length,
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
    /// What holds its ends down; `None` leaves it to the designer.
    pub hold_down: Option<HoldDown>,
}
