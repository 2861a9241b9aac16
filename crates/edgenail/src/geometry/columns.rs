//! A region cut into columns, and columns joined into shapes.

use super::point::turn;
use super::rounding::{nearest_wide, to_length};
use super::shape::Trapezoid;
use super::{Interval, Point, Profile, Rect, Region, Shape, Slope};
use crate::length::Length;

/// A straight part of one of the region's limits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Source {
    pub(super) upper: bool,
    /// The place of its left point in the profile's list.
    pub(super) index: usize,
}

impl Source {
    /// As a number above zero.
    fn line(self) -> u32 {
        u32::try_from(2 * self.index + 2 + usize::from(self.upper)).unwrap_or(u32::MAX)
    }

    /// From the number that [`Source::line`] gave.
    pub(super) fn from_line(line: u32) -> Self {
        Self {
            upper: line % 2 == 1,
            index: (line / 2) as usize - 1,
        }
    }
}

/// A line that bounds a column at its bottom or top.
#[derive(Clone, Copy, Debug)]
enum Line {
    Level(Length),
    Sloped { slope: Slope, source: Source },
}

impl Line {
    fn on(profile: &Profile, upper: bool, at: Length) -> Option<Self> {
        let index = profile.points().partition_point(|p| p.x <= at).checked_sub(1)?;
        let (a, b) = profile.segment(index)?;
        if a.y == b.y {
            return Some(Self::Level(a.y));
        }
        Some(Self::Sloped {
            slope: Slope::through(a, b)?,
            source: Source { upper, index },
        })
    }

    fn id(&self) -> u32 {
        match self {
            Self::Level(_) => 0,
            Self::Sloped { source, .. } => source.line(),
        }
    }
}

/// What cuts a rectangle of a region into columns.
struct Cutter<'a> {
    rect: Rect,
    holes: Vec<&'a Rect>,
    /// Corners where a slope meets a level line or the other limit.
    corners: Vec<(Source, Point)>,
}

/// The connected parts of a region inside a rectangle.
pub(super) fn pieces(region: &Region, rect: Rect) -> Vec<Shape> {
    let Some(x) = region.span().and_then(|span| span.intersect(rect.x_span())) else {
        return Vec::new();
    };
    let rect = Rect {
        x0: x.lo,
        x1: x.hi,
        ..rect
    };
    if rect.is_empty() {
        return Vec::new();
    }
    let holes: Vec<&Rect> = region.holes.iter().filter(|hole| hole.overlaps(&rect)).collect();
    if holes.is_empty()
        && let Some((lo, hi)) = level_limits(region, x)
    {
        let kept = Rect {
            y0: rect.y0.max(lo),
            y1: rect.y1.min(hi),
            ..rect
        };
        return Shape::from_rect(kept).into_iter().collect();
    }
    let mut cutter = Cutter {
        rect,
        holes,
        corners: Vec::new(),
    };
    let columns = cutter.columns(region);
    connect(&columns)
}

/// The heights of both limits where they are level over a stretch.
fn level_limits(region: &Region, x: Interval) -> Option<(Length, Length)> {
    let level = |profile: &Profile| {
        let index = profile.points().partition_point(|p| p.x <= x.lo).checked_sub(1)?;
        let (a, b) = profile.segment(index)?;
        (a.y == b.y && x.hi <= b.x).then_some(a.y)
    };
    Some((level(&region.lower)?, level(&region.upper)?))
}

impl Cutter<'_> {
    /// The columns, each as wide as nothing changes, from left to right and then from bottom to top.
    fn columns(&mut self, region: &Region) -> Vec<Trapezoid> {
        let breaks = self.breaks(region);
        let mut columns = Vec::with_capacity(2 * breaks.len());
        for pair in breaks.windows(2) {
            let x = Interval {
                lo: pair[0],
                hi: pair[1],
            };
            let limits = (
                Line::on(&region.lower, false, x.lo),
                Line::on(&region.upper, true, x.lo),
            );
            if let (Some(lower), Some(upper)) = limits {
                self.column(x, lower, upper, &mut columns);
            }
        }
        columns
    }

    /// Every x where something begins, ends or crosses; fills the corners.
    fn breaks(&mut self, region: &Region) -> Vec<Length> {
        let x = self.rect.x_span();
        let mut breaks = vec![x.lo, x.hi];
        breaks.extend(self.holes.iter().flat_map(|hole| [hole.x0, hole.x1]));
        for (profile, upper) in [(&region.lower, false), (&region.upper, true)] {
            breaks.extend(profile.points().iter().map(|p| p.x));
            for (index, pair) in profile.points().windows(2).enumerate() {
                let (a, b) = (pair[0], pair[1]);
                let reach = Interval {
                    lo: a.x.max(x.lo),
                    hi: b.x.min(x.hi),
                };
                if a.y == b.y || reach.is_empty() {
                    continue;
                }
                let source = Source { upper, index };
                self.level_corners(source, (a, b), reach);
                if upper {
                    self.meeting_corners(source, (a, b), reach, &region.lower);
                }
            }
        }
        breaks.extend(self.corners.iter().map(|(_, corner)| corner.x));
        breaks.retain(|&at| x.contains(at));
        breaks.sort_unstable();
        breaks.dedup();
        breaks
    }

    /// Where a slope meets a level side of the rectangle or of a hole.
    fn level_corners(&mut self, source: Source, (a, b): (Point, Point), reach: Interval) {
        let Some(slope) = Slope::through(a, b) else { return };
        let heights = Interval::new(a.y, b.y);
        let meet = |y: Length, within: Interval| {
            let x = slope.x_at(y).filter(|_| heights.contains(y))?;
            within.contains(x).then_some((source, Point::new(x, y)))
        };
        let of_rect = [self.rect.y0, self.rect.y1]
            .into_iter()
            .filter_map(|y| meet(y, reach));
        let of_holes = self.holes.iter().flat_map(|hole| {
            let within = reach.intersect(hole.x_span());
            [hole.y0, hole.y1]
                .into_iter()
                .filter_map(move |y| meet(y, within?))
        });
        let found: Vec<(Source, Point)> = of_rect.chain(of_holes).collect();
        self.corners.extend(found);
    }

    /// Where a slope of the upper limit meets the lower limit.
    fn meeting_corners(&mut self, source: Source, (a, b): (Point, Point), reach: Interval, lower: &Profile) {
        for (index, pair) in lower.points().windows(2).enumerate() {
            let (c, d) = (pair[0], pair[1]);
            if d.x <= reach.lo || reach.hi <= c.x || c.x == d.x {
                continue;
            }
            let (from_c, from_d) = (turn(a, b, c), turn(a, b, d));
            if from_c.signum() * from_d.signum() > 0 || from_c == from_d {
                continue;
            }
            let along = i128::from((d.x - c.x).units()) * from_c.abs();
            let x = c.x + to_length(nearest_wide(along, from_c.abs() + from_d.abs()));
            let Some(slope) = Slope::through(c, d) else {
                continue;
            };
            if reach.contains(x) {
                let corner = Point::new(x, slope.y_at(x));
                self.corners.push((source, corner));
                if c.y != d.y {
                    self.corners.push((Source { upper: false, index }, corner));
                }
            }
        }
    }

    /// What is left between two breaks.
    fn column(&self, x: Interval, lower: Line, upper: Line, columns: &mut Vec<Trapezoid>) {
        let mut bottom = higher(x, Line::Level(self.rect.y0), lower);
        let top = if below(x, &upper, &Line::Level(self.rect.y1)) {
            upper
        } else {
            Line::Level(self.rect.y1)
        };
        let covering = self
            .holes
            .iter()
            .filter(|hole| hole.x0 <= x.lo && x.hi <= hole.x1);
        let taken = Interval::union(covering.map(|hole| hole.y_span()).collect());
        for hole in taken {
            let (from, to) = (Line::Level(hole.lo), Line::Level(hole.hi));
            if !below(x, &from, &top) {
                break;
            }
            self.emit(x, bottom, from, columns);
            bottom = higher(x, bottom, to);
        }
        self.emit(x, bottom, top, columns);
    }

    /// Adds the column between two lines, if it has an area.
    fn emit(&self, x: Interval, bottom: Line, top: Line, columns: &mut Vec<Trapezoid>) {
        if !below(x, &bottom, &top) {
            return;
        }
        let (left, right) = (self.ends(x.lo, bottom, top), self.ends(x.hi, bottom, top));
        if left.is_empty() && right.is_empty() {
            return;
        }
        columns.push(Trapezoid {
            x0: x.lo,
            bottom: (left.lo, right.lo),
            x1: x.hi,
            top: (left.hi, right.hi),
            lines: (bottom.id(), top.id()),
        });
    }

    /// The height of a line at a break.
    fn height(&self, line: Line, at: Length) -> Length {
        match line {
            Line::Level(y) => y,
            Line::Sloped { slope, source } => {
                let corner = self
                    .corners
                    .iter()
                    .find(|(of, corner)| *of == source && corner.x == at);
                corner.map_or_else(|| slope.y_at(at), |(_, corner)| corner.y)
            }
        }
    }

    /// Both heights at a break; rounding never lets the slope pass the line that it stays clear of.
    fn ends(&self, at: Length, bottom: Line, top: Line) -> Interval {
        let (lo, hi) = (self.height(bottom, at), self.height(top, at));
        if lo <= hi {
            return Interval { lo, hi };
        }
        match bottom {
            Line::Level(_) => Interval { lo, hi: lo },
            Line::Sloped { .. } => Interval { lo: hi, hi },
        }
    }
}

/// Whichever of two lines runs higher between two breaks.
fn higher(x: Interval, a: Line, b: Line) -> Line {
    if below(x, &a, &b) { b } else { a }
}

/// One line runs below another between two breaks, where they do not cross.
fn below(x: Interval, a: &Line, b: &Line) -> bool {
    match (a, b) {
        (Line::Level(a), Line::Level(b)) => a < b,
        (Line::Sloped { slope, .. }, Line::Level(y)) => side_of_level(slope, *y, x) < 0,
        (Line::Level(y), Line::Sloped { slope, .. }) => side_of_level(slope, *y, x) > 0,
        (Line::Sloped { slope: a, .. }, Line::Sloped { slope: b, .. }) => {
            let sum = |s: &Slope| s.y_at(x.lo) + s.y_at(x.hi);
            sum(a) < sum(b)
        }
    }
}

/// Above zero where a slope runs above a level line between two breaks, below zero where it runs below it.
///
/// Decided by the place where they cross, not by heights, so that rounding cannot make two cells disagree.
fn side_of_level(slope: &Slope, y: Length, x: Interval) -> i8 {
    let Some(crossing) = slope.x_at(y) else { return 0 };
    let rises = slope.rise() > Length::ZERO;
    if (x.lo >= crossing) == rises { 1 } else { -1 }
}

/// Columns that share a stretch of a side become one shape.
fn connect(columns: &[Trapezoid]) -> Vec<Shape> {
    let mut group: Vec<usize> = (0..columns.len()).collect();
    let root = |group: &[usize], mut i: usize| {
        while group[i] != i {
            i = group[i];
        }
        i
    };
    for (i, right) in columns.iter().enumerate() {
        let touching = columns[..i]
            .iter()
            .enumerate()
            .rev()
            .take_while(|(_, left)| left.x1 >= right.x0);
        for (j, left) in touching {
            if left.x1 == right.x0 && left.right().overlaps(right.left()) {
                let (a, b) = (root(&group, i), root(&group, j));
                group[a.max(b)] = a.min(b);
            }
        }
    }
    let mut shapes: Vec<(usize, Vec<Trapezoid>)> = Vec::new();
    for (i, column) in columns.iter().enumerate() {
        let of = root(&group, i);
        match shapes.iter_mut().find(|(first, _)| *first == of) {
            Some((_, members)) => push_widened(members, *column),
            None => shapes.push((of, vec![*column])),
        }
    }
    shapes
        .into_iter()
        .map(|(_, members)| Shape::from_columns(members))
        .collect()
}

/// Adds a column, or widens the one before where nothing changes between them.
fn push_widened(columns: &mut Vec<Trapezoid>, next: Trapezoid) {
    let same = |line: (u32, u32), before: (Length, Length), after: (Length, Length)| {
        before.1 == after.0
            && line.0 == line.1
            && (line.0 != 0 || (before.0 == before.1 && after.0 == after.1))
    };
    let widened = columns.iter_mut().rev().find(|c| {
        c.x1 == next.x0
            && same((c.lines.0, next.lines.0), c.bottom, next.bottom)
            && same((c.lines.1, next.lines.1), c.top, next.top)
    });
    match widened {
        Some(before) => {
            before.x1 = next.x1;
            before.bottom.1 = next.bottom.1;
            before.top.1 = next.top.1;
        }
        None => columns.push(next),
    }
}
