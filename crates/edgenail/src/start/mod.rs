//! How to begin: the end, the line, the first sheet.

use crate::evaluate::Evaluated;
use crate::frame::Frame;
use crate::house::{End, House};
use crate::layout::Running;
use crate::length::Length;
use serde::Serialize;

/// One pull of the chalk line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Pull {
    /// Left end.
    pub from: Length,
    /// Right end.
    pub to: Length,
}

/// How to begin a wall.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Start {
    /// The end that sheets are laid from.
    pub end: End,
    /// Layout is pulled from that end, so a first full sheet breaks on a stud.
    pub on_layout: bool,
    /// The other end is off layout: the last sheet is cut.
    pub far_end_off_layout: bool,
    /// Height of the line that the first course is laid to.
    pub datum: Length,
    /// What stands on that line: the course's lower or upper edge.
    pub datum_is: DatumIs,
    /// How far the sheathing reaches below the lowest plate.
    pub reach: Length,
    /// Pulls of the chalk line, from the starting end.
    pub pulls: Vec<Pull>,
    /// Mark of the first piece.
    pub first_piece: String,
    /// The first piece is a whole sheet.
    pub first_is_full: bool,
}

/// What is laid to the datum line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum DatumIs {
    /// The lower edge of the first course.
    LowerEdge,
    /// The upper edge of the first course, as for sheets that run flat.
    UpperEdge,
}

/// How to begin a wall that was laid out; `None` where it has no piece.
///
/// The line is snapped parallel to the plates in pulls no longer than practice allows. Upright sheets stand on it;
/// of flat ones the upper edge is laid to it, 48 in. less the overhang above the plate (common practice, no source).
pub fn start(house: &House, frame: &Frame, built: &Evaluated, end: End) -> Option<Start> {
    let practice = &house.walls.get(frame.wall as usize)?.practice;
    let first = built.layout.pieces.iter().min_by_key(|piece| piece.hang_order)?;
    let sheet = house.stock.sheets.get(first.sheet as usize)?;
    let band = built.layout.bands.first();
    let (datum, datum_is) = match (band.map(|band| band.running), built.layout.bands.len() > 1) {
        (Some(Running::Flat), true) => (first.outline.bounds().y1, DatumIs::UpperEdge),
        _ => (first.outline.bounds().y0, DatumIs::LowerEdge),
    };
    let blank = first.blank();
    let (width, length) = match first.running {
        Running::Upright => (blank.width(), blank.height()),
        Running::Flat => (blank.height(), blank.width()),
    };
    let origin = frame.storeys.first();
    let on_layout = origin.is_some_and(|storey| storey.from_right == (end == End::Right));
    let x = frame.lower.span();
    let off = origin.is_some_and(|storey| {
        let from = if on_layout {
            x.len() - (storey.zero - if storey.from_right { x.hi } else { x.lo }).abs()
        } else {
            x.len()
        };
        from.units().rem_euclid(storey.spacing.units().max(1)) != 0
    });
    let most = practice.line_pull_most.max(Length::from_units(1));
    let mut pulls = Vec::new();
    let mut done = Length::ZERO;
    while done < x.len() {
        let next = (done + most).min(x.len());
        pulls.push(match end {
            End::Left => Pull {
                from: x.lo + done,
                to: x.lo + next,
            },
            End::Right => Pull {
                from: x.hi - next,
                to: x.hi - done,
            },
        });
        done = next;
    }
    Some(Start {
        end,
        on_layout,
        far_end_off_layout: off,
        datum,
        datum_is,
        reach: built.layout.reach,
        pulls,
        first_piece: first.mark.clone(),
        first_is_full: width == sheet.width && length == sheet.length,
    })
}
