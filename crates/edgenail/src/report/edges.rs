//! The table `edges`.

use super::{Results, WallName, WallResults, mark, word};
use crate::edges::{EdgeRun, Support};
use crate::length::Length;
use crate::table::{Field, Schema};

pub(super) struct Row<'a> {
    wall: WallName<'a>,
    results: &'a WallResults<'a>,
    run: &'a EdgeRun,
}

/// What a column of lengths holds where there is none.
const NONE: Length = Length::from_units(-1);

pub(super) fn rows<'a>(results: &Results<'a>) -> Vec<Row<'a>> {
    let mut rows = Vec::new();
    for (wall, results) in results.named_walls() {
        rows.extend(results.edges.iter().map(|run| Row { wall, results, run }));
    }
    rows
}

pub(super) fn schema<'a>() -> Schema<Row<'a>> {
    Schema {
        name: "edges",
        meaning: "A stretch of one panel edge with one support.",
        fields: vec![
            Field::text("wall", "Name of the wall.", |row: &Row<'_>| row.wall.name.into()),
            Field::int("wall_index", "Place of the wall in the house.", |row| {
                row.wall.index.into()
            }),
            Field::int("id", "Place of the stretch in the wall's list.", |row| {
                row.run.id.into()
            }),
            Field::int("panel", "The panel's id.", |row| row.run.piece.into()),
            Field::text("mark", "The panel's mark.", |row| {
                mark(row.results, row.run.piece).into()
            }),
            Field::text("side", "Which side of the panel.", |row| {
                word(&row.run.side).into()
            }),
            Field::text("joint", "What the edge meets.", |row| word(&row.run.joint).into()),
            Field::length("x0", "Start along the wall.", |row| row.run.from.x),
            Field::length("y0", "Height of the start.", |row| row.run.from.y),
            Field::length("x1", "End along the wall.", |row| row.run.to.x),
            Field::length("y1", "Height of the end.", |row| row.run.to.y),
            Field::length("length", "Length of the stretch.", |row| row.run.length),
            Field::int(
                "member",
                "The member that holds it; -1 where nothing does.",
                |row| row.run.member().map_or(-1, |member| member.0.into()),
            ),
            Field::text(
                "unsupported",
                "Why nothing holds it; empty where a member does.",
                |row| match row.run.support {
                    Support::Member { .. } => "".into(),
                    Support::Nothing { reason } => word(&reason).into(),
                },
            ),
            Field::length(
                "inset",
                "From the panel edge to the nail line; -1 where nothing holds it.",
                |row| row.run.inset.unwrap_or(NONE),
            ),
            Field::length(
                "wood",
                "From the nail line to the nearer edge of the member; -1 where nothing holds it.",
                |row| row.run.wood.unwrap_or(NONE),
            ),
            Field::length(
                "bay",
                "The clear bay of an unsupported stretch; -1 where a member holds it.",
                |row| row.run.bay.unwrap_or(NONE),
            ),
            Field::int(
                "must_back",
                "1 if it lacks support and has to be backed, else 0.",
                |row| row.run.must_back.into(),
            ),
            Field::int(
                "partner",
                "The stretch across the seam; -1 where there is none.",
                |row| row.run.partner.map_or(-1, i64::from),
            ),
        ],
    }
}
