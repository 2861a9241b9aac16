//! A small convex polygon.

use super::halfplane::{HalfPlane, corners_within, hull};
use super::point::{ring_area2, turn};
use super::rounding::{nearest_wide, to_length};
use super::{Interval, Point, Rect, Slope};
use crate::length::Length;
use serde::ser::{Serialize, Serializer};

/// Most corners that a [`Convex`] has.
const MOST: usize = 8;

/// A convex polygon of three to eight corners: the face of a member.
///
/// Its corners run counter-clockwise from the leftmost, then lowest one; none of them is straight.
///
/// ```
/// use edgenail::Length;
/// use edgenail::geometry::{Convex, Interval, Point, Rect};
/// let inch = Length::inches;
/// let stud = Convex::from_rect(Rect::new(inch(16), inch(0), inch(18), inch(92))).unwrap();
/// assert_eq!(stud.span_at_x(inch(17)), Some(Interval::new(inch(0), inch(92))));
/// let cut = |x, y| Point::new(inch(x), inch(y));
/// let raked = Convex::from_points(&[cut(16, 0), cut(18, 0), cut(18, 93), cut(16, 92)]).unwrap();
/// assert_eq!(raked.is_rect(), None);
/// assert_eq!(raked.inset(inch(2)), None);
/// ```
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub struct Convex {
    /// Beyond `count`, all at the origin.
    corners: [Point; MOST],
    count: u8,
}

impl Convex {
    /// A rectangle; `None` where it is empty.
    pub fn from_rect(rect: Rect) -> Option<Self> {
        if rect.is_empty() {
            return None;
        }
        Self::inline(&rect.corners())
    }

    /// The polygon through these corners in either direction. `None` unless it is convex, has an area, and has
    /// three to eight corners; repeated and straight ones do not count.
    pub fn from_points(points: &[Point]) -> Option<Self> {
        let mut ring: Vec<Point> = Vec::with_capacity(points.len());
        for (i, &point) in points.iter().enumerate() {
            let before = ring.last().or(points.last()).copied().unwrap_or_default();
            let after = points[i + 1..]
                .iter()
                .chain(points)
                .copied()
                .find(|&p| p != point)?;
            if point != before && turn(before, point, after) != 0 {
                ring.push(point);
            }
        }
        if ring_area2(&ring) < 0 {
            ring.reverse();
        }
        let least = (0..ring.len()).min_by_key(|&i| ring[i])?;
        ring.rotate_left(least);
        let convex = Self::inline(&ring)?;
        let all_left = convex
            .edges()
            .all(|(a, b)| ring.iter().all(|&p| p == a || p == b || turn(a, b, p) > 0));
        (all_left && points.iter().all(|&p| convex.contains(p))).then_some(convex)
    }

    /// Corners that are in order.
    fn inline(ring: &[Point]) -> Option<Self> {
        let mut corners = [Point::default(); MOST];
        corners.get_mut(..ring.len())?.copy_from_slice(ring);
        let count = u8::try_from(ring.len()).ok().filter(|&count| count >= 3)?;
        Some(Self { corners, count })
    }

    /// Its corners, counter-clockwise from the leftmost, then lowest.
    pub fn points(&self) -> &[Point] {
        &self.corners[..usize::from(self.count)]
    }

    /// Its edges, counter-clockwise, each from its start to its end.
    pub fn edges(&self) -> impl Iterator<Item = (Point, Point)> + '_ {
        let points = self.points();
        points.iter().copied().zip(points.iter().copied().cycle().skip(1))
    }

    /// The smallest rectangle around it.
    pub fn bounds(&self) -> Rect {
        if let Some(rect) = self.is_rect() {
            return rect;
        }
        let [first, rest @ ..] = self.points() else {
            return Rect::default();
        };
        let start = Rect::new(first.x, first.y, first.x, first.y);
        rest.iter().fold(start, |r, p| {
            Rect::new(r.x0.min(p.x), r.y0.min(p.y), r.x1.max(p.x), r.y1.max(p.y))
        })
    }

    /// The polygon as a rectangle, where it is one with level and plumb sides.
    pub fn is_rect(&self) -> Option<Rect> {
        match *self.points() {
            [a, b, c, d] if a.y == b.y && b.x == c.x && c.y == d.y && d.x == a.x => {
                Some(Rect::new(a.x, a.y, c.x, c.y))
            }
            _ => None,
        }
    }

    /// A point lies in it, edges included.
    pub fn contains(&self, point: Point) -> bool {
        self.edges().all(|(a, b)| turn(a, b, point) >= 0)
    }

    /// Twice its area in square units.
    pub fn area2(&self) -> i128 {
        ring_area2(self.points())
    }

    /// What it takes of the plumb line at `x`, ends rounded to nearest, ties down. At its leftmost or
    /// rightmost corner that may be a single height.
    pub fn span_at_x(&self, x: Length) -> Option<Interval> {
        if let Some(rect) = self.is_rect() {
            return rect.x_span().contains(x).then(|| rect.y_span());
        }
        let crossed = self
            .edges()
            .filter(|(a, b)| a.x.min(b.x) <= x && x <= a.x.max(b.x));
        hull_of(crossed.flat_map(|(a, b)| match Slope::through(a, b) {
            Some(slope) => [slope.y_at(x); 2],
            None => [a.y, b.y],
        }))
    }

    /// What it takes of the level line at `y`, ends rounded to nearest, ties down. At its lowest or highest
    /// corner that may be a single place.
    pub fn span_at_y(&self, y: Length) -> Option<Interval> {
        if let Some(rect) = self.is_rect() {
            return rect.y_span().contains(y).then(|| rect.x_span());
        }
        let crossed = self
            .edges()
            .filter(|(a, b)| a.y.min(b.y) <= y && y <= a.y.max(b.y));
        hull_of(
            crossed.flat_map(|(a, b)| match Slope::through(a, b).map(|slope| slope.x_at(y)) {
                Some(Some(x)) => [x; 2],
                _ => [a.x, b.x],
            }),
        )
    }

    /// The part of the way from `a` to `b` that lies in it, ends rounded to nearest, ties down; `None` where
    /// they share no point.
    pub fn clip_segment(&self, a: Point, b: Point) -> Option<(Point, Point)> {
        // Shares of the way, as fractions with a positive denominator.
        let (mut enter, mut leave) = ((0, 1), (1, 1));
        let later = |p: (i128, i128), q: (i128, i128)| p.0 * q.1 > q.0 * p.1;
        for (from, to) in self.edges() {
            let (at_a, at_b) = (turn(from, to, a), turn(from, to, b));
            if at_a < 0 && at_b < 0 {
                return None;
            }
            let share = (at_a.abs(), (at_a - at_b).abs());
            if at_a < 0 && later(share, enter) {
                enter = share;
            } else if at_b < 0 && later(leave, share) {
                leave = share;
            }
        }
        let along = |(part, whole): (i128, i128)| {
            let step = |d: Length| to_length(nearest_wide(i128::from(d.units()) * part, whole));
            Point::new(a.x + step(b.x - a.x), a.y + step(b.y - a.y))
        };
        (!later(enter, leave)).then(|| (along(enter), along(leave)))
    }

    /// What is left after a strip of width `by` is taken off along every edge; `None` where nothing with an
    /// area is left or `by` is below zero. Exact for level and plumb edges; along a sloping one a little more
    /// may be taken, never less.
    pub fn inset(&self, by: Length) -> Option<Self> {
        if by < Length::ZERO {
            return None;
        }
        if let Some(rect) = self.is_rect() {
            return Self::from_rect(rect.grown(-by));
        }
        let sides: Vec<HalfPlane> = self.edges().map(|(a, b)| HalfPlane::beside(a, b, by)).collect();
        Self::from_points(&hull(corners_within(&sides)))
    }
}

/// The stretch from the least to the greatest of some places.
fn hull_of(places: impl Iterator<Item = Length>) -> Option<Interval> {
    let point = places.map(|at| Interval { lo: at, hi: at });
    point.reduce(|a, b| Interval {
        lo: a.lo.min(b.lo),
        hi: a.hi.max(b.hi),
    })
}

impl std::fmt::Debug for Convex {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_tuple("Convex").field(&self.points()).finish()
    }
}

impl Serialize for Convex {
    /// As the list of its corners.
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_seq(self.points())
    }
}

#[cfg(test)]
mod tests;
