//! Many questions of capacity at once: fields replaced by columns, answers as columns.

use crate::errors::call;
use crate::table::{Plain, plain};
use edgenail::answer::{AnswerTable, AnswerValues, Column, Value, Values, capacity_rows};
use pyo3::exceptions::PyTypeError;
use pyo3::prelude::*;
use pyo3::types::{PyBool, PyBytes, PyFloat, PyInt, PyString};

/// After so many rows Ctrl-C is looked for.
const ROWS_BETWEEN: usize = 256;

/// A value of a field; bytes are JSON.
pub(crate) struct Given(Value);

impl<'py> FromPyObject<'_, 'py> for Given {
    type Error = PyErr;

    fn extract(given: Borrowed<'_, 'py, PyAny>) -> PyResult<Self> {
        Ok(Self(if given.is_none() {
            Value::Null
        } else if let Ok(flag) = given.cast::<PyBool>() {
            Value::Flag(flag.is_true())
        } else if given.is_instance_of::<PyInt>() {
            Value::Whole(given.extract()?)
        } else if let Ok(number) = given.cast::<PyFloat>() {
            Value::Number(number.value())
        } else if given.is_instance_of::<PyString>() {
            Value::Text(given.extract()?)
        } else if let Ok(json) = given.cast::<PyBytes>() {
            Value::Json(String::from_utf8(json.as_bytes().to_vec())?)
        } else {
            return Err(PyTypeError::new_err("no value of a question"));
        }))
    }
}

/// Values of answers: (name, rows, columns), each column as (name, float64 or int64 as bytes with their format, or texts).
pub(crate) type Answers<'py> = (String, usize, Vec<(String, AnswerCells<'py>)>);

#[derive(IntoPyObject)]
pub(crate) enum AnswerCells<'py> {
    Numbers((&'static str, Bound<'py, PyBytes>)),
    Texts(Vec<String>),
}

/// Answers a question once for each row of its columns: (answers, lists, faults, assumed, caution).
///
/// Each column is (field, values, whether there is one for each row).
#[pyfunction]
#[pyo3(signature = (question, columns, /))]
pub(crate) fn capacity_columns<'py>(
    py: Python<'py>,
    question: &[u8],
    columns: Vec<(String, Vec<Given>, bool)>,
) -> PyResult<(
    Answers<'py>,
    Vec<Answers<'py>>,
    Plain<'py>,
    Plain<'py>,
    &'static str,
)> {
    let columns: Vec<Column> = columns.into_iter().map(column).collect();
    let mut stopped = None;
    #[expect(
        clippy::redundant_closure_for_method_calls,
        reason = "the method is not general enough"
    )]
    let interrupted = || Python::attach(|py| py.check_signals()).err();
    let found = call(py, || {
        let mut rows = 0_usize;
        capacity_rows(question, &columns, || {
            rows += 1;
            if rows.is_multiple_of(ROWS_BETWEEN) {
                stopped = interrupted();
            }
            stopped.is_none()
        })
    })?;
    if let Some(stopped) = stopped {
        return Err(stopped);
    }
    let lists = found.lists.into_iter().map(|list| answers(py, list));
    Ok((
        answers(py, found.answers)?,
        lists.collect::<PyResult<_>>()?,
        plain(py, found.faults)?,
        plain(py, found.assumed)?,
        found.caution,
    ))
}

fn column((field, values, each): (String, Vec<Given>, bool)) -> Column {
    let mut values = values.into_iter().map(|given| given.0);
    Column {
        field,
        values: if each {
            Values::Each(values.collect())
        } else {
            Values::All(values.next().unwrap_or(Value::Null))
        },
    }
}

fn answers(py: Python<'_>, table: AnswerTable) -> PyResult<Answers<'_>> {
    let columns = table.columns.into_iter().map(|column| {
        let cells = match column.values {
            AnswerValues::Places(places) => {
                AnswerCells::Numbers(("q", packed(py, &places, |one| one.to_ne_bytes())?))
            }
            AnswerValues::Numbers(numbers) => {
                AnswerCells::Numbers(("d", packed(py, &numbers, |one| one.to_ne_bytes())?))
            }
            AnswerValues::Texts(texts) => AnswerCells::Texts(texts),
        };
        Ok((column.name, cells))
    });
    Ok((table.name, table.rows, columns.collect::<PyResult<_>>()?))
}

/// Numbers of eight bytes, one after the other, as a buffer of Python's.
fn packed<'py, T>(
    py: Python<'py>,
    values: &[T],
    bytes: impl Fn(&T) -> [u8; 8],
) -> PyResult<Bound<'py, PyBytes>> {
    PyBytes::new_with(py, values.len() * 8, |buffer| {
        for (slot, value) in buffer.chunks_exact_mut(8).zip(values) {
            slot.copy_from_slice(&bytes(value));
        }
        Ok(())
    })
}
