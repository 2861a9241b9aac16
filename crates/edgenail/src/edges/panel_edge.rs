//! One straight edge of a panel, with coordinates of its own.

use super::Side;
use crate::geometry::{Interval, Point, Rect};
use crate::length::Length;

/// How an edge lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lie {
    /// Level.
    Level,
    /// Plumb.
    Plumb,
    /// Along a rake.
    Sloped,
}

/// A straight edge of a panel.
///
/// Places on it are given by one coordinate: y on a plumb edge, x on any other. Depths are measured from the edge
/// into the panel: across a level or plumb edge, and plumb on a sloped one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PanelEdge {
    /// Which side of the panel it is.
    pub side: Side,
    /// Its lower or left end.
    pub from: Point,
    /// Its other end.
    pub to: Point,
}

impl PanelEdge {
    /// The edge between two points that follow each other counter-clockwise round a panel.
    pub fn new(a: Point, b: Point) -> Self {
        let side = match (a.x == b.x, a.y < b.y, a.x < b.x) {
            (true, true, _) => Side::Right,
            (true, false, _) => Side::Left,
            (false, _, true) => Side::Bottom,
            (false, _, false) => Side::Top,
        };
        let (from, to) = if matches!(side, Side::Right | Side::Bottom) {
            (a, b)
        } else {
            (b, a)
        };
        Self { side, from, to }
    }

    /// How it lies.
    pub fn lie(&self) -> Lie {
        if self.from.x == self.to.x {
            Lie::Plumb
        } else if self.from.y == self.to.y {
            Lie::Level
        } else {
            Lie::Sloped
        }
    }

    /// It follows a rake.
    pub fn is_sloped(&self) -> bool {
        self.lie() == Lie::Sloped
    }

    /// Its stretch in its own coordinate.
    pub fn span(&self) -> Interval {
        match self.lie() {
            Lie::Plumb => Interval {
                lo: self.from.y,
                hi: self.to.y,
            },
            Lie::Level | Lie::Sloped => Interval {
                lo: self.from.x,
                hi: self.to.x,
            },
        }
    }

    /// Its other coordinate: x of a plumb edge, y of a level one; of a sloped edge, y at its left end.
    pub fn at(&self) -> Length {
        if self.side.is_plumb() {
            self.from.x
        } else {
            self.from.y
        }
    }

    /// The height of the edge at a place on it.
    pub fn y_at(&self, x: Length) -> Length {
        match self.lie() {
            Lie::Sloped => {
                crate::geometry::Slope::through(self.from, self.to).map_or(self.from.y, |line| line.y_at(x))
            }
            Lie::Level | Lie::Plumb => self.from.y,
        }
    }

    /// The point at a place on it and at a depth.
    pub fn point(&self, place: Length, depth: Length) -> Point {
        match self.side {
            Side::Left => Point::new(self.from.x + depth, place),
            Side::Right => Point::new(self.from.x - depth, place),
            Side::Bottom => Point::new(place, self.y_at(place) + depth),
            Side::Top => Point::new(place, self.y_at(place) - depth),
        }
    }

    /// The coordinate across a level or plumb edge at a depth.
    pub fn across(&self, depth: Length) -> Length {
        match self.side {
            Side::Left | Side::Bottom => self.at() + depth,
            Side::Right | Side::Top => self.at() - depth,
        }
    }

    /// Depths from the near to the far side of a rectangle, seen from a level or plumb edge.
    pub fn depths(&self, rect: &Rect) -> Interval {
        let at = self.at();
        match self.side {
            Side::Left => Interval {
                lo: rect.x0 - at,
                hi: rect.x1 - at,
            },
            Side::Right => Interval {
                lo: at - rect.x1,
                hi: at - rect.x0,
            },
            Side::Bottom => Interval {
                lo: rect.y0 - at,
                hi: rect.y1 - at,
            },
            Side::Top => Interval {
                lo: at - rect.y1,
                hi: at - rect.y0,
            },
        }
    }

    /// The rectangle over a stretch of the edge, from one depth to another.
    pub fn area(&self, span: Interval, depths: Interval) -> Rect {
        let (a, b) = (self.point(span.lo, depths.lo), self.point(span.hi, depths.hi));
        let (c, d) = (self.point(span.lo, depths.hi), self.point(span.hi, depths.lo));
        Rect {
            x0: a.x.min(b.x),
            x1: a.x.max(b.x),
            y0: a.y.min(b.y).min(c.y).min(d.y),
            y1: a.y.max(b.y).max(c.y).max(d.y),
        }
    }
}
