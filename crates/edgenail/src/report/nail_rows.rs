//! The table `nail_rows`.

use super::{Results, WallName, WallResults, count, mark, stock_name, word};
use crate::geometry::Point;
use crate::house::Nail;
use crate::nailing::NailRow;
use crate::table::{Field, Schema};

pub(super) struct Row<'a> {
    wall: WallName<'a>,
    nails: &'a [Nail],
    results: &'a WallResults<'a>,
    index: usize,
    consecutive: &'a NailRow,
}

impl Row<'_> {
    fn first(&self) -> Point {
        self.consecutive.position(self.consecutive.first)
    }

    fn last(&self) -> Point {
        self.consecutive.position(self.consecutive.last)
    }
}

pub(super) fn rows<'a>(results: &Results<'a>) -> Vec<Row<'a>> {
    let nails = &results.house.stock.nails;
    let mut rows = Vec::new();
    for (wall, results) in results.named_walls() {
        rows.extend(
            results
                .nailing
                .rows
                .iter()
                .enumerate()
                .map(|(index, consecutive)| Row {
                    wall,
                    nails,
                    results,
                    index,
                    consecutive,
                }),
        );
    }
    rows
}

pub(super) fn schema<'a>() -> Schema<Row<'a>> {
    Schema {
        name: "nail_rows",
        meaning: "Consecutive nails of one kind through one panel into one member.",
        fields: vec![
            Field::text("wall", "Name of the wall.", |row: &Row<'_>| row.wall.name.into()),
            Field::int("wall_index", "Place of the wall in the house.", |row| {
                row.wall.index.into()
            }),
            Field::int("id", "Place of the row in the wall's list.", |row| {
                count(row.index)
            }),
            Field::int("panel", "The panel's id.", |row| row.consecutive.piece.into()),
            Field::text("mark", "The panel's mark.", |row| {
                mark(row.results, row.consecutive.piece).into()
            }),
            Field::int("member", "The member's id.", |row| {
                row.consecutive.member.0.into()
            }),
            Field::text("zone", "Why the row is there.", |row| {
                word(&row.consecutive.zone).into()
            }),
            Field::text("nail", "The nail.", |row| {
                stock_name(row.nails, row.consecutive.nail, |nail| &nail.name).into()
            }),
            Field::length("x0", "First nail: place along the wall.", |row| row.first().x),
            Field::length("y0", "First nail: height.", |row| row.first().y),
            Field::length("x1", "Last nail: place along the wall.", |row| row.last().x),
            Field::length("y1", "Last nail: height.", |row| row.last().y),
            Field::int("count", "How many nails.", |row| row.consecutive.count().into()),
            Field::int(
                "moved",
                "1 if a nail was moved to clear something, else 0.",
                |row| row.consecutive.moved.into(),
            ),
        ],
    }
}
