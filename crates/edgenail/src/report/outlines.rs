//! The table `outlines`.

use super::{Results, WallName, count};
use crate::geometry::{Point, Shape};
use crate::layout::Piece;
use crate::table::{Field, Schema};

pub(super) struct Row<'a> {
    wall: WallName<'a>,
    piece: &'a Piece,
    ring: usize,
    corner: usize,
    at: Point,
}

pub(super) fn rows<'a>(results: &Results<'a>) -> Vec<Row<'a>> {
    corners(results, |piece| &piece.outline)
}

/// The corners of one shape of every piece.
pub(super) fn corners<'a>(results: &Results<'a>, shape: fn(&Piece) -> &Shape) -> Vec<Row<'a>> {
    let mut rows = Vec::new();
    for (wall, results) in results.named_walls() {
        for piece in &results.layout.pieces {
            for (ring, corners) in shape(piece).rings().into_iter().enumerate() {
                rows.extend(corners.into_iter().enumerate().map(|(corner, at)| Row {
                    wall,
                    piece,
                    ring,
                    corner,
                    at,
                }));
            }
        }
    }
    rows
}

pub(super) fn schema<'a>() -> Schema<Row<'a>> {
    named(
        "outlines",
        "A corner of a panel's outline. The first ring goes round the panel, the others round its cutouts.",
    )
}

/// A table of corners.
pub(super) fn named<'a>(name: &'static str, meaning: &'static str) -> Schema<Row<'a>> {
    Schema {
        name,
        meaning,
        fields: vec![
            Field::text("wall", "Name of the wall.", |row: &Row<'_>| row.wall.name.into()),
            Field::int("wall_index", "Place of the wall in the house.", |row| {
                row.wall.index.into()
            }),
            Field::int("panel", "The panel's id.", |row| row.piece.id.into()),
            Field::text("mark", "The panel's mark.", |row| row.piece.mark.as_str().into()),
            Field::int("ring", "The ring, from 0.", |row| count(row.ring)),
            Field::int("corner", "The corner's place in the ring, from 0.", |row| {
                count(row.corner)
            }),
            Field::length("x", "Place along the wall.", |row| row.at.x),
            Field::length("y", "Height.", |row| row.at.y),
        ],
    }
}
