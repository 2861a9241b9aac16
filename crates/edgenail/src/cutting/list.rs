//! The cut list: what each piece is cut from and how.

use super::CutPlan;
use super::notch::notches;
use super::replay::{Part, replay};
use super::work::sheet_directions;
use crate::geometry::{Facing, Rect};
use crate::house::{DrawnIn, House, Sheet};
use crate::layout::{Layout, Piece};
use crate::length::{Finest, Length, Rounding, Shown, Style};
use serde::Serialize;
use std::collections::BTreeMap;

/// Which hand a raked piece is of, seen from its printed face: two pieces of one slope are a pair only if one is
/// turned over.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Hand {
    /// The slope rises to the left.
    Left,
    /// The slope rises to the right.
    Right,
    /// It rises from both sides.
    Both,
}

/// One piece in the cut list.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct CutRow {
    /// Name of the wall.
    pub wall: String,
    /// The wall's place in the house's list.
    pub wall_index: u32,
    /// The piece's place in the wall's layout.
    pub panel: u32,
    /// Mark of the piece.
    pub mark: String,
    /// Name of the sheet that it asks for.
    pub sheet: String,
    /// Number of the cut sheet in the order of cutting, from 1; 0 if it is not cut.
    pub cut_sheet: u32,
    /// What that is: `sheet`, `offcut` or `drop`; empty if it is not cut.
    pub source: &'static str,
    /// Size along the sheet's width.
    pub width: Length,
    /// Size along the sheet's length.
    pub length: Length,
    /// The size as it is read off a tape, rounded down.
    pub shown: String,
    /// From the sheet's edge to the piece, along its width.
    pub x: Length,
    /// From the sheet's end to the piece, along its length.
    pub y: Length,
    /// It lies with its sides exchanged.
    pub turned: bool,
    /// Rectangles to be cut from the blank: from its left, from its bottom, width × height as it hangs.
    pub notches: String,
    /// Sloping cuts as they hang: heights at the blank's left and right, from its bottom.
    pub rake: String,
    /// Which hand a raked piece is of.
    pub hand: Option<Hand>,
    /// Its hand does not matter: the faces are alike, so that it may be turned over.
    pub turns_over: bool,
}

/// The cut list, by cut sheet, then by place on it; pieces that are not cut come last.
///
/// `walls` are the layouts that the blanks were listed from, `kerf` what the plan was cut with.
pub fn cut_list(house: &House, walls: &[(usize, &Layout)], plan: &CutPlan, kerf: Length) -> Vec<CutRow> {
    let layouts: BTreeMap<usize, &Layout> = walls.iter().copied().collect();
    let row = |blank: u32| {
        let blank = plan.blanks.get(blank as usize)?;
        let piece = layouts
            .get(&(blank.wall as usize))?
            .pieces
            .iter()
            .find(|piece| piece.id == blank.piece)?;
        let sheet = house.stock.sheets.get(blank.sheet as usize)?;
        Some(piece_row(house, blank.wall as usize, piece, sheet))
    };
    let mut rows = Vec::new();
    for (number, sheet) in (1_u32..).zip(&plan.sheets) {
        // A tree that cannot be cut has no place in a cut list; `check` names its fault.
        for part in replay(sheet, &plan.blanks, kerf).unwrap_or_default() {
            let Part::Blank { blank, turned } = part.part else {
                continue;
            };
            let placed = |row| CutRow {
                cut_sheet: number,
                source: sheet.source.name(),
                x: part.x,
                y: part.y,
                turned,
                ..row
            };
            rows.extend(row(blank).map(placed));
        }
    }
    rows.extend(plan.uncut.iter().filter_map(|uncut| row(uncut.blank)));
    rows
}

fn piece_row(house: &House, wall: usize, piece: &Piece, sheet: &Sheet) -> CutRow {
    let rect = piece.blank();
    let (width, length) = sheet_directions(piece.running, rect.width(), rect.height());
    let tape = Tape::of(house);
    CutRow {
        wall: house
            .walls
            .get(wall)
            .map_or_else(String::new, |wall| wall.name.clone()),
        wall_index: u32::try_from(wall).unwrap_or(u32::MAX),
        panel: piece.id,
        mark: piece.mark.clone(),
        sheet: sheet.name.clone(),
        cut_sheet: 0,
        source: "",
        width,
        length,
        shown: format!(
            "{} × {}",
            tape.shown(width, Rounding::Down),
            tape.shown(length, Rounding::Down)
        ),
        x: Length::ZERO,
        y: Length::ZERO,
        turned: false,
        notches: notch_text(tape, piece, &rect),
        rake: rake_text(tape, piece, &rect),
        hand: hand(piece),
        turns_over: sheet.faces_alike,
    }
}

/// What lengths are measured with.
#[derive(Clone, Copy)]
struct Tape {
    style: Style,
    /// The least that is read off it.
    step: Length,
}

impl Tape {
    /// Half of the finest marks: of 1/16 in., of a millimetre.
    fn of(house: &House) -> Self {
        match house.drawn_in {
            DrawnIn::Inches | DrawnIn::FeetInches => Self {
                style: Style::Inches(Finest::ThirtySecond),
                step: Length::sixteenths(1).half(),
            },
            DrawnIn::Millimetres => Self {
                style: Style::Millimetres,
                step: Length::mm(1).half(),
            },
        }
    }

    /// The length as it is read off the tape, marked if that is not all of it.
    fn shown(self, length: Length, rounding: Rounding) -> String {
        let read = length.round_to(self.step, rounding);
        let figure = read.show(self.style, Rounding::Nearest).text;
        if read == length {
            figure
        } else {
            format!("{}{figure}", Shown::MARK)
        }
    }
}

/// A notch never turns out smaller than what it is cut around: its near sides round down, its far sides up.
fn notch_text(tape: Tape, piece: &Piece, blank: &Rect) -> String {
    let text = |rect: &Rect| {
        let near = |at: Length, from: Length| (at - from).round_to(tape.step, Rounding::Down);
        let far = |at: Length, from: Length| (at - from).round_to(tape.step, Rounding::Up);
        let (x, y) = (near(rect.x0, blank.x0), near(rect.y0, blank.y0));
        let (w, h) = (far(rect.x1, blank.x0) - x, far(rect.y1, blank.y0) - y);
        let [x, y, w, h] = [x, y, w, h].map(|length| tape.shown(length, Rounding::Nearest));
        format!("{x}, {y}: {w} × {h}")
    };
    notches(&piece.outline)
        .iter()
        .map(|notch| text(&notch.rect))
        .collect::<Vec<_>>()
        .join("; ")
}

fn slopes(piece: &Piece) -> Vec<(Length, Length)> {
    let edges = piece.outline.boundary();
    let mut top: Vec<_> = edges
        .iter()
        .filter(|edge| edge.facing == Facing::Top && edge.a.y != edge.b.y)
        .map(crate::geometry::BoundaryEdge::ends)
        .collect();
    top.sort_unstable();
    top.into_iter().map(|(left, right)| (left.y, right.y)).collect()
}

fn rake_text(tape: Tape, piece: &Piece, blank: &Rect) -> String {
    let text = |(left, right): (Length, Length)| {
        let up = |y: Length| tape.shown(y - blank.y0, Rounding::Down);
        format!("{} to {}", up(left), up(right))
    };
    slopes(piece).into_iter().map(text).collect::<Vec<_>>().join("; ")
}

fn hand(piece: &Piece) -> Option<Hand> {
    let slopes = slopes(piece);
    let left = slopes.iter().any(|(left, right)| left > right);
    let right = slopes.iter().any(|(left, right)| left < right);
    match (left, right) {
        (true, true) => Some(Hand::Both),
        (true, false) => Some(Hand::Left),
        (false, true) => Some(Hand::Right),
        (false, false) => None,
    }
}
