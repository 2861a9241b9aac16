//! Houses of a street cut together.

use crate::errors::call;
use crate::plan::Planned;
use crate::table::{Plain, plain};
use edgenail::plan::Plan;
use edgenail::street::Street;
use pyo3::prelude::*;

/// The street: (as JSON, its deliveries as a table).
#[pyfunction]
#[pyo3(signature = (plans, effort_most, /))]
#[expect(
    clippy::needless_pass_by_value,
    reason = "arguments are taken out of Python by value"
)]
pub(crate) fn street<'py>(
    py: Python<'py>,
    plans: Vec<PyRef<'py, Planned>>,
    effort_most: u64,
) -> PyResult<(String, Plain<'py>)> {
    let plans: Vec<&Plan> = plans.iter().map(|planned| &planned.plan).collect();
    let (json, table) = call(py, || {
        let street = Street::of(&plans, effort_most)?;
        Ok((street.json(), street.table()))
    })?;
    Ok((json, plain(py, table)?))
}
