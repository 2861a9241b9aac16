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
    /// From each point to the next; `None` for a step. A point put between two others leaves both parts on the
    /// line that they were on, so that crossings stay where they were.
    #[serde(skip)]
    slopes: Vec<Option<Slope>>,
}

/// A straight part of a profile.
#[derive(Clone, Copy, Debug)]
pub(super) struct Run {
    pub(super) a: Point,
    pub(super) b: Point,
    pub(super) slope: Slope,
}

impl Run {
    /// Its height at `x`, within its ends.
    pub(super) fn y_at(&self, x: Length) -> Length {
        if x == self.a.x {
            self.a.y
        } else if x == self.b.x {
            self.b.y
        } else {
            self.slope.y_at(x)
        }
    }
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
        if !(rising && stepped_once && first.x < last.x) {
            return None;
        }
        let slopes = kept
            .windows(2)
            .map(|pair| Slope::through(pair[0], pair[1]))
            .collect();
        Some(Self { points: kept, slopes })
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
        Some(self.run(after.checked_sub(1)?)?.y_at(x))
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
            slopes: self
                .slopes
                .iter()
                .map(|s| s.map(|slope| slope.shifted(up)))
                .collect(),
        }
    }

    /// The same line with a vertex at each of these places, rounded as in [`Profile::y_at`]. Places beyond
    /// the ends, and those that have a vertex, add nothing.
    #[must_use]
    pub fn with_vertices_at(&self, xs: &[Length]) -> Self {
        self.refined(|_, run| {
            let mut within: Vec<Length> = xs
                .iter()
                .copied()
                .filter(|&x| run.a.x < x && x < run.b.x)
                .collect();
            within.sort_unstable();
            within.dedup();
            within.into_iter().map(|x| Point::new(x, run.y_at(x))).collect()
        })
    }

    /// The same line with more points on its straight parts, rising.
    pub(super) fn refined(&self, between: impl Fn(usize, Run) -> Vec<Point>) -> Self {
        let mut refined = Self {
            points: self.points.iter().take(1).copied().collect(),
            slopes: Vec::new(),
        };
        for (index, slope) in self.slopes.iter().enumerate() {
            let added = self.run(index).map_or_else(Vec::new, |run| between(index, run));
            for point in added.into_iter().chain(self.points.get(index + 1).copied()) {
                if let Some(last) = refined.points.last().filter(|&&last| last != point) {
                    refined.slopes.push(slope.filter(|_| last.x < point.x));
                    refined.points.push(point);
                }
            }
        }
        refined
    }

    /// From point `index` to the next, where that is a straight part.
    pub(super) fn run(&self, index: usize) -> Option<Run> {
        let slope = self.slopes.get(index).copied()??;
        Some(Run {
            a: *self.points.get(index)?,
            b: *self.points.get(index + 1)?,
            slope,
        })
    }

    /// Its straight parts with their numbers.
    pub(super) fn runs(&self) -> impl Iterator<Item = (usize, Run)> + '_ {
        (0..self.slopes.len()).filter_map(|index| Some((index, self.run(index)?)))
    }
}

#[cfg(test)]
mod tests;
