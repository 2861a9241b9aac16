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
                word(&line.what).into()
            }),
            Field::text("item", "Name in stock, or kind of work.", |line| {
                line.item.as_str().into()
            }),
            Field::text("scope", "house, or the storey or wall.", |line| {
                line.scope.as_str().into()
            }),
            Field::text("used", "What the plan uses, in decimal.", |line| {
                line.used.to_string().into()
            }),
            Field::text("unit", "What `used` counts.", |line| line.unit.as_str().into()),
            Field::int(
                "ordered",
                "What is ordered; -1 outside the scope of the house.",
                |line| line.ordered.map_or(-1, i64::from),
            ),
            Field::text("order_unit", "What `ordered` counts.", |line| {
                line.order_unit.as_str().into()
            }),
            Field::text("pounds", "Pounds of what is used, in decimal.", |line| {
                line.pounds.to_string().into()
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
                line.because.as_str().into()
            }),
            Field::text(
                "serves",
                "What the pieces serve: shear (a segment of a shear wall), braced (a braced panel) or rest; all for \
                 what is not told apart.",
                |line| word(&line.serves).into(),
            ),
            Field::text(
                "place",
                "Where pieces are set from: deck, standing, ladder, upper_storey or high; empty for other lines.",
                |line| line.place.map_or_else(|| "".into(), |place| word(&place).into()),
            ),
            Field::int(
                "extra",
                "What is added before rounding to what is sold: spare sheets, lost nails.",
                |line| line.extra,
            ),
            Field::int(
                "sheets",
                "Whole sheets: of an area, rounded up; of pieces, each sheet of the cut plan where its first piece \
                 hangs.",
                |line| line.sheets,
            ),
            Field::text("square_feet", "Square feet of sheathing, in decimal.", |line| {
                line.square_feet.to_string().into()
            }),
            Field::text("feet", "Lineal feet of lumber, in decimal.", |line| {
                line.feet.to_string().into()
            }),
            Field::int_in(
                "1/10,000 of the objective's unit",
                "charged",
                "What layouts were charged for it; nothing for what only the cutting of the whole house tells.",
                |line| line.charged.ten_thousandths(),
            ),
        ],
    }
}
