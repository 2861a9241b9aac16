//! Where rules begin to hold. A wall inherits from the house what it does not say itself.

use crate::house::Limits;
use crate::reading::record::Record;

/// Limits as this record says them, over what is said further out.
pub(super) fn limits(record: &Record<'_, '_>, outer: Option<&Limits>) -> Limits {
    Limits {
        weak_upright_thickness: record.inherit(
            "weak_upright_thickness",
            outer.map(|outer| &outer.weak_upright_thickness),
        ),
        weak_upright_studs: record
            .inherit("weak_upright_studs", outer.map(|outer| &outer.weak_upright_studs)),
        few_plies_most: record.inherit("few_plies_most", outer.map(|outer| &outer.few_plies_most)),
        few_plies_studs: record.inherit("few_plies_studs", outer.map(|outer| &outer.few_plies_studs)),
        field_close_thickness: record.inherit(
            "field_close_thickness",
            outer.map(|outer| &outer.field_close_thickness),
        ),
        field_close_studs: record.inherit("field_close_studs", outer.map(|outer| &outer.field_close_studs)),
        field_close_spacing: record.inherit(
            "field_close_spacing",
            outer.map(|outer| &outer.field_close_spacing),
        ),
        wide_member: record.inherit("wide_member", outer.map(|outer| &outer.wide_member)),
        wide_member_spacing: record.inherit(
            "wide_member_spacing",
            outer.map(|outer| &outer.wide_member_spacing),
        ),
        wide_member_deep_spacing: record.inherit(
            "wide_member_deep_spacing",
            outer.map(|outer| &outer.wide_member_deep_spacing),
        ),
        wide_member_shank: record.inherit("wide_member_shank", outer.map(|outer| &outer.wide_member_shank)),
        wide_member_penetration: record.inherit(
            "wide_member_penetration",
            outer.map(|outer| &outer.wide_member_penetration),
        ),
        both_faces_spacing: record
            .inherit("both_faces_spacing", outer.map(|outer| &outer.both_faces_spacing)),
        segment_slenderness_most: record.inherit(
            "segment_slenderness_most",
            outer.map(|outer| &outer.segment_slenderness_most),
        ),
        plate_joint_clear: record.inherit("plate_joint_clear", outer.map(|outer| &outer.plate_joint_clear)),
        portal_seam_within: record
            .inherit("portal_seam_within", outer.map(|outer| &outer.portal_seam_within)),
        ground_clear: record.inherit("ground_clear", outer.map(|outer| &outer.ground_clear)),
        corner_lap_most: record.inherit("corner_lap_most", outer.map(|outer| &outer.corner_lap_most)),
        header_room_least: record.inherit("header_room_least", outer.map(|outer| &outer.header_room_least)),
        one_person_most: record.inherit("one_person_most", outer.map(|outer| &outer.one_person_most)),
    }
}
