//! One side of a straight line, and what several sides share.

use super::Point;
use super::point::turn;
use super::rounding::{root_up, to_length};
use crate::length::Length;

/// The points to the left of a directed line, or on it: `dx·y − dy·x ≥ least`.
#[derive(Clone, Copy, Debug)]
pub(super) struct HalfPlane {
    dx: i128,
    dy: i128,
    least: i128,
}

impl HalfPlane {
    /// To the left of the way from `a` to `b` by at least `by`, which must not be below zero. Where the way
    /// slopes, the limit is rounded up, by less than a unit in its distance.
    pub(super) fn beside(a: Point, b: Point, by: Length) -> Self {
        let wide = |l: Length| i128::from(l.units());
        let (dx, dy) = (wide(b.x - a.x), wide(b.y - a.y));
        let square = |v: i128| v.unsigned_abs().pow(2);
        let apart = root_up(square(wide(by)) * (square(dx) + square(dy)));
        let least = dx * wide(a.y) - dy * wide(a.x) + i128::try_from(apart).unwrap_or(i128::MAX / 2);
        Self { dx, dy, least }
    }

    /// The point `(x, y) / scale` lies in it; the scale must be above zero.
    fn holds(&self, x: i128, y: i128, scale: i128) -> bool {
        self.dx * y - self.dy * x >= self.least * scale
    }

    /// Where two limits cross, as `(x, y, scale)`; `None` where they are parallel.
    fn crossing(&self, other: &Self) -> Option<(i128, i128, i128)> {
        let scale = self.dx * other.dy - self.dy * other.dx;
        let x = self.least * other.dx - other.least * self.dx;
        let y = self.least * other.dy - other.least * self.dy;
        match scale {
            0 => None,
            1.. => Some((x, y, scale)),
            _ => Some((-x, -y, -scale)),
        }
    }
}

/// For each corner of what all half-planes share, a whole point near it that lies in all of them.
pub(super) fn corners_within(sides: &[HalfPlane]) -> Vec<Point> {
    let mut corners = Vec::with_capacity(sides.len());
    for (i, a) in sides.iter().enumerate() {
        for b in &sides[i + 1..] {
            let Some((x, y, scale)) = a.crossing(b) else {
                continue;
            };
            if sides.iter().all(|side| side.holds(x, y, scale)) {
                corners.extend(nearest_within(sides, x, y, scale));
            }
        }
    }
    corners
}

/// The whole point nearest to `(x, y) / scale`, within a few units, that lies in all half-planes.
fn nearest_within(sides: &[HalfPlane], x: i128, y: i128, scale: i128) -> Option<Point> {
    let (left, below) = (x.div_euclid(scale), y.div_euclid(scale));
    // The nearest steps first, so that most points are farther than one that was found and need no test.
    let steps = [0, 1, -1, 2, -2, 3, -3, 4];
    let across = steps.map(|step| (left + step, ((left + step) * scale - x).abs()));
    let up = steps.map(|step| (below + step, ((below + step) * scale - y).abs()));
    let mut nearest: Option<(i128, i128, i128)> = None;
    for (px, aside) in across {
        if nearest.is_some_and(|(away, ..)| away < aside) {
            continue;
        }
        for (py, above) in up {
            let key = (aside + above, px, py);
            if nearest.is_none_or(|nearest| key < nearest) && sides.iter().all(|side| side.holds(px, py, 1)) {
                nearest = Some(key);
            }
        }
    }
    nearest.map(|(_, px, py)| Point::new(to_length(px), to_length(py)))
}

/// The corners of the smallest convex polygon around some points, counter-clockwise from the leftmost lowest.
pub(super) fn hull(mut points: Vec<Point>) -> Vec<Point> {
    points.sort_unstable();
    points.dedup();
    if points.len() < 3 {
        return points;
    }
    let chain = |run: &mut dyn Iterator<Item = Point>| {
        let mut kept: Vec<Point> = Vec::new();
        for point in run {
            while let [.., a, b] = kept[..] {
                if turn(a, b, point) > 0 {
                    break;
                }
                kept.pop();
            }
            kept.push(point);
        }
        kept.pop();
        kept
    };
    let mut ring = chain(&mut points.iter().copied());
    ring.extend(chain(&mut points.iter().rev().copied()));
    ring
}
