//! The table `nails`.

use super::{Results, WallName, stock_name};
use crate::nailing::{Nail, NailRow};
use crate::table::{Field, Schema};

pub(super) struct Row<'a> {
    wall: WallName<'a>,
    name: &'a str,
    consecutive: &'a NailRow,
    nail: Nail,
}

pub(super) fn rows<'a>(results: &Results<'a>) -> Vec<Row<'a>> {
    let stock = &results.house.stock.nails;
    let mut rows = Vec::new();
    for (wall, results) in results.named_walls() {
        rows.extend(results.nailing.nails().filter_map(|nail| {
            let consecutive = results.nailing.rows.get(nail.row as usize)?;
            let name = stock_name(stock, consecutive.nail, |nail| &nail.name);
            Some(Row {
                wall,
                name,
                consecutive,
                nail,
            })
        }));
    }
    rows
}

pub(super) fn schema<'a>() -> Schema<Row<'a>> {
    Schema {
        name: "nails",
        meaning: "One nail.",
        fields: vec![
            Field::text("wall", "Name of the wall.", |row: &Row<'_>| row.wall.name.into()),
            Field::int("wall_index", "Place of the wall in the house.", |row| {
                row.wall.index.into()
            }),
            Field::int("row", "The id of its row of nails.", |row| row.nail.row.into()),
            Field::int("panel", "The panel's id.", |row| row.consecutive.piece.into()),
            Field::int("member", "The member's id.", |row| {
                row.consecutive.member.0.into()
            }),
            Field::text("nail", "The nail.", |row| row.name.into()),
            Field::length("x", "Place along the wall.", |row| row.nail.at.x),
            Field::length("y", "Height.", |row| row.nail.at.y),
        ],
    }
}
