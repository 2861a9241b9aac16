//! What the work costs.

use crate::amount::Amount;
use crate::decimal::Decimal;
use crate::length::Length;
use serde::Serialize;

/// The one unit that plans are compared in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Objective {
    /// Minutes are turned into money.
    Money,
    /// Money is turned into minutes.
    Minutes,
}

/// Charges for what a framer would rather not do, in minutes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Judgement {
    /// A seam at the corner of an opening.
    pub seam_at_corner: Amount,
    /// Four feet of seam where two members meet, such as storey and band.
    pub seam_on_joint_per_4_ft: Amount,
    /// A narrow piece.
    pub narrow_piece: Amount,
    /// A very narrow piece.
    pub very_narrow_piece: Amount,
    /// A piece is narrow whose smaller side, with the least strip's allowance, is under this.
    pub narrow_under: Length,
    /// It is very narrow under this.
    pub very_narrow_under: Length,
    /// A seam offset from the course below by other than half a sheet.
    pub uneven_offset: Amount,
    /// A sheet of unlike length in a course.
    pub unlike_length: Amount,
}

/// What the place of a piece makes of the time that setting it takes on the deck.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct PlaceFactors {
    /// Against a standing wall.
    pub standing: Decimal,
    /// From a ladder.
    pub ladder: Decimal,
    /// In an upper storey.
    pub upper_storey: Decimal,
    /// High up.
    pub high: Decimal,
    /// A piece whose top is higher than this above the base of a standing wall is set from a ladder.
    pub ladder_above: Length,
    /// A piece whose middle is higher than this above the base of a standing wall is high up.
    pub high_above: Length,
}

/// Minutes for each kind of work. All are invented unless the user gives his own.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct JobRates {
    /// The unit that plans are compared in.
    pub objective: Objective,
    /// Set a sheet up to 4 × 8 ft.
    pub set_8: Amount,
    /// Set a sheet up to 4 × 9 ft.
    pub set_9: Amount,
    /// Set a sheet up to 4 × 10 ft.
    pub set_10: Amount,
    /// Set a longer sheet.
    pub set_longer: Amount,
    /// Set a small piece.
    pub set_small: Amount,
    /// A piece of less square feet than this is small.
    pub small_under: Decimal,
    /// A piece longer than 8, 9 or 10 ft by no more than this is set as one of that length.
    pub length_allowance: Length,
    /// Drive a gun nail.
    pub nail_gun: Amount,
    /// Drive a nail by hand.
    pub nail_hand: Amount,
    /// Cut a sheet across.
    pub cross_cut: Amount,
    /// Rip a sheet.
    pub rip: Amount,
    /// Cut a notch on the bench.
    pub notch: Amount,
    /// Cut along a rake.
    pub rake_cut: Amount,
    /// Start cutting an opening in place.
    pub opening: Amount,
    /// Each foot of opening edge cut in place.
    pub opening_per_foot: Amount,
    /// Set a flat block.
    pub block_flat: Amount,
    /// Set a block on edge.
    pub block_on_edge: Amount,
    /// Set an added stud.
    pub added_stud: Amount,
    /// Snap a chalk line of up to one pull.
    pub chalk_line: Amount,
    /// Fetch an off-cut.
    pub fetch_offcut: Amount,
    /// Money a minute.
    pub labour: Amount,
    /// Factors for the place of a piece.
    pub places: PlaceFactors,
    /// Charges of judgement.
    pub judgement: Judgement,
}
