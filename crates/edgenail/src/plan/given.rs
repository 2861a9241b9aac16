//! A layout that the user gives, as the stages take it.

use crate::geometry::Rect;
use crate::house::{GivenLayout, House, RunningChoice};
use crate::layout::{BandSpec, LayoutSpec, PieceSpec, Running};
use crate::length::Length;

/// Places of named sheets in the stock; a name that is not there was refused on reading.
fn sheet(house: &House, name: &str) -> u32 {
    let at = house.stock.sheets.iter().position(|sheet| sheet.name == name);
    at.and_then(|at| u32::try_from(at).ok()).unwrap_or(u32::MAX)
}

fn running(choice: RunningChoice) -> Running {
    if choice == RunningChoice::Flat {
        Running::Flat
    } else {
        Running::Upright
    }
}

/// The layout as courses with seams or as single panels.
pub(super) fn spec(house: &House, given: &GivenLayout) -> LayoutSpec {
    match given {
        GivenLayout::Bands { bands } => {
            let courses: Vec<BandSpec> = bands
                .iter()
                .map(|band| BandSpec {
                    y0: band.bottom,
                    y1: band.top,
                    running: running(band.running),
                    seams: band.seams.clone(),
                    sheets: vec![sheet(house, &band.sheet); band.seams.len() + 1],
                })
                .collect();
            let lowest = courses.first().map_or(Length::ZERO, |band| band.y0);
            LayoutSpec::Bands {
                reach: -lowest,
                bands: courses,
            }
        }
        GivenLayout::Pieces { pieces } => LayoutSpec::Pieces(
            pieces
                .iter()
                .map(|piece| PieceSpec {
                    rect: Rect::from_size(piece.left, piece.bottom, piece.width, piece.height),
                    running: running(piece.running),
                    sheet: sheet(house, &piece.sheet),
                })
                .collect(),
        ),
    }
}
