//! The table `differences`.

use super::{OBJECTIVE_UNIT, Results, WallName};
use crate::price::CostDifference;
use crate::table::{Field, Schema};

pub(super) struct Row<'a> {
    wall: WallName<'a>,
    alternative: i64,
    part: &'a CostDifference,
}

pub(super) fn rows<'a>(results: &Results<'a>) -> Vec<Row<'a>> {
    let mut rows = Vec::new();
    for (wall, results) in results.named_walls() {
        for (alternative, weighed) in (0..).zip(results.alternatives) {
            rows.extend(weighed.differences.iter().map(|part| Row {
                wall,
                alternative,
                part,
            }));
        }
    }
    rows
}

pub(super) fn schema<'a>() -> Schema<Row<'a>> {
    Schema {
        name: "differences",
        meaning: "A part of its cost in which an alternative is not the same as the chosen layout: why this one and not that \
                  one. The amounts of an alternative sum to its difference.",
        fields: vec![
            Field::text("wall", "The wall.", |row: &Row<'_>| row.wall.name.into()),
            Field::int("wall_index", "Place of the wall in the house.", |row| {
                row.wall.index.into()
            }),
            Field::int(
                "alternative",
                "Place of the alternative among those of its wall, from 0.",
                |row| row.alternative,
            ),
            Field::text("part", "The part.", |row| row.part.part.name().into()),
            Field::text(
                "kind",
                "material, labour, or judgement: what a framer would rather not do.",
                |row| super::word(&row.part.part.kind()).into(),
            ),
            Field::text("counts", "What the quantities count.", |row| {
                row.part.part.counts().into()
            }),
            Field::int("quantity", "How many of them the alternative has.", |row| {
                row.part.quantity
            }),
            Field::int(
                "quantity_chosen",
                "How many of them the chosen layout has.",
                |row| row.part.quantity_chosen,
            ),
            Field::int(
                "quantity_difference",
                "How many more the alternative has; below zero for fewer.",
                |row| row.part.quantity_difference,
            ),
            Field::int_in(
                OBJECTIVE_UNIT,
                "amount_difference",
                "What they cost more in the alternative; below zero for less.",
                |row| row.part.amount_difference.ten_thousandths(),
            ),
        ],
    }
}
