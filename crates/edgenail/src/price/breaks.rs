//! Sizes at which the price of a rectangle changes.

use super::Prices;
use crate::geometry::Rect;
use crate::length::Length;
use crate::takeoff::Place;

/// Rectangles in a row of one sheet whose shares are told apart.
const MOST_IN_A_ROW: i64 = 12;

impl Prices<'_> {
    /// Where the price of a rectangle changes with one of its sides, rising. The other side stays, and so do the place
    /// that it is set from, what its sides meet, and whether it runs along a floor band; the side is cut from sheets
    /// that measure so much in its direction.
    ///
    /// Between two breaks neither [`Prices::set_rectangle`] nor [`Prices::cut_rectangle`] depends on the side; under
    /// the first they may.
    pub fn breaks(&self, other: Length, sheets: &[Length]) -> Vec<Length> {
        let (practice, rates) = (self.kernel.practice, self.kernel.rates);
        let unit = Length::from_units(1);
        // The shortest of which so many no longer fit.
        let too_long = |sheet: Length, count: i64| {
            Length::from_units((sheet + practice.kerf).units() / count + 1) - practice.kerf
        };
        let mut breaks = self.kernel.setting_breaks(other);
        for sheet in sheets {
            breaks.extend((1..=MOST_IN_A_ROW).map(|count| too_long(*sheet, count)));
            // The shortest that needs no cut.
            breaks.push(*sheet);
        }
        let judgement = &rates.judgement;
        let narrow = [judgement.very_narrow_under, judgement.narrow_under];
        breaks.extend(narrow.map(|under| under - practice.strip_allowance));
        // No longer less than the other side, and more.
        breaks.extend([other, other + unit]);
        let shortest = sheets.iter().map(|sheet| too_long(*sheet, MOST_IN_A_ROW)).max();
        breaks.retain(|size| shortest.is_some_and(|shortest| *size >= shortest));
        breaks.sort_unstable();
        breaks.dedup();
        breaks
    }

    /// Where a rectangle is set from.
    pub fn place(&self, blank: &Rect) -> Place {
        Place::of(self.kernel.frame, self.kernel.practice, self.kernel.rates, blank)
    }
}
