//! The table `cut_list`.

use super::{Results, word};
use crate::cutting::{CutRow, cut_list};
use crate::layout::Layout;
use crate::table::{Field, Schema};

pub(super) fn rows(results: &Results<'_>) -> Vec<CutRow> {
    let layouts: Vec<(usize, &Layout)> = results
        .walls
        .iter()
        .map(|wall| (wall.frame.wall as usize, wall.layout))
        .collect();
    let kerf = results.house.walls.first().map(|wall| wall.practice.kerf);
    cut_list(results.house, &layouts, results.cutting, kerf.unwrap_or_default())
}

pub(super) fn schema() -> Schema<CutRow> {
    Schema {
        name: "cut_list",
        meaning: "A piece to be cut, by sheet and place on it; pieces that are not cut come last.",
        fields: vec![
            Field::text("wall", "The wall.", |row: &CutRow| row.wall.as_str().into()),
            Field::int("wall_index", "Place of the wall in the house.", |row| {
                row.wall_index.into()
            }),
            Field::int("panel", "The panel's id.", |row| row.panel.into()),
            Field::text("mark", "What is written on it.", |row| row.mark.as_str().into()),
            Field::text("sheet", "Name of the sheet in stock that it asks for.", |row| {
                row.sheet.as_str().into()
            }),
            Field::int(
                "cut_sheet",
                "The id of the sheet that it is cut from, in the table `sheets`; -1 if it is not cut.",
                |row| i64::from(row.cut_sheet) - 1,
            ),
            Field::text(
                "source",
                "sheet (a whole new one), offcut (from an earlier job) or drop (what is routed out of a panel that \
                 hangs); empty if it is not cut.",
                |row| row.source.into(),
            ),
            Field::length("width", "Size along the sheet's width.", |row| row.width),
            Field::length("length", "Size along the sheet's length.", |row| row.length),
            Field::text(
                "size",
                "Width × length as they are read off a tape, rounded down to 1/32 in.",
                |row| row.shown.as_str().into(),
            ),
            Field::length(
                "x",
                "From the sheet's edge to the piece, along its width.",
                |row| row.x,
            ),
            Field::length(
                "y",
                "From the sheet's end to the piece, along its length.",
                |row| row.y,
            ),
            Field::int(
                "turned",
                "1 for a panel that lies with its sides exchanged, else 0.",
                |row| row.turned.into(),
            ),
            Field::text(
                "notches",
                "Rectangles to be cut from it as it hangs: from its left, from its bottom: width × height.",
                |row| row.notches.as_str().into(),
            ),
            Field::text(
                "rake",
                "Sloping cuts as it hangs: heights at their left and right ends, from its bottom.",
                |row| row.rake.as_str().into(),
            ),
            Field::text(
                "hand",
                "Which way a raked piece rises, seen from its printed face: left, right or both; empty for others.",
                |row| row.hand.map_or_else(|| "".into(), |hand| word(&hand).into()),
            ),
            Field::int(
                "turns_over",
                "1 where its faces are alike, so that its hand does not matter, else 0.",
                |row| row.turns_over.into(),
            ),
        ],
    }
}
