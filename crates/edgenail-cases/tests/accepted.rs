//! Layouts that a framer accepts and layouts that he rejects: what the library chooses, and the order of its costs.
//!
//! Each file of `tests/accepted` is one wall of 32 ft with studs 16 in. apart, no openings, and every edge backed. Its
//! `layouts` stand in the framer's order; `searches` say which of them is chosen when only some of the sheets of
//! `stock.json` are offered. Only the order is checked, never an amount: prices and minutes are invented. A sheet
//! more on offer never raises the cost.

#![expect(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a case that cannot be read fails the test"
)]

use edgenail::finding::Severity;
use edgenail::{Amount, Length, Plan, plan_json};
use edgenail_cases::{json, json_files, root};
use serde_json::{Value, json as object};
use std::collections::BTreeSet;

/// A wall with some of the sheets, and a layout or none.
fn plan(case: &Value, stock: &Value, offered: Option<&Vec<Value>>, given: Option<&Value>) -> Plan {
    let mut stock = stock.clone();
    if let Some(offered) = offered {
        let sheets = stock["sheets"].as_array_mut().unwrap();
        sheets.retain(|sheet| offered.contains(&sheet["name"]));
        assert_eq!(
            sheets.len(),
            offered.len(),
            "{offered:?}: a sheet is not in stock"
        );
    }
    let mut wall = object!({
        "name": "north",
        "length": "32 ft",
        "sections": [{"bottom": {"bears": case["wall"]["bears"]}, "stack": case["wall"]["stack"]}],
    });
    if let Some(courses) = given {
        wall["given_layout"] = object!({"kind": "bands", "bands": courses});
    }
    let house = object!({
        "name": case["name"],
        "walls": [wall],
        "stock": stock,
        "practice": {"blocked_edges": "all"},
    });
    plan_json(&house.to_string()).unwrap_or_else(|error| panic!("{}: {error}", case["name"]))
}

/// A course: its levels, which way it runs and its sheets.
type Course = (Length, Length, String, BTreeSet<String>);

fn courses(plan: &Plan) -> Vec<Course> {
    let layout = &plan.walls()[0].built.layout;
    let course = |(index, band): (usize, &edgenail::layout::LayoutBand)| {
        let pieces = layout.pieces.iter().filter(|piece| piece.band as usize == index);
        let name = |sheet: u32| plan.house().stock.sheets[sheet as usize].name.clone();
        let sheets = pieces.map(|piece| name(piece.sheet)).collect();
        (band.y0, band.y1, format!("{:?}", band.running), sheets)
    };
    layout.bands.iter().enumerate().map(course).collect()
}

/// Codes of the findings that forbid to build it so.
fn refusals(plan: &Plan) -> BTreeSet<String> {
    let findings = plan.findings().iter();
    let refused = findings.filter(|finding| finding.severity == Severity::Refuse);
    let code = |code| serde_json::to_value(code).unwrap().as_str().unwrap().to_owned();
    refused.map(|finding| code(finding.code)).collect()
}

/// What is wrong with one wall.
fn faults(case: &Value, stock: &Value) -> Vec<String> {
    let mut faults = Vec::new();
    let layouts = case["layouts"].as_array().unwrap();
    let mut accepted: Vec<(&str, Amount)> = Vec::new();
    let mut rejected: Vec<(&str, Amount)> = Vec::new();
    for layout in layouts {
        let name = layout["name"].as_str().unwrap();
        let plan = plan(case, stock, None, Some(&layout["courses"]));
        let (cost, refused) = (plan.walls()[0].built.cost.total, refusals(&plan));
        match (
            layout["verdict"].as_str().unwrap(),
            layout["refused_for"].as_str(),
        ) {
            ("accept", None) => accepted.push((name, cost)),
            ("reject", None) => rejected.push((name, cost)),
            ("reject", Some(code)) => {
                if !refused.contains(code) {
                    faults.push(format!("{name}: refused for {refused:?}, not for {code}"));
                }
                continue;
            }
            other => panic!("{name}: {other:?}"),
        }
        if !refused.is_empty() {
            faults.push(format!("{name}: refused for {refused:?}"));
        }
    }
    for pair in accepted.windows(2).filter(|pair| pair[0].1 >= pair[1].1) {
        faults.push(format!("{:?} should cost less than {:?}", pair[0], pair[1]));
    }
    let dearest = accepted.last().unwrap();
    for layout in rejected.iter().filter(|layout| layout.1 <= dearest.1) {
        faults.push(format!("{layout:?} should cost more than {dearest:?}"));
    }
    let mut searched: Vec<(&Vec<Value>, Amount)> = Vec::new();
    for search in case["searches"].as_array().unwrap() {
        let offered = search["offered"].as_array().unwrap();
        let wanted = layouts.iter().find(|layout| layout["name"] == search["chooses"]);
        let wanted = wanted.unwrap_or_else(|| panic!("no layout {}", search["chooses"]));
        let given = courses(&plan(case, stock, None, Some(&wanted["courses"])));
        let found = plan(case, stock, Some(offered), None);
        searched.push((offered, found.walls()[0].built.cost.total));
        let chosen = courses(&found);
        if chosen != given {
            faults.push(format!("{offered:?}: {chosen:?} was chosen, not {given:?}"));
        }
    }
    for (few, cost) in &searched {
        let more = searched
            .iter()
            .filter(|(more, _)| few.iter().all(|sheet| more.contains(sheet)));
        for (offered, dearer) in more.filter(|(_, other)| other > cost) {
            faults.push(format!("{offered:?} costs {dearer}, {few:?} only {cost}"));
        }
    }
    faults
}

#[test]
fn what_a_framer_accepts_is_chosen_and_costs_less_than_what_he_rejects() {
    let folder = root().join("tests/accepted");
    let stock = json(&folder.join("stock.json")).unwrap();
    let sources = json(&root().join("tests/cases/sources.json")).unwrap();
    let mut failed = Vec::new();
    let mut walls = 0;
    for file in json_files(&folder).unwrap() {
        if file.ends_with("stock.json") {
            continue;
        }
        let case = json(&file).unwrap();
        let source = case["source"]["id"].as_str().unwrap();
        assert!(
            sources.get(source).is_some(),
            "{}: no source {source}",
            file.display()
        );
        walls += 1;
        let faults = faults(&case, &stock);
        if !faults.is_empty() {
            failed.push(format!("{}:\n    {}", case["name"], faults.join("\n    ")));
        }
    }
    assert_eq!(walls, 7, "walls");
    assert!(failed.is_empty(), "{}", failed.join("\n"));
}
