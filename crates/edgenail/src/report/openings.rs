//! The table `openings`.

use super::{Results, WallName, word};
use crate::geometry::Rect;
use crate::table::{Field, Schema};

pub(super) struct Row<'a> {
    wall: WallName<'a>,
    name: &'a str,
    kind: &'static str,
    rect: Rect,
}

pub(super) fn rows<'a>(results: &Results<'a>) -> Vec<Row<'a>> {
    let mut rows = Vec::new();
    for (wall, results) in results.named_walls() {
        let frame = results.frame;
        rows.extend(frame.openings.iter().map(|opening| Row {
            wall,
            name: &opening.name,
            kind: word(&opening.kind),
            rect: opening.rect,
        }));
        for (kind, patches) in [
            ("bare_zone", &frame.bare_zones),
            ("penetration", &frame.penetrations),
        ] {
            rows.extend(patches.iter().map(|patch| Row {
                wall,
                name: &patch.name,
                kind,
                rect: patch.rect,
            }));
        }
    }
    rows
}

pub(super) fn schema<'a>() -> Schema<Row<'a>> {
    Schema {
        name: "openings",
        meaning: "An opening, a zone without sheathing, or a hole that is cut in place.",
        fields: vec![
            Field::text("wall", "Name of the wall.", |row: &Row<'_>| row.wall.name.into()),
            Field::int("wall_index", "Place of the wall in the house.", |row| {
                row.wall.index.into()
            }),
            Field::text("name", "Its name.", |row| row.name.into()),
            Field::text(
                "kind",
                "What it is for; bare_zone or penetration for the others.",
                |row| row.kind.into(),
            ),
            Field::length("x0", "Left edge.", |row| row.rect.x0),
            Field::length("y0", "Lower edge.", |row| row.rect.y0),
            Field::length("x1", "Right edge.", |row| row.rect.x1),
            Field::length("y1", "Upper edge.", |row| row.rect.y1),
        ],
    }
}
