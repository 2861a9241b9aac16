//! What every text of a plan keeps to, on generated houses: the house's own units, and the grammar of counts.

#![expect(clippy::expect_used, reason = "a house that cannot be planned fails the test")]

use edgenail::generate::house_json;
use edgenail::{Plan, plan_json};
use serde_json::{Value, json};
use std::collections::BTreeSet;

const HOUSES: u64 = 60;

/// A generated house that was measured and found off in everything.
fn measured(seed: u64, drawn_in: &str) -> Plan {
    let mut house: Value = serde_json::from_str(&house_json(seed).0).expect("the generator writes JSON");
    house["drawn_in"] = drawn_in.into();
    for wall in house["walls"].as_array_mut().into_iter().flatten() {
        let names = names_of_openings(wall);
        let openings: Vec<Value> = names
            .map(|name| json!({"opening": name, "width": "10", "left": "1"}))
            .collect();
        wall["measured"] = json!({
            "length": "100'", "first_stud": "17", "out_of_plumb": "1", "plumb_height": "96", "bow": "1",
            "diagonals": ["200", "202"], "openings": openings,
        });
    }
    plan_json(&house.to_string()).expect("a generated house can be planned")
}

fn names_of_openings(wall: &Value) -> impl Iterator<Item = Value> {
    let sections = wall["sections"].as_array().cloned().unwrap_or_default();
    let list = |of: &Value, name: &str| of[name].as_array().cloned().unwrap_or_default();
    let levels: Vec<Value> = sections
        .iter()
        .flat_map(|section| list(section, "stack"))
        .collect();
    let openings: Vec<Value> = levels.iter().flat_map(|level| list(level, "openings")).collect();
    openings.into_iter().map(|opening| opening["name"].clone())
}

/// Every text that a plan says itself, in sentences, tables and drawings.
fn texts(plan: &Plan) -> Vec<String> {
    let mut texts = Vec::new();
    let style = plan.house().drawn_in.in_text();
    for finding in plan.findings() {
        texts.extend([&finding.found, &finding.allowed, &finding.message].map(|said| said.written(style)));
    }
    for wall in plan.walls() {
        texts.extend(wall.steps.iter().map(|step| step.text.clone()));
        for alternative in &wall.alternatives {
            texts.extend([alternative.summary.clone(), alternative.breaks.clone()]);
        }
        texts.extend(plan.wall_svg(&wall.name).iter().flat_map(|svg| labels(svg)));
        texts.extend(plan.frame_svg(&wall.name).iter().flat_map(|svg| labels(svg)));
    }
    let pages = (0..plan.cut_sheet_pages()).filter_map(|page| plan.cut_sheets_svg(page));
    texts.extend(pages.flat_map(|svg| labels(&svg)));
    for table in plan.tables().iter().filter(|table| table.name != "nails") {
        for column in &table.columns {
            if let edgenail::table::Data::Text(cells) = &column.data {
                texts.extend(cells.iter().cloned());
            }
        }
    }
    texts
}

/// The texts of a drawing.
fn labels(svg: &str) -> Vec<String> {
    let after = svg.split("<text ").skip(1);
    after
        .filter_map(|rest| Some(rest.split_once('>')?.1.split_once('<')?.0.replace("&quot;", "\"")))
        .collect()
}

/// In a metric house lengths are written in millimetres (ISO 129-1 asks for one unit on a drawing; from memory, not
/// checked against print).
#[test]
fn a_metric_house_says_no_inches() {
    let mut said = BTreeSet::new();
    for seed in 0..HOUSES {
        for text in texts(&measured(seed, "millimetres")) {
            let imperial = text.contains('"') || text.contains(" in. ") || text.ends_with(" in.");
            assert!(!imperial, "house {seed}: {text}");
            said.extend(text.contains(" mm").then_some(text));
        }
    }
    assert!(said.len() > 1000, "{} texts with lengths", said.len());
}

/// After `1` a noun is singular, after any other count plural.
#[test]
fn counts_agree_with_their_nouns() {
    const NOUNS: [(&str, &str); 14] = [
        ("block", "blocks"),
        ("stud", "studs"),
        ("nail", "nails"),
        ("sheet", "sheets"),
        ("piece", "pieces"),
        ("edge", "edges"),
        ("pull", "pulls"),
        ("course", "courses"),
        ("length", "lengths"),
        ("stick", "sticks"),
        ("cut", "cuts"),
        ("page", "pages"),
        ("opening", "openings"),
        ("panel", "panels"),
    ];
    let mut seen = BTreeSet::new();
    for seed in 0..HOUSES {
        for text in texts(&measured(seed, "inches")) {
            let words: Vec<&str> = text
                .split(|c: char| !c.is_alphanumeric() && !"/.'\"".contains(c))
                .collect();
            for pair in words.windows(2) {
                let (Ok(count), noun) = (pair[0].parse::<u64>(), pair[1].trim_end_matches('.')) else {
                    continue;
                };
                for (one, several) in NOUNS {
                    let wrong = if count == 1 { several } else { one };
                    assert_ne!(noun, wrong, "house {seed}: {text}");
                    seen.extend((noun == one || noun == several).then_some((one, count == 1)));
                }
            }
        }
    }
    for noun in ["block", "nail", "edge"] {
        assert!(
            seen.contains(&(noun, true)) && seen.contains(&(noun, false)),
            "{noun}: {seen:?}"
        );
    }
}
