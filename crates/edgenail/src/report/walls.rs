//! The table `walls`.

use super::{Results, WallName, WallResults, count};
use crate::geometry::Rect;
use crate::proof::Proof;
use crate::table::{Field, Schema};

pub(super) struct Row<'a> {
    wall: WallName<'a>,
    results: &'a WallResults<'a>,
    bounds: Rect,
}

pub(super) fn rows<'a>(results: &Results<'a>) -> Vec<Row<'a>> {
    let row = |(wall, results): (WallName<'a>, &'a WallResults<'a>)| Row {
        wall,
        results,
        bounds: bounds(results),
    };
    results.named_walls().map(row).collect()
}

/// The rectangle around all panels.
fn bounds(results: &WallResults<'_>) -> Rect {
    let panels = results.layout.pieces.iter().map(|piece| piece.outline.bounds());
    let around = |a: Rect, b: Rect| Rect {
        x0: a.x0.min(b.x0),
        y0: a.y0.min(b.y0),
        x1: a.x1.max(b.x1),
        y1: a.y1.max(b.y1),
    };
    panels.reduce(around).unwrap_or_default()
}

const fn proof(proof: Option<&Proof>) -> &'static str {
    match proof {
        None => "given",
        Some(Proof::Proven) => "proven",
        Some(Proof::Gap { .. }) => "gap",
        Some(Proof::Stopped { .. }) => "stopped",
    }
}

pub(super) fn schema<'a>() -> Schema<Row<'a>> {
    Schema {
        name: "walls",
        meaning: "A wall. x runs to the right from the frame's left end, y up from the wall's zero line.",
        fields: vec![
            Field::text("wall", "Name of the wall.", |row: &Row<'_>| row.wall.name.into()),
            Field::int("wall_index", "Place of the wall in the house.", |row| {
                row.wall.index.into()
            }),
            Field::length("x0", "Left end of the sheathing.", |row| row.bounds.x0),
            Field::length("y0", "Lower end of the sheathing.", |row| row.bounds.y0),
            Field::length("x1", "Right end of the sheathing.", |row| row.bounds.x1),
            Field::length("y1", "Upper end of the sheathing.", |row| row.bounds.y1),
            Field::length(
                "reach",
                "How far the sheathing reaches below the lowest plate.",
                |row| row.results.layout.reach,
            ),
            Field::int("panels", "Pieces of sheathing.", |row| {
                count(row.results.layout.pieces.len())
            }),
            Field::int("openings", "Openings.", |row| {
                count(row.results.frame.openings.len())
            }),
            Field::int("blocks", "Blocks that the plan adds.", |row| {
                count(row.results.blocking.blocks.len())
            }),
            Field::int("added_studs", "Studs that the plan adds.", |row| {
                count(row.results.blocking.studs.len())
            }),
            Field::int("widened_members", "Members that the plan widens.", |row| {
                count(row.results.blocking.widened.len())
            }),
            Field::int("nails", "Nails.", |row| {
                i64::try_from(row.results.nailing.count()).unwrap_or(i64::MAX)
            }),
            Field::int("arcs_priced", "Pieces and seams that the search priced.", |row| {
                i64::try_from(row.results.effort).unwrap_or(i64::MAX)
            }),
            Field::int(
                "layouts_built",
                "Layouts that were built through all stages and priced; 1 for a layout that was given.",
                |row| i64::try_from(row.results.built).unwrap_or(i64::MAX),
            ),
            Field::int(
                "stopped",
                "1 where the search ran into its limit of effort, else 0.",
                |row| matches!(row.results.proof, Some(Proof::Stopped { .. })).into(),
            ),
            Field::text(
                "proof",
                "How good its layout is known to be: proven, stopped, or given.",
                |row| proof(row.results.proof).into(),
            ),
            Field::int_in(
                "1/10,000 of the objective's unit",
                "bound",
                "What every layout of the wall costs at least that has no more to mend; the cost of one that was given.",
                |row| row.results.bound.ten_thousandths(),
            ),
        ],
    }
}
