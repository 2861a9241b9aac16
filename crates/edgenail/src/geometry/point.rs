//! A point in the wall plane.

use crate::length::Length;
use serde::Serialize;

/// A point in the wall plane, ordered from left to right, then from bottom to top.
///
/// ```
/// use edgenail::Length;
/// use edgenail::geometry::Point;
/// let heel = Point::new(Length::feet(4), Length::ZERO);
/// assert!(heel < Point::new(Length::feet(4), Length::inches(1)));
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub struct Point {
    /// To the right of the wall's left end.
    pub x: Length,
    /// Above the wall's zero line.
    pub y: Length,
}

impl Point {
    /// The point at these coordinates.
    pub const fn new(x: Length, y: Length) -> Self {
        Self { x, y }
    }

    /// Distance from another point, in whole units, rounded to nearest.
    ///
    /// ```
    /// use edgenail::Length;
    /// use edgenail::geometry::Point;
    /// let origin = Point::default();
    /// assert_eq!(origin.distance(Point::new(Length::feet(3), Length::feet(4))), Length::feet(5));
    /// ```
    pub fn distance(self, other: Self) -> Length {
        let (dx, dy) = ((other.x - self.x).abs(), (other.y - self.y).abs());
        if dx == Length::ZERO {
            return dy;
        }
        if dy == Length::ZERO {
            return dx;
        }
        let square = |d: Length| u128::from(d.units().unsigned_abs()).pow(2);
        super::rounding::root(square(dx) + square(dy))
    }
}

/// Twice the signed area of the triangle a, b, c: above zero where c lies to the left of the way from a to b.
pub(super) fn turn(a: Point, b: Point, c: Point) -> i128 {
    let wide = |l: Length| i128::from(l.units());
    wide(b.x - a.x) * wide(c.y - a.y) - wide(b.y - a.y) * wide(c.x - a.x)
}

/// Twice the signed area inside a closed ring: above zero where it runs counter-clockwise.
pub(super) fn ring_area2(ring: &[Point]) -> i128 {
    let Some((&first, rest)) = ring.split_first() else {
        return 0;
    };
    rest.windows(2).map(|pair| turn(first, pair[0], pair[1])).sum()
}

#[cfg(test)]
mod tests;
