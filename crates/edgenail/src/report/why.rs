//! Why this layout and not another: alternatives beside the chosen layout, as text for a person.

use super::{WallResults, word};
use crate::amount::Amount;
use crate::house::House;
use crate::price::CostDifference;
use crate::search::{Alternative, summary};
use crate::wording::counted;
use std::cmp::Ordering;
use std::fmt::Write as _;

/// A small table of differences for each alternative of a wall, the next best first.
pub(crate) fn why(house: &House, wall: &WallResults<'_>) -> String {
    let places = places(wall);
    let unit = word(&house.rates.objective);
    // Writing into memory has no way to fail.
    let mut text = String::new();
    let _ = writeln!(
        text,
        "Chosen: {}. It costs {:.places$} {unit}.",
        summary(house, wall.layout, wall.blocking),
        wall.cost.total
    );
    if wall.alternatives.is_empty() {
        text.push_str("Nothing else was weighed.\n");
    }
    for (number, alternative) in (1..).zip(wall.alternatives) {
        let _ = write!(text, "\nAlternative {number}: {}.", alternative.summary);
        text.push_str(&beside(alternative, places, unit));
        text.push('\n');
        let lines = table(alternative, places, unit);
        if lines.len() > 2 {
            text.push_str(&aligned(&lines));
        }
    }
    text
}

/// As many places of decimals as every amount needs; two at least.
fn places(wall: &WallResults<'_>) -> usize {
    let fine = |amount: Amount| {
        let count = amount.ten_thousandths();
        [(100, 2), (10, 3)]
            .iter()
            .find(|(step, _)| count % step == 0)
            .map_or(4, |(_, places)| *places)
    };
    let parts = wall
        .alternatives
        .iter()
        .flat_map(|alternative| &alternative.differences);
    let amounts = parts.map(|part| part.amount_difference).chain([wall.cost.total]);
    amounts.map(fine).max().unwrap_or(2)
}

/// What an alternative is beside the chosen layout, in a sentence or two.
fn beside(alternative: &Alternative, places: usize, unit: &str) -> String {
    let difference = alternative.difference;
    let mut said = match difference.cmp(&Amount::ZERO) {
        Ordering::Equal => " It costs the same.".to_owned(),
        Ordering::Greater => format!(" It costs {difference:.places$} {unit} more."),
        Ordering::Less => format!(" It costs {:.places$} {unit} less.", -difference),
    };
    let mend = usize::try_from(alternative.more_to_mend.unsigned_abs()).unwrap_or(usize::MAX);
    let things = counted(mend, "thing", "things");
    match alternative.more_to_mend.cmp(&0) {
        Ordering::Equal => {}
        Ordering::Greater => {
            let _ = write!(said, " It has {things} more to mend.");
        }
        Ordering::Less => {
            let _ = write!(said, " It has {things} less to mend.");
        }
    }
    if !alternative.breaks.is_empty() {
        let _ = write!(said, " It must not be built so: {}", alternative.breaks);
    }
    said
}

/// Heads, a line for each part, their sum.
fn table(alternative: &Alternative, places: usize, unit: &str) -> Vec<[String; 5]> {
    let line = |part: &CostDifference| {
        [
            format!("{} ({})", part.part.name().replace('_', " "), part.part.counts()),
            part.quantity.to_string(),
            part.quantity_chosen.to_string(),
            format!("{:+}", part.quantity_difference),
            signed(part.amount_difference, places),
        ]
    };
    let heads = ["", "here", "chosen", "difference", &format!("in {unit}")];
    let mut lines = vec![heads.map(str::to_owned)];
    lines.extend(alternative.differences.iter().map(line));
    let mut sum = ["together", "", "", "", ""].map(str::to_owned);
    sum[4] = signed(alternative.difference, places);
    lines.push(sum);
    lines
}

fn signed(amount: Amount, places: usize) -> String {
    let sign = if amount < Amount::ZERO { "" } else { "+" };
    format!("{sign}{amount:.places$}")
}

/// The first column to the left, numbers to the right.
fn aligned(lines: &[[String; 5]]) -> String {
    let mut widths = [0; 5];
    for line in lines {
        for (width, cell) in widths.iter_mut().zip(line) {
            *width = cell.chars().count().max(*width);
        }
    }
    let mut text = String::new();
    for line in lines {
        for (column, (cell, width)) in line.iter().zip(widths).enumerate() {
            let cell = if column == 0 {
                format!("{cell:<width$}")
            } else {
                format!("  {cell:>width$}")
            };
            text.push_str(&cell);
        }
        text.push('\n');
    }
    text
}
