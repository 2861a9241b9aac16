//! A question of capacity and its answer, both as JSON: one call for every language.

mod anchorage;
mod built;
mod diaphragm;
mod drift;
mod faces;
mod facing;
mod hold_down;
mod line;
mod nail;
mod nail_inspection;
mod panel;
mod planned;
mod racking;
mod rows;
mod schedule;
mod transfer;
mod uniform_load;
mod unit_shear;

use crate::capacity::{CellQuery, Derivation, Question, refuse_recalled};
use crate::caution::CAUTION;
use crate::error::Error;
use crate::issue::{Code, Issue};
use crate::published::{Confidence, cell};
use crate::reading::tree::{Kind, Node, parse};
use crate::reading::{Assumed, read_question};
use serde::Serialize;

pub use rows::{AnswerColumn, AnswerTable, AnswerValues, CapacityRows, Column, Value, Values, capacity_rows};

/// Answers the question of capacity that a JSON document asks.
///
/// The question is an object; its field `kind` says what is asked: `unit_shear`, `facing`, `faces`, `wall_line`, `transfer`, `hold_down`,
/// `anchorage`, `diaphragm`, `schedule`, `built`, `racking`, `nail_inspection`, `nail`, `panel`, `uniform_load`, `drift` or `cell`. Its fields are listed in
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
    let (question, assumed) = read_question(bytes).map_err(|issues| Error::Issues { issues })?;
    answered(&question, Document { assumed: &assumed })
}

/// What is made of an answer, whatever its numbers are.
trait Finish {
    type Made;

    fn finish<T: Serialize>(self, answer: Answer<T>) -> Result<Self::Made, Error>;
}

/// Answers a question, one kind in a file of its own.
fn answered<F: Finish>(question: &Question, made: F) -> Result<F::Made, Error> {
    let issues = |issues| Error::Issues { issues };
    match question {
        Question::UnitShear(query) => made.finish(unit_shear::answer(query).map_err(issues)?),
        Question::Facing(query) => made.finish(facing::answer(query).map_err(issues)?),
        Question::Faces(query) => made.finish(faces::answer(query).map_err(issues)?),
        Question::WallLine(line) => made.finish(line::answer(line).map_err(issues)?),
        Question::Transfer(query) => made.finish(transfer::answer(query).map_err(issues)?),
        Question::HoldDown(query) => made.finish(hold_down::answer(query).map_err(issues)?),
        Question::Anchorage(query) => made.finish(anchorage::answer(query).map_err(issues)?),
        Question::Diaphragm(query) => made.finish(diaphragm::answer(query).map_err(issues)?),
        Question::Schedule(query) => made.finish(schedule::answer(query).map_err(issues)?),
        Question::Built(query) => made.finish(built::answer(query)?),
        Question::Racking(query) => made.finish(racking::answer(query)?),
        Question::NailInspection(query) => made.finish(nail_inspection::answer(query).map_err(issues)?),
        Question::Nail(query) => made.finish(nail::answer(query).map_err(issues)?),
        Question::Panel(query) => made.finish(panel::answer(query).map_err(issues)?),
        Question::UniformLoad(query) => made.finish(uniform_load::answer(query).map_err(issues)?),
        Question::Drift(query) => made.finish(drift::answer(query).map_err(issues)?),
        Question::Cell(query) => made.finish(found(query).map_err(issues)?),
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
    let (document, _) = parse(answer.as_bytes()).map_err(|issue| internal(issue.message))?;
    Ok(pointers.map(|pointer| document.at(pointer).and_then(number)))
}

/// A number of a document, the double that it was written from.
fn number(node: &Node<'_>) -> Option<f64> {
    match &node.kind {
        Kind::Number(text) => text.parse().ok(),
        _ => None,
    }
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

/// The answer as a document.
struct Document<'a> {
    assumed: &'a [Assumed],
}

#[derive(Serialize)]
struct Fields<'a, T> {
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

impl Finish for Document<'_> {
    type Made = Answered;

    fn finish<T: Serialize>(self, answer: Answer<T>) -> Result<Answered, Error> {
        answer.finite()?;
        let fields = Fields {
            kind: answer.kind,
            edition: answer.edition,
            numbers: &answer.numbers,
            confidence: answer.confidence,
            unverified: answer.unverified(),
            estimate: answer.estimate,
            assumed: self.assumed,
            caution: CAUTION,
            derivation: &answer.derivation,
        };
        let json = serde_json::to_string(&fields).map_err(|error| internal(error.to_string()))?;
        Ok(Answered {
            json,
            derivation: answer.derivation,
        })
    }
}

impl<T> Answer<T> {
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

    fn unverified(&self) -> bool {
        self.confidence == Confidence::Memory
    }

    /// JSON has no number for what overflowed, and a column should have none.
    fn finite(&self) -> Result<(), Error> {
        match self.derivation.steps.iter().find(|step| !step.value.is_finite()) {
            Some(step) => Err(internal(format!("{} is not finite", step.symbol))),
            None => Ok(()),
        }
    }
}

fn internal(message: String) -> Error {
    Error::Internal { message }
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
