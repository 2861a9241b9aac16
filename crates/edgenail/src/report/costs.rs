//! The table `costs`.

use super::{OBJECTIVE_UNIT, Results, WallName};
use crate::price::CostPart;
use crate::table::{Field, Schema};

pub(super) struct Row<'a> {
    wall: WallName<'a>,
    part: &'a CostPart,
}

pub(super) fn rows<'a>(results: &Results<'a>) -> Vec<Row<'a>> {
    let walls = results.named_walls();
    walls
        .flat_map(|(wall, results)| results.cost.parts.iter().map(move |part| Row { wall, part }))
        .collect()
}

pub(super) fn schema<'a>() -> Schema<Row<'a>> {
    Schema {
        name: "costs",
        meaning: "A part of what a wall's layout costs, by which layouts are compared; what only the cutting of the \
                  whole house tells is in the take-off.",
        fields: vec![
            Field::text("wall", "The wall.", |row: &Row<'_>| row.wall.name.into()),
            Field::int("wall_index", "Place of the wall in the house.", |row| {
                row.wall.index.into()
            }),
            Field::text("part", "The part.", |row| row.part.part.name().into()),
            Field::text(
                "kind",
                "material, labour, or judgement: what a framer would rather not do.",
                |row| super::word(&row.part.part.kind()).into(),
            ),
            Field::int("quantity", "How many of what it counts.", |row| row.part.quantity),
            Field::text("counts", "What the quantity counts.", |row| {
                row.part.part.counts().into()
            }),
            Field::int_in(
                OBJECTIVE_UNIT,
                "weight",
                "What one of them weighs: its rate, where one rate holds for all, else their mean.",
                |row| row.part.weight.ten_thousandths(),
            ),
            Field::int_in(OBJECTIVE_UNIT, "amount", "What they cost.", |row| {
                row.part.amount.ten_thousandths()
            }),
        ],
    }
}
