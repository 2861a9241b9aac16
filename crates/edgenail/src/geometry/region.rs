//! The part of a wall's face that gets sheathing.

use super::columns::{self, Source};
use super::{Interval, Point, Profile, Rect, Shape, Toward};
use crate::length::Length;
use serde::Serialize;

/// Everything between a lower and an upper limit, without holes.
///
/// Cells that cover a rectangle without overlap cover the region inside it exactly, also on a slope: where a
/// plumb seam meets a slope both neighbours take the slope's height there, and where a level seam meets it
/// both take the slope's place there, each rounded by [`Slope`](super::Slope). Between two such corners an edge
/// runs straight, so the cells together have the outline of [`Region::with_cells`], which strays from the slope
/// by less than a unit. Where a plumb and a level seam meet a slope at the same x, the level one decides.
///
/// For slopes steeper than 24 in 12, limits that cross, and hole corners within a unit of a slope but
/// not on it, the sum of the cells' areas may miss that outline's by up to a unit along its slopes.
///
/// ```
/// use edgenail::Length;
/// use edgenail::geometry::{Interval, Profile, Rect, Region};
/// let inch = Length::inches;
/// let wall = Interval::new(inch(0), inch(96));
/// let region = Region {
///     lower: Profile::level(wall, inch(0)).unwrap(),
///     upper: Profile::level(wall, inch(97)).unwrap(),
///     holes: vec![Rect::new(inch(40), inch(0), inch(60), inch(80))],
/// };
/// let pieces = region.pieces_in(Rect::new(inch(0), inch(0), inch(96), inch(70)));
/// assert_eq!(pieces.len(), 2);
/// assert_eq!(pieces[1].is_rect(), Some(Rect::new(inch(60), inch(0), inch(96), inch(70))));
/// ```
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Region {
    /// Where sheathing starts at the bottom.
    pub lower: Profile,
    /// Where sheathing ends at the top.
    pub upper: Profile,
    /// What sheathing leaves out. Holes may overlap each other and reach beyond the region.
    pub holes: Vec<Rect>,
}

impl Region {
    /// From its left end to its right end.
    pub fn span(&self) -> Option<Interval> {
        self.lower.span().intersect(self.upper.span())
    }

    /// The smallest rectangle around both limits; `None` where they share no stretch.
    pub fn bounds(&self) -> Option<Rect> {
        let x = self.span()?;
        let (lower, upper) = (self.lower.y_over(x)?, self.upper.y_over(x)?);
        let bounds = Rect::new(x.lo, lower.lo, x.hi, upper.hi);
        (!bounds.is_empty()).then_some(bounds)
    }

    /// Its connected parts inside a rectangle, from left to right, then from bottom to top. Parts that touch
    /// at a point only are apart. An empty rectangle has none.
    pub fn pieces_in(&self, rect: Rect) -> Vec<Shape> {
        columns::pieces(self, rect)
    }

    /// All its connected parts.
    pub fn pieces(&self) -> Vec<Shape> {
        // Far from the limits, so that the rectangle's sides leave no corner on them.
        let around = self.bounds().map(|bounds| bounds.grown(Length::LIMIT));
        around.map_or_else(Vec::new, |rect| self.pieces_in(rect))
    }

    /// Twice its area in square units.
    pub fn area2(&self) -> i128 {
        self.pieces().iter().map(Shape::area2).sum()
    }

    /// What it has just beside the plumb line at `x`, rising; heights on a slope are rounded.
    pub fn span_at_x(&self, x: Length, toward: Toward) -> Vec<Interval> {
        let (Some(lo), Some(hi)) = (self.lower.y_at(x, toward), self.upper.y_at(x, toward)) else {
            return Vec::new();
        };
        if hi <= lo {
            return Vec::new();
        }
        let meets = |hole: &&Rect| match toward {
            Toward::Left => hole.x0 < x && x <= hole.x1,
            Toward::Right => hole.x0 <= x && x < hole.x1,
        };
        let taken = Interval::union(self.holes.iter().filter(meets).map(Rect::y_span).collect());
        Interval::subtract(Interval { lo, hi }, &taken)
    }

    /// The same region with a corner on its limits at each of these places.
    #[must_use]
    pub fn with_vertices_at(&self, xs: &[Length]) -> Self {
        Self {
            lower: self.lower.with_vertices_at(xs),
            upper: self.upper.with_vertices_at(xs),
            holes: self.holes.clone(),
        }
    }

    /// The same region with a corner wherever a side of one of these cells, or of a hole, meets a slope. Its
    /// area is the exact sum of the areas of the cells' pieces, if the cells cover it without overlap.
    #[must_use]
    pub fn with_cells(&self, cells: &[Rect]) -> Self {
        let mut chords: Vec<(Source, Point, Point)> = Vec::new();
        for ring in cells
            .iter()
            .flat_map(|&cell| self.pieces_in(cell))
            .flat_map(|p| p.raw_rings())
        {
            for edge in ring.iter().filter(|edge| edge.line != 0) {
                let (left, right) = edge.edge.ends();
                chords.push((Source::from_line(edge.line), left, right));
            }
        }
        chords.sort_unstable();
        let redraw = |profile: &Profile, upper: bool| {
            profile.refined(|index, _| {
                let on = chords.iter().filter(|c| c.0 == Source { upper, index });
                on.flat_map(|&(_, left, right)| [left, right]).collect()
            })
        };
        Self {
            lower: redraw(&self.lower, false),
            upper: redraw(&self.upper, true),
            holes: self.holes.clone(),
        }
    }
}

#[cfg(test)]
mod tests;
