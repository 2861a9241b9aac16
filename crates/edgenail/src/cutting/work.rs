//! The saw work of one piece.

use super::notch::{NotchCut, notches};
use crate::amount::Amount;
use crate::geometry::{Rect, Shape};
use crate::house::{JobRates, Sheet};
use crate::layout::Running;
use crate::length::Length;
use serde::Serialize;

/// The saw work of one piece.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
pub struct CutWork {
    /// Cuts across the sheet.
    pub cross_cuts: u32,
    /// Cuts along the sheet.
    pub rips: u32,
    /// Notches cut on the bench.
    pub notches: u32,
    /// Cuts along a slope.
    pub rake_cuts: u32,
    /// Openings cut in place.
    pub openings: u32,
    /// Length of opening edge cut in place.
    pub opening_edge: Length,
}

/// Counts the saw work of a piece of this outline from this sheet: a cut for each direction in which the blank is
/// smaller than the sheet, then what the outline leaves out of the blank.
///
/// The count belongs to the piece alone; that two pieces of one sheet may share a cut is left out, so that sums over
/// pieces are exact.
pub fn cuts_of_piece(outline: &Shape, sheet: &Sheet, running: Running) -> CutWork {
    let blank = outline.bounds();
    let mut work = cuts_of_blank(&blank, sheet, running);
    if outline.is_rect().is_some() {
        return work;
    }
    let sloped = |edge: &&crate::geometry::BoundaryEdge| edge.a.x != edge.b.x && edge.a.y != edge.b.y;
    work.rake_cuts = u32::try_from(outline.boundary().iter().filter(sloped).count()).unwrap_or(u32::MAX);
    for notch in notches(outline) {
        match notch.cut {
            NotchCut::Bench => work.notches += 1,
            NotchCut::InPlace => {
                work.openings += 1;
                work.opening_edge += notch.edge(&blank);
            }
        }
    }
    work
}

/// Counts the saw work of a piece that is its whole blank.
pub fn cuts_of_blank(blank: &Rect, sheet: &Sheet, running: Running) -> CutWork {
    let (width, length) = sheet_directions(running, blank.width(), blank.height());
    CutWork {
        cross_cuts: u32::from(length < sheet.length),
        rips: u32::from(width < sheet.width),
        ..CutWork::default()
    }
}

/// Sizes across and up the wall as sizes along a sheet's width and length.
pub(super) const fn sheet_directions<T: Copy>(running: Running, across: T, up: T) -> (T, T) {
    match running {
        Running::Upright => (across, up),
        Running::Flat => (up, across),
    }
}

impl CutWork {
    /// Minutes along the edges of openings cut in place, rounded half up once for the piece.
    pub fn edge_minutes(&self, rates: &JobRates) -> Amount {
        let foot = i128::from(Length::feet(1).units());
        rates
            .opening_per_foot
            .scaled(i128::from(self.opening_edge.units()), foot)
            .unwrap_or_default()
    }
}
