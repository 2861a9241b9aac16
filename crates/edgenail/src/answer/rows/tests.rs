//! Rows against one question each, and what becomes of faults.

use super::{AnswerTable, AnswerValues, Column, Value, Values, capacity_rows};
use crate::answer::{capacity_json, capacity_numbers};
use crate::error::Error;
use crate::issue::Code;
use proptest::prelude::*;
use serde_json::json;

fn each(field: &str, values: impl IntoIterator<Item = Value>) -> Column {
    Column {
        field: field.to_owned(),
        values: Values::Each(values.into_iter().collect()),
    }
}

fn all(field: &str, value: Value) -> Column {
    Column {
        field: field.to_owned(),
        values: Values::All(value),
    }
}

fn text(text: &str) -> Value {
    Value::Text(text.to_owned())
}

fn numbers<'t>(table: &'t AnswerTable, name: &str) -> &'t [f64] {
    match table.column(name) {
        Some(AnswerValues::Numbers(numbers)) => numbers,
        other => panic!("{name} has no numbers but {other:?}"),
    }
}

fn texts<'t>(table: &'t AnswerTable, name: &str) -> &'t [String] {
    match table.column(name) {
        Some(AnswerValues::Texts(texts)) => texts,
        other => panic!("{name} has no texts but {other:?}"),
    }
}

fn refused(question: &str, columns: &[Column]) -> Vec<(Code, String)> {
    match capacity_rows(question.as_bytes(), columns, || true) {
        Err(Error::Issues { issues }) => issues.into_iter().map(|issue| (issue.code, issue.path)).collect(),
        other => panic!("{other:?}"),
    }
}

const ENDS: &str = r#"{"kind": "hold_down", "shear": 250, "length": "4 ft", "height": "8 ft", "inset": 0}"#;

fn face() -> serde_json::Value {
    json!({"kind": "unit_shear", "edition": "2015", "load": "seismic", "method": "asd", "high_seismic": false, "assembly": {
        "grade": "sheathing", "thickness": "7/16", "material": "osb", "edge_spacing": "6", "field_spacing": "6",
        "blocked": true, "stud_spacing": "24", "specific_gravity": 0.50,
        "nail": {"shank": 0.131, "head": 0.281, "length": "2 1/2"}}})
}

proptest! {
    /// A row is the question with the values put in: every number is the one that the question alone gives, and a row
    /// without an answer has the faults of the question alone.
    #[test]
    fn a_row_is_the_question_alone(rows in prop::collection::vec(
        (prop::sample::select(vec!["6", "4", "3", "2", "5"]), prop::sample::select(vec!["3/8", "7/16", "15/32", "1/2"]),
         prop::sample::select(vec!["wind", "seismic", "snow"]), 0.3..0.6, any::<bool>()), 1..12))
    {
        let columns = [
            each("/assembly/edge_spacing", rows.iter().map(|row| text(row.0))),
            each("assembly.thickness", rows.iter().map(|row| text(row.1))),
            each("load", rows.iter().map(|row| text(row.2))),
            each("/assembly/specific_gravity", rows.iter().map(|row| Value::Number(row.3))),
            each("/accept_unverified", rows.iter().map(|row| Value::Flag(row.4))),
            all("/assembly/seam_member", text("2 1/2")),
        ];
        let found = capacity_rows(face().to_string().as_bytes(), &columns, || true).unwrap();
        prop_assert_eq!(found.answers.rows, rows.len());
        let faults: serde_json::Value = serde_json::from_str(&found.faults.json()).unwrap();
        for (place, row) in rows.iter().enumerate() {
            let mut alone = face();
            alone["assembly"]["edge_spacing"] = row.0.into();
            alone["assembly"]["thickness"] = row.1.into();
            alone["load"] = row.2.into();
            alone["assembly"]["specific_gravity"] = row.3.into();
            alone["accept_unverified"] = row.4.into();
            alone["assembly"]["seam_member"] = "2 1/2".into();
            let own: Vec<&serde_json::Value> =
                faults["rows"].as_array().unwrap().iter().filter(|fault| fault[0] == place).collect();
            match capacity_json(&alone.to_string()) {
                Ok(answer) => {
                    let names = ["table_plf", "nominal_plf", "design_plf", "stiffness_kips_per_in"];
                    let pointers = names.map(|name| format!("/{name}"));
                    let wanted = capacity_numbers(&alone.to_string(), [0, 1, 2, 3].map(|at| pointers[at].as_str())).unwrap();
                    for (name, wanted) in names.iter().zip(wanted) {
                        let number = numbers(&found.answers, name)[place];
                        prop_assert_eq!(number.to_bits(), wanted.unwrap().to_bits());
                    }
                    let answer: serde_json::Value = serde_json::from_str(&answer).unwrap();
                    prop_assert!(own.is_empty());
                    prop_assert!(numbers(&found.answers, "estimate_factor")[place].is_nan());
                    prop_assert_eq!(&texts(&found.answers, "confidence")[place], &answer["confidence"]);
                    let unverified = f64::from(u8::from(answer["unverified"].as_bool().unwrap()));
                    prop_assert_eq!(numbers(&found.answers, "unverified")[place].to_bits(), unverified.to_bits());
                }
                Err(error) => {
                    let mut wanted: Vec<String> = error.issues().iter().map(|issue| issue.path.clone()).collect();
                    let mut listed: Vec<String> =
                        own.iter().map(|fault| fault[2].as_str().unwrap().to_owned()).collect();
                    wanted.sort_unstable();
                    listed.sort_unstable();
                    prop_assert!(!listed.is_empty());
                    prop_assert_eq!(listed, wanted);
                    for column in &found.answers.columns {
                        match &column.values {
                            AnswerValues::Numbers(numbers) => prop_assert!(numbers[place].is_nan()),
                            AnswerValues::Texts(texts) => prop_assert_eq!(&texts[place], ""),
                            AnswerValues::Places(_) => prop_assert!(false),
                        }
                    }
                }
            }
        }
    }
}

#[test]
fn a_value_that_is_no_number_is_a_fault_of_its_row() {
    let shear = [250.0, f64::NAN, f64::INFINITY, 500.0].map(Value::Number);
    let found = capacity_rows(ENDS.as_bytes(), &[each("shear", shear)], || true).unwrap();
    // Own arithmetic: unit shear times height.
    let chord = numbers(&found.answers, "chord_lb");
    assert_eq!(chord[..1], [2000.0]);
    assert_eq!(chord[3..], [4000.0]);
    assert!(chord[1].is_nan() && chord[2].is_nan());
    assert_eq!(
        found.faults.csv().lines().skip(1).collect::<Vec<_>>(),
        [
            "1,not_a_number,/shear,NaN,a finite number,the value is no number,",
            "2,not_a_number,/shear,inf,a finite number,the value is no number,",
        ]
    );
}

#[test]
fn a_column_that_does_not_fit_is_refused_by_its_name() {
    let three = || each("/shear", [1, 2, 3].map(Value::Whole));
    let cases = [
        (
            each("/height", [text("8'"), text("9'")]),
            Code::TooFewItems,
            "/height",
        ),
        (
            each("height", [1, 2, 3, 4].map(Value::Whole)),
            Code::TooManyItems,
            "/height",
        ),
        (
            each("shear", [1, 2, 3].map(Value::Whole)),
            Code::DuplicateName,
            "/shear",
        ),
        (all("/kind/name", Value::Null), Code::WrongKind, "/kind/name"),
        (all(&"/a".repeat(100_000), Value::Null), Code::TooDeep, ""),
    ];
    for (column, code, path) in cases {
        let found = refused(ENDS, &[three(), column]);
        assert_eq!(found.len(), 1);
        assert_eq!(found[0].0, code);
        assert!(found[0].1.starts_with(path));
    }
    let line = r#"{"kind": "wall_line", "openings": [{}]}"#;
    let beyond = all("/openings/1/width", Value::Null);
    assert_eq!(
        refused(line, &[beyond]),
        [(Code::OutOfRange, "/openings/1/width".to_owned())]
    );
    assert_eq!(refused("{", &[three()])[0].0, Code::Syntax);
}

#[test]
fn what_a_question_lacks_is_added_and_what_is_misspelt_is_a_fault_of_each_row() {
    let question = r#"{"kind": "hold_down", "length": "4 ft", "height": "8 ft", "inset": 0}"#;
    let found = capacity_rows(question.as_bytes(), &[all("shear", Value::Number(250.0))], || {
        true
    })
    .unwrap();
    assert_eq!(numbers(&found.answers, "tension_lb"), [2000.0]);
    let misspelt = each("/hight", [text("8'"), text("9'")]);
    let found = capacity_rows(ENDS.as_bytes(), &[misspelt], || true).unwrap();
    assert_eq!(found.faults.len(), 2);
    assert!(found.faults.csv().contains("unknown_field,/hight"));
}

#[test]
fn a_value_may_be_any_json() {
    let nails = [
        r#"{"shank": 0.131, "head": 0.281, "length": "2 1/2"}"#,
        r#"{"shank": 0.131,"#,
        r#"{"shank": 1, "shank": 2}"#,
    ];
    let column = each("/assembly/nail", nails.map(|nail| Value::Json(nail.to_owned())));
    let found = capacity_rows(face().to_string().as_bytes(), &[column], || true).unwrap();
    // Nominal unit shear for earthquake of 7/16 with 8d at 6 in.: SDPWS 2015 Table 4.3A.
    assert_eq!(numbers(&found.answers, "nominal_plf")[..1], [480.0]);
    let faults = found.faults.csv();
    assert!(faults.contains("1,syntax,/assembly/nail,"), "{faults}");
    assert!(
        faults.contains("2,duplicate_key,/assembly/nail/shank,"),
        "{faults}"
    );
}

#[test]
fn lists_of_answers_are_tables_of_their_own() {
    let line = json!({"kind": "wall_line", "method": "segmented", "sharing": "reduced_strength", "demand": 2000, "inset": "4", "length": "20 ft",
    "height": "8 ft", "openings": [], "query": face().as_object().map(|face| {
        let mut face = face.clone();
        face.remove("kind");
        face
    })});
    let opening = |left: &str| json!([{"left": left, "width": "3 ft", "height": "7 ft"}]).to_string();
    let openings = each(
        "openings",
        [
            Value::Json("[]".to_owned()),
            Value::Json(opening("8 ft")),
            Value::Json(opening("0")),
        ],
    );
    let found = capacity_rows(line.to_string().as_bytes(), &[openings], || true).unwrap();
    assert_eq!(found.faults.len(), 0, "{}", found.faults.csv());
    let segments = &found.lists[0];
    assert_eq!(segments.name, "segments");
    assert_eq!(
        segments.column("row"),
        Some(&AnswerValues::Places(vec![0, 1, 1, 2]))
    );
    assert_eq!(
        segments.column("position"),
        Some(&AnswerValues::Places(vec![0, 0, 1, 0]))
    );
    // An opening of 3 ft leaves 8 ft before and 9 ft after it.
    assert_eq!(numbers(segments, "from_in"), [0.0, 0.0, 132.0, 36.0]);
    assert_eq!(numbers(segments, "to_in"), [240.0, 96.0, 240.0, 240.0]);
    assert_eq!(numbers(&found.answers, "unit_shear.nominal_plf"), [480.0; 3]);
}

#[test]
fn it_stops_when_it_is_told_to() {
    let mut asked = 0;
    let shear = each("shear", (0..100).map(Value::Whole));
    let found = capacity_rows(ENDS.as_bytes(), &[shear], || {
        asked += 1;
        asked < 8
    });
    assert_eq!(found.unwrap().answers.rows, 7);
    let none = capacity_rows(ENDS.as_bytes(), &[each("shear", [])], || true).unwrap();
    assert_eq!((none.answers.rows, none.answers.columns.len()), (0, 0));
}

#[test]
fn what_was_assumed_is_told_once() {
    let shear = each("shear", (0..100).map(Value::Whole));
    let found = capacity_rows(ENDS.as_bytes(), &[shear], || true).unwrap();
    let csv = found.assumed.csv();
    assert!(csv.contains("/dead,") && csv.contains(",100"), "{csv}");
    assert_eq!(csv.matches("/dead,").count(), 1);
}
