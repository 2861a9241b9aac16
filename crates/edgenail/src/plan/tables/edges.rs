//! The table of panel edges.

use super::{WallPlan, count, index_or_none, length, named, or_none, text};
use crate::edges::{EdgeRun, Support};
use crate::table::{Schema, Table};

/// One run of one wall.
struct Of<'a> {
    wall: &'a WallPlan,
    run: &'a EdgeRun,
}

pub(super) fn table(walls: &[WallPlan]) -> Table {
    let rows: Vec<Of<'_>> =
        walls.iter().flat_map(|wall| wall.built.runs.iter().map(move |run| Of { wall, run })).collect();
    schema().table(&rows)
}

fn schema<'a>() -> Schema<Of<'a>> {
    Schema {
        name: "edges",
        meaning: "One stretch of panel edge with one support a row; the stretches of a piece follow its outline.",
        fields: vec![
            text("wall", "Name of the wall.", |row: &Of| row.wall.name.clone()),
            count("run", "Its number in the wall, from 0.", |row| i64::from(row.run.id)),
            count("piece", "The piece.", |row| i64::from(row.run.piece)),
            text("side", "Which side of the piece.", |row| named(&row.run.side)),
            text("joint", "What the edge meets.", |row| named(&row.run.joint)),
            length("x0", "Start of the stretch.", |row| row.run.from.x.units()),
            length("y0", "Start of the stretch.", |row| row.run.from.y.units()),
            length("x1", "End of the stretch.", |row| row.run.to.x.units()),
            length("y1", "End of the stretch.", |row| row.run.to.y.units()),
            length("length", "Length of the stretch.", |row| row.run.length.units()),
            count("member", "The member that holds it; -1 where nothing does.", |row| {
                index_or_none(row.run.member().map(|member| member.0))
            }),
            text("reason", "Why nothing holds it; empty where something does.", |row| match row.run.support {
                Support::Member { .. } => String::new(),
                Support::Nothing { reason } => named(&reason),
            }),
            length("inset", "Nail line from the panel edge; -1 where there is none.", |row| or_none(row.run.inset)),
            length("wood", "Wood between the nail line and the nearer edge of the member; -1 where there is none.", |row| {
                or_none(row.run.wood)
            }),
            count("must_back", "1 where the stretch lacks backing that it has to have.", |row| i64::from(row.run.must_back)),
            count("partner", "The piece across the seam; -1 where there is none.", |row| index_or_none(row.run.partner)),
        ],
    }
}
