//! What a course costs beside its pieces: its line, its level, its fit with the course below.

use super::Prices;
use super::part::{Part, Tally};
use crate::geometry::Interval;
use crate::layout::Running;
use crate::length::Length;

impl Prices<'_> {
    /// The line that a course is laid to, snapped in pulls.
    pub fn line(&self, x: Interval) -> Tally {
        let mut tally = Tally::default();
        let pulls = if self.practice.line_pull_most > Length::ZERO {
            x.len().spaces(self.practice.line_pull_most)
        } else {
            0
        };
        self.work(&mut tally, Part::ChalkLines, pulls, self.rates.chalk_line);
        tally
    }

    /// A level seam at this height over this stretch: it should not lie where storey and band meet, nor at the
    /// corner of an opening.
    pub fn level(&self, y: Length, x: Interval) -> Tally {
        let mut tally = Tally::default();
        let joints = self.frame.bands.iter().flat_map(|band| [band.y.lo, band.y.hi]);
        let tops = self
            .frame
            .sections
            .iter()
            .filter(|section| section.gable)
            .map(|section| section.top);
        let near = self.practice.edge_distance_least + self.practice.gap;
        if joints.chain(tops).any(|joint| (joint - y).abs() <= near) {
            self.work(
                &mut tally,
                Part::SeamsOnJoints,
                x.len().spaces(Length::feet(4)),
                self.rates.judgement.seam_on_joint_per_4_ft,
            );
        }
        let clear = self.practice.corner_clear;
        let beside = |place: &&crate::frame::OpeningPlace| {
            let outside = y <= place.rect.y0 || y >= place.rect.y1;
            outside
                && [place.rect.y0, place.rect.y1]
                    .iter()
                    .any(|edge| (*edge - y).abs() < clear)
        };
        let corners = 2 * self.frame.openings.iter().filter(beside).count();
        self.work(
            &mut tally,
            Part::SeamsAtCorners,
            i64::try_from(corners).unwrap_or(i64::MAX),
            self.rates.judgement.seam_at_corner,
        );
        tally
    }

    /// Seams of a course over the seams of the course below: half a sheet apart is best. Seams over a plate or a
    /// rim do not count, nor do upright sheets.
    pub fn offsets(
        &self,
        both: (Running, Running),
        below: &[Length],
        above: &[Length],
        half: Length,
    ) -> Tally {
        let mut tally = Tally::default();
        if both == (Running::Flat, Running::Flat) {
            let uneven = above.iter().filter(|x| {
                let nearest = below.iter().map(|other| (*other - **x).abs()).min();
                nearest.is_some_and(|distance| (distance - half).abs() > self.practice.gap)
            });
            self.work(
                &mut tally,
                Part::UnevenOffsets,
                i64::try_from(uneven.count()).unwrap_or(i64::MAX),
                self.rates.judgement.uneven_offset,
            );
        }
        tally
    }

    /// Sheets of a course that are not of the length that most of it has.
    pub fn unlike(&self, sheets: &[u32]) -> Tally {
        let mut tally = Tally::default();
        let most = sheets
            .iter()
            .map(|sheet| sheets.iter().filter(|other| *other == sheet).count())
            .max()
            .unwrap_or(0);
        let unlike = sheets.len() - most;
        self.work(
            &mut tally,
            Part::UnlikeLengths,
            i64::try_from(unlike).unwrap_or(i64::MAX),
            self.rates.judgement.unlike_length,
        );
        tally
    }
}
