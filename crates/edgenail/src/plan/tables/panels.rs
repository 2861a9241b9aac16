//! The table of panels.

use super::{Row, WallPlan, count, length, named, text, wall};
use crate::house::House;
use crate::layout::Piece;
use crate::table::{Schema, Table};

type Of<'a> = Row<'a, Piece>;

pub(super) fn table(house: &House, walls: &[WallPlan]) -> Table {
    let rows: Vec<Of<'_>> = walls
        .iter()
        .flat_map(|wall| wall.built.layout.pieces.iter().map(move |item| Row { house, wall, item }))
        .collect();
    schema().table(&rows)
}

fn schema<'a>() -> Schema<Of<'a>> {
    Schema {
        name: "panels",
        meaning: "One piece of sheathing a row, course by course from the bottom, each from the left.",
        fields: vec![
            wall(),
            count("piece", "Its number in the wall, from 0.", |row: &Of| i64::from(row.item.id)),
            text("mark", "What is written on it: course letter, number from the left.", |row| row.item.mark.clone()),
            count("course", "Its course, from 0 at the bottom.", |row| i64::from(row.item.band)),
            count("hang_order", "Its turn in hanging, from 0.", |row| i64::from(row.item.hang_order)),
            text("sheet", "Name of the sheet it is cut from.", |row| {
                row.house.stock.sheets.get(row.item.sheet as usize).map_or_else(String::new, |sheet| sheet.name.clone())
            }),
            text("running", "Which way the long side of its sheet runs.", |row| named(&row.item.running)),
            length("x0", "Left edge of its outline.", |row| row.item.blank().x0.units()),
            length("y0", "Lower edge of its outline.", |row| row.item.blank().y0.units()),
            length("x1", "Right edge of its outline.", |row| row.item.blank().x1.units()),
            length("y1", "Upper edge of its outline.", |row| row.item.blank().y1.units()),
            text("outline", "Corners of the outline, rings of x,y pairs in units; the first ring counter-clockwise, holes after it.", |row| {
                let rings = row.item.outline.rings();
                let rings = rings.iter().map(|ring| {
                    let corners: Vec<String> = ring.iter().map(|point| format!("{},{}", point.x.units(), point.y.units())).collect();
                    corners.join(" ")
                });
                rings.collect::<Vec<_>>().join(";")
            }),
        ],
    }
}
