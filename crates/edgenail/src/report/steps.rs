//! The table `steps`.

use super::{Results, WallName, word};
use crate::frame::MemberId;
use crate::steps::{Event, OpenEdge, Step};
use crate::table::{Field, Schema};

pub(super) struct Row<'a> {
    wall: WallName<'a>,
    step: &'a Step,
}

pub(super) fn rows<'a>(results: &Results<'a>) -> Vec<Row<'a>> {
    let mut rows = Vec::new();
    for (wall, results) in results.named_walls() {
        rows.extend(results.steps.iter().map(|step| Row { wall, step }));
    }
    rows
}

fn ids(members: &[MemberId]) -> String {
    let ids: Vec<String> = members.iter().map(|member| member.0.to_string()).collect();
    ids.join(" ")
}

fn edges(edges: &[OpenEdge]) -> String {
    let one = |edge: &OpenEdge| format!("{}/{}/{}", edge.panel, word(&edge.side), word(&edge.reason));
    edges.iter().map(one).collect::<Vec<_>>().join(" ")
}

fn numbers(steps: &[u32]) -> String {
    steps.iter().map(u32::to_string).collect::<Vec<_>>().join(" ")
}

pub(super) fn schema<'a>() -> Schema<Row<'a>> {
    Schema {
        name: "steps",
        meaning: "A step of the order of work on a wall.",
        fields: vec![
            Field::text("wall", "Name of the wall.", |row: &Row<'_>| row.wall.name.into()),
            Field::int("wall_index", "Place of the wall in the house.", |row| {
                row.wall.index.into()
            }),
            Field::int("number", "Its number within the wall, from 1.", |row| {
                row.step.number.into()
            }),
            Field::text("storey", "The storey whose wall it is part of.", |row| {
                row.step.storey.as_str().into()
            }),
            Field::text(
                "kind",
                "check, raise, check_anchors, set_blocks, set_straps, snap_line, hang_panels, nail, nail_left_edges, \
                 cut_out, lap, show_nailing or tighten_nuts.",
                |row| word(&row.step.kind).into(),
            ),
            Field::text("text", "The step in a sentence or two.", |row| {
                row.step.text.as_str().into()
            }),
            Field::text(
                "panels",
                "Marks of the panels that it concerns, in their order, parted by blanks.",
                |row| row.step.panels.join(" ").into(),
            ),
            Field::text(
                "blocks",
                "Blocks that are set, by member id, parted by blanks.",
                |row| ids(&row.step.blocks).into(),
            ),
            Field::text(
                "studs",
                "Added studs and pieces beside widened members that are set, by member id, parted by blanks.",
                |row| ids(&row.step.studs).into(),
            ),
            Field::text(
                "concerns",
                "Names of segments, straps, openings, penetrations or a neighbour that it concerns, parted by semicolons.",
                |row| row.step.concerns.join("; ").into(),
            ),
            Field::text(
                "leaves",
                "Panel edges that stay open for now, as mark/side/reason, parted by blanks.",
                |row| edges(&row.step.leaves).into(),
            ),
            Field::text(
                "takes_up",
                "Panel edges left open before that are nailed now, as mark/side/reason, parted by blanks.",
                |row| edges(&row.step.takes_up).into(),
            ),
            Field::text(
                "reach",
                "From where it is done: deck, ground, ladder or lift.",
                |row| word(&row.step.reach).into(),
            ),
            Field::int(
                "people",
                "How many people it takes; 0 where the plan does not say.",
                |row| row.step.people.into(),
            ),
            Field::int(
                "hold_point",
                "1 if work stops here until somebody has looked, else 0.",
                |row| row.step.hold_point.into(),
            ),
            Field::text(
                "after",
                "Numbers of the wall's steps that have to be done before, parted by blanks.",
                |row| numbers(&row.step.after).into(),
            ),
            Field::text(
                "waits_for",
                "What has to have happened beyond the wall's steps, parted by semicolons; empty where nothing has.",
                |row| {
                    let words: Vec<String> = row.step.waits_for.iter().map(Event::words).collect();
                    words.join("; ").into()
                },
            ),
        ],
    }
}
