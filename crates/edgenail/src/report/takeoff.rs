//! The table `takeoff`.

use super::{Results, word};
use crate::table::{Field, Schema};
use crate::takeoff::TakeoffLine;

pub(super) fn rows<'a>(results: &Results<'a>) -> Vec<&'a TakeoffLine> {
    results.takeoff.lines.iter().collect()
}

pub(super) fn schema<'a>() -> Schema<&'a TakeoffLine> {
    Schema {
        name: "takeoff",
        meaning: "A line of the take-off.",
        fields: vec![
            Field::text("what", "What it is about.", |line: &&TakeoffLine| {
                word(&line.what)
            }),
            Field::text("item", "Name in stock, or kind of work.", |line| {
                line.item.clone()
            }),
            Field::text("scope", "house, or the storey or wall.", |line| {
                line.scope.clone()
            }),
            Field::text("used", "What the plan uses, in decimal.", |line| {
                line.used.to_string()
            }),
            Field::text("unit", "What `used` counts.", |line| line.unit.clone()),
            Field::int(
                "ordered",
                "What is ordered; -1 outside the scope of the house.",
                |line| line.ordered.map_or(-1, i64::from),
            ),
            Field::text("order_unit", "What `ordered` counts.", |line| {
                line.order_unit.clone()
            }),
            Field::text("pounds", "Pounds of what is used, in decimal.", |line| {
                line.pounds.to_string()
            }),
            Field::int_in(
                "1/10,000 of the currency",
                "money",
                "Money for what is ordered.",
                |line| line.money.ten_thousandths(),
            ),
            Field::int_in("1/10,000 min", "minutes", "Work.", |line| {
                line.minutes.ten_thousandths()
            }),
            Field::text("because", "How the figure came about.", |line| {
                line.because.clone()
            }),
        ],
    }
}
