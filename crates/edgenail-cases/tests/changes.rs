//! The battery of changes: a base house, one change, what must change with it — and nothing else does.
//!
//! Each file of `tests/changes` is one change: `base` names a house in `bases`, `set` maps JSON pointers to the
//! values that replace what is there (`null` removes it), `expect` maps figures to what becomes of them: `"+2"`,
//! `"-1"`, `"more"`, `"less"`, or for findings the codes that come and go. Every figure that is not named must stay
//! as it was, and so must every panel — its outline, what its edges land on, its nails — whose mark `panels` does
//! not list; `"all"` says nothing of panels.

#![expect(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a case that cannot be read fails the test"
)]

use edgenail::blocking::Blocking;
use edgenail::changes::{Changes, PieceWhat};
use edgenail::edges::Support;
use edgenail::nailing::Zone;
use edgenail::{Length, Plan, plan_json};
use edgenail_cases::panels::touched;
use edgenail_cases::{json, json_files};
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};

type Figures = BTreeMap<&'static str, i64>;

fn signed(count: usize) -> i64 {
    i64::try_from(count).unwrap()
}

/// Everything that is counted on a plan.
fn figures(plan: &Plan) -> Figures {
    let mut figures = Figures::new();
    let mut add = |name: &'static str, count: i64| *figures.entry(name).or_default() += count;
    for wall in plan.walls() {
        let built = &wall.built;
        let Blocking {
            blocks,
            studs,
            widened,
            impossible,
        } = &built.blocking;
        add("pieces", signed(built.layout.pieces.len()));
        add("framing members", signed(wall.frame.members.len()));
        add("blocks", signed(blocks.len()));
        add("added studs", signed(studs.len()));
        add("widened members", signed(widened.len()));
        add("edges that cannot be backed", signed(impossible.len()));
        let bare = edgenail::edges::edges(plan.house(), &wall.frame, &built.layout);
        add(
            "edges wanting backing",
            signed(bare.iter().filter(|run| run.lacks_backing()).count()),
        );
        let unblocked = built
            .runs
            .iter()
            .filter(|run| !run.must_back && matches!(run.support, Support::Nothing { .. }));
        add("edges left unblocked", signed(unblocked.count()));
        for row in &built.nailing.rows {
            let nail = &plan.house().stock.nails[row.nail as usize];
            let treated = built
                .backed
                .member(row.member)
                .is_some_and(|member| member.treated);
            add(
                if nail.coating.resists_corrosion() {
                    "coated nails"
                } else {
                    "bright nails"
                },
                i64::from(row.count()),
            );
            add(
                "nails into treated wood",
                if treated { i64::from(row.count()) } else { 0 },
            );
            let zone = match row.zone {
                Zone::Edge => "edge nails",
                Zone::Boundary => "boundary nails",
                Zone::Opening => "opening nails",
                Zone::Field => "field nails",
            };
            add(zone, i64::from(row.count()));
        }
        let area: i128 = built
            .layout
            .pieces
            .iter()
            .map(|piece| piece.outline.area2())
            .sum();
        let square_inch = i128::from(Length::PER_INCH) * i128::from(Length::PER_INCH);
        add(
            "square inches, doubled",
            i64::try_from(area / square_inch).unwrap(),
        );
    }
    add("sheets", signed(plan.cutting().sheets.len()));
    figures
}

/// How often each code was found.
fn codes(plan: &Plan) -> BTreeMap<String, i64> {
    let mut codes = BTreeMap::new();
    for finding in plan.findings() {
        let code = serde_json::to_value(finding.code).unwrap();
        *codes.entry(code.as_str().unwrap().to_owned()).or_default() += 1;
    }
    codes
}

fn set(document: &mut Value, pointer: &str, value: &Value) {
    let (parent, key) = pointer.rsplit_once('/').unwrap();
    let parent = document
        .pointer_mut(parent)
        .unwrap_or_else(|| panic!("no {parent}"));
    match parent {
        Value::Object(fields) if value.is_null() => {
            fields.remove(key).unwrap_or_else(|| panic!("no {pointer}"));
        }
        Value::Object(fields) => {
            fields.insert(key.to_owned(), value.clone());
        }
        Value::Array(items) if key == "-" => items.push(value.clone()),
        Value::Array(items) if value.is_null() => {
            items.remove(key.parse().unwrap());
        }
        Value::Array(items) => items[key.parse::<usize>().unwrap()] = value.clone(),
        _ => panic!("{pointer} is not in an object or list"),
    }
}

/// What is wrong with one case.
fn faults(case: &Value, bases: &std::path::Path) -> Vec<String> {
    let base = json(&bases.join(format!("{}.json", case["base"].as_str().unwrap()))).unwrap();
    let mut changed = base.clone();
    for (pointer, value) in case["set"].as_object().unwrap() {
        set(&mut changed, pointer, value);
    }
    let plan = |house: &Value| plan_json(&house.to_string()).map_err(|error| error.to_string());
    let (before, after) = match (plan(&base), plan(&changed)) {
        (Ok(before), Ok(after)) => (before, after),
        (before, after) => return [before.err(), after.err()].into_iter().flatten().collect(),
    };
    let expect = case["expect"].as_object().unwrap();
    let (old, new) = (figures(&before), figures(&after));
    let mut faults = Vec::new();
    let touched = touched(&before, &after);
    let told: BTreeSet<String> = Changes::between(&before, &after)
        .walls
        .into_iter()
        .flat_map(|wall| wall.pieces)
        // The sheet that a panel is cut from is told too, and is nothing that hangs on the wall.
        .filter(|piece| piece.what != [PieceWhat::Sheet])
        .map(|piece| piece.mark)
        .collect();
    if told != touched {
        faults.push(format!(
            "the library tells of the panels {told:?}, {touched:?} changed"
        ));
    }
    let wanted: BTreeSet<String> = match expect.get("panels") {
        Some(Value::String(all)) if all == "all" => touched.clone(),
        Some(marks) => serde_json::from_value(marks.clone()).unwrap(),
        None => BTreeSet::new(),
    };
    if touched != wanted {
        faults.push(format!("panels: {touched:?} changed"));
    }
    let counted = |name: &&String| !["findings", "panels"].contains(&name.as_str());
    for name in expect.keys().filter(counted) {
        if !old.contains_key(name.as_str()) && !new.contains_key(name.as_str()) {
            faults.push(format!("nothing counts {name:?}"));
        }
    }
    let names: BTreeSet<&str> = old.keys().chain(new.keys()).copied().collect();
    for name in names {
        let (was, is) = (
            old.get(name).copied().unwrap_or(0),
            new.get(name).copied().unwrap_or(0),
        );
        let holds = match expect.get(name).map(|wanted| wanted.as_str().unwrap()) {
            None => is == was,
            Some("more") => is > was,
            Some("less") => is < was,
            Some("any") => true,
            Some(step) => {
                is - was
                    == step
                        .parse::<i64>()
                        .unwrap_or_else(|_| panic!("{step:?} is no step"))
            }
        };
        if !holds {
            faults.push(format!("{name}: {was} became {is}"));
        }
    }
    let (old, new) = (codes(&before), codes(&after));
    let wanted: BTreeMap<&str, &str> = expect
        .get("findings")
        .and_then(Value::as_object)
        .map(|codes| {
            codes
                .iter()
                .map(|(code, step)| (code.as_str(), step.as_str().unwrap()))
                .collect()
        })
        .unwrap_or_default();
    let names: BTreeSet<&String> = old.keys().chain(new.keys()).collect();
    for code in wanted
        .iter()
        .filter(|(_, step)| **step != "any")
        .map(|(code, _)| code)
        .filter(|code| !names.iter().any(|name| name == *code))
    {
        faults.push(format!("finding {code} never comes"));
    }
    for code in names {
        let (was, is) = (
            old.get(code).copied().unwrap_or(0),
            new.get(code).copied().unwrap_or(0),
        );
        let holds = match wanted.get(code.as_str()) {
            None => was == is,
            Some(&"more") => is > was,
            Some(&"less") => is < was,
            Some(&"any") => true,
            Some(step) => is - was == step.parse::<i64>().unwrap(),
        };
        if !holds {
            faults.push(format!("finding {code}: {was} became {is}"));
        }
    }
    faults
}

#[test]
fn every_change_changes_what_it_must_and_nothing_else() {
    let folder = edgenail_cases::root().join("tests/changes");
    let sources = json(&folder.join("../cases/sources.json")).unwrap();
    let files = json_files(&folder).unwrap();
    let (mut count, mut failed) = (0, Vec::new());
    for file in &files {
        for case in json(file).unwrap().as_array().unwrap() {
            count += 1;
            let name = case["name"].as_str().unwrap();
            let source = case["source"]["id"].as_str().unwrap();
            assert!(sources.get(source).is_some(), "{name}: unknown source {source}");
            let faults = faults(case, &folder.join("bases"));
            if !faults.is_empty() {
                failed.push(format!("{name}:\n    {}", faults.join("\n    ")));
            }
        }
    }
    assert!(count >= 40, "only {count} changes");
    assert!(
        failed.is_empty(),
        "{} of {count} changes fail\n{}",
        failed.len(),
        failed.join("\n")
    );
}
