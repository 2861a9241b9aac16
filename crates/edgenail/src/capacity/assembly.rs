//! What resists: a sheathed wall as the tables see it.

pub use crate::house::{DesignMethod as Method, Edition, LoadKind};

use crate::decimal::Decimal;
use crate::house::Coating;
use crate::length::Length;
use crate::published::Grade;
use serde::Serialize;

/// What the panels are made of; apparent stiffness depends on it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum PanelMaterial {
    /// Oriented strand board.
    Osb,
    /// Plywood of three plies.
    Plywood3,
    /// Plywood of four or more plies.
    Plywood4,
}

/// A nail as it is driven.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct DrivenNail {
    /// Shank diameter in inches.
    pub shank: Decimal,
    /// Head diameter in inches.
    pub head: Decimal,
    /// Length.
    pub length: Length,
    /// Coating.
    pub coating: Coating,
}

/// Panels, nails and framing of one face of a shear wall.
#[expect(clippy::struct_excessive_bools, reason = "each is a question of its own")]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Assembly {
    /// Sheathing grade.
    pub grade: Grade,
    /// Nominal panel thickness, as the table lists it.
    pub thickness: Length,
    /// What the panels are made of.
    pub material: PanelMaterial,
    /// The nail.
    pub nail: DrivenNail,
    /// Spacing of nails along panel edges.
    pub edge_spacing: Length,
    /// Spacing of nails on members between.
    pub field_spacing: Length,
    /// Every panel edge is backed and nailed.
    pub blocked: bool,
    /// The largest centre distance of studs in the segment.
    pub stud_spacing: Length,
    /// The long dimension of the panels runs across the studs.
    pub across_studs: bool,
    /// The lowest specific gravity of all members that are nailed.
    pub specific_gravity: Decimal,
    /// The least width of the members that two panels share.
    pub seam_member: Length,
    /// The framing is wetter than 19 % when it is built.
    pub wet_framing: bool,
    /// Hold-downs sit on the inside faces of the end posts, or nobody says that they do not.
    pub inside_hold_downs: bool,
}

/// What of an assembly is no panel and no edge nailing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Framing {
    /// Spacing of nails on members between panel edges.
    pub field_spacing: Length,
    /// The largest centre distance of studs in the segment.
    pub stud_spacing: Length,
    /// The long dimension of the panels runs across the studs.
    pub across_studs: bool,
    /// The lowest specific gravity of all members that are nailed.
    pub specific_gravity: Decimal,
    /// The least width of the members that two panels share.
    pub seam_member: Length,
    /// The framing is wetter than 19 % when it is built.
    pub wet_framing: bool,
}
