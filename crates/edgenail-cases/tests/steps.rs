//! Every number of an answer about capacity is the value of one of its steps: nothing is said that is not derived.

use edgenail_cases::case::load;
use edgenail_cases::root;
use serde_json::Value;

/// The ends of the names of numbers that steps lead to.
const DERIVED: [&str; 8] = [
    "_plf",
    "_psf",
    "_kips_per_in",
    "_lb",
    "_lb_per_in",
    "drift_in",
    "ratio",
    "factor",
];

/// The numbers of an answer, and of what stands in it, that steps lead to; nothing has none.
fn derived(answer: &Value, found: &mut Vec<(String, f64)>) {
    match answer {
        Value::Object(fields) => {
            for (name, value) in fields.iter().filter(|(name, _)| *name != "derivation") {
                let number = value.as_f64().filter(|number| *number != 0.0);
                if let Some(number) = number.filter(|_| DERIVED.iter().any(|end| name.ends_with(end))) {
                    found.push((name.clone(), number));
                }
                derived(value, found);
            }
        }
        Value::Array(items) => items.iter().for_each(|item| derived(item, found)),
        _ => {}
    }
}

#[test]
fn every_number_of_an_answer_is_derived() {
    let mut looked_at = 0;
    for case in load(&root().join("tests/cases")).unwrap().cases {
        if case.operation != "capacity" || case.expect_error.is_some() {
            continue;
        }
        let answer = edgenail::capacity_json(&case.text).unwrap();
        let answer: Value = serde_json::from_str(&answer).unwrap();
        if answer["kind"] == "cell" {
            continue;
        }
        let steps = answer["derivation"]["steps"].as_array().unwrap();
        let values: Vec<f64> = steps.iter().map(|step| step["value"].as_f64().unwrap()).collect();
        let mut numbers = Vec::new();
        derived(&answer, &mut numbers);
        for (name, number) in numbers {
            let close = |value: &f64| (value - number).abs() <= 1e-9 * number.abs();
            assert!(
                values.iter().any(close),
                "{}: no step gives {name} = {number}",
                case.name
            );
            looked_at += 1;
        }
    }
    assert!(looked_at > 300, "{looked_at}");
}
