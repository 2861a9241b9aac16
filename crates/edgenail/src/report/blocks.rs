//! The table `blocks`.

use super::{Results, WallName, stock_name, word};
use crate::blocking::Blocking;
use crate::frame::MemberId;
use crate::geometry::Rect;
use crate::house::Stick;
use crate::length::Length;
use crate::table::{Field, Schema};

pub(super) struct Row<'a> {
    wall: WallName<'a>,
    sticks: &'a [Stick],
    kind: &'static str,
    rect: Rect,
    length: Length,
    lie: &'static str,
    stick: u32,
    fills_depth: bool,
    serves: Vec<u32>,
    because: String,
}

pub(super) fn rows<'a>(results: &Results<'a>) -> Vec<Row<'a>> {
    let sticks = &results.house.stock.sticks;
    let style = results.house.drawn_in.in_text();
    let mut rows = Vec::new();
    for (wall, results) in results.named_walls() {
        let blocking: &'a Blocking = results.blocking;
        // What is added stands at the end of the frame, in this order.
        let count = blocking.blocks.len() + blocking.studs.len() + blocking.widened.len();
        let first = results.frame.members.len().saturating_sub(count);
        let mut added = results.frame.members.iter().skip(first).map(|member| member.id);
        let mut upright = |kind, rect: Rect, stick, beside: Option<MemberId>, because| {
            let members = [added.next(), beside];
            let serves = results
                .edges
                .iter()
                .filter(|run| run.member().is_some() && members.contains(&run.member()));
            Row {
                wall,
                sticks,
                kind,
                rect,
                length: rect.height(),
                lie: "",
                stick,
                fills_depth: false,
                serves: serves.map(|run| run.id).collect(),
                because,
            }
        };
        rows.extend(blocking.blocks.iter().map(|block| Row {
            length: block.length,
            lie: word(&block.lie),
            fills_depth: block.fills_depth,
            ..upright("block", block.rect, block.stick, None, String::new())
        }));
        let studs = blocking.studs.iter();
        rows.extend(studs.map(|stud| upright("added_stud", stud.rect, stud.stick, None, String::new())));
        rows.extend(blocking.widened.iter().map(|wide| {
            upright(
                "widened_member",
                wide.rect,
                wide.stick,
                Some(wide.member),
                wide.because.written(style),
            )
        }));
    }
    rows
}

pub(super) fn schema<'a>() -> Schema<Row<'a>> {
    Schema {
        name: "blocks",
        meaning: "A piece of wood that the plan adds behind the sheathing.",
        fields: vec![
            Field::text("wall", "Name of the wall.", |row: &Row<'_>| row.wall.name.into()),
            Field::int("wall_index", "Place of the wall in the house.", |row| {
                row.wall.index.into()
            }),
            Field::text("kind", "block, added_stud or widened_member.", |row| {
                row.kind.into()
            }),
            Field::length("x0", "Left end of the face that shows.", |row| row.rect.x0),
            Field::length("y0", "Lower end of the face that shows.", |row| row.rect.y0),
            Field::length("x1", "Right end of the face that shows.", |row| row.rect.x1),
            Field::length("y1", "Upper end of the face that shows.", |row| row.rect.y1),
            Field::length("length", "Cut length.", |row| row.length),
            Field::text("lie", "How a block lies; empty for upright pieces.", |row| {
                row.lie.into()
            }),
            Field::text("stick", "The stick that it is cut from.", |row| {
                stock_name(row.sticks, row.stick, |stick| &stick.name).into()
            }),
            Field::int(
                "fills_depth",
                "1 if it fills the depth of the stud, as a fire block must, else 0.",
                |row| row.fills_depth.into(),
            ),
            Field::text(
                "serves",
                "The edges whose nails it takes, by id, parted by blanks.",
                |row| {
                    row.serves
                        .iter()
                        .map(u32::to_string)
                        .collect::<Vec<_>>()
                        .join(" ")
                        .into()
                },
            ),
            Field::text("because", "Why a member is widened; else empty.", |row| {
                row.because.as_str().into()
            }),
        ],
    }
}
