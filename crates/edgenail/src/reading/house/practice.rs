//! Practice.

use super::stock::COATINGS;
use crate::house::{
    Assembly, BlockedEdges, DatumChoice, Practice, RimSeam, RunningChoice, StartChoice, Tolerances,
};
use crate::reading::object::Object;

/// The words for running, in the order of the table of fields.
pub(super) const RUNNING: [RunningChoice; 3] =
    [RunningChoice::Upright, RunningChoice::Flat, RunningChoice::Either];
const STARTS: [StartChoice; 3] = [StartChoice::Left, StartChoice::Right, StartChoice::Either];
const DATUMS: [DatumChoice; 4] = [
    DatumChoice::Flush,
    DatumChoice::HeldUp,
    DatumChoice::Overhang,
    DatumChoice::HalfPlate,
];
const BLOCKED: [BlockedEdges; 3] = [
    BlockedEdges::All,
    BlockedEdges::WideBays,
    BlockedEdges::SegmentsOnly,
];

/// Practice.
pub(super) fn practice(object: &Object<'_>) -> Practice {
    Practice {
        running: object.choice("running", RUNNING),
        starting_end: object.choice("starting_end", STARTS),
        datums: object.choices("datums", DATUMS),
        held_up: object.length("held_up"),
        overhang: object.length("overhang"),
        overhang_most: object.length("overhang_most"),
        breaks: object.lengths("breaks"),
        blocked_edges: object.choice("blocked_edges", BLOCKED),
        clear_bay_most: object.length("clear_bay_most"),
        stagger_least: object.length("stagger_least"),
        gap: object.length("gap"),
        rim_gap: object.length("rim_gap"),
        rim_seam: object.choice("rim_seam", [RimSeam::Seam, RimSeam::RunPast]),
        end_short: object.length("end_short"),
        opening_cut_back: object.length("opening_cut_back"),
        kerf: object.length("kerf"),
        edge_distance_least: object.length("edge_distance_least"),
        edge_distance_most: object.length("edge_distance_most"),
        member_edge_least: object.length("member_edge_least"),
        free_edge_most: object.length("free_edge_most"),
        plate_cover_least: object.length("plate_cover_least"),
        bare_top_plate: object.flag("bare_top_plate"),
        strip_least: object.length("strip_least"),
        strip_allowance: object.length("strip_allowance"),
        filler_least: object.length("filler_least"),
        corner_clear: object.length("corner_clear"),
        gable_seam_clear: object.length("gable_seam_clear"),
        block_clearance: object.length("block_clearance"),
        block_stick: object.text_or_null("block_stick"),
        blocks_flat: object.flag("blocks_flat"),
        block_end_nails: object.count("block_end_nails"),
        staggered_rows: object.flag("staggered_rows"),
        assembly: object.object("assembly", assembly),
        treated_coatings: object.choices("treated_coatings", COATINGS),
        tolerances: object.object("tolerances", tolerances),
        line_pull_most: object.length("line_pull_most"),
        offcut_width_least: object.length("offcut_width_least"),
        offcut_length_least: object.length("offcut_length_least"),
        spare_percent: object.decimal("spare_percent"),
        area_method_deducts: object.flag("area_method_deducts"),
        gun_loss_percent: object.decimal("gun_loss_percent"),
        hand_loss_percent: object.decimal("hand_loss_percent"),
        effort_most: object.large_count("effort_most"),
        alternatives: object.count("alternatives"),
    }
}

fn assembly(object: &Object<'_>) -> Assembly {
    Assembly {
        category: object.text("category"),
        nail: object.text_or_null("nail"),
        treated_nail: object.text_or_null("treated_nail"),
        edge_spacing: object.length("edge_spacing"),
        field_spacing: object.length("field_spacing"),
    }
}

fn tolerances(object: &Object<'_>) -> Tolerances {
    Tolerances {
        opening_under: object.length("opening_under"),
        opening_over: object.length("opening_over"),
        diagonals: object.length("diagonals"),
        plumb: object.length("plumb"),
        plumb_height: object.length("plumb_height"),
        bow: object.length("bow"),
        layout: object.length("layout"),
    }
}
