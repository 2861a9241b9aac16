//! Compares an answer with what a case expects.

use crate::answer::Answer;
use crate::case::{Case, ExpectedError};
use serde_json::Value;

/// Every way in which the answer differs from what the case expects.
pub fn differences(case: &Case, answer: &Answer) -> Vec<String> {
    let document: Value = match serde_json::from_str(answer.text()) {
        Ok(document) => document,
        Err(error) => return vec![format!("the answer is not JSON: {error}")],
    };
    match (&case.expect_error, answer) {
        (Some(expected), Answer::Error(_)) => {
            let says = expected.says.iter();
            let other = says.filter_map(|(pointer, wanted)| value(case, pointer, wanted, &document));
            fault(expected, &document).into_iter().chain(other).collect()
        }
        (Some(expected), Answer::Result(_)) => vec![format!("expected {} but got a result", expected.code)],
        (None, Answer::Error(text)) => vec![format!("expected a result but got {text}")],
        (None, Answer::Result(_)) => case
            .expect
            .iter()
            .filter_map(|(pointer, wanted)| value(case, pointer, wanted, &document))
            .collect(),
    }
}

fn fault(expected: &ExpectedError, document: &Value) -> Option<String> {
    let issues = document.get("issues").and_then(Value::as_array);
    let found = match issues {
        Some(issues) => issues.iter().any(|issue| {
            issue["code"] == expected.code.as_str()
                && expected
                    .path
                    .as_ref()
                    .is_none_or(|path| issue["path"] == path.as_str())
        }),
        None => document["error"] == expected.code.as_str(),
    };
    let at = expected.path.as_deref().unwrap_or("any path");
    (!found).then(|| format!("expected {} at {at:?}, found {document}", expected.code))
}

fn value(case: &Case, pointer: &str, wanted: &Value, document: &Value) -> Option<String> {
    let Some(found) = document.pointer(pointer) else {
        return Some(format!("{pointer}: nothing there, expected {wanted}"));
    };
    let equal = match (case.tolerance.get(pointer), wanted.as_f64(), found.as_f64()) {
        (Some(share), Some(wanted), Some(found)) => (found - wanted).abs() <= share * wanted.abs(),
        _ => found == wanted,
    };
    (!equal).then(|| format!("{pointer}: expected {wanted}, found {found}"))
}

#[cfg(test)]
mod tests;
