//! On-centre layout.

use crate::geometry::Interval;
use crate::house::{End, LayoutOrigin};
use crate::length::Length;

/// Marks at equal spaces from a zero, to both sides of it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Grid {
    /// The mark that is counted from.
    pub zero: Length,
    /// From mark to mark.
    pub spacing: Length,
    /// Marks are counted to the left.
    pub from_right: bool,
}

impl Grid {
    /// The marks that an origin asks for: its offset is measured from the end of the sheathing.
    pub fn new(origin: LayoutOrigin, spacing: Length, sheathed: Interval) -> Self {
        let from_right = origin.end == End::Right;
        let zero = if from_right {
            sheathed.hi - origin.offset
        } else {
            sheathed.lo + origin.offset
        };
        Self {
            zero,
            spacing,
            from_right,
        }
    }

    /// Faces of this width with their centres on the marks, those that lie wholly on the stretch, from left to
    /// right, each with its mark's number. An odd width is rounded away from the end that is counted from, so that
    /// the mirrored wall has the mirrored faces.
    pub fn faces(&self, width: Length, x: Interval) -> Vec<(i64, Interval)> {
        self.near(width, x).filter(|(_, face)| x.covers(*face)).collect()
    }

    /// The same, where floor and roof framing stands flush with both ends of the stretch: whatever would stick out
    /// or stand in the end member gives way to it.
    pub fn faces_with_ends(&self, width: Length, x: Interval) -> Vec<Interval> {
        let ends = [
            Interval::new(x.lo, (x.lo + width).min(x.hi)),
            Interval::new((x.hi - width).max(x.lo), x.hi),
        ];
        if ends[0].overlaps(ends[1]) {
            return vec![ends[0]];
        }
        let between = self
            .near(width, x)
            .map(|(_, face)| face)
            .filter(|face| x.covers(*face) && !ends.iter().any(|end| end.overlaps(*face)));
        let mut all: Vec<Interval> = vec![ends[0]];
        all.extend(between);
        all.push(ends[1]);
        all
    }

    /// Faces on all marks from just before a stretch to just behind it, from left to right.
    fn near(&self, width: Length, x: Interval) -> impl Iterator<Item = (i64, Interval)> + use<> {
        let Self {
            zero,
            spacing,
            from_right,
        } = *self;
        let step = spacing.units().max(1);
        let first = (x.lo - zero).units().div_euclid(step);
        let beyond = (x.hi - zero).units().div_euclid(step) + 2;
        // Without a spacing there are no marks.
        let marks = first..if spacing > Length::ZERO { beyond } else { first };
        marks.map(move |mark| {
            let centre = zero + spacing * mark;
            if from_right {
                let hi = centre + width.half();
                (-mark, Interval::new(hi - width, hi))
            } else {
                let lo = centre - width.half();
                (mark, Interval::new(lo, lo + width))
            }
        })
    }
}

#[cfg(test)]
mod tests;
