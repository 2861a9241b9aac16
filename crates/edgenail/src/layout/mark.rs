//! What is written on the pieces, and the order in which they are hung.

use super::{Piece, Turn, starting_end};
use crate::frame::Frame;
use crate::house::{End, Practice};

/// The letters of a course, counted from the bottom: A to Z, then AA, AB and so on.
pub(super) fn course_letters(course: usize) -> String {
    let letter = char::from(b'A' + u8::try_from(course % 26).unwrap_or(0));
    match course / 26 {
        0 => letter.to_string(),
        more => course_letters(more - 1) + &letter.to_string(),
    }
}

/// Marks the pieces of each course from the left and gives each its turn in the order of hanging: what goes up first,
/// then the lowest course, each course from the end that sheets are laid from.
pub(super) fn mark(frame: &Frame, practice: &Practice, pieces: &mut [Piece]) {
    let mut order: Vec<usize> = (0..pieces.len()).collect();
    let place = |piece: &Piece| {
        let bounds = piece.outline.bounds();
        (piece.band, bounds.x0, bounds.y0)
    };
    order.sort_by_key(|index| pieces.get(*index).map(place));
    let mut number = (0, 0);
    for index in &order {
        let Some(piece) = pieces.get_mut(*index) else {
            continue;
        };
        number = if number.0 == piece.band {
            (piece.band, number.1 + 1)
        } else {
            (piece.band, 1)
        };
        piece.mark = format!("{}{}", course_letters(piece.band as usize), number.1);
    }
    if starting_end(practice, frame) == End::Right {
        let turned = |piece: &Piece| {
            let bounds = piece.outline.bounds();
            (piece.band, std::cmp::Reverse(bounds.x1), bounds.y0)
        };
        order.sort_by_key(|index| pieces.get(*index).map(turned));
    }
    let turns: Vec<Turn> = pieces
        .iter()
        .map(|piece| Turn::of(frame, practice, &piece.blank()))
        .collect();
    order.sort_by_key(|index| turns.get(*index));
    for (turn, index) in (0u32..).zip(order) {
        if let Some(piece) = pieces.get_mut(index) {
            piece.hang_order = turn;
        }
    }
}

/// The marks of pieces in a sentence.
pub(crate) fn marks<'p>(pieces: impl Iterator<Item = &'p Piece>) -> String {
    let marks: Vec<&str> = pieces.map(|piece| piece.mark.as_str()).collect();
    marks.join(", ")
}
