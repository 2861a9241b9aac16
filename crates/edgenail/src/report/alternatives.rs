//! The table `alternatives`.

use super::{OBJECTIVE_UNIT, Results, WallName};
use crate::search::Alternative;
use crate::table::{Field, Schema};

pub(super) struct Row<'a> {
    wall: WallName<'a>,
    place: i64,
    alternative: &'a Alternative,
}

pub(super) fn rows<'a>(results: &Results<'a>) -> Vec<Row<'a>> {
    let walls = results.named_walls();
    walls
        .flat_map(|(wall, results)| {
            let row = move |(place, alternative)| Row {
                wall,
                place,
                alternative,
            };
            (0..).zip(results.alternatives).map(row)
        })
        .collect()
}

pub(super) fn schema<'a>() -> Schema<Row<'a>> {
    Schema {
        name: "alternatives",
        meaning: "A layout that was weighed and not chosen, the next best first.",
        fields: vec![
            Field::text("wall", "The wall.", |row: &Row<'_>| row.wall.name.into()),
            Field::int("wall_index", "Place of the wall in the house.", |row| {
                row.wall.index.into()
            }),
            Field::text("summary", "What it is, in a few words.", |row| {
                row.alternative.summary.as_str().into()
            }),
            Field::int("panels", "How many panels it has.", |row| {
                row.alternative.pieces.into()
            }),
            Field::length("reach", "How far it reaches below the lowest plate.", |row| {
                row.alternative.reach
            }),
            Field::int_in(OBJECTIVE_UNIT, "cost", "What it costs.", |row| {
                row.alternative.total.ten_thousandths()
            }),
            Field::int_in(
                OBJECTIVE_UNIT,
                "difference",
                "What it costs more than the chosen one; below zero only for one that breaks a rule or has more to mend.",
                |row| row.alternative.difference.ten_thousandths(),
            ),
            Field::text(
                "breaks",
                "The rule that it breaks; empty where it breaks none.",
                |row| row.alternative.breaks.as_str().into(),
            ),
            Field::int(
                "place",
                "Its place among the alternatives of its wall, from 0.",
                |row| row.place,
            ),
            Field::int(
                "more_to_mend",
                "How many more things have to be mended on it than on the chosen one; below zero for fewer.",
                |row| row.alternative.more_to_mend,
            ),
        ],
    }
}
