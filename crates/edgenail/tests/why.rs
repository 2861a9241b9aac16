//! Why this layout and not another: the differences of alternatives, against layouts that are evaluated anew.

#![expect(clippy::unwrap_used, reason = "a test fails by a panic")]

use edgenail::evaluate::{Evaluated, evaluate};
use edgenail::generate::house_json;
use edgenail::nailing::NailRow;
use edgenail::price::Part;
use edgenail::table::{Data, Table};
use edgenail::{Amount, Plan, plan_json};
use std::collections::BTreeMap;

const HOUSES: u64 = 30;

/// Generated houses that can be planned.
fn plans() -> impl Iterator<Item = Plan> {
    (0..HOUSES).filter_map(|seed| plan_json(&house_json(seed).0).ok())
}

fn part(built: &Evaluated, part: Part) -> (i64, Amount) {
    let found = built.cost.parts.iter().find(|found| found.part == part);
    found.map_or((0, Amount::ZERO), |found| (found.quantity, found.amount))
}

/// Part by part what two separate evaluations say, and in sum the difference of the alternative.
#[test]
fn differences_are_one_evaluation_less_the_other() {
    let mut seen = BTreeMap::new();
    for plan in plans() {
        for wall in plan.walls() {
            let again = |spec| evaluate(plan.house(), &wall.frame, spec);
            let chosen = again(wall.built.spec.clone());
            for alternative in &wall.alternatives {
                let other = again(alternative.spec.clone());
                let sum: Amount = alternative
                    .differences
                    .iter()
                    .map(|part| part.amount_difference)
                    .sum();
                assert_eq!(sum, alternative.difference, "{}", wall.name);
                assert_eq!(alternative.difference, other.cost.total - chosen.cost.total);
                for kind in Part::ALL {
                    let ((quantity, amount), (of_chosen, chosen_amount)) =
                        (part(&other, kind), part(&chosen, kind));
                    let told = alternative.differences.iter().find(|told| told.part == kind);
                    let Some(told) = told else {
                        assert_eq!((quantity, amount), (of_chosen, chosen_amount), "{}", kind.name());
                        continue;
                    };
                    assert_eq!(
                        (told.quantity, told.quantity_chosen),
                        (quantity, of_chosen),
                        "{}",
                        kind.name()
                    );
                    assert_eq!(told.quantity_difference, quantity - of_chosen, "{}", kind.name());
                    assert_eq!(told.amount_difference, amount - chosen_amount, "{}", kind.name());
                    assert!(
                        (quantity, amount) != (of_chosen, chosen_amount),
                        "{}",
                        kind.name()
                    );
                    *seen.entry(kind).or_insert(0) += 1;
                }
            }
        }
    }
    assert!(seen.len() > 20, "only {seen:?}");
}

/// What is counted on a layout: pieces, blocks, nails.
const OF: [&[Part]; 3] = [
    &[Part::Sheets],
    &[Part::FlatBlocks, Part::BlocksOnEdge],
    &[Part::GunNails, Part::HandNails],
];

/// A piece is one of `sheets`, a block one of flat blocks or blocks on edge, a nail of the rows one that is driven: counted on
/// the two layouts themselves.
#[test]
fn quantities_are_counts_of_what_stands_there() {
    let signed = |count: usize| i64::try_from(count).unwrap();
    let counts = |built: &Evaluated| {
        let nails: u32 = built.nailing.rows.iter().map(NailRow::count).sum();
        let cut = [built.layout.pieces.len(), built.blocking.blocks.len()];
        [signed(cut[0]), signed(cut[1]), i64::from(nails)]
    };
    let mut differ = [0; 3];
    for plan in plans() {
        for wall in plan.walls() {
            let chosen = counts(&wall.built);
            for alternative in &wall.alternatives {
                let other = counts(&evaluate(plan.house(), &wall.frame, alternative.spec.clone()));
                for (place, parts) in OF.iter().enumerate() {
                    let told = alternative
                        .differences
                        .iter()
                        .filter(|told| parts.contains(&told.part));
                    let told: i64 = told.map(|told| told.quantity_difference).sum();
                    assert_eq!(told, other[place] - chosen[place], "{}: {parts:?}", wall.name);
                    differ[place] += i64::from(told != 0);
                }
            }
        }
    }
    assert!(differ.iter().all(|count| *count > 10), "{differ:?}");
}

fn numbers<'t>(table: &'t Table, column: &str) -> &'t [i64] {
    match &table.column(column).unwrap().data {
        Data::Int(values) => values,
        _ => &[],
    }
}

/// The table `differences` sums to the column `difference` of the table `alternatives`.
#[test]
fn rows_of_an_alternative_sum_to_its_difference() {
    let mut several = 0;
    for plan in plans() {
        let (alternatives, differences) = (
            plan.table("alternatives").unwrap(),
            plan.table("differences").unwrap(),
        );
        let mut sums: BTreeMap<(i64, i64), i64> = BTreeMap::new();
        let walls = numbers(&differences, "wall_index").iter();
        let keys = walls.zip(numbers(&differences, "alternative"));
        for ((wall, alternative), amount) in keys.zip(numbers(&differences, "amount_difference")) {
            *sums.entry((*wall, *alternative)).or_default() += amount;
        }
        several += usize::from(sums.len() > 1);
        let walls = numbers(&alternatives, "wall_index").iter();
        let keys = walls.zip(numbers(&alternatives, "place"));
        for ((wall, place), difference) in keys.zip(numbers(&alternatives, "difference")) {
            assert_eq!(sums.remove(&(*wall, *place)).unwrap_or(0), *difference);
        }
        assert!(sums.is_empty(), "differences of no alternative: {sums:?}");
    }
    assert!(several > 10);
}

/// The last figures of each table's lines, read back from the text, add up to its last line.
#[test]
fn the_text_adds_up_as_it_is_printed() {
    let mut tables = 0;
    for plan in plans() {
        for wall in plan.walls() {
            let text = plan.why(&wall.name).unwrap();
            let mut sum = Amount::ZERO;
            for line in text.lines().filter(|line| !line.is_empty()) {
                let last = line
                    .split_whitespace()
                    .last()
                    .and_then(|last| Amount::parse(last.trim_start_matches('+')).ok());
                match last {
                    Some(total) if line.starts_with("together") => {
                        assert_eq!(total, sum, "{text}");
                        (sum, tables) = (Amount::ZERO, tables + 1);
                    }
                    Some(amount) => sum += amount,
                    None => assert_eq!(sum, Amount::ZERO, "{text}"),
                }
            }
        }
        assert_eq!(plan.why("no such wall"), None);
    }
    assert!(tables > 30, "{tables}");
}
