//! What is wrong with a layout, or worth a thought: its panels, its seams, what it covers and what it stands on.
//!
//! Whether edges have support is judged in [`crate::edges`], because it takes the nail line.

mod base;
mod corner;
mod cover;
mod joint;
mod plies;
mod segment;
mod size;
mod strip;

use super::{Joint, Layout, Piece};
use crate::finding::{Finding, FindingCode, Severity};
use crate::frame::Frame;
use crate::geometry::Interval;
use crate::house::{House, Practice, Sheet, Wall};
use crate::length::Length;

/// Judges a layout by the rules of the trade: what forbids it, what has to be mended, what a framer would rather not do.
///
/// A frame whose wall the house does not have gives nothing.
pub fn rules(house: &House, frame: &Frame, layout: &Layout) -> Vec<Finding> {
    let mut out = Vec::new();
    let Some(ground) = Ground::new(house, frame, layout) else {
        return out;
    };
    size::judge(&ground, &mut out);
    plies::judge(&ground, &mut out);
    cover::judge(&ground, &mut out);
    strip::judge(&ground, &mut out);
    corner::judge(&ground, &mut out);
    joint::judge(&ground, &mut out);
    base::judge(&ground, &mut out);
    segment::judge(&ground, &mut out);
    out
}

/// What the [`rules()`] say of each piece by itself, whatever lies beside it.
pub(crate) fn rules_of_pieces(house: &House, frame: &Frame, layout: &Layout) -> Vec<Finding> {
    let mut out = Vec::new();
    if let Some(ground) = Ground::new(house, frame, layout) {
        size::judge(&ground, &mut out);
        strip::judge(&ground, &mut out);
    }
    out
}

/// What the [`rules()`] say of a wall sheathed from so far below its lowest plate and parted at these seams, whatever its
/// pieces are; for a layout without seams, what they say of every layout.
pub(crate) fn rules_of_seams(house: &House, frame: &Frame, layout: &Layout) -> Vec<Finding> {
    let mut out = Vec::new();
    if let Some(ground) = Ground::new(house, frame, layout) {
        joint::judge(&ground, &mut out);
        base::judge(&ground, &mut out);
        segment::judge(&ground, &mut out);
    }
    out
}

/// Plywood of few plies in a piece that runs up studs too far apart for it.
pub(crate) fn is_weak(house: &House, frame: &Frame, layout: &Layout) -> bool {
    let mut out = Vec::new();
    if let Some(ground) = Ground::new(house, frame, layout) {
        plies::judge(&ground, &mut out);
    }
    !out.is_empty()
}

/// What the rules read.
struct Ground<'a> {
    house: &'a House,
    wall: &'a Wall,
    practice: &'a Practice,
    frame: &'a Frame,
    layout: &'a Layout,
}

impl<'a> Ground<'a> {
    /// Nothing if the house does not have the frame's wall.
    fn new(house: &'a House, frame: &'a Frame, layout: &'a Layout) -> Option<Self> {
        let wall = house.walls.get(frame.wall as usize)?;
        Some(Self {
            house,
            wall,
            practice: &wall.practice,
            frame,
            layout,
        })
    }

    fn finding(&self, code: FindingCode, severity: Severity) -> Finding {
        Finding::of(&self.wall.name, code, severity)
    }

    fn sheet(&self, piece: &Piece) -> Option<&'a Sheet> {
        self.house.stock.sheets.get(piece.sheet as usize)
    }

    /// The gap that a piece's sheet asks for.
    fn gap(&self, piece: &Piece) -> Length {
        self.sheet(piece)
            .and_then(|sheet| sheet.gap)
            .unwrap_or(self.practice.gap)
    }

    /// A piece lies in a segment.
    fn in_segment(&self, piece: &Piece) -> bool {
        let bounds = piece.cell.bounds();
        self.frame
            .segments
            .iter()
            .any(|segment| segment.rect.overlaps(&bounds))
    }

    /// Every plumb seam with the heights over which it runs, by place.
    fn plumb_seams(&self) -> Vec<(Length, Interval)> {
        let mut seams: Vec<(Length, Interval)> = if self.layout.bands.is_empty() {
            let ends = self.frame.lower.span();
            let sides = self.layout.pieces.iter().flat_map(|piece| {
                let bounds = piece.outline.bounds();
                [(bounds.x0, bounds.y_span()), (bounds.x1, bounds.y_span())]
            });
            let near = |x: Length, end: Length| (x - end).abs() <= self.practice.end_short;
            sides
                .filter(|(x, _)| !near(*x, ends.lo) && !near(*x, ends.hi))
                .collect()
        } else {
            let bands = self.layout.bands.iter();
            bands
                .flat_map(|band| band.seams.iter().map(|x| (*x, Interval::new(band.y0, band.y1))))
                .collect()
        };
        seams.sort_unstable();
        seams.dedup();
        seams
    }

    /// The heights of level seams, rising.
    fn level_seams(&self) -> Vec<Length> {
        let mut seams: Vec<Length> = if self.layout.bands.is_empty() {
            let top = |piece: &Piece| piece.outline.bounds().y1;
            let tops = self.layout.pieces.iter().map(top);
            let met = |y: &Length| {
                let mut bottoms = self.layout.pieces.iter().map(|piece| piece.outline.bounds().y0);
                bottoms.any(|bottom| {
                    *y <= bottom && bottom - *y <= self.practice.rim_gap.max(self.practice.gap) * 2
                })
            };
            tops.filter(met).collect()
        } else {
            self.layout.bands.iter().skip(1).map(|band| band.y0).collect()
        };
        seams.sort_unstable();
        seams.dedup();
        seams
    }
}

/// A side of a piece's strip that another panel meets.
const fn is_seam(joint: Joint) -> bool {
    matches!(joint, Joint::Seam | Joint::RimSeam)
}

#[cfg(test)]
mod tests;
