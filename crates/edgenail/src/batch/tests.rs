use super::*;
use crate::generate::house_json;
use crate::plan_json;
use std::cell::Cell;
use std::collections::BTreeMap;

fn houses(seeds: impl IntoIterator<Item = u64>) -> Vec<String> {
    seeds.into_iter().map(|seed| house_json(seed).0).collect()
}

fn threads(count: usize) -> NonZeroUsize {
    NonZeroUsize::new(count).unwrap()
}

fn written(houses: &[String], count: usize) -> Vec<String> {
    let batch = Batch::of(houses).on_threads(threads(count));
    batch.map(|outcome| outcome.json()).collect()
}

/// What an outcome says beside its place.
fn without_place(json: &str) -> &str {
    json.split_once(',').unwrap().1
}

#[test]
fn outcomes_come_in_order_and_are_the_same_on_any_number_of_threads() {
    let houses = houses(0..70);
    let alone = written(&houses, 1);
    assert_eq!(alone.len(), 70);
    for (index, json) in alone.iter().enumerate() {
        assert!(json.starts_with(&format!("{{\"index\":{index},\"house\":\"generated {index}\"")));
    }
    for count in [2, 8] {
        assert_eq!(written(&houses, count), alone, "{count} threads");
    }
}

#[test]
fn neighbours_do_not_change_what_becomes_of_a_house() {
    let houses = houses(0..40);
    let mut shuffled: Vec<usize> = (0..40).collect();
    // 17 and 40 have no common divisor: every place is taken once.
    shuffled.sort_by_key(|place| place * 17 % 40);
    let moved: Vec<String> = shuffled.iter().map(|place| houses[*place].clone()).collect();
    let (before, after) = (written(&houses, 2), written(&moved, 2));
    for (json, place) in after.iter().zip(&shuffled) {
        assert_eq!(without_place(json), without_place(&before[*place]));
    }
}

#[test]
fn an_outcome_says_what_the_plan_of_its_house_alone_says() {
    let houses = houses(100..110);
    for (outcome, house) in Batch::of(&houses).with_plans().zip(&houses) {
        let alone = plan_json(house).unwrap();
        let figures = outcome.result.unwrap();
        assert_eq!(outcome.plan.unwrap().json(), alone.json());
        // The same figures, read off the tables that a person is given.
        let sum = |table: &str, column: &str| match &alone.table(table).unwrap().column(column).unwrap().data
        {
            crate::table::Data::Int(values) => values.iter().sum::<i64>(),
            _ => 0,
        };
        let count = |table: &str| alone.table(table).unwrap().len() as u64;
        assert_eq!(i64::try_from(figures.nails).unwrap(), sum("walls", "nails"));
        assert_eq!(i64::try_from(figures.blocks).unwrap(), sum("walls", "blocks"));
        assert_eq!(figures.panels, count("panels"));
        assert_eq!(figures.cost.ten_thousandths(), sum("costs", "amount"));
        let takeoff = alone.table("takeoff").unwrap();
        let mut house = BTreeMap::new();
        for row in 0..takeoff.len() {
            let value = |column: &str| takeoff.column(column).unwrap().data.shown(row);
            if value("scope") == "house" {
                let what = value("what");
                let ordered: i64 = value("ordered").parse().unwrap();
                let add = |text: String| text.parse::<i64>().unwrap();
                *house.entry("minutes").or_insert(0) += add(value("minutes"));
                if ordered >= 0 {
                    *house.entry("money").or_insert(0) += add(value("money"));
                }
                if what == "sheets" {
                    *house.entry("sheets").or_insert(0) += add(value("used"));
                }
            }
        }
        assert_eq!(figures.minutes.ten_thousandths(), house["minutes"]);
        assert_eq!(figures.money.ten_thousandths(), house["money"]);
        assert_eq!(figures.sheets, u64::try_from(house["sheets"]).unwrap());
    }
}

#[test]
fn bad_houses_in_the_middle_are_told_with_their_places_and_stop_no_other() {
    let mut all = houses(0..9);
    all[3] = r#"{"name": "no walls"}"#.to_owned();
    all[5] = "[".to_owned();
    all[7] = r#"{"name": "short", "walls": [{"name": "north", "length": "-8'"}]}"#.to_owned();
    let outcomes: Vec<Outcome> = Batch::of(&all).on_threads(threads(2)).collect();
    let bad: Vec<(u64, &str, &str)> = outcomes
        .iter()
        .filter_map(|outcome| {
            let error = outcome.result.as_ref().err()?;
            Some((
                outcome.index,
                outcome.house.as_str(),
                error.issues()[0].path.as_str(),
            ))
        })
        .collect();
    assert_eq!(
        bad,
        [
            (3, "no walls", "/walls"),
            (5, "", "/0"),
            (7, "short", "/walls/0/length")
        ]
    );
    let others = houses([0, 1, 2, 4, 6, 8]);
    let good: Vec<String> = outcomes
        .iter()
        .filter(|outcome| outcome.result.is_ok())
        .map(Outcome::json)
        .collect();
    for (json, alone) in good.iter().zip(written(&others, 1)) {
        assert_eq!(without_place(json), without_place(&alone));
    }
    assert_eq!(good.len(), 6);
}

#[test]
fn whoever_watches_sees_every_house_and_may_end_the_batch() {
    for count in [1, 3] {
        let mut seen = Vec::new();
        let houses = houses(0..40);
        let batch = Batch::of(&houses)
            .on_threads(threads(count))
            .watched_by(|progress| {
                seen.push(progress);
                if progress.finished == 35 {
                    ControlFlow::Break(())
                } else {
                    ControlFlow::Continue(())
                }
            });
        let handed = batch.count();
        // The window in which it ended is dropped; one of 32 houses was handed on before.
        assert_eq!(handed, if count == 1 { 32 } else { 0 }, "{count} threads");
        let finished: Vec<u64> = seen.iter().map(|progress| progress.finished).collect();
        assert!(finished.len() >= 35 && finished.len() <= 35 + count);
        assert!((1..).zip(&finished).all(|(place, finished)| place == *finished));
        assert!(seen.iter().all(|progress| progress.taken <= 40));
    }
}

#[test]
fn another_thread_ends_the_batch() {
    let forever = (0..).map(|seed| house_json(seed % 10).0);
    let mut batch = Batch::of(forever).on_threads(threads(2));
    let cancel = batch.canceller();
    let first = batch.next();
    assert_eq!(first.unwrap().index, 0);
    thread::scope(|scope| {
        scope.spawn(|| cancel.cancel());
        // Houses come without end: that this ends is what is tested.
        for (index, outcome) in (1..).zip(batch.by_ref()) {
            assert_eq!(outcome.index, index);
        }
    });
    assert!(batch.next().is_none() && cancel.is_cancelled());
}

#[test]
fn no_more_houses_are_taken_than_one_window_ahead() {
    let taken = Cell::new(0_usize);
    let one = house_json(3).0;
    let source = (0..100).map(|_| {
        taken.set(taken.get() + 1);
        one.as_str()
    });
    let batch = Batch::of(source).on_threads(threads(1));
    for (handed, _) in (1..).zip(batch) {
        assert!(
            taken.get() < handed + 32,
            "{} taken, {handed} handed on",
            taken.get()
        );
    }
    assert_eq!(taken.get(), 100);
}

#[test]
fn no_houses_give_no_outcomes() {
    assert_eq!(Batch::of(Vec::<String>::new()).count(), 0);
}

#[test]
fn a_table_has_a_row_for_every_outcome_and_says_what_is_missing() {
    let mut all = houses(0..2);
    all.push("{}".to_owned());
    let outcomes: Vec<Outcome> = Batch::of(&all).collect();
    let table = table(&outcomes);
    assert_eq!(table.len(), 3);
    let shown = |column: &str, row: usize| table.column(column).unwrap().data.shown(row);
    assert_eq!(
        (shown("planned", 1).as_str(), shown("planned", 2).as_str()),
        ("1", "0")
    );
    assert_eq!(shown("house", 1), "generated 1");
    assert!(shown("fault", 2).starts_with("/walls: "));
    for column in &table.columns[4..] {
        assert_eq!(column.data.shown(2), "-1", "{}", column.head.name);
    }
}
