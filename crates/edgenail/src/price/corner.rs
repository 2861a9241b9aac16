//! What a vertical seam costs for standing where it should not.

use super::{Account, Prices};
use crate::geometry::Interval;
use crate::length::Length;
use crate::takeoff::Part;

impl Prices<'_> {
    /// Adds a vertical seam over this height.
    ///
    /// It should keep one stud bay, and never less than practice asks, from the corners of openings (common
    /// practice, no source).
    pub fn seam(&self, x: Length, y: Interval, account: &mut impl Account) {
        let mut corners = 0;
        for place in &self.kernel.frame.openings {
            let bay = self
                .kernel
                .frame
                .storeys
                .get(place.storey as usize)
                .map_or(Length::ZERO, |storey| storey.spacing);
            let clear = bay.max(self.kernel.practice.corner_clear);
            let near = [place.rect.x0, place.rect.x1]
                .iter()
                .any(|side| (*side - x).abs() < clear);
            let outside = x <= place.rect.x0 || x >= place.rect.x1;
            if near && outside {
                // A seam that runs past a corner; one that ends on the opening's edge, over or under it, does not.
                corners += [place.rect.y0, place.rect.y1]
                    .iter()
                    .filter(|y1| y.lo < **y1 && **y1 < y.hi)
                    .count();
            }
        }
        self.judge(
            account,
            Part::SeamsAtCorners,
            i64::try_from(corners).unwrap_or(i64::MAX),
            self.kernel.rates.judgement.seam_at_corner,
        );
    }
}
