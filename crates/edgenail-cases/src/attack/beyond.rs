//! Values that a field's own row forbids.

use edgenail::Length;
use edgenail::reading::fields::Kind;
use serde_json::{Value, json};

/// Values just beyond what a row allows, and one of another kind than it asks for.
pub fn beyond(kind: &Kind) -> Vec<Value> {
    let one = Length::from_units(1);
    match *kind {
        Kind::Length { least, most } => vec![
            json!(format!("{}/40640 in.", (least - one).units())),
            json!(format!("{}/40640 in.", (most + one).units())),
            json!("a yard"),
            json!({}),
        ],
        Kind::Whole { least, most } => {
            let mut all = vec![json!(1.5), json!("many")];
            all.extend(least.checked_sub(1).map(Value::from));
            all.extend(most.checked_add(1).map(Value::from));
            all
        }
        Kind::Number { most, .. } => vec![json!(most.as_f64() * 2.0 + 1.0), json!("many"), json!([])],
        Kind::Amount { .. } => vec![json!("-0.01"), json!("$1"), json!(true)],
        Kind::Text { most, blank } => {
            let mut all = vec![json!("x".repeat(most + 1)), json!(1)];
            if !blank {
                all.push(json!(""));
            }
            all
        }
        Kind::Choice(_) => vec![json!("no such word"), json!(0)],
        Kind::Flag => vec![json!("yes"), json!(1)],
        Kind::Object(_) | Kind::OneOf(_) => vec![json!("no object"), json!([])],
        Kind::List { .. } => vec![json!("no list"), json!({})],
        Kind::Maybe(of) => beyond(of),
    }
}
