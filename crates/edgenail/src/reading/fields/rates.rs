//! What the work costs.

use super::{COMMON, Field, INVENTED, Kind, OWN, Object, amount, inches, parts, value};
use crate::decimal::Decimal;
use crate::house::Objective;
use crate::reading::choice::Choice;

/// Calibrated to about ten person-minutes for a plain 4 × 8 ft sheet on the deck.
const fn minutes(name: &'static str, preset: &'static str, meaning: &'static str) -> Field {
    value(name, amount(), preset, INVENTED, meaning)
}

pub(super) static RATES: Object = Object {
    name: "rates",
    tag: None,
    meaning: "Person-minutes for each kind of work.",
    fields: &[
        value(
            "objective",
            Kind::Choice(Objective::NAMES),
            "money",
            OWN,
            "The unit that plans are compared in.",
        ),
        minutes("set_8", "6", "Set a sheet up to 4 × 8 ft."),
        minutes("set_9", "7", "Set a sheet up to 4 × 9 ft."),
        minutes("set_10", "9", "Set a sheet up to 4 × 10 ft."),
        minutes("set_longer", "12", "Set a longer sheet."),
        minutes("set_small", "4", "Set a small piece."),
        value(
            "small_under",
            Kind::Number {
                least: Decimal::ZERO,
                most: Decimal::whole(100_000),
            },
            "16",
            INVENTED,
            "A piece of less square feet than this is small.",
        ),
        value(
            "length_allowance",
            inches(0, 24),
            "1 1/8",
            COMMON,
            "A piece longer than 8, 9 or 10 ft by no more than this is set as one of that length: a 97 1/8 in. sheet is \
             handled as an 8 ft one.",
        ),
        minutes("nail_gun", "0.06", "Drive a gun nail."),
        minutes("nail_hand", "0.2", "Drive a nail by hand."),
        minutes("cross_cut", "3", "Cut a sheet across."),
        minutes("rip", "5", "Rip a sheet."),
        minutes("notch", "4", "Cut a notch on the bench."),
        minutes("rake_cut", "6", "Cut along a rake."),
        minutes("opening", "4", "Start cutting an opening in place."),
        minutes(
            "opening_per_foot",
            "0.2",
            "Each foot of opening edge cut in place.",
        ),
        minutes("block_flat", "4", "Set a flat block."),
        minutes("block_on_edge", "5", "Set a block on edge."),
        minutes("added_stud", "8", "Set an added stud."),
        minutes("chalk_line", "3", "Snap a chalk line of up to one pull."),
        minutes("fetch_offcut", "2", "Fetch an off-cut."),
        value("labour", amount(), "0.75", INVENTED, "Money a minute."),
        parts(
            "places",
            Kind::Object(&PLACES),
            "{}",
            INVENTED,
            "Factors for the place of a piece.",
        ),
        parts(
            "judgement",
            Kind::Object(&JUDGEMENT),
            "{}",
            INVENTED,
            "Charges of judgement.",
        ),
    ],
};

/// A factor on the minutes of setting a piece.
const fn factor(name: &'static str, preset: &'static str, meaning: &'static str) -> Field {
    let kind = Kind::Number {
        least: Decimal::ONE,
        most: Decimal::whole(100),
    };
    value(name, kind, preset, INVENTED, meaning)
}

static PLACES: Object = Object {
    name: "places",
    tag: None,
    meaning: "What the place of a piece makes of the time that setting it takes on the deck.",
    fields: &[
        factor("standing", "1.3", "Against a standing wall."),
        factor("ladder", "1.5", "From a ladder."),
        factor("upper_storey", "1.5", "In an upper storey."),
        factor("high", "2", "High up."),
        value(
            "ladder_above",
            inches(0, 1200),
            "108",
            INVENTED,
            "A piece whose top is higher than this above the base of a standing wall is set from a ladder.",
        ),
        value(
            "high_above",
            inches(0, 1200),
            "120",
            INVENTED,
            "A piece whose middle is higher than this above the base of a standing wall is high up.",
        ),
    ],
};

static JUDGEMENT: Object = Object {
    name: "judgement",
    tag: None,
    meaning: "Charges for what a framer would rather not do, in minutes.",
    fields: &[
        minutes("seam_at_corner", "15", "A seam at the corner of an opening."),
        minutes(
            "seam_on_joint_per_4_ft",
            "10",
            "Four feet of seam where two members meet, such as storey and band.",
        ),
        minutes("narrow_piece", "5", "A narrow piece."),
        minutes("very_narrow_piece", "20", "A very narrow piece."),
        value(
            "narrow_under",
            inches(0, 144),
            "24",
            INVENTED,
            "A piece is narrow whose smaller side, with `strip_allowance`, is under this.",
        ),
        value(
            "very_narrow_under",
            inches(0, 144),
            "12",
            INVENTED,
            "It is very narrow under this.",
        ),
        minutes(
            "uneven_offset",
            "3",
            "A seam offset from the course below by other than half a sheet.",
        ),
        minutes("unlike_length", "2", "A sheet of unlike length in a course."),
    ],
};
