//! Where rules of the standards and of practice begin to hold. Every default is a row of the table of fields.

use crate::decimal::Decimal;
use crate::length::Length;
use serde::Serialize;

/// Where rules of the standards and of practice begin to hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Limits {
    /// Sheets no thicker than this are weak against wind where they run upright on studs `weak_upright_studs` apart.
    pub weak_upright_thickness: Length,
    /// On-centre spacing of studs from which such sheets are weak upright.
    pub weak_upright_studs: Length,
    /// Plywood of no more plies than this runs across studs more than `few_plies_studs` apart.
    pub few_plies_most: u32,
    /// On-centre spacing of studs beyond which plywood of few plies runs across.
    pub few_plies_studs: Length,
    /// Sheets no thicker than this take closer field nails on studs `field_close_studs` apart.
    pub field_close_thickness: Length,
    /// On-centre spacing of studs from which such sheets take closer field nails.
    pub field_close_studs: Length,
    /// The most that their field nails may be apart.
    pub field_close_spacing: Length,
    /// Least face of a member that two panels share where the nailing is close: 3 in. lumber.
    pub wide_member: Length,
    /// At this edge spacing or closer two panels share a wide member.
    pub wide_member_spacing: Length,
    /// At this edge spacing or closer they share one where a thick nail goes deep.
    pub wide_member_deep_spacing: Length,
    /// Shank from which a nail is thick, inches.
    pub wide_member_shank: Decimal,
    /// Penetration into the member beyond which a nail goes deep.
    pub wide_member_penetration: Length,
    /// Below this edge spacing on either face, joints of two sheathed faces share no member but a wide one.
    pub both_faces_spacing: Length,
    /// Greatest height of a segment over its length.
    pub segment_slenderness_most: Decimal,
    /// Plumb seams keep so far from butt joints of the topmost plate where it costs nothing.
    pub plate_joint_clear: Length,
    /// The one level seam of a portal's leg lies in so much of the middle of its height.
    pub portal_seam_within: Length,
    /// Sheathing keeps so far from the ground.
    pub ground_clear: Length,
    /// The most that a given panel may reach past an end of the wall, to lap a corner.
    pub corner_lap_most: Length,
    /// Over an opening with less room than this up to the stud tops, the header is left to the designer.
    pub header_room_least: Length,
    /// One person sets a piece no longer than this.
    pub one_person_most: Length,
}
