//! How the crew works. A wall inherits from the house what it does not say itself.

use super::limits::limits;
use crate::house::{Assembly, Practice, Tolerances};
use crate::reading::record::Record;

/// Practice as this record says it, over what is said further out.
pub(super) fn practice(record: &Record<'_, '_>, outer: Option<&Practice>) -> Practice {
    Practice {
        running: record.inherit("running", outer.map(|outer| &outer.running)),
        starting_end: record.inherit("starting_end", outer.map(|outer| &outer.starting_end)),
        sheathed: record.inherit("sheathed", outer.map(|outer| &outer.sheathed)),
        datums: record.inherit("datums", outer.map(|outer| &outer.datums)),
        held_up: record.inherit("held_up", outer.map(|outer| &outer.held_up)),
        overhang: record.inherit("overhang", outer.map(|outer| &outer.overhang)),
        overhang_most: record.inherit("overhang_most", outer.map(|outer| &outer.overhang_most)),
        breaks: record.inherit("breaks", outer.map(|outer| &outer.breaks)),
        blocked_edges: record.inherit("blocked_edges", outer.map(|outer| &outer.blocked_edges)),
        clear_bay_most: record.inherit("clear_bay_most", outer.map(|outer| &outer.clear_bay_most)),
        stagger_least: record.inherit("stagger_least", outer.map(|outer| &outer.stagger_least)),
        gap: record.inherit("gap", outer.map(|outer| &outer.gap)),
        rim_gap: record.inherit("rim_gap", outer.map(|outer| &outer.rim_gap)),
        rim_seam: record.inherit("rim_seam", outer.map(|outer| &outer.rim_seam)),
        end_short: record.inherit("end_short", outer.map(|outer| &outer.end_short)),
        opening_cut_back: record.inherit("opening_cut_back", outer.map(|outer| &outer.opening_cut_back)),
        kerf: record.inherit("kerf", outer.map(|outer| &outer.kerf)),
        edge_distance_least: record.inherit(
            "edge_distance_least",
            outer.map(|outer| &outer.edge_distance_least),
        ),
        edge_distance_most: record
            .inherit("edge_distance_most", outer.map(|outer| &outer.edge_distance_most)),
        member_edge_least: record.inherit("member_edge_least", outer.map(|outer| &outer.member_edge_least)),
        free_edge_most: record.inherit("free_edge_most", outer.map(|outer| &outer.free_edge_most)),
        plate_cover_least: record.inherit("plate_cover_least", outer.map(|outer| &outer.plate_cover_least)),
        bare_top_plate: record.inherit("bare_top_plate", outer.map(|outer| &outer.bare_top_plate)),
        strip_least: record.inherit("strip_least", outer.map(|outer| &outer.strip_least)),
        strip_allowance: record.inherit("strip_allowance", outer.map(|outer| &outer.strip_allowance)),
        filler_least: record.inherit("filler_least", outer.map(|outer| &outer.filler_least)),
        corner_clear: record.inherit("corner_clear", outer.map(|outer| &outer.corner_clear)),
        gable_seam_clear: record.inherit("gable_seam_clear", outer.map(|outer| &outer.gable_seam_clear)),
        block_clearance: record.inherit("block_clearance", outer.map(|outer| &outer.block_clearance)),
        block_stick: record.inherit("block_stick", outer.map(|outer| &outer.block_stick)),
        blocks_flat: record.inherit("blocks_flat", outer.map(|outer| &outer.blocks_flat)),
        block_end_nails: record.inherit("block_end_nails", outer.map(|outer| &outer.block_end_nails)),
        staggered_rows: record.inherit("staggered_rows", outer.map(|outer| &outer.staggered_rows)),
        assembly: record.object("assembly", |record| {
            assembly(record, outer.map(|outer| &outer.assembly))
        }),
        treated_coatings: record.inherit("treated_coatings", outer.map(|outer| &outer.treated_coatings)),
        tolerances: record.object("tolerances", |record| {
            tolerances(record, outer.map(|outer| &outer.tolerances))
        }),
        limits: record.object("limits", |record| {
            limits(record, outer.map(|outer| &outer.limits))
        }),
        line_pull_most: record.inherit("line_pull_most", outer.map(|outer| &outer.line_pull_most)),
        offcut_width_least: record
            .inherit("offcut_width_least", outer.map(|outer| &outer.offcut_width_least)),
        offcut_length_least: record.inherit(
            "offcut_length_least",
            outer.map(|outer| &outer.offcut_length_least),
        ),
        spare_percent: record.inherit("spare_percent", outer.map(|outer| &outer.spare_percent)),
        area_method_deducts: record.inherit(
            "area_method_deducts",
            outer.map(|outer| &outer.area_method_deducts),
        ),
        area_method_opening_least: record.inherit(
            "area_method_opening_least",
            outer.map(|outer| &outer.area_method_opening_least),
        ),
        gun_loss_percent: record.inherit("gun_loss_percent", outer.map(|outer| &outer.gun_loss_percent)),
        hand_loss_percent: record.inherit("hand_loss_percent", outer.map(|outer| &outer.hand_loss_percent)),
        effort_most: record.inherit("effort_most", outer.map(|outer| &outer.effort_most)),
        cutting_effort_most: record.inherit(
            "cutting_effort_most",
            outer.map(|outer| &outer.cutting_effort_most),
        ),
        exchanges_most: record.inherit("exchanges_most", outer.map(|outer| &outer.exchanges_most)),
        stacks_most: record.inherit("stacks_most", outer.map(|outer| &outer.stacks_most)),
        end_parts_most: record.inherit("end_parts_most", outer.map(|outer| &outer.end_parts_most)),
        seam_off_wood_most: record
            .inherit("seam_off_wood_most", outer.map(|outer| &outer.seam_off_wood_most)),
        alternatives: record.inherit("alternatives", outer.map(|outer| &outer.alternatives)),
    }
}

fn assembly(record: &Record<'_, '_>, outer: Option<&Assembly>) -> Assembly {
    Assembly {
        category: record.inherit("category", outer.map(|outer| &outer.category)),
        nail: record.inherit("nail", outer.map(|outer| &outer.nail)),
        treated_nail: record.inherit("treated_nail", outer.map(|outer| &outer.treated_nail)),
        edge_spacing: record.inherit("edge_spacing", outer.map(|outer| &outer.edge_spacing)),
        field_spacing: record.inherit("field_spacing", outer.map(|outer| &outer.field_spacing)),
    }
}

fn tolerances(record: &Record<'_, '_>, outer: Option<&Tolerances>) -> Tolerances {
    Tolerances {
        opening_under: record.inherit("opening_under", outer.map(|outer| &outer.opening_under)),
        opening_over: record.inherit("opening_over", outer.map(|outer| &outer.opening_over)),
        diagonals: record.inherit("diagonals", outer.map(|outer| &outer.diagonals)),
        plumb: record.inherit("plumb", outer.map(|outer| &outer.plumb)),
        plumb_height: record.inherit("plumb_height", outer.map(|outer| &outer.plumb_height)),
        bow: record.inherit("bow", outer.map(|outer| &outer.bow)),
        layout: record.inherit("layout", outer.map(|outer| &outer.layout)),
    }
}
