//! The table of what is added to the wood.

use super::{WallPlan, count, length, named, text};
use crate::geometry::Rect;
use crate::house::House;
use crate::length::Length;
use crate::table::{Schema, Table};

/// One block, added stud or widened member of one wall.
struct Of<'a> {
    wall: &'a WallPlan,
    what: &'static str,
    rect: Rect,
    cut: Length,
    lie: String,
    stick: String,
    serves: usize,
    because: &'a str,
}

pub(super) fn table(house: &House, walls: &[WallPlan]) -> Table {
    let stick = |index: u32| house.stock.sticks.get(index as usize).map_or_else(String::new, |stick| stick.name.clone());
    let mut rows: Vec<Of<'_>> = Vec::new();
    for wall in walls {
        let blocking = &wall.built.blocking;
        rows.extend(blocking.blocks.iter().map(|block| Of {
            wall,
            what: "block",
            rect: block.rect,
            cut: block.length,
            lie: named(&block.lie),
            stick: stick(block.stick),
            serves: block.serves.len(),
            because: "",
        }));
        rows.extend(blocking.studs.iter().map(|stud| Of {
            wall,
            what: "added_stud",
            rect: stud.rect,
            cut: stud.rect.height().max(stud.rect.width()),
            lie: String::new(),
            stick: stick(stud.stick),
            serves: stud.serves.len(),
            because: "",
        }));
        rows.extend(blocking.widened.iter().map(|wide| Of {
            wall,
            what: "widened_member",
            rect: wide.rect,
            cut: wide.rect.height().max(wide.rect.width()),
            lie: String::new(),
            stick: stick(wide.stick),
            serves: wide.serves.len(),
            because: &wide.because,
        }));
    }
    schema().table(&rows)
}

fn schema<'a>() -> Schema<Of<'a>> {
    Schema {
        name: "blocks",
        meaning: "One block, added stud or widened member a row: set before the sheets.",
        fields: vec![
            text("wall", "Name of the wall.", |row: &Of| row.wall.name.clone()),
            text("what", "block, added_stud or widened_member.", |row| row.what.to_owned()),
            length("x0", "Left edge of its face.", |row| row.rect.x0.units()),
            length("y0", "Lower edge of its face.", |row| row.rect.y0.units()),
            length("x1", "Right edge of its face.", |row| row.rect.x1.units()),
            length("y1", "Upper edge of its face.", |row| row.rect.y1.units()),
            length("cut_length", "What it is cut to.", |row| row.cut.units()),
            text("lie", "How a block lies.", |row| row.lie.clone()),
            text("stick", "Name of the stick it is cut from.", |row| row.stick.clone()),
            count("serves", "Panel edges that it backs.", |row| i64::try_from(row.serves).unwrap_or(i64::MAX)),
            text("because", "Why a member is widened.", |row| row.because.to_owned()),
        ],
    }
}
