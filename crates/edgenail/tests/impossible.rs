//! Walls without a layout: what makes one possible is put into the document and planned.

#![expect(clippy::unwrap_used, clippy::panic, reason = "a test fails by a panic")]

use edgenail::error::{Remedy, Unmet};
use edgenail::generate::house_json;
use edgenail::length::Unit;
use edgenail::{Error, Length, plan_json};
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// A field of a document set, with the objects on the way to it.
fn set(document: &mut Value, path: &str, value: Value) {
    let mut here = document;
    for step in path.split('/').skip(1) {
        here = match here {
            Value::Array(items) => &mut items[step.parse::<usize>().unwrap()],
            Value::Null => {
                *here = json!({});
                &mut here[step]
            }
            _ => &mut here[step],
        };
    }
    *here = value;
}

fn without_layout(house: &Value) -> Option<(String, Vec<Remedy>)> {
    match plan_json(&house.to_string()) {
        Err(Error::NoLayout {
            message, remedies, ..
        }) => Some((message, remedies)),
        Err(error) => panic!("{error}: {house}"),
        Ok(_) => None,
    }
}

fn with<'a>(house: &Value, changes: impl IntoIterator<Item = &'a Unmet>) -> Value {
    let mut changed = house.clone();
    for change in changes {
        set(&mut changed, &change.path, change.wanted.clone());
    }
    changed
}

/// Each remedy as a whole is one; a part of it is none; a sheet an eighth of an inch shorter, or a stagger an inch wider,
/// is none.
fn remedies_hold(house: &Value, remedies: &[Remedy], seen: &mut BTreeMap<String, usize>) {
    for remedy in remedies {
        assert!(!remedy.changes.is_empty());
        assert_eq!(without_layout(&with(house, &remedy.changes)), None, "{remedy}");
        for (place, change) in remedy.changes.iter().enumerate() {
            let field = change.path.rsplit('/').next().unwrap().to_owned();
            *seen.entry(field).or_default() += 1;
            let others = remedy
                .changes
                .iter()
                .enumerate()
                .filter(|(other, _)| *other != place);
            let fewer = with(house, others.map(|(_, other)| other));
            assert!(without_layout(&fewer).is_some(), "{remedy}: not all is needed");
            let eighth = Length::sixteenths(2);
            let closer = match change.path.rsplit('/').next() {
                Some("length") => -eighth,
                Some("stagger_least") => Length::inches(1),
                _ => continue,
            };
            let tried = Length::parse_exact(&change.wanted_text(), Unit::Inch).unwrap() + closer;
            let mut tighter = with(house, &remedy.changes);
            set(&mut tighter, &change.path, json!(tried.as_inches()));
            assert!(without_layout(&tighter).is_some(), "{remedy}: less is enough");
        }
    }
}

/// Practice that asks for much on houses that are made from numbers, with sheets of 8 ft alone.
#[test]
fn what_is_said_to_make_a_wall_possible_does() {
    let asks = [
        json!({"running": "upright", "blocked_edges": "segments_only", "stagger_least": "30"}),
        json!({"running": "flat", "blocked_edges": "segments_only", "stagger_least": "60"}),
        json!({"running": "upright", "breaks": ["104"]}),
        json!({"datums": ["held_up"]}),
        json!({"running": "upright", "plate_cover_least": "1 1/2"}),
        json!({"running": "upright", "breaks": ["100"], "datums": ["flush", "held_up"], "stagger_least": "40", "blocked_edges": "segments_only"}),
    ];
    let (mut seen, mut impossible, mut several) = (BTreeMap::new(), 0, 0);
    for seed in 0..8 {
        for practice in &asks {
            let mut house: Value = serde_json::from_str(&house_json(seed).0).unwrap();
            if seed % 4 != 0 {
                house["stock"]["sheets"].as_array_mut().unwrap().truncate(1);
            }
            // The error is about one wall.
            house["walls"].as_array_mut().unwrap().truncate(1);
            house["corners"] = json!([]);
            house["practice"] = practice.clone();
            if edgenail::read_house(house.to_string().as_bytes()).is_err() {
                // A break above a wall of one storey.
                continue;
            }
            if let Some((message, remedies)) = without_layout(&house) {
                assert!(!message.is_empty());
                remedies_hold(&house, &remedies, &mut seen);
                impossible += 1;
                several += usize::from(remedies.iter().any(|remedy| remedy.changes.len() > 1));
            }
        }
    }
    assert!(
        impossible > 10 && several > 0,
        "{impossible} impossible, {several} for several reasons"
    );
    for field in [
        "length",
        "running",
        "blocked_edges",
        "stagger_least",
        "breaks",
        "datums",
        "plate_cover_least",
    ] {
        assert!(seen.contains_key(field), "{field}: {seen:?}");
    }
}

/// The sentence for a person names every demand.
#[test]
fn the_error_as_text_names_field_demand_and_remedy() {
    let house = json!({"walls": [{"name": "w", "length": "16'"}],
        "stock": {"sheets": [{"name": "4x8", "width": "47 7/8", "length": "95 7/8", "category": "7/16", "price": "16", "on_hand": 0}]}});
    let error = plan_json(&house.to_string()).unwrap_err();
    assert_eq!(
        error.to_string(),
        "w: no sheet of the category that is asked for is on hand\n\
         /stock/sheets/0/on_hand: no sheet 4x8 is on hand; possible with sheets 4x8 to be bought"
    );
}
