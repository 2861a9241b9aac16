//! Questions of capacity: every fault at once, every step recomputed from its text.

use super::capacity_json;
use crate::capacity::Question;
use crate::capacity::formula::evaluate;
use crate::issue::Code;
use crate::reading::read_question;

const NAIL: &str = r#""nail": {"shank": 0.131, "head": 0.281, "length": "2 1/2"}"#;

fn wall(more: &str) -> String {
    format!(
        r#"{{"edition": "2015", "load": "wind", "method": "asd", "high_seismic": false, {more}, "assembly": {{"grade": "sheathing",
        "thickness": "7/16", "material": "osb", {NAIL}, "edge_spacing": "6", "field_spacing": "6", "blocked": true,
        "specific_gravity": 0.42}}}}"#
    )
}

const HOUSE: &str = r#"{"walls": [{"name": "north", "length": "13' 5\"", "segments": [{"mark": "SW1", "from": "0", "to": "36",
    "method": "segmented"}]}]}"#;

/// The faults of a question.
fn faults(text: &str) -> Vec<(Code, String)> {
    let error = capacity_json(text).unwrap_err();
    error
        .issues()
        .iter()
        .map(|issue| (issue.code, issue.path.clone()))
        .collect()
}

#[test]
fn every_fault_is_named_at_once() {
    let text = r#"{"kind": "unit_shear", "load": "snow", "method": "asd", "high_seismic": 1, "editon": "2015",
        "assembly": {"grade": "sheathing", "thickness": "7/16", "material": "osb", "nail": {"shank": 1.31, "head": "0,281"},
        "edge_spacing": "8-1", "field_spacing": 6, "blocked": true, "specific_gravity": 0.5}}"#;
    let found = faults(text);
    let wanted = [
        (Code::MissingField, "/edition"),
        (Code::NotAChoice, "/load"),
        (Code::WrongKind, "/high_seismic"),
        (Code::UnknownField, "/editon"),
        (Code::OutOfRange, "/assembly/nail/shank"),
        (Code::MissingField, "/assembly/nail/length"),
        (Code::NotANumber, "/assembly/nail/head"),
        (Code::AmbiguousLength, "/assembly/edge_spacing"),
    ];
    for (code, path) in wanted {
        assert!(found.contains(&(code, path.to_owned())), "{path}: {found:?}");
    }
    assert_eq!(found.len(), wanted.len(), "{found:?}");
    let error = capacity_json(text).unwrap_err();
    assert!(
        error.to_string().contains("perhaps `edition` is meant"),
        "{error}"
    );
}

#[test]
fn numbers_that_are_no_double_are_refused() {
    for number in ["1e999", "\"inf\"", "\"NaN\"", "\"1_000\"", "-1", "true"] {
        let text = format!(
            r#"{{"kind": "drift", "shear": {number}, "height": "8'", "length": "8'", "elasticity": 1.6e6, "post_area": 10.5,
            "anchor": "1/8", "equation": {{"kind": "three_terms", "stiffness": 15}}, "accept_unverified": true}}"#
        );
        let found = faults(&text);
        assert_eq!(found.len(), 1, "{number}: {found:?}");
        assert_eq!(found[0].1, "/shear");
    }
}

#[test]
fn a_length_is_read_in_every_form_and_what_was_not_said_is_listed() {
    let texts = [
        wall(r#""kind": "unit_shear""#),
        wall(r#""kind": "unit_shear", "unit": "mm""#)
            .replace("\"7/16\"", "\"11.1125 mm\"")
            .replace(
                r#""edge_spacing": "6", "field_spacing": "6""#,
                r#""edge_spacing": 152.4, "field_spacing": 152.4"#,
            )
            .replace("\"2 1/2\"", "63.5"),
        wall(r#""kind": "unit_shear", "length_unit": {"per_inch": 40640}"#)
            .replace(r#""edge_spacing": "6""#, r#""edge_spacing": 243840"#),
    ];
    let questions = texts.map(|text| read_question(text.as_bytes()).unwrap());
    for (question, assumed) in &questions {
        assert_eq!(*question, questions[0].0);
        let paths: Vec<&str> = assumed.iter().map(|assumed| assumed.path.as_str()).collect();
        assert!(paths.contains(&"/assembly/stud_spacing"), "{paths:?}");
        assert!(matches!(question, Question::UnitShear(_)));
    }
}

/// Every step of every kind of question, evaluated from its formula, gives its value; every input without a source is an
/// earlier step's value.
#[test]
fn steps_of_every_kind_can_be_recomputed() {
    for text in questions() {
        let answer = capacity_json(&text).unwrap_or_else(|error| panic!("{error}: {text}"));
        let document: serde_json::Value = serde_json::from_str(&answer).unwrap();
        let steps = document["derivation"]["steps"].as_array().unwrap();
        assert!(!steps.is_empty());
        for (index, step) in steps.iter().enumerate() {
            let read = step_of(step);
            let again = evaluate(&read).unwrap();
            assert!(
                (again - read.value).abs() <= 1e-9 * read.value.abs(),
                "{read:?}: {again}"
            );
            for input in read.inputs.iter().filter(|input| input.source.is_empty()) {
                let earlier = steps[..index].iter().any(|step| {
                    step["symbol"] == input.symbol.as_str()
                        && step["value"]
                            .as_f64()
                            .is_some_and(|value| value.total_cmp(&input.value).is_eq())
                });
                assert!(earlier, "{} of {} comes from no step", input.symbol, read.symbol);
            }
        }
    }
}

fn step_of(step: &serde_json::Value) -> crate::capacity::Step {
    let text = |value: &serde_json::Value| value.as_str().unwrap().to_owned();
    let inputs = step["inputs"].as_array().unwrap();
    crate::capacity::Step {
        symbol: text(&step["symbol"]),
        meaning: text(&step["meaning"]),
        formula: text(&step["formula"]),
        inputs: inputs
            .iter()
            .map(|input| crate::capacity::Input {
                symbol: text(&input["symbol"]),
                value: input["value"].as_f64().unwrap(),
                unit: "",
                source: text(&input["source"]),
            })
            .collect(),
        value: step["value"].as_f64().unwrap(),
        unit: "",
        source: text(&step["source"]),
        confidence: crate::published::Confidence::Source,
    }
}

fn face(asked: &str, material: &str, fastener: &str, edge: u32, gravity: &str) -> String {
    let field = if gravity == "null" { "null" } else { "6" };
    format!(
        r#"{{"kind": "facing", {asked}, "high_seismic": false, "accept_unverified": true, "facing": {{"material": "{material}",
        "thickness": "1/2", "fastener": "{fastener}", "edge_spacing": {edge}, "field_spacing": {field}, "blocked": true,
        "stud_spacing": 16, "specific_gravity": {gravity}}}}}"#
    )
}

fn questions() -> Vec<String> {
    let line = |method: &str, query: &str| {
        format!(
            r#"{{"kind": "wall_line", "length": "30'", "height": "8'", "method": "{method}", "sharing": "reduced_strength",
            "openings": [{{"left": "4'", "width": "3'", "height": "7'"}}, {{"left": "9'", "width": "3'", "height": "4'"}},
            {{"left": "13' 6\"", "width": "6'", "height": "4'"}}],
            "query": {query}, "demand": 2500.5, "dead": 50, "inset": "4 1/2"}}"#
        )
    };
    let query = wall(r#""accept_unverified": true"#);
    let nail = r#""shank": 0.131, "length": "2 1/2", "side_thickness": "7/16", "side_gravity": 0.5, "main_gravity": 0.42,
        "load_duration": 1.6, "accept_unverified": true"#;
    let drift = r#""shear": 240, "height": "8'", "length": "8'", "elasticity": 1600000, "post_area": 10.5, "anchor": "1/8",
        "accept_unverified": true"#;
    vec![
        wall(r#""kind": "unit_shear""#),
        wall(r#""kind": "unit_shear", "accept_unverified": true, "estimate": true"#)
            .replace(NAIL, r#""nail": {"shank": 0.113, "head": 0.266, "length": "2 3/8"}"#),
        face(r#""edition": "2015", "load": "wind", "method": "lrfd""#, "gypsum_wallboard", "cooler_5d", 7, "null"),
        face(r#""edition": "2008", "load": "seismic", "method": "asd""#, "sheathing_over_gypsum", "8d", 6, "0.42")
            .replace("1/2", "3/8"),
        face(r#""edition": "780_cmr", "load": "wind", "method": "asd""#, "stapled_structural_i", "staple_16_gauge", 6, "0.5")
            .replace("1/2", "7/16"),
        wall(
            r#""kind": "faces", "accept_unverified": true, "other": {"kind": "panels", "assembly": {"grade": "structural_i",
            "thickness": "15/32", "material": "plywood4", "nail": {"shank": 0.148, "head": 0.312, "length": "3"}, "edge_spacing": "4",
            "field_spacing": "12", "blocked": true, "specific_gravity": 0.43}}, "joints_apart": true"#,
        ),
        wall(
            r#""kind": "faces", "accept_unverified": true, "other": {"kind": "material", "material": "gypsum_wallboard", "nominal": 201.5}"#,
        ),
        wall(
            r#""kind": "faces", "accept_unverified": true, "other": {"kind": "facing", "facing": {"material": "gypsum_wallboard",
            "thickness": "1/2", "fastener": "screw_no_6", "edge_spacing": 8, "field_spacing": 12, "blocked": true,
            "stud_spacing": 16}}"#,
        ),
        line("segmented", &query),
        line("perforated", &query),
        format!(
            r#"{{"kind": "transfer", "height": "97 1/8", "piers": ["30", "5'", "3' 6\""], "openings": ["6'", "2' 8\""],
            "above_and_below": "16", "shear": 1234.5, "query": {query}, "accept_unverified": true}}"#
        ),
        r#"{"kind": "hold_down", "shear": 250, "length": "4'", "height": "97 1/8", "dead": 20, "inset": "4 1/2"}"#.to_owned(),
        format!(
            r#"{{"kind": "built", "house": {HOUSE}, "wall": "north", "edition": "2015", "load": "wind", "method": "lrfd",
            "sharing": "equal_deflection", "high_seismic": false, "accept_unverified": true}}"#
        ),
        format!(
            r#"{{"kind": "racking", "house": {HOUSE}, "wall": "north", "force": 1500, "openings": "counted",
            "nails": [{{"name": "8d common bright", "strength": 72.8, "stiffness": 5000}},
                {{"name": "8d common hot-dipped", "strength": 72.8, "stiffness": 5000}}]}}"#
        ),
        r#"{"kind": "schedule", "edition": "2015", "load": "wind", "method": "lrfd", "high_seismic": false, "accept_unverified": true,
            "demand": {"unit_shear": 431.5, "height": "97 1/8"}, "framing": {"field_spacing": 6, "specific_gravity": 0.42}}"#
            .to_owned(),
        r#"{"kind": "diaphragm", "lines": [{"name": "1", "along": "x", "at": "1'", "stiffness": 18300, "tributary": "11' 3\""},
            {"name": "2", "along": "x", "at": "25'", "stiffness": 9000.7, "tributary": "12'"},
            {"name": "A", "along": "y", "at": "0", "stiffness": 15000, "tributary": "0"},
            {"name": "B", "along": "y", "at": "40'", "stiffness": 7000, "tributary": "20'"}],
            "force": {"size": 4321, "along": "x", "at": "12'", "accidental": "15"}}"#
            .to_owned(),
        r#"{"kind": "diaphragm", "lines": [{"name": "1", "along": "y", "at": "17.3", "stiffness": 18300.3, "tributary": "7"}],
            "force": {"size": 4321, "along": "y", "at": "17.3"}}"#
            .to_owned(),
        r#"{"kind": "anchorage", "shear": 248.3, "length": "97 1/8", "each": 812.5, "uplift": 91.7, "each_uplift": 333, "nominal": 481, "sill": "lrfd",
            "accept_unverified": true}"#
            .to_owned(),
        r#"{"kind": "nail_inspection", "edge_spacing": 6, "dry": false, "design_shear": 240.5, "edges": [
            {"name": "left", "flush": 10, "to_16th": 3, "to_8th": 2, "deeper": 1, "missing": 1},
            {"name": "top", "flush": 8, "to_16th": 0, "to_8th": 1, "deeper": 0, "missing": 0}]}"#
            .to_owned(),
        format!(r#"{{"kind": "nail", "edition": "2018", "head": 0.281, {nail}}}"#),
        format!(r#"{{"kind": "nail", "edition": "2018", "head": 0.1, "main_depth": 1, {nail}}}"#),
        format!(r#"{{"kind": "nail", "edition": "2005", "bending_yield": 90000.5, "between": "1", {nail}}}"#),
        r#"{"kind": "panel", "rating": "24/16", "plies": "osb", "axis": "along_studs", "stud_spacing": 24, "spans": 2,
            "deflection_ratio": 240, "pressure": 30, "load_duration": 1.6, "accept_unverified": true}"#
            .to_owned(),
        r#"{"kind": "uniform_load", "edition": "2008", "method": "lrfd", "stud_spacing": 19.2, "accept_unverified": true,
            "sheathing": {"kind": "panel", "rating": "32/16", "axis": "across_studs"}}"#
            .to_owned(),
        format!(r#"{{"kind": "drift", {drift}, "equation": {{"kind": "three_terms", "stiffness": 15}}}}"#),
        format!(
            r#"{{"kind": "drift", {drift}, "equation": {{"kind": "four_terms", "nail": "8d", "grade": "sheathing", "material": "osb",
            "thickness": "7/16", "edge_spacing": 6}}}}"#
        ),
    ]
}
