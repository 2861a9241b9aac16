//! The tables of nail rows and of single nails.

use super::{Row, WallPlan, count, length, named, text, wall};
use crate::geometry::Point;
use crate::house::House;
use crate::nailing::NailRow;
use crate::table::{Schema, Table};

type Of<'a> = Row<'a, NailRow>;

fn nail(row: &Of) -> String {
    row.house.stock.nails.get(row.item.nail as usize).map_or_else(String::new, |nail| nail.name.clone())
}

pub(super) fn rows(house: &House, walls: &[WallPlan]) -> Table {
    let rows: Vec<Of<'_>> = walls
        .iter()
        .flat_map(|wall| wall.built.nailing.rows.iter().map(move |item| Row { house, wall, item }))
        .collect();
    let schema = Schema {
        name: "nail_rows",
        meaning: "Consecutive nails of one kind into one member a row: nails first to last of a line in equal spaces; \
                  nail i stands at from + round(i * (to - from) / spaces).",
        fields: vec![
            wall(),
            count("piece", "The piece that is nailed.", |row: &Of| i64::from(row.item.piece)),
            count("member", "The member that is nailed into.", |row| i64::from(row.item.member.0)),
            text("zone", "Why the row is there.", |row| named(&row.item.zone)),
            text("nail", "Name of the nail.", nail),
            length("from_x", "Start of the divided line.", |row| row.item.from.x.units()),
            length("from_y", "Start of the divided line.", |row| row.item.from.y.units()),
            length("to_x", "End of the divided line.", |row| row.item.to.x.units()),
            length("to_y", "End of the divided line.", |row| row.item.to.y.units()),
            count("spaces", "Equal parts of the line.", |row| i64::from(row.item.spaces)),
            count("first", "First nail of the row.", |row| i64::from(row.item.first)),
            count("last", "Last nail of the row.", |row| i64::from(row.item.last)),
            count("count", "How many nails.", |row| i64::from(row.item.count())),
            count("moved", "1 where the nail was moved along its row.", |row| i64::from(row.item.moved)),
        ],
    };
    schema.table(&rows)
}

/// One nail of one wall.
struct Single<'a> {
    row: Row<'a, NailRow>,
    at: Point,
}

pub(super) fn nails(house: &House, walls: &[WallPlan]) -> Table {
    let mut all: Vec<Single<'_>> = Vec::new();
    for wall in walls {
        for item in &wall.built.nailing.rows {
            all.extend(item.positions().map(|at| Single { row: Row { house, wall, item }, at }));
        }
    }
    let schema = Schema {
        name: "nails",
        meaning: "One nail a row, in the order of the nail rows.",
        fields: vec![
            text("wall", "Name of the wall.", |nail: &Single| nail.row.wall.name.clone()),
            count("piece", "The piece that is nailed.", |nail| i64::from(nail.row.item.piece)),
            count("member", "The member that is nailed into.", |nail| i64::from(nail.row.item.member.0)),
            text("zone", "Why it is there.", |nail| named(&nail.row.item.zone)),
            text("nail", "Name of the nail.", |single| nail(&single.row)),
            length("x", "Where it stands.", |nail| nail.at.x.units()),
            length("y", "Where it stands.", |nail| nail.at.y.units()),
        ],
    };
    schema.table(&all)
}
