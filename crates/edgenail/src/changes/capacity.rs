//! Lines of capacity that are not the same.

use super::count::paired;
use crate::capacity::StoreyLine;
use crate::house::LoadKind;
use crate::plan::Plan;
use serde::Serialize;

/// A storey's line of a wall under one kind of load, in short.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct LineFigures {
    /// Shear with all from above, in pounds at the level of the method.
    pub demand_lb: f64,
    /// What the line carries; none where nothing could be taken.
    pub capacity_lb: Option<f64>,
    /// Demand over capacity of the sheathing.
    pub ratio: Option<f64>,
    /// The largest ratio of all that was checked.
    pub governing_ratio: Option<f64>,
    /// The largest hold-down tension.
    pub hold_down_lb: Option<f64>,
}

/// A line of capacity that is not the same.
///
/// It does not replace the code in force or a licensed design professional.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct CapacityChange {
    /// The wall's name.
    pub wall: String,
    /// The storey's name.
    pub storey: String,
    /// What acts.
    pub load: LoadKind,
    /// Before; none where the line came.
    pub before: Option<LineFigures>,
    /// After; none where the line went.
    pub after: Option<LineFigures>,
}

/// A line with the name of its wall.
struct Named<'p> {
    wall: &'p str,
    line: &'p StoreyLine,
}

fn lines(plan: &Plan) -> Vec<Named<'_>> {
    let walls = &plan.house().walls;
    let mut lines = Vec::new();
    for line in plan.capacity() {
        let wall = walls.get(line.wall as usize);
        lines.push(Named {
            wall: wall.map_or("", |wall| wall.name.as_str()),
            line,
        });
    }
    lines
}

impl LineFigures {
    fn of(line: &StoreyLine) -> Self {
        Self {
            demand_lb: line.demand,
            capacity_lb: line.capacity(),
            ratio: line.ratio(),
            governing_ratio: line.governing(),
            hold_down_lb: line.hold_down(),
        }
    }
}

pub(super) fn changes(before: &Plan, after: &Plan) -> Vec<CapacityChange> {
    let (before, after) = (lines(before), lines(after));
    let key = |named: &'_ Named<'_>| (named.wall.to_owned(), named.line.storey.clone(), named.line.load);
    let pairs = paired(&before, &after, key).into_iter();
    let change = |(before, after): (Option<&Named<'_>>, Option<&Named<'_>>)| {
        let figures = |named: Option<&Named<'_>>| named.map(|named| LineFigures::of(named.line));
        let named = after.or(before)?;
        let change = CapacityChange {
            wall: named.wall.to_owned(),
            storey: named.line.storey.clone(),
            load: named.line.load,
            before: figures(before),
            after: figures(after),
        };
        (change.before != change.after).then_some(change)
    };
    pairs.filter_map(change).collect()
}
