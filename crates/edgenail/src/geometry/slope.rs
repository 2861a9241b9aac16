//! A sloping line.

use super::rounding::{nearest_wide, scale, to_length};
use super::{Interval, Point};
use crate::length::Length;
use serde::Serialize;
use std::cmp::Ordering;

/// A straight line through a base point that rises so much over such a run.
///
/// Crossings are pure functions of the line and one coordinate, rounded to the nearest unit, ties down: who
/// asks, in which order and how often changes nothing. Exact while coordinates keep within [`Length::LIMIT`].
///
/// ```
/// use edgenail::Length;
/// use edgenail::geometry::{Point, Slope};
/// let rake = Slope::new(Point::default(), Length::inches(4), Length::inches(12)).unwrap();
/// assert_eq!(rake.y_at(Length::feet(3)), Length::feet(1));
/// assert_eq!(rake.x_at(Length::feet(1)), Some(Length::feet(3)));
/// assert_eq!(rake.y_at(Length::from_units(1)), Length::ZERO);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize)]
pub struct Slope {
    base: Point,
    rise: Length,
    run: Length,
}

impl Slope {
    /// The line through `base` that rises by `rise` (falls, where that is below zero) over `run` to the right.
    /// `None` unless the run is above zero.
    pub fn new(base: Point, rise: Length, run: Length) -> Option<Self> {
        (run > Length::ZERO).then_some(Self { base, rise, run })
    }

    /// The line through two points; `None` where one stands plumb over the other.
    pub fn through(a: Point, b: Point) -> Option<Self> {
        let (left, right) = if a.x < b.x { (a, b) } else { (b, a) };
        Self::new(left, right.y - left.y, right.x - left.x)
    }

    /// The point that the line was given through.
    pub const fn base(&self) -> Point {
        self.base
    }

    /// How much it rises over [`Slope::run`].
    pub const fn rise(&self) -> Length {
        self.rise
    }

    /// Over which run to the right it rises by [`Slope::rise`].
    pub const fn run(&self) -> Length {
        self.run
    }

    /// Its height at `x`: nearest, ties down.
    pub fn y_at(&self, x: Length) -> Length {
        self.base.y + scale(x - self.base.x, self.rise.units(), self.run.units())
    }

    /// Where it is at height `y`: nearest, ties down; `None` on a level line.
    pub fn x_at(&self, y: Length) -> Option<Length> {
        let (rise, up) = (self.rise.units(), y - self.base.y);
        match rise {
            0 => None,
            1.. => Some(self.base.x + scale(up, self.run.units(), rise)),
            _ => Some(self.base.x + scale(-up, self.run.units(), -rise)),
        }
    }

    /// Where two lines meet: nearest, ties down; `None` where they are parallel.
    ///
    /// ```
    /// use edgenail::Length;
    /// use edgenail::geometry::{Point, Slope};
    /// let inch = Length::inches;
    /// let left = Slope::new(Point::default(), inch(4), inch(12)).unwrap();
    /// let right = Slope::new(Point::new(inch(240), inch(0)), inch(-4), inch(12)).unwrap();
    /// assert_eq!(left.x_meeting(&right), Some(inch(120)));
    /// ```
    pub fn x_meeting(&self, other: &Self) -> Option<Length> {
        let wide = |l: Length| i128::from(l.units());
        let (run, run_other) = (wide(self.run), wide(other.run));
        let right = wide(other.base.x - self.base.x);
        let above = wide(self.base.y - other.base.y);
        let apart = -run * (wide(other.rise) * right + run_other * above);
        match self.steeper(other) {
            0 => None,
            steeper @ 1.. => Some(self.base.x + to_length(nearest_wide(apart, steeper))),
            flatter => Some(self.base.x + to_length(nearest_wide(-apart, -flatter))),
        }
    }

    /// How much faster it rises than another line: a number with the right sign.
    pub(super) fn steeper(&self, other: &Self) -> i128 {
        let wide = |l: Length| i128::from(l.units());
        wide(self.rise) * wide(other.run) - wide(other.rise) * wide(self.run)
    }

    /// It rises or falls less than another line.
    pub(super) fn flatter_than(&self, other: &Self) -> bool {
        let wide = |l: Length| i128::from(l.abs().units());
        wide(self.rise) * wide(other.run) < wide(other.rise) * wide(self.run)
    }

    /// Whether it runs below or above another line at `x`, without rounding.
    pub(super) fn compare_at(&self, other: &Self, x: Length) -> Ordering {
        let wide = |l: Length| i128::from(l.units());
        let height = |s: &Self| wide(s.base.y) * wide(s.run) + wide(s.rise) * wide(x - s.base.x);
        (height(self) * wide(other.run)).cmp(&(height(other) * wide(self.run)))
    }

    /// The line moved up by a distance.
    #[must_use]
    pub fn shifted(&self, up: Length) -> Self {
        Self {
            base: Point::new(self.base.x, self.base.y + up),
            ..*self
        }
    }

    /// The heights that it takes over a stretch, each end rounded as [`Slope::y_at`] does.
    pub fn y_over(&self, x: Interval) -> Interval {
        Interval::new(self.y_at(x.lo), self.y_at(x.hi))
    }
}

#[cfg(test)]
mod tests;
