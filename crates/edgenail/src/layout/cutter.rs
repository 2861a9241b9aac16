//! The pieces of one strip of one course.

use super::{Joint, Running, Sides, starting_end};
use crate::frame::Frame;
use crate::geometry::{Point, Rect, Region, Shape};
use crate::house::{End, Practice, RimKind, RimSeam, Sheet};
use crate::length::Length;

/// A piece of a strip: from seam centre to seam centre, and what is cut.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Part {
    /// A connected part of the sheathed region inside the strip.
    pub cell: Shape,
    /// The cell less half the gap at its seams, what it stays short of its ends, and the cut-back at openings.
    pub outline: Shape,
}

/// A wall's sheathed region, ready to be parted into strips.
#[derive(Clone, Debug)]
pub struct Cutter<'a> {
    practice: &'a Practice,
    /// What is to be covered.
    cells: Region,
    /// The same with openings cut back.
    cut_back: Region,
    bounds: Rect,
    /// Where the first sheet is laid, up to the end of the sheathing.
    start: End,
}

impl<'a> Cutter<'a> {
    /// The region of a wall whose sheathing reaches so far below the lowest plate.
    pub fn new(practice: &'a Practice, frame: &Frame, reach: Length) -> Self {
        let lower = frame.lower.shifted(-reach);
        let holes = frame.holes();
        let back = holes
            .iter()
            .map(|hole| hole.grown(practice.opening_cut_back))
            .collect();
        let cut_back = Region {
            lower: lower.clone(),
            upper: frame.upper.clone(),
            holes: back,
        };
        let cells = Region {
            lower,
            upper: frame.upper.clone(),
            holes,
        };
        let bounds = cells.bounds().unwrap_or_default();
        Self {
            practice,
            cells,
            cut_back,
            bounds,
            start: starting_end(practice, frame),
        }
    }

    /// The rectangle around the region.
    pub fn bounds(&self) -> Rect {
        self.bounds
    }

    /// The connected parts of a strip, from the left, each with the outline that is cut from this sheet.
    ///
    /// A part too thin to be left between its gaps has no outline and is left out; where a part falls asunder
    /// between them, its largest piece is kept. What is left bare shows when coverage is checked.
    pub fn strip(&self, strip: Rect, sides: Sides, sheet: &Sheet, running: Running) -> Vec<Part> {
        let gap = sheet.gap.unwrap_or(self.practice.gap);
        // The lower half of an odd gap goes to the piece on the left or below.
        let near = |joint: Joint| self.gap_at(joint, gap).half();
        let far = |joint: Joint| self.gap_at(joint, gap) - near(joint);
        let inner = Rect {
            x0: strip.x0 + far(sides.left),
            x1: strip.x1 - near(sides.right),
            y0: strip.y0 + far(sides.bottom),
            y1: strip.y1 - near(sides.top),
        };
        let outlines = self.cut_back.pieces_in(inner);
        let cells = self.cells.pieces_in(strip);
        let whole = cells.len() == 1 && outlines.len() == 1;
        let mut parts = Vec::new();
        for cell in cells {
            let mut inside: Vec<&Shape> = outlines
                .iter()
                .filter(|outline| whole || lies_in(outline, &cell))
                .collect();
            if let [first, second, ..] = inside[..] {
                // The gap beside an opening joins what it parts: each piece has its side of it.
                let upright = !first.bounds().y_span().overlaps(second.bounds().y_span());
                inside.sort_by_key(|outline| {
                    let bounds = outline.bounds();
                    if upright { bounds.y0 } else { bounds.x0 }
                });
                let mut from = if upright { strip.y0 } else { strip.x0 };
                for (index, outline) in inside.iter().enumerate() {
                    let to = match inside.get(index + 1) {
                        Some(next) if upright => (outline.bounds().y1 + next.bounds().y0).half(),
                        Some(next) => (outline.bounds().x1 + next.bounds().x0).half(),
                        None if upright => strip.y1,
                        None => strip.x1,
                    };
                    let side = if upright {
                        Rect {
                            y0: from,
                            y1: to,
                            ..strip
                        }
                    } else {
                        Rect {
                            x0: from,
                            x1: to,
                            ..strip
                        }
                    };
                    from = to;
                    let own = self.cells.pieces_in(side);
                    let own = own.into_iter().find(|own| lies_in(outline, own));
                    parts.push(Part {
                        cell: own.unwrap_or_else(|| (*outline).clone()),
                        outline: self.shortened(outline, sides, sheet, running),
                    });
                }
            } else if let Some(outline) = inside.first() {
                let outline = self.shortened(outline, sides, sheet, running);
                parts.push(Part { cell, outline });
            }
        }
        parts
    }

    fn gap_at(&self, joint: Joint, gap: Length) -> Length {
        match joint {
            Joint::Seam => gap,
            Joint::RimSeam => self.practice.rim_gap.max(gap),
            Joint::End | Joint::Opening => Length::ZERO,
        }
    }

    /// The outline, kept short of its ends by the least that lets the sheet fit, if that is no more than practice
    /// accepts. The end far from the start, and the upper end, give first.
    fn shortened(&self, outline: &Shape, sides: Sides, sheet: &Sheet, running: Running) -> Shape {
        let bounds = outline.bounds();
        let (width, height) = sheet_size(sheet, running);
        let ends = |near: Joint, far: Joint| (near == Joint::End, far == Joint::End);
        let across = bounds.width() - width;
        let across = match self.start {
            End::Left => self.share(across, ends(sides.left, sides.right)),
            End::Right => {
                let (right, left) = self.share(across, ends(sides.right, sides.left));
                (left, right)
            }
        };
        let up = self.share(bounds.height() - height, ends(sides.bottom, sides.top));
        if across == (Length::ZERO, Length::ZERO) && up == (Length::ZERO, Length::ZERO) {
            return outline.clone();
        }
        let inner = Rect {
            x0: bounds.x0 + across.0,
            x1: bounds.x1 - across.1,
            y0: bounds.y0 + up.0,
            y1: bounds.y1 - up.1,
        };
        let parts = self.cut_back.pieces_in(inner);
        let within = parts.into_iter().filter(|part| lies_in(part, outline));
        within.max_by_key(Shape::area2).unwrap_or_else(|| outline.clone())
    }

    /// What each of two opposite sides gives to take up an excess; nothing where they cannot.
    fn share(&self, excess: Length, (near, far): (bool, bool)) -> (Length, Length) {
        let most = self.practice.end_short;
        let give = |end: bool, want: Length| {
            if end {
                want.max(Length::ZERO).min(most)
            } else {
                Length::ZERO
            }
        };
        let second = give(far, excess);
        let first = give(near, excess - second);
        if first + second < excess {
            (Length::ZERO, Length::ZERO)
        } else {
            (first, second)
        }
    }
}

/// Width and height of a sheet that runs so.
pub(super) fn sheet_size(sheet: &Sheet, running: Running) -> (Length, Length) {
    match running {
        Running::Upright => (sheet.width, sheet.length),
        Running::Flat => (sheet.length, sheet.width),
    }
}

/// A level seam at this height lies on a sawn rim that practice wants parted for shrinkage.
pub(crate) fn on_sawn_rim(practice: &Practice, frame: &Frame, y: Length) -> bool {
    practice.rim_seam == RimSeam::Seam
        && frame.storeys.len() > 1
        && frame.bands.iter().any(|band| {
            band.rim
                .is_some_and(|(rim, kind)| kind == RimKind::Sawn && rim.lo < y && y < rim.hi)
        })
}

/// A connected shape lies in another that it does not cross.
fn lies_in(inner: &Shape, outer: &Shape) -> bool {
    inner.columns().first().is_some_and(|column| {
        let x = (column.x0 + column.x1).half();
        let y = (column.bottom.0 + column.bottom.1 + column.top.0 + column.top.1)
            .half()
            .half();
        outer.contains(Point::new(x, y))
    })
}
