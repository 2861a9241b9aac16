//! Which kinds of sheet may stand in for one another.

use super::Blank;
use crate::house::{Sheet, Stock};
use crate::length::Length;

/// A piece that asks for one kind of sheet may be cut from the other: only size, price and number differ.
///
/// Category, grade, span rating, strength axis, plies, likeness of the faces, leave to turn and the maker's gap agree.
pub fn interchangeable(a: &Sheet, b: &Sheet) -> bool {
    a.category == b.category
        && a.grade == b.grade
        && a.span_rating == b.span_rating
        && a.strength_axis == b.strength_axis
        && a.plies == b.plies
        && a.faces_alike == b.faces_alike
        && a.may_turn == b.may_turn
        && a.gap == b.gap
}

/// For each kind of sheet, the first of the kinds that are interchangeable with it.
pub(super) fn materials(stock: &Stock) -> Vec<usize> {
    let sheets = &stock.sheets;
    let first = |sheet| sheets.iter().position(|other| interchangeable(other, sheet));
    sheets
        .iter()
        .enumerate()
        .map(|(own, sheet)| first(sheet).unwrap_or(own))
        .collect()
}

/// Some kind of sheet can stand in for another.
pub(super) fn is_choice(stock: &Stock) -> bool {
    materials(stock)
        .iter()
        .enumerate()
        .any(|(own, first)| own != *first)
}

/// The ways in which a blank may lie: its sizes along a sheet's width and length, and whether it is turned.
pub(super) fn lies(blank: &Blank) -> impl Iterator<Item = (Length, Length, bool)> {
    let turns = blank.may_turn && blank.width != blank.length;
    let straight = (blank.width, blank.length, false);
    let turned = turns.then_some((blank.length, blank.width, true));
    std::iter::once(straight).chain(turned)
}

/// A blank fits a rectangle, lying one way or another.
pub(super) fn fits(blank: &Blank, width: Length, length: Length) -> bool {
    lies(blank).any(|(w, l, _)| w <= width && l <= length)
}
