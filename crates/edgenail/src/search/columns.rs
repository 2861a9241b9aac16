//! How much of a course is sheathed over its whole height, and what openings leave of the rest.

use super::space::Space;
use crate::geometry::{Interval, Rect};
use crate::length::Length;

/// A course along the wall.
#[derive(Debug, Default)]
pub(super) struct Columns {
    /// Bought over the whole height.
    pub clear: Length,
    /// No opening is over or under.
    pub solid: Length,
    /// Sheathed over the whole height, further than a sheet from what is not.
    pub far: Length,
    /// The same less a strip where no opening parts the wall: an end of the wall has no seam.
    pub seamed: Length,
    /// Openings over or under which pieces may be bought for what they leave.
    pub beside: Vec<Beside>,
}

/// An opening between the seams that may stand over or under it.
#[derive(Debug)]
pub(super) struct Beside {
    pub width: Length,
    /// What it leaves.
    pub area: i128,
    /// Of that what is straight over and under it.
    pub left: i128,
    /// In how many parts.
    pub parts: i64,
}

impl Columns {
    /// `over` are the outermost seams over or under each opening.
    pub fn new(space: &Space<'_>, y: Interval, widest: Length, over: &[Interval]) -> Self {
        let all = space.holes.iter().zip(over);
        let holes: Vec<(Rect, Interval)> = all
            .filter(|(hole, _)| hole.y_span().overlaps(y))
            .map(|(hole, over)| (*hole, *over))
            .collect();
        // Openings over one another would be counted twice.
        let alone = |x: Interval| {
            holes
                .iter()
                .filter(|(other, _)| other.x_span().overlaps(x))
                .count()
                == 1
        };
        // Where strips may be cut to what an opening leaves over their whole width.
        let through = |(hole, over): &(Rect, Interval)| {
            if hole.y_span().covers(y) || !alone(hole.x_span()) {
                hole.x_span()
            } else {
                *over
            }
        };
        let mut columns = Self::default();
        let taken = Interval::union(holes.iter().map(through).collect());
        for span in Interval::subtract(space.x, &taken) {
            columns.clear += span.len();
        }
        let taken = Interval::union(holes.iter().map(|(hole, _)| hole.x_span()).collect());
        for span in Interval::subtract(space.x, &taken) {
            let ends = i64::from(span.lo != space.x.lo) + i64::from(span.hi != space.x.hi);
            columns.solid += span.len();
            columns.far += (span.len() - widest * ends).max(Length::ZERO);
            let step = widest + space.practice.end_short;
            columns.seamed += (span.len() - step * ends.max(1)).max(Length::ZERO);
        }
        for hole in &holes {
            let x = through(hole).intersect(space.x);
            let high = hole.0.y_span().intersect(y);
            let (Some(x), Some(high)) = (x, high) else {
                continue;
            };
            let left = y.len() - high.len();
            if alone(hole.0.x_span()) && left > Length::ZERO {
                columns.beside.push(Beside {
                    width: x.len(),
                    area: (x.len() * left).square_units(),
                    left: (hole
                        .0
                        .x_span()
                        .intersect(space.x)
                        .map_or(Length::ZERO, Interval::len)
                        * left)
                        .square_units(),
                    parts: i64::from(y.lo < high.lo) + i64::from(high.hi < y.hi),
                });
            }
        }
        columns
    }
}
