//! The upper or lower limit of a wall.

use super::point::turn;
use super::{Interval, Point, Slope};
use crate::length::Length;
use serde::Serialize;

/// On which side of a plumb line to look.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Toward {
    /// Just to the left of it.
    Left,
    /// Just to the right of it.
    Right,
}

/// A line from left to right, straight between its points, with plumb steps where two points share their x.
///
/// ```
/// use edgenail::Length;
/// use edgenail::geometry::{Point, Profile, Toward};
/// let feet = |x, y| Point::new(Length::feet(x), Length::feet(y));
/// let stepped = Profile::new(vec![feet(0, 0), feet(8, 0), feet(8, 2), feet(20, 2)]).unwrap();
/// assert_eq!(stepped.y_at(Length::feet(8), Toward::Left), Some(Length::ZERO));
/// assert_eq!(stepped.y_at(Length::feet(8), Toward::Right), Some(Length::feet(2)));
/// assert_eq!(stepped.y_at(Length::feet(20), Toward::Right), None);
/// ```
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize)]
#[serde(transparent)]
pub struct Profile {
    points: Vec<Point>,
}

impl Profile {
    /// The line through these points. `None` unless x never falls and rises at least once, with at most one
    /// step at any x.
    ///
    /// Points that change nothing (repeated, or on the straight way between their neighbours) are left out.
    pub fn new(points: Vec<Point>) -> Option<Self> {
        let rising = points.windows(2).all(|pair| pair[0].x <= pair[1].x);
        let mut kept: Vec<Point> = Vec::with_capacity(points.len());
        for point in points {
            while let [.., before, last] = kept[..] {
                let onward = before.x < point.x || (last.y > before.y) == (point.y > last.y);
                if turn(before, last, point) != 0 || !onward {
                    break;
                }
                kept.pop();
            }
            if kept.last() != Some(&point) {
                kept.push(point);
            }
        }
        let stepped_once = kept.windows(3).all(|three| three[0].x < three[2].x);
        let (first, last) = (kept.first()?, kept.last()?);
        (rising && stepped_once && first.x < last.x).then_some(Self { points: kept })
    }

    /// A level line; `None` unless it has a length.
    pub fn level(x: Interval, y: Length) -> Option<Self> {
        Self::new(vec![Point::new(x.lo, y), Point::new(x.hi, y)])
    }

    /// Its points, from left to right.
    pub fn points(&self) -> &[Point] {
        &self.points
    }

    /// From its left end to its right end.
    pub fn span(&self) -> Interval {
        match (self.points.first(), self.points.last()) {
            (Some(first), Some(last)) => Interval {
                lo: first.x,
                hi: last.x,
            },
            _ => Interval::default(),
        }
    }

    /// Its height just beside `x`, on a slope nearest, ties down; `None` beyond its ends.
    pub fn y_at(&self, x: Length, toward: Toward) -> Option<Length> {
        let after = match toward {
            Toward::Left => self.points.partition_point(|p| p.x < x),
            Toward::Right => self.points.partition_point(|p| p.x <= x),
        };
        let (a, b) = self.segment(after.checked_sub(1)?)?;
        Some(Slope::through(a, b)?.y_at(x))
    }

    /// Where its points stand, rising, each once.
    pub fn breaks(&self) -> Vec<Length> {
        let mut xs: Vec<Length> = self.points.iter().map(|p| p.x).collect();
        xs.dedup();
        xs
    }

    /// Its straight parts from left to right, without the plumb steps.
    pub fn segments(&self) -> impl Iterator<Item = (Point, Point)> + '_ {
        self.points
            .windows(2)
            .filter(|pair| pair[0].x < pair[1].x)
            .map(|pair| (pair[0], pair[1]))
    }

    /// The lowest and the highest height that it takes inside a stretch, ends rounded as in
    /// [`Profile::y_at`]; `None` where the stretch is empty or reaches beyond its ends.
    pub fn y_over(&self, x: Interval) -> Option<Interval> {
        if x.is_empty() {
            return None;
        }
        let ends = [self.y_at(x.lo, Toward::Right)?, self.y_at(x.hi, Toward::Left)?];
        let within = self
            .points
            .iter()
            .filter(|p| x.lo < p.x && p.x < x.hi)
            .map(|p| p.y);
        let (lo, hi) = within.fold((ends[0].min(ends[1]), ends[0].max(ends[1])), |(lo, hi), y| {
            (lo.min(y), hi.max(y))
        });
        Some(Interval { lo, hi })
    }

    /// Moved up by a distance.
    #[must_use]
    pub fn shifted(&self, up: Length) -> Self {
        Self {
            points: self.points.iter().map(|p| Point::new(p.x, p.y + up)).collect(),
        }
    }

    /// The same line with a vertex at each of these places, rounded as in [`Profile::y_at`]. Places beyond
    /// the ends, and those that have a vertex, add nothing.
    #[must_use]
    pub fn with_vertices_at(&self, xs: &[Length]) -> Self {
        let mut points = self.points.clone();
        for &x in xs {
            let held = self.points.binary_search_by_key(&x, |p| p.x).is_ok();
            if let Some(y) = self.y_at(x, Toward::Right).filter(|_| !held) {
                points.push(Point::new(x, y));
            }
        }
        // Stable, so that a step keeps its direction.
        points.sort_by_key(|p| p.x);
        points.dedup();
        Self { points }
    }

    /// From point `index` to the next, where that is a straight part.
    pub(super) fn segment(&self, index: usize) -> Option<(Point, Point)> {
        match self.points.get(index..index.checked_add(2)?)? {
            &[a, b] if a.x < b.x => Some((a, b)),
            _ => None,
        }
    }

    /// The same line through other points, which must rise in x.
    pub(super) const fn from_rising(points: Vec<Point>) -> Self {
        Self { points }
    }
}
