//! What the work costs.

use crate::house::{JobRates, Judgement, PlaceFactors};
use crate::reading::record::Record;

pub(in crate::reading) fn rates(record: &Record<'_, '_>) -> JobRates {
    JobRates {
        objective: record.get("objective"),
        set_8: record.get("set_8"),
        set_9: record.get("set_9"),
        set_10: record.get("set_10"),
        set_longer: record.get("set_longer"),
        set_small: record.get("set_small"),
        small_under: record.get("small_under"),
        length_allowance: record.get("length_allowance"),
        nail_gun: record.get("nail_gun"),
        nail_hand: record.get("nail_hand"),
        cross_cut: record.get("cross_cut"),
        rip: record.get("rip"),
        notch: record.get("notch"),
        rake_cut: record.get("rake_cut"),
        opening: record.get("opening"),
        opening_per_foot: record.get("opening_per_foot"),
        block_flat: record.get("block_flat"),
        block_on_edge: record.get("block_on_edge"),
        added_stud: record.get("added_stud"),
        chalk_line: record.get("chalk_line"),
        fetch_offcut: record.get("fetch_offcut"),
        labour: record.get("labour"),
        places: record.object("places", places),
        judgement: record.object("judgement", judgement),
    }
}

fn places(record: &Record<'_, '_>) -> PlaceFactors {
    PlaceFactors {
        standing: record.get("standing"),
        ladder: record.get("ladder"),
        upper_storey: record.get("upper_storey"),
        high: record.get("high"),
        ladder_above: record.get("ladder_above"),
        high_above: record.get("high_above"),
    }
}

fn judgement(record: &Record<'_, '_>) -> Judgement {
    Judgement {
        seam_at_corner: record.get("seam_at_corner"),
        seam_on_joint_per_4_ft: record.get("seam_on_joint_per_4_ft"),
        narrow_piece: record.get("narrow_piece"),
        very_narrow_piece: record.get("very_narrow_piece"),
        narrow_under: record.get("narrow_under"),
        very_narrow_under: record.get("very_narrow_under"),
        uneven_offset: record.get("uneven_offset"),
        unlike_length: record.get("unlike_length"),
    }
}
