//! The table `cuts`.

use super::{Results, count};
use crate::cutting::CutNode;
use crate::house::House;
use crate::length::Length;
use crate::table::{Field, Schema};

pub(super) struct Row<'a> {
    sheet: usize,
    part: String,
    kind: &'static str,
    at: Length,
    wall: &'a str,
    wall_index: i64,
    panel: i64,
    mark: &'a str,
    turned: bool,
}

pub(super) fn rows<'a>(results: &Results<'a>) -> Vec<Row<'a>> {
    let mut rows = Vec::new();
    for (sheet, cut) in results.cutting.sheets.iter().enumerate() {
        walk(results, sheet, String::new(), &cut.tree, &mut rows);
    }
    rows
}

/// A part of a sheet, then what it is cut into: a cut comes before the cuts of its two parts.
fn walk<'a>(results: &Results<'a>, sheet: usize, part: String, node: &CutNode, rows: &mut Vec<Row<'a>>) {
    let mut row = Row {
        sheet,
        part,
        kind: "waste",
        at: Length::from_units(-1),
        wall: "",
        wall_index: -1,
        panel: -1,
        mark: "",
        turned: false,
    };
    match node {
        CutNode::Split {
            across,
            at,
            first,
            second,
        } => {
            row.kind = if *across { "crosscut" } else { "rip" };
            row.at = *at;
            let parts = [format!("{}1", row.part), format!("{}2", row.part)];
            rows.push(row);
            for (part, node) in parts.into_iter().zip([first, second]) {
                walk(results, sheet, part, node, rows);
            }
            return;
        }
        CutNode::Piece { blank, turned } => {
            row.kind = "panel";
            row.turned = *turned;
            if let Some(blank) = results.cutting.blanks.get(*blank as usize) {
                let house: &'a House = results.house;
                row.wall = house
                    .walls
                    .get(blank.wall as usize)
                    .map_or("", |wall| wall.name.as_str());
                row.wall_index = blank.wall.into();
                row.panel = blank.piece.into();
                row.mark = results.mark(blank.wall, blank.piece);
            }
        }
        CutNode::Offcut { .. } => row.kind = "offcut",
        CutNode::Waste => {}
    }
    rows.push(row);
}

pub(super) fn schema<'a>() -> Schema<Row<'a>> {
    Schema {
        name: "cuts",
        meaning: "A part of a sheet: a cut that parts it further, a panel, an off-cut that is kept, or waste.",
        fields: vec![
            Field::int("sheet", "The id of the sheet to be cut.", |row: &Row<'_>| {
                count(row.sheet)
            }),
            Field::text(
                "part",
                "Which part of the sheet: empty is all of it, 1 what its cut leaves nearer to the corner, 2 the \
                 rest, 12 the rest of 1, and so on.",
                |row| row.part.as_str().into(),
            ),
            Field::text(
                "kind",
                "crosscut (across the sheet's length), rip (along it), panel, offcut or waste.",
                |row| row.kind.into(),
            ),
            Field::length(
                "at",
                "Size of the nearer part that a cut leaves; -1 where nothing is cut.",
                |row| row.at,
            ),
            Field::text("wall", "The wall of a panel; else empty.", |row| row.wall.into()),
            Field::int(
                "wall_index",
                "Place of a panel's wall in the house; else -1.",
                |row| row.wall_index,
            ),
            Field::int("panel", "The panel's id; else -1.", |row| row.panel),
            Field::text("mark", "The mark of a panel; else empty.", |row| row.mark.into()),
            Field::int(
                "turned",
                "1 for a panel that lies with its sides exchanged, else 0.",
                |row| row.turned.into(),
            ),
        ],
    }
}
