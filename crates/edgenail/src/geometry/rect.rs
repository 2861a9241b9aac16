//! An upright rectangle.

use super::{Interval, Point};
use crate::length::Length;
use serde::Serialize;

/// A rectangle with level and plumb sides.
///
/// ```
/// use edgenail::Length;
/// use edgenail::geometry::Rect;
/// let window = Rect::from_size(Length::feet(4), Length::feet(3), Length::feet(6), Length::feet(4));
/// assert_eq!(window.x1, Length::feet(10));
/// assert_eq!(window.grown(Length::inches(1)).width(), Length::inches(74));
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub struct Rect {
    /// Left side.
    pub x0: Length,
    /// Bottom side.
    pub y0: Length,
    /// Right side.
    pub x1: Length,
    /// Top side.
    pub y1: Length,
}

impl Rect {
    /// The rectangle between these sides. It is empty where the sides are out of order.
    pub const fn new(x0: Length, y0: Length, x1: Length, y1: Length) -> Self {
        Self { x0, y0, x1, y1 }
    }

    /// The rectangle of this size with its lower left corner here.
    pub fn from_size(left: Length, bottom: Length, width: Length, height: Length) -> Self {
        Self {
            x0: left,
            y0: bottom,
            x1: left + width,
            y1: bottom + height,
        }
    }

    /// The rectangle that spans two intervals.
    pub const fn from_spans(x: Interval, y: Interval) -> Self {
        Self {
            x0: x.lo,
            y0: y.lo,
            x1: x.hi,
            y1: y.hi,
        }
    }

    /// From the left side to the right side.
    pub fn width(&self) -> Length {
        self.x1 - self.x0
    }

    /// From the bottom side to the top side.
    pub fn height(&self) -> Length {
        self.y1 - self.y0
    }

    /// The stretch of wall that it takes.
    pub fn x_span(&self) -> Interval {
        Interval {
            lo: self.x0,
            hi: self.x1,
        }
    }

    /// The stretch of height that it takes.
    pub fn y_span(&self) -> Interval {
        Interval {
            lo: self.y0,
            hi: self.y1,
        }
    }

    /// It has no area.
    pub fn is_empty(&self) -> bool {
        self.x1 <= self.x0 || self.y1 <= self.y0
    }

    /// Its area in square units; zero where it is empty.
    pub fn area(&self) -> i128 {
        if self.is_empty() {
            return 0;
        }
        i128::from(self.width().units()) * i128::from(self.height().units())
    }

    /// What two rectangles share, where that has an area.
    pub fn intersect(&self, other: &Self) -> Option<Self> {
        let shared = Self {
            x0: self.x0.max(other.x0),
            y0: self.y0.max(other.y0),
            x1: self.x1.min(other.x1),
            y1: self.y1.min(other.y1),
        };
        (!shared.is_empty()).then_some(shared)
    }

    /// Two rectangles share an area.
    pub fn overlaps(&self, other: &Self) -> bool {
        self.intersect(other).is_some()
    }

    /// A point lies in it, sides included.
    pub fn contains(&self, point: Point) -> bool {
        self.x0 <= point.x && point.x <= self.x1 && self.y0 <= point.y && point.y <= self.y1
    }

    /// All of another rectangle lies in it, sides included.
    pub fn covers(&self, other: &Self) -> bool {
        self.x0 <= other.x0 && other.x1 <= self.x1 && self.y0 <= other.y0 && other.y1 <= self.y1
    }

    /// Larger by the same distance on all sides, or smaller where the distance is below zero.
    #[must_use]
    pub fn grown(&self, by: Length) -> Self {
        Self {
            x0: self.x0 - by,
            y0: self.y0 - by,
            x1: self.x1 + by,
            y1: self.y1 + by,
        }
    }

    /// Moved by a distance to the right and a distance up.
    #[must_use]
    pub fn shifted(&self, right: Length, up: Length) -> Self {
        Self {
            x0: self.x0 + right,
            y0: self.y0 + up,
            x1: self.x1 + right,
            y1: self.y1 + up,
        }
    }

    /// Its corners, counter-clockwise from the lower left.
    pub const fn corners(&self) -> [Point; 4] {
        [
            Point::new(self.x0, self.y0),
            Point::new(self.x1, self.y0),
            Point::new(self.x1, self.y1),
            Point::new(self.x0, self.y1),
        ]
    }
}

#[cfg(test)]
mod tests;
