//! A house planned again after changes.

use crate::errors::call;
use crate::plan::Planned;
use crate::table::{Plain, plain};
use pyo3::prelude::*;

/// The plan after changes: (changed document, plan, what is different as JSON, as a table).
#[pyfunction]
#[pyo3(signature = (before, house, changes, /))]
pub(crate) fn what_if<'py>(
    py: Python<'py>,
    before: &Planned,
    house: &[u8],
    changes: &[u8],
) -> PyResult<(String, Planned, String, Plain<'py>)> {
    let found = call(py, || edgenail::changes::what_if(&before.plan, house, changes))?;
    let (json, table) = call(py, || Ok((found.changes.json(), found.table())))?;
    Ok((found.house, Planned::from(found.plan), json, plain(py, table)?))
}
