//! Fields of practice: how the crew works.

use super::segment::SPACING;
use super::{PLACES, distance, text};
use crate::reading::field::{Field, Kind, Lengths, Numbers, Record, Source};

const RUNNING: Kind = Kind::Choice(&["upright", "flat", "either"]);
const STARTS: Kind = Kind::Choice(&["left", "right", "either"]);
const DATUM: &Kind = &Kind::Choice(&["flush", "held_up", "overhang", "half_plate"]);
const BLOCKED: Kind = Kind::Choice(&["all", "wide_bays", "segments_only"]);
const COATING: &Kind = &Kind::Choice(&["bright", "hot_dipped", "stainless"]);
const PERCENT: Kind = Kind::Decimal(Numbers::new(0, 100));
const SMALL: Kind = Kind::Length(Lengths::up_to(6));
const STRIP: Kind = Kind::Length(Lengths::up_to(48));

static ASSEMBLY: Record = Record {
    name: "assembly",
    meaning: "What the walls are built with where no segment says otherwise",
    fields: &[
        text("category", "Performance category of the sheets").usually("\"7/16\""),
        text(
            "nail",
            "Name of the nail; null takes the first bright nail in stock",
        )
        .or_null(),
        text(
            "treated_nail",
            "Name of the nail into treated lumber; null takes the first in stock that resists corrosion",
        )
        .or_null(),
        Field::new("edge_spacing", SPACING, "Spacing of nails at panel edges").usually("\"6\""),
        Field::new("field_spacing", SPACING, "Spacing of nails on members between").usually("\"12\""),
    ],
};

static TOLERANCES: Record = Record {
    name: "tolerances",
    meaning: "What is accepted when the frame is checked before sheathing",
    fields: &[
        Field::new(
            "opening_under",
            SMALL,
            "An opening may be narrower or lower by this",
        )
        .usually("\"0\""),
        Field::new("opening_over", SMALL, "An opening may be wider or higher by this").usually("\"1/8\""),
        Field::new("diagonals", SMALL, "Two diagonals may differ by this").usually("\"1/8\""),
        Field::new("plumb", SMALL, "A wall may lean by this over `plumb_height`").or("\"3/8\"", PLUMB),
        Field::new(
            "plumb_height",
            Kind::Length(Lengths::inches(1, 1200)),
            "The height that `plumb` is meant for",
        )
        .or("\"32\"", PLUMB),
        Field::new("bow", SMALL, "A plate or stud line may bow from a string by this").usually("\"1/2\""),
        Field::new(
            "layout",
            SMALL,
            "The first layout stud may be off its place by this",
        )
        .own("\"1/16\""),
    ],
};

const PLUMB: Source =
    Source::Published("a residential performance guide as quoted by a trade council, from memory");

/// Practice.
pub(super) static PRACTICE: Record = Record {
    name: "practice",
    meaning: "How the crew works",
    fields: &[
        Field::new("running", RUNNING, "Which way sheets run").own("\"either\""),
        Field::new("starting_end", STARTS, "From which end sheets are laid").own("\"either\""),
        Field::new(
            "datums",
            Kind::List {
                of: DATUM,
                least: 1,
                most: 4,
            },
            "Bottom lines that may be used",
        )
        .usually("[\"held_up\", \"flush\", \"overhang\", \"half_plate\"]"),
        Field::new(
            "held_up",
            SMALL,
            "How far a held-up sheet stays above the lowest plate's underside",
        )
        .usually("\"1/2\""),
        Field::new("overhang", SMALL, "How far an overhanging sheet reaches below it").usually("\"1/2\""),
        Field::new(
            "overhang_most",
            SMALL,
            "The most that a sheet may overhang a foundation",
        )
        .usually("\"1\""),
        Field::new(
            "breaks",
            Kind::list(PLACES, 100),
            "Levels where courses should break",
        )
        .optional(),
        Field::new("blocked_edges", BLOCKED, "Which edges are backed").usually("\"wide_bays\""),
        distance(
            "clear_bay_most",
            "The widest clear bay whose horizontal edge may stay unbacked",
        )
        .usually("\"14 1/2\""),
        distance(
            "stagger_least",
            "Distance of seams of neighbouring courses over an unblocked edge",
        )
        .usually("\"16\""),
        Field::new("gap", Kind::Length(Lengths::up_to(1)), "Gap at every panel joint").usually("\"1/8\""),
        Field::new(
            "rim_gap",
            Kind::Length(Lengths::up_to(2)),
            "Gap at a seam on a sawn rim",
        )
        .usually("\"1/2\""),
        Field::new(
            "rim_seam",
            Kind::Choice(&["seam", "run_past"]),
            "What happens at a sawn rim",
        )
        .usually("\"seam\""),
        Field::new(
            "end_short",
            Kind::Length(Lengths::up_to(1)),
            "What a panel stays short of a wall end",
        )
        .usually("\"1/8\""),
        Field::new(
            "opening_cut_back",
            Kind::Length(Lengths::up_to(1)),
            "What a panel is cut back at an opening",
        )
        .usually("\"0\""),
        Field::new("kerf", Kind::Length(Lengths::up_to(1)), "What the saw takes").usually("\"1/8\""),
        Field::new(
            "edge_distance_least",
            SMALL,
            "Least distance of a nail from the panel edge",
        )
        .or("\"3/8\"", EDGE),
        Field::new(
            "edge_distance_most",
            SMALL,
            "Most distance of an edge nail from the panel edge",
        )
        .usually("\"3/4\""),
        Field::new(
            "member_edge_least",
            SMALL,
            "Least distance of a nail from a member's edge",
        )
        .usually("\"1/4\""),
        Field::new(
            "free_edge_most",
            SMALL,
            "The most that a sheet may hang free beyond its edge nails",
        )
        .usually("\"2\""),
        Field::new(
            "plate_cover_least",
            SMALL,
            "The outermost plate is covered at least so far",
        )
        .own("\"5/8\""),
        Field::new(
            "bare_top_plate",
            Kind::Flag,
            "Sheets may end short of the topmost plate where no segment forbids it",
        )
        .own("false"),
        Field::new("strip_least", STRIP, "Least strip").usually("\"12\""),
        Field::new("strip_allowance", SMALL, "What a strip may fall short of it").usually("\"1/4\""),
        Field::new(
            "filler_least",
            STRIP,
            "A filler narrower than this is never proposed",
        )
        .own("\"3\""),
        Field::new(
            "corner_clear",
            STRIP,
            "A seam keeps so far from an opening corner",
        )
        .usually("\"6\""),
        Field::new(
            "gable_seam_clear",
            STRIP,
            "A seam keeps so far from the plate line under a gable truss",
        )
        .usually("\"16\""),
        Field::new(
            "block_clearance",
            Kind::Length(Lengths::up_to(1)),
            "A block is the clear bay less this",
        )
        .usually("\"1/16\""),
        text(
            "block_stick",
            "Name of the stick that seam blocks are cut from; null takes the first in stock",
        )
        .or_null(),
        Field::new(
            "blocks_flat",
            Kind::Flag,
            "Blocks lie flat, wide face to the sheets",
        )
        .usually("true"),
        Field::new(
            "block_end_nails",
            Kind::Integer(Numbers::new(1, 10)),
            "Nails at each end of a block",
        )
        .usually("2"),
        Field::new(
            "staggered_rows",
            Kind::Flag,
            "Edge rows of neighbouring panels on one member are offset by half a space",
        )
        .own("false"),
        Field::new("assembly", Kind::Object(&ASSEMBLY), "What walls are built with").usually("{}"),
        Field::new(
            "treated_coatings",
            Kind::List {
                of: COATING,
                least: 1,
                most: 3,
            },
            "Coatings that are accepted in treated lumber",
        )
        .or(
            "[\"hot_dipped\", \"stainless\"]",
            Source::Published("IRC R317.3.1"),
        ),
        Field::new(
            "tolerances",
            Kind::Object(&TOLERANCES),
            "What is accepted before sheathing",
        )
        .usually("{}"),
        Field::new(
            "line_pull_most",
            Kind::Length(Lengths::inches(12, 1200)),
            "A line is snapped in pulls no longer than this",
        )
        .usually("\"35'\""),
        distance("offcut_width_least", "Smaller side of an off-cut that is kept").usually("\"16\""),
        distance("offcut_length_least", "Larger side of an off-cut that is kept").usually("\"24\""),
        Field::new(
            "spare_percent",
            PERCENT,
            "Spare sheets, in percent of the cut-plan sheets",
        )
        .own("0"),
        Field::new(
            "area_method_deducts",
            Kind::Flag,
            "The area method deducts openings",
        )
        .own("false"),
        Field::new("gun_loss_percent", PERCENT, "Loss of collated nails, in percent").usually("5"),
        Field::new("hand_loss_percent", PERCENT, "Loss of loose nails, in percent").usually("20"),
        Field::new(
            "effort_most",
            Kind::Integer(Numbers::new(1, 1_000_000_000_000)),
            "The most arcs that the search may price for one wall",
        )
        .own("2000000"),
        Field::new(
            "alternatives",
            Kind::Integer(Numbers::new(0, 100)),
            "Alternatives that are listed beside the chosen layout",
        )
        .own("8"),
    ],
};

const EDGE: Source = Source::Published("SDPWS 4.3.7.1, from memory, not checked against print");
