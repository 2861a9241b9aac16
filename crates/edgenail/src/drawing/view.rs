//! From the wall's plane to paper.

use super::{Extent, MM, Micron, Spot};
use crate::geometry::{Interval, Point, Rect, Shape};
use crate::length::{Length, Style};

/// A scale and where the wall's zero lies on paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct View {
    /// So many units of the wall are one unit on paper.
    pub denominator: i64,
    /// Where x = 0, y = 0 of the wall lies.
    pub zero: Spot,
}

/// Scales that a rule shows: inches to the foot, and what they are called.
const FEET_SCALES: [(i64, &str); 9] = [
    (8, "1 1/2\" = 1'-0\""),
    (12, "1\" = 1'-0\""),
    (16, "3/4\" = 1'-0\""),
    (24, "1/2\" = 1'-0\""),
    (32, "3/8\" = 1'-0\""),
    (48, "1/4\" = 1'-0\""),
    (64, "3/16\" = 1'-0\""),
    (96, "1/8\" = 1'-0\""),
    (192, "1/16\" = 1'-0\""),
];

/// The same for drawings in millimetres (ISO 5455 with 1:25, which is common).
const METRIC_SCALES: [(i64, &str); 6] = [
    (10, "1:10"),
    (20, "1:20"),
    (25, "1:25"),
    (50, "1:50"),
    (100, "1:100"),
    (200, "1:200"),
];

/// The usual scales of a style, the largest first.
pub(super) const fn scales(style: Style) -> &'static [(i64, &'static str)] {
    match style {
        Style::Millimetres => &METRIC_SCALES,
        Style::Inches(_) | Style::FeetInches(_) | Style::DecimalInches => &FEET_SCALES,
    }
}

/// A length on paper, to the nearest micrometre: 25,400 of them are an inch.
pub(super) fn on_paper(length: Length, denominator: i64) -> Micron {
    const PER_INCH: i64 = 25 * MM + 400;
    let whole = 2 * Length::PER_INCH * denominator;
    let scaled = 2 * i128::from(length.units()) * i128::from(PER_INCH) + i128::from(whole / 2);
    Micron::try_from(scaled.div_euclid(i128::from(whole))).unwrap_or(0)
}

impl View {
    /// A place of the wall on paper.
    pub(super) fn spot(&self, point: Point) -> Spot {
        Spot::new(self.x(point.x), self.y(point.y))
    }

    /// A distance from the wall's left end on paper.
    pub(super) fn x(&self, x: Length) -> Micron {
        self.zero.x + on_paper(x, self.denominator)
    }

    /// A height on paper.
    pub(super) fn y(&self, y: Length) -> Micron {
        self.zero.y - on_paper(y, self.denominator)
    }

    /// A rectangle of the wall on paper.
    pub(super) fn extent(&self, rect: &Rect) -> Extent {
        Extent::new(self.x(rect.x0), self.y(rect.y1), self.x(rect.x1), self.y(rect.y0))
    }

    /// The outline of a shape on paper.
    pub(super) fn rings(&self, shape: &Shape) -> Vec<Vec<Spot>> {
        shape
            .rings()
            .iter()
            .map(|ring| ring.iter().map(|&point| self.spot(point)).collect())
            .collect()
    }

    /// A stretch along the wall on paper.
    pub(super) fn across(&self, x: Interval) -> (Micron, Micron) {
        (self.x(x.lo), self.x(x.hi))
    }
}

/// A box lies within an area given by its rings: no side of the area enters it, and its middle is inside.
pub(super) fn holds(rings: &[Vec<Spot>], extent: &Extent) -> bool {
    if let [ring] = rings
        && let [a, b, c, d] = ring[..]
        && (a.x, a.y, c.x, c.y) == (d.x, b.y, b.x, d.y)
    {
        let whole = Extent::new(a.x.min(c.x), a.y.min(c.y), a.x.max(c.x), a.y.max(c.y));
        return whole.covers(extent);
    }
    let middle = extent.middle();
    let mut inside = false;
    for ring in rings {
        let Some(mut a) = ring.last().copied() else {
            continue;
        };
        for &b in ring {
            if enters(a, b, extent) {
                return false;
            }
            let (low, high) = if a.y < b.y { (a, b) } else { (b, a) };
            // Half-open, so that a corner at the middle's height counts once.
            inside ^= low.y <= middle.y && middle.y < high.y && turn(low, high, middle) > 0;
            a = b;
        }
    }
    inside
}

/// Places on paper are so near to each other that these products fit.
const fn turn(a: Spot, b: Spot, c: Spot) -> i64 {
    (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)
}

/// A line passes through the inside of a box.
fn enters(a: Spot, b: Spot, extent: &Extent) -> bool {
    let beside = a.x.max(b.x) <= extent.x0
        || a.x.min(b.x) >= extent.x1
        || a.y.max(b.y) <= extent.y0
        || a.y.min(b.y) >= extent.y1;
    if beside {
        return false;
    }
    if a.x == b.x || a.y == b.y {
        return true;
    }
    let turns = extent.corners().map(|corner| turn(a, b, corner));
    turns.iter().any(|&t| t > 0) && turns.iter().any(|&t| t < 0)
}

#[cfg(test)]
mod tests;
