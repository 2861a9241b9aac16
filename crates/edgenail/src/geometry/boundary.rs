//! The edges of a shape.

use super::shape::Trapezoid;
use super::{Interval, Point, Rect};
use crate::length::Length;
use serde::Serialize;

/// Which way an edge faces, away from the shape.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Facing {
    /// The shape lies to the right of it.
    Left,
    /// The shape lies to the left of it.
    Right,
    /// The shape lies above it.
    Bottom,
    /// The shape lies below it.
    Top,
}

/// A straight edge of a shape, with the shape on the left hand on the way from `a` to `b`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub struct BoundaryEdge {
    /// Where it starts.
    pub a: Point,
    /// Where it ends.
    pub b: Point,
    /// Which way it faces.
    pub facing: Facing,
}

impl BoundaryEdge {
    /// How long it is; to the nearest unit where it slopes.
    pub fn length(&self) -> Length {
        self.a.distance(self.b)
    }

    /// Its ends from left to right, or from bottom to top.
    ///
    /// ```
    /// use edgenail::Length;
    /// use edgenail::geometry::{Facing, Rect, Shape};
    /// let inch = Length::inches;
    /// let shape = Shape::from_rect(Rect::new(inch(0), inch(0), inch(48), inch(96))).unwrap();
    /// let top = shape.boundary().iter().find(|e| e.facing == Facing::Top).unwrap();
    /// assert!(top.a.x > top.b.x);
    /// assert_eq!(top.ends(), (top.b, top.a));
    /// ```
    pub fn ends(&self) -> (Point, Point) {
        if self.a <= self.b {
            (self.a, self.b)
        } else {
            (self.b, self.a)
        }
    }

    /// What it takes along its run: of height for an edge that faces left or right, else of the wall's length.
    pub fn span(&self) -> Interval {
        match self.facing {
            Facing::Left | Facing::Right => Interval::new(self.a.y, self.b.y),
            Facing::Bottom | Facing::Top => Interval::new(self.a.x, self.b.x),
        }
    }
}

/// An edge with the sloping line of the region that it lies on; 0 for none.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct RawEdge {
    pub(super) edge: BoundaryEdge,
    pub(super) line: u64,
}

impl RawEdge {
    const fn new(a: Point, b: Point, facing: Facing, line: u64) -> Self {
        Self {
            edge: BoundaryEdge { a, b, facing },
            line,
        }
    }
}

/// The edges of a rectangle, from its lower left corner.
pub(super) const fn of_rect(rect: &Rect) -> [BoundaryEdge; 4] {
    let [a, b, c, d] = rect.corners();
    [
        BoundaryEdge {
            a,
            b,
            facing: Facing::Bottom,
        },
        BoundaryEdge {
            a: b,
            b: c,
            facing: Facing::Right,
        },
        BoundaryEdge {
            a: c,
            b: d,
            facing: Facing::Top,
        },
        BoundaryEdge {
            a: d,
            b: a,
            facing: Facing::Left,
        },
    ]
}

/// All edges of some columns, in no order that matters.
pub(super) fn edges(columns: &[Trapezoid]) -> Vec<RawEdge> {
    let mut edges = Vec::with_capacity(4 * columns.len());
    let mut sides: Vec<(Length, bool, Interval)> = Vec::with_capacity(2 * columns.len());
    for c in columns {
        let corner = Point::new;
        edges.push(RawEdge::new(
            corner(c.x0, c.bottom.0),
            corner(c.x1, c.bottom.1),
            Facing::Bottom,
            c.lines.0,
        ));
        edges.push(RawEdge::new(
            corner(c.x1, c.top.1),
            corner(c.x0, c.top.0),
            Facing::Top,
            c.lines.1,
        ));
        sides.push((c.x0, true, c.left()));
        sides.push((c.x1, false, c.right()));
    }
    sides.sort_unstable();
    for same_x in sides.chunk_by(|a, b| a.0 == b.0) {
        let Some(&(x, ..)) = same_x.first() else { continue };
        let of = |left: bool| -> Vec<Interval> {
            let stretches = same_x.iter().filter(|side| side.1 == left).map(|side| side.2);
            stretches.filter(|s| !s.is_empty()).collect()
        };
        let (lefts, rights) = (of(true), of(false));
        for free in lefts.iter().flat_map(|&side| Interval::subtract(side, &rights)) {
            edges.push(RawEdge::new(
                Point::new(x, free.hi),
                Point::new(x, free.lo),
                Facing::Left,
                0,
            ));
        }
        for free in rights.iter().flat_map(|&side| Interval::subtract(side, &lefts)) {
            edges.push(RawEdge::new(
                Point::new(x, free.lo),
                Point::new(x, free.hi),
                Facing::Right,
                0,
            ));
        }
    }
    edges
}
