//! A region cut into columns.

use super::profile::Run;
use super::shape::Trapezoid;
use super::{Interval, Point, Profile, Rect, Region, Shape, Slope, components};
use crate::length::Length;

/// A straight part of one of the region's limits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Source {
    pub(super) upper: bool,
    /// The place of its left point in the profile's list.
    pub(super) index: usize,
}

impl Source {
    /// The part of it after so many corners, as a number above zero.
    fn line(self, corners: usize) -> u64 {
        ((corners as u64) << 32) | (2 * self.index as u64 + 2 + u64::from(self.upper))
    }

    /// From the number that [`Source::line`] gave.
    pub(super) fn from_line(line: u64) -> Self {
        let whole = usize::try_from(line & 0xffff_ffff).unwrap_or_default();
        Self {
            upper: whole % 2 == 1,
            index: (whole / 2).saturating_sub(1),
        }
    }
}

/// A line that bounds a column at its bottom or top.
#[derive(Clone, Copy, Debug)]
enum Line {
    Level(Length),
    Sloped { run: Run, source: Source },
}

impl Line {
    fn on(profile: &Profile, upper: bool, at: Length) -> Option<Self> {
        let index = profile.points().partition_point(|p| p.x <= at).checked_sub(1)?;
        let run = profile.run(index)?;
        Some(if is_level(&run) {
            Self::Level(run.a.y)
        } else {
            Self::Sloped {
                run,
                source: Source { upper, index },
            }
        })
    }
}

fn is_level(run: &Run) -> bool {
    run.slope.rise() == Length::ZERO
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
    components::connect(&columns)
}

/// The heights of both limits where they are level over a stretch.
fn level_limits(region: &Region, x: Interval) -> Option<(Length, Length)> {
    let level = |profile: &Profile| {
        let index = profile.points().partition_point(|p| p.x <= x.lo).checked_sub(1)?;
        let run = profile.run(index)?;
        (is_level(&run) && x.hi <= run.b.x).then_some(run.a.y)
    };
    Some((level(&region.lower)?, level(&region.upper)?))
}

impl Cutter<'_> {
    /// The columns, each as wide as its lines go on, from left to right and then from bottom to top.
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
        // Only when wide as they get: a wedge must not vanish because something else breaks it in two.
        columns.retain(|c| !c.left().is_empty() || !c.right().is_empty());
        columns
    }

    /// Every x where something begins, ends or crosses; fills the corners.
    fn breaks(&mut self, region: &Region) -> Vec<Length> {
        let x = self.rect.x_span();
        let mut breaks = vec![x.lo, x.hi];
        breaks.extend(self.holes.iter().flat_map(|hole| [hole.x0, hole.x1]));
        for (profile, upper) in [(&region.lower, false), (&region.upper, true)] {
            breaks.extend(profile.points().iter().map(|p| p.x));
            for (index, run) in profile.runs() {
                let reach = Interval {
                    lo: run.a.x.max(x.lo),
                    hi: run.b.x.min(x.hi),
                };
                if reach.hi < reach.lo {
                    continue;
                }
                let source = Source { upper, index };
                if !is_level(&run) {
                    self.level_corners(source, &run, reach, &region.holes);
                }
                if upper {
                    self.meeting_corners(source, &run, reach, &region.lower);
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
    fn level_corners(&mut self, source: Source, run: &Run, reach: Interval, holes: &[Rect]) {
        let heights = run.slope.y_over(Interval {
            lo: run.a.x,
            hi: run.b.x,
        });
        let level = |y: Length, within: Interval| {
            let x = run
                .slope
                .x_at(y)
                .filter(|&x| reach.contains(x) && within.contains(x))?;
            heights.contains(y).then_some((source, Point::new(x, y)))
        };
        self.corners.extend(
            [self.rect.y0, self.rect.y1]
                .into_iter()
                .filter_map(|y| level(y, reach)),
        );
        let of_hole = |hole: &Rect| [level(hole.y0, hole.x_span()), level(hole.y1, hole.x_span())];
        self.corners.extend(holes.iter().flat_map(of_hole).flatten());
    }

    /// Where the upper limit meets the lower limit.
    fn meeting_corners(&mut self, source: Source, run: &Run, reach: Interval, lower: &Profile) {
        for (index, other) in lower.runs() {
            let Some(x) = run.slope.x_meeting(&other.slope) else {
                continue;
            };
            let (from, to) = (run.a.x.max(other.a.x), run.b.x.min(other.b.x));
            let order = |x| run.slope.compare_at(&other.slope, x);
            if from > to || !reach.contains(x) || (order(from) == order(to) && order(to).is_ne()) {
                continue;
            }
            // On the flatter of both, where rounding the place hardly moves the height.
            let flatter = if run.slope.flatter_than(&other.slope) {
                run
            } else {
                &other
            };
            let y = flatter.y_at(x);
            let met = [(source, run), (Source { upper: false, index }, &other)];
            let sloped = met.into_iter().filter(|(_, run)| !is_level(run));
            self.corners
                .extend(sloped.map(|(source, _)| (source, Point::new(x, y))));
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

    /// Adds the column between two lines, if the one runs below the other.
    fn emit(&self, x: Interval, bottom: Line, top: Line, columns: &mut Vec<Trapezoid>) {
        if !below(x, &bottom, &top) {
            return;
        }
        let (left, right) = (self.ends(x.lo, bottom, top), self.ends(x.hi, bottom, top));
        let column = Trapezoid {
            x0: x.lo,
            bottom: (left.lo, right.lo),
            x1: x.hi,
            top: (left.hi, right.hi),
            lines: (self.line(bottom, x.lo), self.line(top, x.lo)),
        };
        push_widened(columns, column);
    }

    /// The number of a line's part from a break on: the same where columns may be joined along it.
    fn line(&self, line: Line, from: Length) -> u64 {
        match line {
            Line::Level(_) => 0,
            Line::Sloped { source, .. } => source.line(
                self.corners
                    .iter()
                    .filter(|(of, corner)| *of == source && corner.x <= from)
                    .count(),
            ),
        }
    }

    /// The height of a line at a break.
    fn height(&self, line: Line, at: Length) -> Length {
        match line {
            Line::Level(y) => y,
            Line::Sloped { run, source } => {
                let corner = self
                    .corners
                    .iter()
                    .find(|(of, corner)| *of == source && corner.x == at);
                corner.map_or_else(|| run.y_at(at), |(_, corner)| corner.y)
            }
        }
    }

    /// Both heights at a break; rounding never lets the slope pass the line that it stays clear of.
    fn ends(&self, at: Length, bottom: Line, top: Line) -> Interval {
        let kept = |y: Length| y.max(self.rect.y0).min(self.rect.y1);
        let (lo, hi) = (kept(self.height(bottom, at)), kept(self.height(top, at)));
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
        (Line::Sloped { run, .. }, Line::Level(y)) => side_of_level(&run.slope, *y, x) < 0,
        (Line::Level(y), Line::Sloped { run, .. }) => side_of_level(&run.slope, *y, x) > 0,
        (Line::Sloped { run: a, .. }, Line::Sloped { run: b, .. }) => {
            let (a, b) = (&a.slope, &b.slope);
            let parallel = || a.compare_at(b, x.lo).is_lt();
            a.x_meeting(b)
                .map_or_else(parallel, |at| (x.lo >= at) == (a.steeper(b) < 0))
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

/// Adds a column, or widens the one before where nothing changes between them.
fn push_widened(columns: &mut Vec<Trapezoid>, next: Trapezoid) {
    let same = |line: (u64, u64), before: (Length, Length), after: (Length, Length)| {
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
