//! A question of capacity and its answer, both as JSON: one call for every language.

mod anchorage;
mod built;
mod diaphragm;
mod drift;
mod faces;
mod hold_down;
mod line;
mod nail;
mod panel;
mod planned;
mod racking;
mod schedule;
mod transfer;
mod unit_shear;

use crate::capacity::{CellQuery, Derivation, Question, refuse_recalled};
use crate::caution::CAUTION;
use crate::error::Error;
use crate::issue::{Code, Issue};
use crate::published::{Confidence, cell};
use crate::reading::{Assumed, read_question};
use serde::Serialize;

/// Answers the question of capacity that a JSON document asks.
///
/// The question is an object; its field `kind` says what is asked: `unit_shear`, `faces`, `wall_line`, `transfer`, `hold_down`,
/// `anchorage`, `diaphragm`, `schedule`, `built`, `racking`, `nail`, `panel`, `drift` or `cell`. Its fields are listed in
/// `CAPACITY_FIELDS.md`. The answer is an object with the result's numbers, the unit of each at the end of its name, and with:
///
/// * `edition`: the standard that was asked, null where the result follows none;
/// * `confidence`: the least of all that was used: `two_sources`, `source` or `memory`;
/// * `unverified`: a value was used that was recalled and not checked against print;
/// * `estimate`: the result is an engineering estimate, not a value of the standard;
/// * `assumed`: fields that the question did not say, with the value taken and why;
/// * `caution`: [`CAUTION`];
/// * `derivation`: the steps, each with symbol, formula, inputs, value, unit, source and confidence.
///
/// # Errors
/// Every fault of the question, each with its field; what a table does not list; what was recalled and is not accepted; a
/// house that has no plan.
///
/// ```
/// let question = r#"{"kind": "unit_shear", "edition": "2015", "load": "seismic", "method": "asd", "high_seismic": false,
///     "assembly": {"grade": "sheathing", "thickness": "7/16", "material": "osb", "edge_spacing": 6, "field_spacing": 6,
///         "nail": {"shank": 0.131, "head": 0.281, "length": "2 1/2"}, "blocked": true, "specific_gravity": 0.50}}"#;
/// let answer = edgenail::capacity_json(question)?;
/// assert!(answer.contains(r#""nominal_plf":480.0,"design_plf":240.0"#));
/// # Ok::<(), edgenail::Error>(())
/// ```
pub fn capacity_json(text: &str) -> Result<String, Error> {
    capacity_bytes(text.as_bytes())
}

/// As [`capacity_json`], from bytes of UTF-8.
///
/// # Errors
/// As [`capacity_json`].
pub fn capacity_bytes(bytes: &[u8]) -> Result<String, Error> {
    capacity(bytes).map(|answered| answered.json)
}

/// An answer: its document, and the steps that the document holds too.
#[derive(Clone, Debug, PartialEq)]
pub struct Answered {
    /// The document.
    pub json: String,
    /// The steps, to be shown as text, Markdown or HTML.
    pub derivation: Derivation,
}

/// As [`capacity_bytes`], with the steps at hand.
///
/// # Errors
/// As [`capacity_json`].
///
/// ```
/// let question = br#"{"kind": "hold_down", "shear": 250, "length": "4 ft", "height": "8 ft", "inset": 0}"#;
/// let answered = edgenail::answer::capacity(question)?;
/// assert!(answered.derivation.text().contains("C: nominal chord force, without dead load\n  = v * h\n"));
/// # Ok::<(), edgenail::Error>(())
/// ```
pub fn capacity(bytes: &[u8]) -> Result<Answered, Error> {
    let issues = |issues| Error::Issues { issues };
    let (question, assumed) = read_question(bytes).map_err(issues)?;
    match &question {
        Question::UnitShear(query) => unit_shear::answer(query).map_err(issues)?.written(&assumed),
        Question::Faces(query) => faces::answer(query).map_err(issues)?.written(&assumed),
        Question::WallLine(line) => line::answer(line).map_err(issues)?.written(&assumed),
        Question::Transfer(query) => transfer::answer(query).map_err(issues)?.written(&assumed),
        Question::HoldDown(query) => hold_down::answer(query).map_err(issues)?.written(&assumed),
        Question::Anchorage(query) => anchorage::answer(query).map_err(issues)?.written(&assumed),
        Question::Diaphragm(query) => diaphragm::answer(query).map_err(issues)?.written(&assumed),
        Question::Schedule(query) => schedule::answer(query).map_err(issues)?.written(&assumed),
        Question::Built(query) => built::answer(query)?.written(&assumed),
        Question::Racking(query) => racking::answer(query)?.written(&assumed),
        Question::Nail(query) => nail::answer(query).map_err(issues)?.written(&assumed),
        Question::Panel(query) => panel::answer(query).map_err(issues)?.written(&assumed),
        Question::Drift(query) => drift::answer(query).map_err(issues)?.written(&assumed),
        Question::Cell(query) => found(query).map_err(issues)?.written(&assumed),
    }
}

/// Numbers of the answer, by JSON pointer such as `/nominal_plf`; none where the answer has no number there.
///
/// # Errors
/// As [`capacity_json`].
///
/// ```
/// let question = r#"{"kind": "hold_down", "shear": 250, "length": "4 ft", "height": "8 ft", "inset": 0}"#;
/// let [chord, missing] = edgenail::answer::capacity_numbers(question, ["/chord_lb", "/nominal_plf"])?;
/// // Own arithmetic: 250 plf x 8 ft.
/// assert_eq!((chord, missing), (Some(2000.0), None));
/// # Ok::<(), edgenail::Error>(())
/// ```
pub fn capacity_numbers<const N: usize>(text: &str, pointers: [&str; N]) -> Result<[Option<f64>; N], Error> {
    let answer = capacity_json(text)?;
    let document: serde_json::Value = serde_json::from_str(&answer).map_err(|error| Error::Internal {
        message: error.to_string(),
    })?;
    Ok(pointers.map(|pointer| document.pointer(pointer).and_then(serde_json::Value::as_f64)))
}

/// An answer before it is written.
#[derive(Debug)]
struct Answer<T> {
    kind: &'static str,
    edition: Option<&'static str>,
    numbers: T,
    confidence: Confidence,
    /// An engineering estimate, no value of the standard.
    estimate: bool,
    derivation: Derivation,
}

#[derive(Serialize)]
struct Document<'a, T> {
    kind: &'static str,
    edition: Option<&'static str>,
    #[serde(flatten)]
    numbers: &'a T,
    confidence: Confidence,
    unverified: bool,
    estimate: bool,
    assumed: &'a [Assumed],
    caution: &'static str,
    derivation: &'a Derivation,
}

impl<T: Serialize> Answer<T> {
    /// An answer as sure as the least sure of its steps.
    fn new(kind: &'static str, edition: Option<&'static str>, numbers: T, derivation: Derivation) -> Self {
        Self {
            kind,
            edition,
            numbers,
            confidence: derivation.confidence().unwrap_or(Confidence::TwoSources),
            estimate: false,
            derivation,
        }
    }

    fn written(self, assumed: &[Assumed]) -> Result<Answered, Error> {
        let internal = |message: String| Error::Internal { message };
        // JSON has no number for what overflowed.
        if let Some(step) = self.derivation.steps.iter().find(|step| !step.value.is_finite()) {
            return Err(internal(format!("{} is not finite", step.symbol)));
        }
        let document = Document {
            kind: self.kind,
            edition: self.edition,
            numbers: &self.numbers,
            confidence: self.confidence,
            unverified: self.confidence == Confidence::Memory,
            estimate: self.estimate,
            assumed,
            caution: CAUTION,
            derivation: &self.derivation,
        };
        let json = serde_json::to_string(&document).map_err(|error| internal(error.to_string()))?;
        Ok(Answered {
            json,
            derivation: self.derivation,
        })
    }
}

#[derive(Debug, Serialize)]
struct Cell {
    value: &'static str,
    source: &'static str,
}

fn found(query: &CellQuery) -> Result<Answer<Cell>, Vec<Issue>> {
    let fault = |code, path: &str, found: &str, allowed: &str, message: &str| {
        vec![Issue {
            code,
            path: path.to_owned(),
            wall: String::new(),
            found: found.to_owned(),
            allowed: allowed.to_owned(),
            message: message.to_owned(),
        }]
    };
    let Some(cell) = cell(&query.table, &query.key) else {
        let message = format!("`{}` of the table `{}` was not collected", query.key, query.table);
        return Err(fault(
            Code::UnlistedValue,
            "/key",
            &query.key,
            "a row and column that was collected",
            &message,
        ));
    };
    if cell.confidence == Confidence::Memory && !query.accept_unverified {
        return Err(fault(
            Code::Unverified,
            "/accept_unverified",
            "false",
            "true, after checking the printed standard",
            &format!(
                "this cell was recalled and not checked against the printed standard: {}",
                cell.source
            ),
        ));
    }
    let numbers = Cell {
        value: cell.value,
        source: cell.source,
    };
    Ok(Answer {
        confidence: cell.confidence,
        ..Answer::new("cell", None, numbers, Derivation::default())
    })
}

#[cfg(test)]
mod tests;
