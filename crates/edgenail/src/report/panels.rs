//! The table `panels`.

use super::{Results, WallName, stock_name, word};
use crate::geometry::Rect;
use crate::house::Sheet;
use crate::layout::Piece;
use crate::length::Area;
use crate::table::{Field, Schema};

pub(super) struct Row<'a> {
    wall: WallName<'a>,
    sheets: &'a [Sheet],
    piece: &'a Piece,
    bounds: Rect,
}

pub(super) fn rows<'a>(results: &Results<'a>) -> Vec<Row<'a>> {
    let sheets = &results.house.stock.sheets;
    let mut rows = Vec::new();
    for (wall, results) in results.named_walls() {
        let row = |piece: &'a Piece| Row {
            wall,
            sheets,
            piece,
            bounds: piece.outline.bounds(),
        };
        rows.extend(results.layout.pieces.iter().map(row));
    }
    rows
}

pub(super) fn schema<'a>() -> Schema<Row<'a>> {
    Schema {
        name: "panels",
        meaning: "A piece of sheathing as it hangs.",
        fields: vec![
            Field::text("wall", "Name of the wall.", |row: &Row<'_>| row.wall.name.into()),
            Field::int("wall_index", "Place of the wall in the house.", |row| {
                row.wall.index.into()
            }),
            Field::int("id", "Place of the panel in the wall's list.", |row| {
                row.piece.id.into()
            }),
            Field::text("mark", "What is written on it.", |row| {
                row.piece.mark.as_str().into()
            }),
            Field::int("course", "Its course, counted from 0 at the bottom.", |row| {
                row.piece.band.into()
            }),
            Field::text("sheet", "The sheet that it is cut from.", |row| {
                stock_name(row.sheets, row.piece.sheet, |sheet| &sheet.name).into()
            }),
            Field::text("running", "Which way the sheet's long side runs.", |row| {
                word(&row.piece.running).into()
            }),
            Field::length("x0", "Left edge.", |row| row.bounds.x0),
            Field::length("y0", "Lower edge.", |row| row.bounds.y0),
            Field::length("x1", "Right edge.", |row| row.bounds.x1),
            Field::length("y1", "Upper edge.", |row| row.bounds.y1),
            Field::length("width", "Width of the blank that it is cut from.", |row| {
                row.bounds.width()
            }),
            Field::length("height", "Height of the blank that it is cut from.", |row| {
                row.bounds.height()
            }),
            Field::float(
                Some("sq ft"),
                "area",
                "Area without notches and cutouts, for display.",
                |row| Area::from_square_units(row.piece.outline.area2() / 2).as_square_feet(),
            ),
            Field::int(
                "rectangle",
                "1 if it has no notch, cutout or slope, else 0.",
                |row| row.piece.outline.is_rect().is_some().into(),
            ),
            Field::int("hang_order", "Its turn in the order of hanging, from 0.", |row| {
                row.piece.hang_order.into()
            }),
        ],
    }
}
