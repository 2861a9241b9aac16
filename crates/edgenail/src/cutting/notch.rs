//! Rectangles that an outline leaves out of its blank.

use crate::geometry::{Interval, Rect, Shape, Trapezoid};
use crate::length::Length;
use serde::Serialize;

/// A rectangle that an outline leaves out of its blank.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Notch {
    /// Where it is, in wall coordinates.
    pub rect: Rect,
    /// How it is cut.
    pub cut: NotchCut,
}

/// How a notch is cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum NotchCut {
    /// At a corner of the blank: two saw cuts on the bench.
    Bench,
    /// Anywhere else: cut out once the sheet hangs.
    InPlace,
}

impl Notch {
    /// Length of its edges that are cut into a blank; those on the blank's own edge are not.
    pub fn edge(&self, blank: &Rect) -> Length {
        let (across, up) = self.cut_sides(blank);
        self.rect.height() * across + self.rect.width() * up
    }

    /// How many of its plumb and of its level sides are cut.
    fn cut_sides(&self, blank: &Rect) -> (i64, i64) {
        let r = &self.rect;
        let plumb = i64::from(r.x0 > blank.x0) + i64::from(r.x1 < blank.x1);
        let level = i64::from(r.y0 > blank.y0) + i64::from(r.y1 < blank.y1);
        (plumb, level)
    }

    /// What falls out: its size across and up, less a kerf at each side that is cut.
    pub(super) fn drop(&self, blank: &Rect, kerf: Length) -> (Length, Length) {
        let (plumb, level) = self.cut_sides(blank);
        (
            self.rect.width() - kerf * plumb,
            self.rect.height() - kerf * level,
        )
    }
}

/// The rectangles that an outline leaves out of its blank, from the left, then from the bottom.
///
/// What lies beyond a sloping edge, and beyond a level one that goes on from it, is no notch: it comes off with the
/// rake cut.
///
/// ```
/// use edgenail::Length;
/// use edgenail::cutting::notches;
/// use edgenail::geometry::{Interval, Profile, Rect, Region, Shape};
/// let inch = Length::inches;
/// let sheet = Shape::from_rect(Rect::new(inch(0), inch(0), inch(48), inch(96))).unwrap();
/// assert!(notches(&sheet).is_empty());
/// ```
pub fn notches(outline: &Shape) -> Vec<Notch> {
    if outline.is_rect().is_some() {
        return Vec::new();
    }
    let blank = outline.bounds();
    let columns = outline.columns();
    let (raked, scribed) = (off_slopes(columns, |c| c.top), off_slopes(columns, |c| c.bottom));
    let mut xs: Vec<Length> = columns.iter().flat_map(|c| [c.x0, c.x1]).collect();
    xs.sort_unstable();
    xs.dedup();
    let mut found: Vec<Rect> = Vec::new();
    for (x0, x1) in xs.iter().zip(xs.iter().skip(1)) {
        let within = |c: &&Trapezoid| c.x0 <= *x0 && *x1 <= c.x1;
        let here = columns.iter().filter(within);
        let covered = Interval::union(here.map(|c| widest(c, &blank)).collect());
        for gap in Interval::subtract(blank.y_span(), &covered) {
            let above = gap.hi == blank.y1 && raked.iter().filter(within).any(|c| c.top.0 == gap.lo);
            let below = gap.lo == blank.y0 && scribed.iter().filter(within).any(|c| c.bottom.0 == gap.hi);
            if above || below {
                continue;
            }
            let beside = found.iter_mut().find(|r| r.x1 == *x0 && r.y_span() == gap);
            match beside {
                Some(rect) => rect.x1 = *x1,
                None => found.push(Rect::from_spans(Interval { lo: *x0, hi: *x1 }, gap)),
            }
        }
    }
    found
        .into_iter()
        .map(|rect| Notch {
            rect,
            cut: how(&rect, &blank),
        })
        .collect()
}

/// The columns whose level top, or bottom, goes on from a slope without a step: one cut after the other takes off what
/// lies beyond both.
fn off_slopes(columns: &[Trapezoid], edge: fn(&Trapezoid) -> (Length, Length)) -> Vec<Trapezoid> {
    let ends = |c: &Trapezoid| [(c.x0, edge(c).0), (c.x1, edge(c).1)];
    let (mut level, sloping): (Vec<Trapezoid>, Vec<_>) = columns.iter().partition(|c| edge(c).0 == edge(c).1);
    let mut reached: Vec<(Length, Length)> = sloping.iter().flat_map(ends).collect();
    let mut found = Vec::new();
    loop {
        let (on, rest): (Vec<_>, Vec<_>) = level
            .into_iter()
            .partition(|c| ends(c).iter().any(|end| reached.contains(end)));
        if on.is_empty() {
            return found;
        }
        reached.extend(on.iter().flat_map(ends));
        found.extend(on);
        level = rest;
    }
}

/// What a column takes of the height, up to the blank's edge where it slopes.
fn widest(column: &Trapezoid, blank: &Rect) -> Interval {
    let (bottom, top) = (column.bottom, column.top);
    Interval {
        lo: if bottom.0 == bottom.1 { bottom.0 } else { blank.y0 },
        hi: if top.0 == top.1 { top.0 } else { blank.y1 },
    }
}

fn how(rect: &Rect, blank: &Rect) -> NotchCut {
    let at_side = rect.x0 == blank.x0 || rect.x1 == blank.x1;
    let at_end = rect.y0 == blank.y0 || rect.y1 == blank.y1;
    if at_side && at_end {
        NotchCut::Bench
    } else {
        NotchCut::InPlace
    }
}
