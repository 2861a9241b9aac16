//! The table `sheets`.

use super::{Results, count};
use crate::cutting::{Blank, CutNode, CutPlan, CutSheet, Source};
use crate::house::House;
use crate::table::{Field, Schema};

pub(super) struct Row<'a> {
    house: &'a House,
    index: usize,
    sheet: &'a CutSheet,
    /// What a drop falls out of.
    panel: Option<&'a Blank>,
}

pub(super) fn rows<'a>(results: &Results<'a>) -> Vec<Row<'a>> {
    let house = results.house;
    let cutting: &'a CutPlan = results.cutting;
    let row = |(index, sheet): (usize, &'a CutSheet)| Row {
        house,
        index,
        sheet,
        panel: match sheet.source {
            Source::Drop { blank, .. } => cutting.blanks.get(blank as usize),
            Source::Sheet { .. } | Source::Offcut { .. } => None,
        },
    };
    cutting.sheets.iter().enumerate().map(row).collect()
}

/// Cuts and pieces below a node.
fn totals(node: &CutNode) -> (i64, i64) {
    match node {
        CutNode::Split { first, second, .. } => {
            let (first, second) = (totals(first), totals(second));
            (first.0 + second.0 + 1, first.1 + second.1)
        }
        CutNode::Piece { .. } => (0, 1),
        CutNode::Offcut { .. } | CutNode::Waste => (0, 0),
    }
}

pub(super) fn schema<'a>() -> Schema<Row<'a>> {
    Schema {
        name: "sheets",
        meaning: "A sheet to be cut, in the order of cutting.",
        fields: vec![
            Field::int("id", "Place of the sheet in the list.", |row: &Row<'_>| {
                count(row.index)
            }),
            Field::text(
                "sheet",
                "Name of the sheet in stock; for an off-cut, of the sheet that it came from.",
                |row| super::stock_name(&row.house.stock.sheets, row.sheet.sheet, |sheet| &sheet.name).into(),
            ),
            Field::int(
                "offcut",
                "Place of the off-cut from an earlier job in the stock's list; -1 for everything else.",
                |row| match row.sheet.source {
                    Source::Sheet { .. } | Source::Drop { .. } => -1,
                    Source::Offcut { offcut } => offcut.into(),
                },
            ),
            Field::length("width", "Width before cutting.", |row| row.sheet.width),
            Field::length("length", "Length before cutting.", |row| row.sheet.length),
            Field::int("cuts", "How many cuts part it.", |row| totals(&row.sheet.tree).0),
            Field::int("panels", "How many panels are cut from it.", |row| {
                totals(&row.sheet.tree).1
            }),
            Field::text(
                "source",
                "sheet (a whole new one), offcut (from an earlier job) or drop (what is routed out of a panel that \
                 hangs).",
                |row| row.sheet.source.name().into(),
            ),
            Field::int(
                "drop_wall_index",
                "Place in the house of the wall whose panel a drop falls out of; else -1.",
                |row| row.panel.map_or(-1, |blank| blank.wall.into()),
            ),
            Field::int(
                "drop_panel",
                "The id of the panel that a drop falls out of; else -1.",
                |row| row.panel.map_or(-1, |blank| blank.piece.into()),
            ),
        ],
    }
}
