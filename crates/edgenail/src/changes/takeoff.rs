//! Lines of a take-off that are not the same.

use super::count::paired;
use crate::amount::Amount;
use crate::decimal::Decimal;
use crate::plan::Plan;
use crate::takeoff::{Place, Serves, TakeoffLine, TakeoffWhat};
use serde::Serialize;

/// What a line takes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Quantities {
    /// What the plan uses, in the line's unit.
    pub used: Decimal,
    /// What is ordered; only in the scope of the house.
    pub ordered: Option<u32>,
    /// Money for what is ordered.
    pub money: Amount,
    /// Minutes of work.
    pub minutes: Amount,
}

/// A line of the take-off that is not the same.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct TakeoffChange {
    /// What it is about.
    pub what: TakeoffWhat,
    /// Name in stock, or kind of work.
    pub item: String,
    /// `house`, `storey: …` or `wall: …`.
    pub scope: String,
    /// What `used` counts.
    pub unit: String,
    /// What the pieces serve.
    pub serves: Serves,
    /// Where pieces are set from.
    pub place: Option<Place>,
    /// Before; nothing where the line came.
    pub before: Quantities,
    /// After; nothing where the line went.
    pub after: Quantities,
}

pub(super) fn changes(before: &Plan, after: &Plan) -> Vec<TakeoffChange> {
    let key = |line: &TakeoffLine| {
        let TakeoffLine {
            what, serves, place, ..
        } = *line;
        (what, line.item.clone(), line.scope.clone(), serves, place)
    };
    let pairs = paired(&before.takeoff().lines, &after.takeoff().lines, key);
    pairs.into_iter().filter_map(change).collect()
}

fn change((before, after): (Option<&TakeoffLine>, Option<&TakeoffLine>)) -> Option<TakeoffChange> {
    let quantities = |line: Option<&TakeoffLine>| {
        line.map_or_else(Quantities::default, |line| Quantities {
            used: line.used,
            ordered: line.ordered,
            money: line.money,
            minutes: line.minutes,
        })
    };
    let line = after.or(before)?;
    let change = TakeoffChange {
        what: line.what,
        item: line.item.clone(),
        scope: line.scope.clone(),
        unit: line.unit.clone(),
        serves: line.serves,
        place: line.place,
        before: quantities(before),
        after: quantities(after),
    };
    (change.before != change.after).then_some(change)
}
