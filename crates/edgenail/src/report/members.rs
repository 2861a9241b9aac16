//! The table `members`.

use super::{Results, WallName, word};
use crate::frame::{Frame, Member, Origin};
use crate::geometry::Rect;
use crate::table::{Field, Schema};

pub(super) struct Row<'a> {
    wall: WallName<'a>,
    member: &'a Member,
    bounds: Rect,
}

pub(super) fn rows<'a>(results: &Results<'a>) -> Vec<Row<'a>> {
    let walls = results.named_walls();
    walls
        .flat_map(|(wall, results)| of_frame(wall, results.frame))
        .collect()
}

/// The members of one frame.
pub(super) fn of_frame<'a>(wall: WallName<'a>, frame: &'a Frame) -> impl Iterator<Item = Row<'a>> {
    frame.members.iter().map(move |member| Row {
        wall,
        member,
        bounds: member.face.bounds(),
    })
}

pub(super) fn schema<'a>() -> Schema<Row<'a>> {
    Schema {
        name: "members",
        meaning: "A member of a wall's frame, with everything that the plan adds.",
        fields: vec![
            Field::text("wall", "Name of the wall.", |row: &Row<'_>| row.wall.name.into()),
            Field::int("wall_index", "Place of the wall in the house.", |row| {
                row.wall.index.into()
            }),
            Field::int("id", "Place of the member in the wall's list.", |row| {
                row.member.id.0.into()
            }),
            Field::text("kind", "What it is.", |row| word(&row.member.kind).into()),
            Field::text("axis", "Along which direction it runs.", |row| {
                word(&row.member.axis).into()
            }),
            Field::length("x0", "Left end of the face that shows.", |row| row.bounds.x0),
            Field::length("y0", "Lower end of the face that shows.", |row| row.bounds.y0),
            Field::length("x1", "Right end of the face that shows.", |row| row.bounds.x1),
            Field::length("y1", "Upper end of the face that shows.", |row| row.bounds.y1),
            Field::length(
                "setback",
                "How far the face lies behind the sheathing plane.",
                |row| row.member.setback,
            ),
            Field::length("depth", "How deep it is behind its face.", |row| row.member.depth),
            Field::int("nailable", "1 if it holds nails, else 0.", |row| {
                row.member.nailable.into()
            }),
            Field::int("treated", "1 if it is preservative-treated, else 0.", |row| {
                row.member.treated.into()
            }),
            Field::text("origin", "Why it is there: said, layout or added.", |row| {
                match row.member.origin {
                    Origin::Said => "said",
                    Origin::Layout(_) => "layout",
                    Origin::Added => "added",
                }
                .into()
            }),
        ],
    }
}
