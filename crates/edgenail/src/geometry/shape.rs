//! A connected part of a wall's face.

use super::boundary::{self, BoundaryEdge, RawEdge};
use super::point::turn;
use super::rounding::scale;
use super::{Interval, Point, Rect, Toward, ring};
use crate::length::Length;
use serde::ser::{Serialize, SerializeStruct, Serializer};
use std::hash::{Hash, Hasher};
use std::sync::OnceLock;

/// One column of a shape: plumb sides, straight bottom and top.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Trapezoid {
    /// Left side.
    pub x0: Length,
    /// Height of the bottom at the left and at the right side.
    pub bottom: (Length, Length),
    /// Right side.
    pub x1: Length,
    /// Height of the top at the left and at the right side.
    pub top: (Length, Length),
    /// Numbers of the sloping lines of the region that bottom and top lie on; 0 for a level line.
    pub(super) lines: (u64, u64),
}

impl Trapezoid {
    /// A rectangle as a column.
    fn from_rect(rect: &Rect) -> Self {
        Self {
            x0: rect.x0,
            bottom: (rect.y0, rect.y0),
            x1: rect.x1,
            top: (rect.y1, rect.y1),
            lines: (0, 0),
        }
    }

    /// The column as a rectangle, where its bottom and top are level.
    pub fn is_rect(&self) -> Option<Rect> {
        let level = self.bottom.0 == self.bottom.1 && self.top.0 == self.top.1;
        level.then(|| Rect::new(self.x0, self.bottom.0, self.x1, self.top.0))
    }

    /// Its left side.
    pub fn left(&self) -> Interval {
        Interval {
            lo: self.bottom.0,
            hi: self.top.0,
        }
    }

    /// Its right side.
    pub fn right(&self) -> Interval {
        Interval {
            lo: self.bottom.1,
            hi: self.top.1,
        }
    }

    /// What it takes of the plumb line at `x`, which must lie within its sides.
    fn at(&self, x: Length) -> Interval {
        let along = |(a, b): (Length, Length)| {
            if a == b {
                a
            } else {
                a + scale(b - a, (x - self.x0).units(), (self.x1 - self.x0).units())
            }
        };
        Interval {
            lo: along(self.bottom),
            hi: along(self.top),
        }
    }

    /// Twice the area that it shares with another.
    fn overlap_area2(&self, other: &Self) -> i128 {
        let (lo, hi) = (self.x0.max(other.x0), self.x1.min(other.x1));
        if hi <= lo {
            return 0;
        }
        if let (Some(a), Some(b)) = (self.is_rect(), other.is_rect()) {
            return 2 * a.intersect(&b).map_or(0, |shared| shared.area());
        }
        let mut breaks = vec![lo, hi];
        let ends = (self.at(lo), other.at(lo), self.at(hi), other.at(hi));
        let (a, b, c, d) = ends;
        for (l, m, p, q) in [
            (a.lo, b.lo, c.lo, d.lo),
            (a.hi, b.hi, c.hi, d.hi),
            (a.lo, b.hi, c.lo, d.hi),
            (a.hi, b.lo, c.hi, d.lo),
        ] {
            let (before, after) = (l - m, p - q);
            if before.units().signum() * after.units().signum() < 0 {
                let whole = before.abs() + after.abs();
                breaks.push(lo + scale(hi - lo, before.abs().units(), whole.units()));
            }
        }
        breaks.sort_unstable();
        let shared = |x| {
            let (s, o) = (self.at(x), other.at(x));
            (s.hi.min(o.hi) - s.lo.max(o.lo)).max(Length::ZERO)
        };
        breaks
            .windows(2)
            .map(|pair| {
                let height = (shared(pair[0]) + shared(pair[1])).units();
                i128::from((pair[1] - pair[0]).units()) * i128::from(height)
            })
            .sum()
    }
}

/// A connected part of a wall's face, bounded by plumb lines and straight lines from left to right, perhaps
/// with holes. Two parts that touch at a point only are two shapes.
///
/// It is written as its [rings](Shape::rings).
///
/// ```
/// use edgenail::Length;
/// use edgenail::geometry::{Rect, Shape};
/// let inch = Length::inches;
/// let sheet = Shape::from_rect(Rect::new(inch(0), inch(0), inch(48), inch(96))).unwrap();
/// assert_eq!(sheet.perimeter(), inch(288));
/// assert_eq!(sheet.boundary().len(), 4);
/// ```
#[derive(Clone, Debug)]
pub struct Shape {
    columns: Vec<Trapezoid>,
    /// Linked from the columns when first asked for, since several stages walk round the same piece.
    boundary: OnceLock<Vec<BoundaryEdge>>,
}

impl PartialEq for Shape {
    fn eq(&self, other: &Self) -> bool {
        self.columns == other.columns
    }
}

impl Eq for Shape {}

impl Hash for Shape {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.columns.hash(state);
    }
}

impl Shape {
    /// A rectangle; `None` where it is empty.
    pub fn from_rect(rect: Rect) -> Option<Self> {
        (!rect.is_empty()).then(|| Self::from_columns(vec![Trapezoid::from_rect(&rect)]))
    }

    /// A shape from columns that are connected, apart, rising by left side and then bottom.
    pub(super) const fn from_columns(columns: Vec<Trapezoid>) -> Self {
        Self {
            columns,
            boundary: OnceLock::new(),
        }
    }

    /// Its columns, from left to right, then from bottom to top. Their inner corners on a slope are rounded.
    pub fn columns(&self) -> &[Trapezoid] {
        &self.columns
    }

    /// The shape as a rectangle, where it is one.
    pub fn is_rect(&self) -> Option<Rect> {
        match &self.columns[..] {
            [only] => only.is_rect(),
            _ => None,
        }
    }

    /// Twice its area in square units, exact for its [rings](Shape::rings).
    pub fn area2(&self) -> i128 {
        if self.columns.iter().any(|c| c.lines != (0, 0)) {
            let edges = self.boundary();
            let from = edges.first().map_or_else(Point::default, |edge| edge.a);
            return edges.iter().map(|edge| turn(from, edge.a, edge.b)).sum();
        }
        self.columns
            .iter()
            .filter_map(Trapezoid::is_rect)
            .map(|rect| 2 * rect.area())
            .sum()
    }

    /// The smallest rectangle around it.
    pub fn bounds(&self) -> Rect {
        let Some(first) = self.columns.first() else {
            return Rect::default();
        };
        let start = Rect::new(first.x0, first.bottom.0, first.x1, first.top.0);
        self.columns.iter().fold(start, |r, c| Rect {
            x0: r.x0.min(c.x0),
            y0: r.y0.min(c.bottom.0).min(c.bottom.1),
            x1: r.x1.max(c.x1),
            y1: r.y1.max(c.top.0).max(c.top.1),
        })
    }

    /// Its edges, each as long as it is straight, ring by ring in the order of [`Shape::rings`], with the
    /// shape on the left hand.
    pub fn boundary(&self) -> &[BoundaryEdge] {
        self.boundary.get_or_init(|| match self.is_rect() {
            Some(rect) => boundary::of_rect(&rect).to_vec(),
            None => self.straight_rings().flatten().map(|edge| edge.edge).collect(),
        })
    }

    /// Its outline counter-clockwise, then its holes clockwise from left to right. A ring starts at its
    /// leftmost, then lowest corner and does not repeat it. Rings may touch at a corner.
    pub fn rings(&self) -> Vec<Vec<Point>> {
        self.straight_rings()
            .map(|ring| ring.iter().map(|edge| edge.edge.a).collect())
            .collect()
    }

    /// The length of all its edges; a sloping edge counts to the nearest unit.
    pub fn perimeter(&self) -> Length {
        self.boundary().iter().map(BoundaryEdge::length).sum()
    }

    /// A point lies in it, edges included.
    pub fn contains(&self, point: Point) -> bool {
        self.columns
            .iter()
            .any(|c| c.x0 <= point.x && point.x <= c.x1 && c.at(point.x).contains(point.y))
    }

    /// What it takes of the plumb line just beside `x`, rising.
    pub fn span_at_x(&self, x: Length, toward: Toward) -> Vec<Interval> {
        let meets = |c: &&Trapezoid| match toward {
            Toward::Left => c.x0 < x && x <= c.x1,
            Toward::Right => c.x0 <= x && x < c.x1,
        };
        let mut spans: Vec<Interval> = self
            .columns
            .iter()
            .filter(meets)
            .map(|c| c.at(x))
            .filter(|s| !s.is_empty())
            .collect();
        spans.sort_unstable();
        spans
    }

    /// Twice the area that it shares with another shape: exact where both have level and plumb edges only,
    /// else to a unit along each slope.
    pub fn overlap_area2(&self, other: &Self) -> i128 {
        self.columns
            .iter()
            .flat_map(|a| other.columns.iter().map(|b| a.overlap_area2(b)))
            .sum()
    }

    /// It shares an area with a rectangle.
    pub fn intersects_rect(&self, rect: &Rect) -> bool {
        let area = |c: &Trapezoid| c.overlap_area2(&Trapezoid::from_rect(rect));
        !rect.is_empty() && self.columns.iter().any(|c| area(c) > 0)
    }

    fn straight_rings(&self) -> impl Iterator<Item = Vec<RawEdge>> {
        self.raw_rings().into_iter().map(ring::straightened)
    }

    /// Its edges with their lines, ring by ring.
    pub(super) fn raw_rings(&self) -> Vec<Vec<RawEdge>> {
        ring::link(boundary::edges(&self.columns))
    }
}

impl Serialize for Shape {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut shape = serializer.serialize_struct("Shape", 1)?;
        shape.serialize_field("rings", &self.rings())?;
        shape.end()
    }
}

#[cfg(test)]
mod tests;
