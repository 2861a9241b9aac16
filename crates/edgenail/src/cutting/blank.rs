//! The blanks of a house.

use super::notch::{Notch, notches};
use super::work::sheet_directions;
use super::{Blank, CutRules, Drop};
use crate::house::House;
use crate::layout::{Layout, Piece};
use std::collections::BTreeMap;

/// The rectangles to be cut for these walls, each given by its place in the house, in building order: walls as the
/// house says, pieces as they are hung.
///
/// A blank is the rectangle of the piece's outline; notches are cut from it. It keeps its strength axis unless the
/// sheet may turn. Pieces of one slope come in two hands: which hand a piece has does not change its blank, and
/// [`cut_list`](super::cut_list) says it. A piece without a sheet in stock has no blank.
pub fn blanks(house: &House, layouts: &[(usize, &Layout)]) -> Vec<Blank> {
    let rank: BTreeMap<&str, usize> = house
        .building_order
        .iter()
        .enumerate()
        .rev()
        .map(|(rank, name)| (name.as_str(), rank))
        .collect();
    let mut walls: Vec<(usize, &Layout)> = layouts.to_vec();
    walls.sort_by_key(|(wall, _)| {
        let name = house.walls.get(*wall).map_or("", |wall| wall.name.as_str());
        (rank.get(name).copied().unwrap_or(usize::MAX), *wall)
    });
    let mut found = Vec::new();
    for (wall, layout) in walls {
        let Some(rules) = house.walls.get(wall).map(|wall| CutRules::of(&wall.practice)) else {
            continue;
        };
        let mut pieces: Vec<&Piece> = layout.pieces.iter().collect();
        pieces.sort_by_key(|piece| (piece.hang_order, piece.id));
        for piece in pieces {
            let Some(sheet) = house.stock.sheets.get(piece.sheet as usize) else {
                continue;
            };
            let rect = piece.blank();
            let (width, length) = sheet_directions(piece.running, rect.width(), rect.height());
            found.push(Blank {
                wall: u32::try_from(wall).unwrap_or(u32::MAX),
                piece: piece.id,
                order: u32::try_from(found.len()).unwrap_or(u32::MAX),
                sheet: piece.sheet,
                width,
                length,
                may_turn: sheet.may_turn,
                drops: drops(piece, &rules),
            });
        }
    }
    found
}

/// What falls out of a piece and is worth keeping.
fn drops(piece: &Piece, rules: &CutRules) -> Vec<Drop> {
    let blank = piece.blank();
    let size = |notch: &Notch| {
        let (across, up) = notch.drop(&blank, rules.kerf);
        let (width, length) = sheet_directions(piece.running, across, up);
        rules.keeps(width, length).then_some(Drop { width, length })
    };
    notches(&piece.outline).iter().filter_map(size).collect()
}
