//! Rates.

use crate::house::{JobRates, Judgement, Objective};
use crate::reading::object::Object;

/// Rates.
pub(super) fn rates(object: &Object<'_>) -> JobRates {
    JobRates {
        objective: object.choice("objective", [Objective::Money, Objective::Minutes]),
        set_8: object.amount("set_8"),
        set_9: object.amount("set_9"),
        set_10: object.amount("set_10"),
        set_longer: object.amount("set_longer"),
        set_small: object.amount("set_small"),
        nail_gun: object.amount("nail_gun"),
        nail_hand: object.amount("nail_hand"),
        cross_cut: object.amount("cross_cut"),
        rip: object.amount("rip"),
        notch: object.amount("notch"),
        rake_cut: object.amount("rake_cut"),
        opening: object.amount("opening"),
        opening_per_foot: object.amount("opening_per_foot"),
        block_flat: object.amount("block_flat"),
        block_on_edge: object.amount("block_on_edge"),
        added_stud: object.amount("added_stud"),
        chalk_line: object.amount("chalk_line"),
        fetch_offcut: object.amount("fetch_offcut"),
        labour: object.amount("labour"),
        judgement: object.object("judgement", judgement),
    }
}

fn judgement(object: &Object<'_>) -> Judgement {
    Judgement {
        seam_at_corner: object.amount("seam_at_corner"),
        seam_on_joint_per_4_ft: object.amount("seam_on_joint_per_4_ft"),
        piece_under_24: object.amount("piece_under_24"),
        piece_under_12: object.amount("piece_under_12"),
        uneven_offset: object.amount("uneven_offset"),
        unlike_length: object.amount("unlike_length"),
    }
}
