//! Many questions of one form: fields of a question replaced by columns, and the answers as columns.

mod gather;
mod place;

use super::{Answer, Finish, answered, internal};
use crate::caution::CAUTION;
use crate::error::Error;
use crate::issue::{Code, Issue};
use crate::reading::tree::parse;
use crate::reading::{Assumed, question_of};
use crate::table::{Field, Schema, Table};
use gather::Gathered;
use place::Varied;
use serde::Serialize;
use std::collections::HashMap;

pub use gather::{AnswerColumn, AnswerTable, AnswerValues};

/// A field of a question that takes another value in each row.
#[derive(Clone, Debug, PartialEq)]
pub struct Column {
    /// The field: a JSON pointer such as `/assembly/edge_spacing`, or the same with dots, `assembly.edge_spacing`.
    pub field: String,
    /// Its values.
    pub values: Values,
}

/// The values of a field.
#[derive(Clone, Debug, PartialEq)]
pub enum Values {
    /// One a row.
    Each(Vec<Value>),
    /// The same in every row.
    All(Value),
}

/// A value of a field.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// None.
    Null,
    /// True or false.
    Flag(bool),
    /// A whole number.
    Whole(i64),
    /// A double.
    Number(f64),
    /// Text.
    Text(String),
    /// Any other value, as JSON.
    Json(String),
}

/// Answers to many questions.
#[derive(Clone, Debug, PartialEq)]
pub struct CapacityRows {
    /// The answers, one a row, in the order of the rows. What an answer has within an object is named with a dot, such as
    /// `unit_shear.design_plf`. True is 1 and false is 0; a row without the value, because of a fault or because its
    /// answer has none, has NaN, or empty text.
    pub answers: AnswerTable,
    /// The lists of the answers, such as `segments`: one table each, with the row and the position in its list.
    pub lists: Vec<AnswerTable>,
    /// Every fault of every row that has no answer.
    pub faults: Table,
    /// What the questions did not say, with the values taken, and in how many rows.
    pub assumed: Table,
    /// [`CAUTION`].
    pub caution: &'static str,
}

/// Answers a question of capacity in as many rows as its columns have: each row is the question with the values of the row
/// in the fields of the columns, and its answer has the numbers that [`super::capacity_json`] gives to it.
///
/// Columns without a length of their own fill every row; where none has a length there is one row. A field that the
/// question lacks is added. `go_on` is asked before each row; once it says no, what was answered so far comes back.
///
/// # Errors
/// The question is no JSON; a column is longer or shorter than the first, names a field twice or one within a value that
/// has no fields. Faults of a row, and failures in it, are in [`CapacityRows::faults`], and its neighbours are answered.
///
/// ```
/// use edgenail::answer::{AnswerValues, Column, Value, Values, capacity_rows};
/// let question = br#"{"kind": "hold_down", "shear": 250, "length": "4 ft", "height": "8 ft", "inset": 0}"#;
/// let shear = Column {
///     field: "/shear".to_owned(),
///     values: Values::Each(vec![Value::Number(250.0), Value::Number(-1.0), Value::Number(500.0)]),
/// };
/// let rows = capacity_rows(question, &[shear], || true)?;
/// // Own arithmetic: 250 plf x 8 ft, and twice as much.
/// let Some(AnswerValues::Numbers(tension)) = rows.answers.column("tension_lb") else { unreachable!() };
/// assert_eq!((tension[0], tension[2]), (2000.0, 4000.0));
/// assert!(tension[1].is_nan());
/// assert_eq!(rows.faults.csv().lines().nth(1).unwrap().split(',').take(3).collect::<Vec<_>>(), ["1", "out_of_range", "/shear"]);
/// # Ok::<(), edgenail::Error>(())
/// ```
pub fn capacity_rows(
    question: &[u8],
    columns: &[Column],
    mut go_on: impl FnMut() -> bool,
) -> Result<CapacityRows, Error> {
    let issues = |issues| Error::Issues { issues };
    let (tree, doubles) = parse(question).map_err(|issue| issues(vec![*issue]))?;
    let mut varied = Varied::new(tree, columns).map_err(issues)?;
    let mut gathered = Gathered::default();
    let mut faults = Vec::new();
    let mut assumed = Tally::default();
    for row in 0..varied.rows() {
        if !go_on() {
            break;
        }
        let answer = varied
            .put(row)
            .and_then(|tree| question_of(tree, doubles.clone()))
            .map_err(issues)
            .and_then(|(question, taken)| {
                let values = answered(&question, RowValues)?;
                gathered.answer(row, &values)?;
                assumed.count(taken);
                Ok(())
            });
        if let Err(error) = answer {
            gathered.fault();
            faults.extend(issues_of(error).into_iter().map(|issue| RowFault { row, issue }));
        }
    }
    let (answers, lists) = gathered.tables();
    Ok(CapacityRows {
        answers,
        lists,
        faults: fault_schema().table(&faults),
        assumed: assumed_schema().table(&assumed.taken),
        caution: CAUTION,
    })
}

/// The values of an answer, without its steps.
struct RowValues;

#[derive(Serialize)]
struct Fields<'a, T> {
    kind: &'static str,
    edition: &'static str,
    #[serde(flatten)]
    numbers: &'a T,
    confidence: crate::published::Confidence,
    unverified: bool,
    estimate: bool,
}

impl Finish for RowValues {
    type Made = String;

    fn finish<T: Serialize>(self, answer: Answer<T>) -> Result<String, Error> {
        answer.finite()?;
        let fields = Fields {
            kind: answer.kind,
            edition: answer.edition.unwrap_or_default(),
            numbers: &answer.numbers,
            confidence: answer.confidence,
            unverified: answer.unverified(),
            estimate: answer.estimate,
        };
        serde_json::to_string(&fields).map_err(|error| internal(error.to_string()))
    }
}

/// A fault, and the row that it keeps from its answer.
struct RowFault {
    row: usize,
    issue: Issue,
}

fn fault_schema() -> Schema<RowFault> {
    Schema {
        name: "faults",
        meaning: "A fault of a row, which has no answer.",
        fields: vec![
            Field::int("row", "The row, counted from 0.", |fault| whole(fault.row)),
            Field::text(
                "code",
                "Kind of fault; names do not change.",
                |fault: &RowFault| fault.issue.code.name().into(),
            ),
            Field::text("field", "JSON pointer to the field of the question.", |fault| {
                fault.issue.path.as_str().into()
            }),
            Field::text("found", "What was found, as it was written.", |fault| {
                fault.issue.found.as_str().into()
            }),
            Field::text("allowed", "What is allowed there.", |fault| {
                fault.issue.allowed.as_str().into()
            }),
            Field::text("message", "A sentence for a person.", |fault| {
                fault.issue.message.as_str().into()
            }),
            Field::text(
                "wall",
                "The wall that it belongs to, empty when to none.",
                |fault| fault.issue.wall.as_str().into(),
            ),
        ],
    }
}

/// What keeps a row from its answer, in one form.
fn issues_of(error: Error) -> Vec<Issue> {
    let (code, wall) = match error {
        Error::Issues { issues } => return issues,
        Error::NoLayout { ref wall, .. } => (Code::NoLayout, wall.clone()),
        _ => (Code::Internal, String::new()),
    };
    vec![Issue {
        code,
        path: String::new(),
        wall,
        found: String::new(),
        allowed: String::new(),
        message: error.to_string(),
    }]
}

/// What was taken for fields that were not said, and how often.
#[derive(Default)]
struct Tally {
    taken: Vec<(Assumed, usize)>,
    places: HashMap<Assumed, usize>,
}

impl Tally {
    fn count(&mut self, assumed: Vec<Assumed>) {
        for one in assumed {
            if let Some(entry) = self.places.get(&one).and_then(|place| self.taken.get_mut(*place)) {
                entry.1 += 1;
            } else {
                self.places.insert(one.clone(), self.taken.len());
                self.taken.push((one, 1));
            }
        }
    }
}

fn assumed_schema() -> Schema<(Assumed, usize)> {
    Schema {
        name: "assumed",
        meaning: "A value that answered questions did not say.",
        fields: vec![
            Field::text(
                "field",
                "JSON pointer to the field of the question.",
                |(one, _)| one.path.as_str().into(),
            ),
            Field::text(
                "value",
                "The value that was taken.",
                |(one, _): &(Assumed, usize)| one.value.as_str().into(),
            ),
            Field::text("why", "Why this value.", |(one, _)| one.why.as_str().into()),
            Field::int("rows", "In how many rows.", |(_, rows)| whole(*rows)),
        ],
    }
}

fn whole(count: usize) -> i64 {
    i64::try_from(count).unwrap_or(i64::MAX)
}

#[cfg(test)]
mod tests;
