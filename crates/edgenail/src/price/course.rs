//! What a course costs beside its pieces and its line: its level, its fit with the course below.

use super::{Account, Prices};
use crate::geometry::Interval;
use crate::layout::Running;
use crate::length::Length;
use crate::takeoff::Part;

impl Prices<'_> {
    /// Adds a level seam at this height over this stretch: it should not lie where storey and band meet, nor at the
    /// corner of an opening.
    pub fn level(&self, y: Length, x: Interval, account: &mut impl Account) {
        let joints = self
            .kernel
            .frame
            .bands
            .iter()
            .flat_map(|band| [band.y.lo, band.y.hi]);
        let tops = self
            .kernel
            .frame
            .sections
            .iter()
            .filter(|section| section.gable)
            .map(|section| section.top);
        let near = self.kernel.practice.edge_distance_least + self.kernel.practice.gap;
        if joints.chain(tops).any(|joint| (joint - y).abs() <= near) {
            self.judge(
                account,
                Part::SeamsOnJoints,
                x.len().spaces(Length::feet(4)),
                self.kernel.rates.judgement.seam_on_joint_per_4_ft,
            );
        }
        let clear = self.kernel.practice.corner_clear;
        let beside = |place: &&crate::frame::OpeningPlace| {
            let outside = y <= place.rect.y0 || y >= place.rect.y1;
            outside
                && [place.rect.y0, place.rect.y1]
                    .iter()
                    .any(|edge| (*edge - y).abs() < clear)
        };
        let corners = 2 * self.kernel.frame.openings.iter().filter(beside).count();
        self.judge(
            account,
            Part::SeamsAtCorners,
            i64::try_from(corners).unwrap_or(i64::MAX),
            self.kernel.rates.judgement.seam_at_corner,
        );
    }

    /// Adds seams of a course over the seams of the course below: half a sheet apart is best. Seams over a plate or a
    /// rim do not count, nor do upright sheets.
    pub fn offsets(
        &self,
        both: (Running, Running),
        below: &[Length],
        above: &[Length],
        half: Length,
        account: &mut impl Account,
    ) {
        if both == (Running::Flat, Running::Flat) {
            let uneven = above.iter().filter(|x| {
                let nearest = below.iter().map(|other| (*other - **x).abs()).min();
                nearest.is_some_and(|distance| (distance - half).abs() > self.kernel.practice.gap)
            });
            self.judge(
                account,
                Part::UnevenOffsets,
                i64::try_from(uneven.count()).unwrap_or(i64::MAX),
                self.kernel.rates.judgement.uneven_offset,
            );
        }
    }

    /// Adds sheets of a course that are not of the length that most of it has.
    pub fn unlike(&self, sheets: &[u32], account: &mut impl Account) {
        let most = sheets
            .iter()
            .map(|sheet| sheets.iter().filter(|other| *other == sheet).count())
            .max()
            .unwrap_or(0);
        let unlike = sheets.len() - most;
        self.judge(
            account,
            Part::UnlikeLengths,
            i64::try_from(unlike).unwrap_or(i64::MAX),
            self.kernel.rates.judgement.unlike_length,
        );
    }
}
