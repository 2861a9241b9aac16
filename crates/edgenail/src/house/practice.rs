//! How the crew works. Every default is a row of the table of fields with its source.

use super::{Coating, Limits};
use crate::decimal::Decimal;
use crate::length::Length;
use serde::Serialize;

/// Which way sheets may run.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum RunningChoice {
    /// Long side up the studs.
    Upright,
    /// Long side across the studs.
    Flat,
    /// Whichever is better.
    Either,
}

/// From which end sheets are laid.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum StartChoice {
    /// From the left end.
    Left,
    /// From the right end.
    Right,
    /// From whichever is better.
    Either,
}

/// Where walls are sheathed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum SheathingPlace {
    /// Flat on the deck, before they are raised.
    Deck,
    /// Standing.
    Standing,
}

/// Which edges are backed outside shear segments and braced panels, where they always are unless said otherwise.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum BlockedEdges {
    /// Every panel edge.
    All,
    /// Edges whose clear bay passes `clear_bay_most`.
    WideBays,
    /// None beyond the segments.
    SegmentsOnly,
}

/// Bottom lines that the search may use.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum DatumChoice {
    /// Flush with the underside of the lowest plate.
    Flush,
    /// Held up by `held_up`.
    HeldUp,
    /// Overhanging by `overhang`.
    Overhang,
    /// Seam at half a plate, shared with the course on the band below.
    HalfPlate,
    /// Whole sheets with their upper edge flush with the top, which end below on the lowest rim or plate.
    TopFlush,
}

/// What happens to sheathing at a rim of sawn lumber in a building of two storeys or more.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum RimSeam {
    /// A seam on the rim, with a gap for shrinkage.
    Seam,
    /// Sheets run past.
    RunPast,
}

/// What the walls are built with where no segment says otherwise.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Assembly {
    /// Performance category of the sheets, such as `7/16`; sheets of other categories are not used.
    pub category: String,
    /// Name of the nail; `None` takes the first bright nail in stock.
    pub nail: Option<String>,
    /// Name of the nail into treated lumber; `None` takes the first in stock that resists corrosion.
    pub treated_nail: Option<String>,
    /// Spacing at panel edges.
    pub edge_spacing: Length,
    /// Spacing on members between.
    pub field_spacing: Length,
}

/// What is accepted when the frame is checked before sheathing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Tolerances {
    /// Difference of a measured opening from the specified, narrower or lower.
    pub opening_under: Length,
    /// Difference of a measured opening from the specified, wider or higher.
    pub opening_over: Length,
    /// Difference of two diagonals.
    pub diagonals: Length,
    /// Lean over `plumb_height`.
    pub plumb: Length,
    /// The height that `plumb` is meant for.
    pub plumb_height: Length,
    /// Bow from a string.
    pub bow: Length,
    /// First layout stud from its place.
    pub layout: Length,
}

/// How the crew works.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[expect(
    clippy::struct_excessive_bools,
    reason = "each is a yes or no that the user says by name"
)]
pub struct Practice {
    /// Which way sheets run.
    pub running: RunningChoice,
    /// From which end sheets are laid.
    pub starting_end: StartChoice,
    /// Where the walls are sheathed.
    pub sheathed: SheathingPlace,
    /// Bottom lines that may be used.
    pub datums: Vec<DatumChoice>,
    /// How far a held-up sheet stays above the lowest plate's underside.
    pub held_up: Length,
    /// How far an overhanging sheet reaches below it.
    pub overhang: Length,
    /// The most that a sheet may overhang the outside of a foundation.
    pub overhang_most: Length,
    /// Levels where courses should break, above the wall's zero line; empty leaves it to the search.
    pub breaks: Vec<Length>,
    /// Which edges are backed.
    pub blocked_edges: BlockedEdges,
    /// The widest clear bay whose horizontal edge may stay unbacked.
    pub clear_bay_most: Length,
    /// Seams of neighbouring courses stand at least this far apart where the edge between them is unblocked.
    pub stagger_least: Length,
    /// Gap at every panel joint.
    pub gap: Length,
    /// Gap at a seam on a sawn rim.
    pub rim_gap: Length,
    /// What happens at a sawn rim.
    pub rim_seam: RimSeam,
    /// The most that a panel stays short of a wall end, so that its sheet fits.
    pub end_short: Length,
    /// What a panel is cut back at an opening.
    pub opening_cut_back: Length,
    /// What the saw takes.
    pub kerf: Length,
    /// Least distance of a nail from the panel edge.
    pub edge_distance_least: Length,
    /// Most distance of an edge nail from the panel edge.
    pub edge_distance_most: Length,
    /// Least distance of a nail from a member's edge.
    pub member_edge_least: Length,
    /// The most that a sheet may hang free beyond its edge nails.
    pub free_edge_most: Length,
    /// The outermost plate is covered at least so far.
    pub plate_cover_least: Length,
    /// Sheets may end short of the topmost plate where no segment forbids it.
    pub bare_top_plate: bool,
    /// Least strip.
    pub strip_least: Length,
    /// What a strip may fall short of it.
    pub strip_allowance: Length,
    /// A filler narrower than this is never proposed.
    pub filler_least: Length,
    /// A seam keeps so far from an opening corner, or one stud bay if that is more.
    pub corner_clear: Length,
    /// A seam keeps so far from the plate line under a gable truss.
    pub gable_seam_clear: Length,
    /// A block's length is the clear bay less this.
    pub block_clearance: Length,
    /// Name of the stick that seam blocks are cut from; `None` takes the first in stock.
    pub block_stick: Option<String>,
    /// Blocks lie flat, wide face to the sheets.
    pub blocks_flat: bool,
    /// Nails at each end of a block.
    pub block_end_nails: u32,
    /// Edge rows of neighbouring panels on one member are offset by half a space.
    pub staggered_rows: bool,
    /// What walls are built with.
    pub assembly: Assembly,
    /// Coatings that are accepted in treated lumber.
    pub treated_coatings: Vec<Coating>,
    /// What is accepted before sheathing.
    pub tolerances: Tolerances,
    /// Where rules begin to hold.
    pub limits: Limits,
    /// A line is snapped in pulls no longer than this.
    pub line_pull_most: Length,
    /// Smaller side of an off-cut that is kept.
    pub offcut_width_least: Length,
    /// Larger side of an off-cut that is kept.
    pub offcut_length_least: Length,
    /// Spare sheets, in percent of the cut-plan sheets, rounded up to whole sheets.
    pub spare_percent: Decimal,
    /// The area method deducts openings.
    pub area_method_deducts: bool,
    /// Where it does, only those of more square feet than this.
    pub area_method_opening_least: Decimal,
    /// Loss of collated nails, in percent.
    pub gun_loss_percent: Decimal,
    /// Loss of loose nails, in percent.
    pub hand_loss_percent: Decimal,
    /// How much work the search may spend on one wall, in arcs priced; taking a strip or a layout through the stages counts for
    /// many.
    pub effort_most: u64,
    /// The most parts of sheets that cutting may look at for a cheaper plan.
    pub cutting_effort_most: u64,
    /// The most exchanges of a wall's layout whose sheets are cut to see whether the house buys less.
    pub exchanges_most: u64,
    /// The most stacks of courses that the search proposes for one bottom line and one set of directions, before it proves.
    pub stacks_most: u32,
    /// The search divides a sheet into at most so many equal parts to end a wall with.
    pub end_parts_most: u32,
    /// The search counts a member as carrying a seam that stands so far off the place where both nail lines have
    /// their full wood.
    pub seam_off_wood_most: Length,
    /// Alternatives that are listed beside the chosen layout.
    pub alternatives: u32,
}
