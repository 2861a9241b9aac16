//! The table of members.

use super::{WallPlan, count, index_or_none, length, named, text};
use crate::frame::Member;
use crate::table::{Schema, Table};

/// One member of one wall.
struct Of<'a> {
    wall: &'a WallPlan,
    member: &'a Member,
}

pub(super) fn table(walls: &[WallPlan]) -> Table {
    let rows: Vec<Of<'_>> =
        walls.iter().flat_map(|wall| wall.built.backed.members.iter().map(move |member| Of { wall, member })).collect();
    schema().table(&rows)
}

fn schema<'a>() -> Schema<Of<'a>> {
    Schema {
        name: "members",
        meaning: "One member of the backed frame a row: framing, then blocks and studs that the plan adds.",
        fields: vec![
            text("wall", "Name of the wall.", |row: &Of| row.wall.name.clone()),
            count("member", "Its number in the wall, from 0.", |row| i64::from(row.member.id.0)),
            text("kind", "What it is.", |row| named(&row.member.kind)),
            text("axis", "Along which direction it runs.", |row| named(&row.member.axis)),
            length("x0", "Left edge of its face.", |row| row.member.face.bounds().x0.units()),
            length("y0", "Lower edge of its face.", |row| row.member.face.bounds().y0.units()),
            length("x1", "Right edge of its face.", |row| row.member.face.bounds().x1.units()),
            length("y1", "Upper edge of its face.", |row| row.member.face.bounds().y1.units()),
            length("setback", "How far its face lies behind the sheathing plane.", |row| row.member.setback.units()),
            length("depth", "Depth behind its face.", |row| row.member.depth.units()),
            count("nailable", "1 where it holds nails.", |row| i64::from(row.member.nailable)),
            count("treated", "1 where it is preservative-treated.", |row| i64::from(row.member.treated)),
            text("specific_gravity", "Specific gravity of its species.", |row| row.member.specific_gravity.to_string()),
            count("opening", "The opening that it frames; -1 where there is none.", |row| index_or_none(row.member.opening)),
        ],
    }
}
