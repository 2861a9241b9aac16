//! From courses and seams, or from single panels, to pieces.

use super::cutter::on_sawn_rim;
use super::mark::mark;
use super::{BandSpec, Cutter, Joint, Layout, LayoutBand, LayoutSpec, Piece, PieceSpec, Sides};
use crate::frame::Frame;
use crate::geometry::{Profile, Rect, Region};
use crate::house::{House, Practice};
use crate::length::Length;

/// Makes the pieces of a layout.
///
/// Courses are parted at their seams into strips; what of the sheathed region lies in a strip, split into connected
/// parts, are cells, and a piece's outline is its cell less its gaps. A panel given singly keeps its rectangle less
/// the openings. Nothing is judged here: the check of the rules tells what is wrong with a layout.
///
/// A strip whose sheet is not in stock, and every piece of a frame whose wall the house does not have, are left out.
pub fn lay_out(house: &House, frame: &Frame, spec: &LayoutSpec) -> Layout {
    let Some(wall) = house.walls.get(frame.wall as usize) else {
        return Layout::default();
    };
    let mut layout = match spec {
        LayoutSpec::Bands { reach, bands } => of_bands(house, &wall.practice, frame, *reach, bands),
        LayoutSpec::Pieces(pieces) => of_pieces(frame, pieces),
    };
    mark(frame, &wall.practice, &mut layout.pieces);
    layout
}

fn of_bands(house: &House, practice: &Practice, frame: &Frame, reach: Length, bands: &[BandSpec]) -> Layout {
    let cutter = Cutter::new(practice, frame, reach);
    let bounds = cutter.bounds();
    let mut pieces = Vec::new();
    for (index, band) in (0u32..).zip(bands) {
        let (first, last) = (index == 0, index as usize + 1 == bands.len());
        let rows = Rows {
            y0: if first { bounds.y0 } else { band.y0 },
            y1: band.y1,
            bottom: level_joint(practice, frame, band.y0, first),
            top: level_joint(practice, frame, band.y1, last || band.y1 >= bounds.y1),
        };
        let edges = |strip: usize| {
            let left = strip.checked_sub(1).map_or(bounds.x0, |before| {
                band.seams.get(before).copied().unwrap_or(bounds.x1)
            });
            (left, band.seams.get(strip).copied().unwrap_or(bounds.x1))
        };
        for (strip, sheet_index) in (0u32..).zip(&band.sheets) {
            let Some(sheet) = house.stock.sheets.get(*sheet_index as usize) else {
                continue;
            };
            let (x0, x1) = edges(strip as usize);
            let end = |at_end: bool| if at_end { Joint::End } else { Joint::Seam };
            let sides = Sides {
                left: end(x0 == bounds.x0),
                right: end(x1 == bounds.x1),
                bottom: rows.bottom,
                top: rows.top,
            };
            for part in cutter.strip(Rect::new(x0, rows.y0, x1, rows.y1), sides, sheet, band.running) {
                pieces.push(Piece {
                    id: u32::try_from(pieces.len()).unwrap_or(u32::MAX),
                    mark: String::new(),
                    band: index,
                    strip,
                    cell: part.cell,
                    outline: part.outline,
                    sides,
                    sheet: *sheet_index,
                    running: band.running,
                    hang_order: 0,
                });
            }
        }
    }
    let bands = bands.iter().map(|band| LayoutBand {
        y0: band.y0,
        y1: band.y1,
        running: band.running,
        seams: band.seams.clone(),
    });
    Layout {
        reach,
        bands: bands.collect(),
        pieces,
    }
}

/// The height of a course and what it meets below and above.
struct Rows {
    y0: Length,
    y1: Length,
    bottom: Joint,
    top: Joint,
}

/// What a course meets at one of its levels.
fn level_joint(practice: &Practice, frame: &Frame, y: Length, end: bool) -> Joint {
    match (end, on_sawn_rim(practice, frame, y)) {
        (true, _) => Joint::End,
        (false, true) => Joint::RimSeam,
        (false, false) => Joint::Seam,
    }
}

fn of_pieces(frame: &Frame, specs: &[PieceSpec]) -> Layout {
    let all_holes = frame.holes();
    let mut levels: Vec<Length> = specs.iter().map(|spec| spec.rect.y0).collect();
    levels.sort_unstable();
    levels.dedup();
    let mut pieces = Vec::new();
    for (index, spec) in (0u32..).zip(specs) {
        let profile = |y: Length| Profile::level(spec.rect.x_span(), y);
        let (Some(lower), Some(upper)) = (profile(spec.rect.y0), profile(spec.rect.y1)) else {
            continue;
        };
        let holes: Vec<Rect> = all_holes
            .iter()
            .copied()
            .filter(|hole| hole.overlaps(&spec.rect))
            .collect();
        let band = levels.partition_point(|level| *level < spec.rect.y0);
        for outline in (Region { lower, upper, holes }).pieces_in(spec.rect) {
            pieces.push(Piece {
                id: u32::try_from(pieces.len()).unwrap_or(u32::MAX),
                mark: String::new(),
                band: u32::try_from(band).unwrap_or(u32::MAX),
                strip: index,
                cell: outline.clone(),
                outline,
                sides: Sides {
                    left: Joint::Seam,
                    right: Joint::Seam,
                    bottom: Joint::Seam,
                    top: Joint::Seam,
                },
                sheet: spec.sheet,
                running: spec.running,
                hang_order: 0,
            });
        }
    }
    let base = frame.lower.points().iter().map(|p| p.y).min().unwrap_or_default();
    let reach = levels.first().map_or(Length::ZERO, |lowest| base - *lowest);
    Layout {
        reach,
        bands: Vec::new(),
        pieces,
    }
}
