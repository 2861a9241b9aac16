//! Errors of the core as exceptions of `edgenail.errors`.

use pyo3::prelude::*;
use pyo3::types::PyType;
use std::panic::{AssertUnwindSafe, catch_unwind};

/// Calls the core off the interpreter's lock; a panic there becomes an internal error.
///
/// `PyO3` alone would raise `PanicException`, which `except Exception` does not catch.
pub(crate) fn call<T: Send>(
    py: Python<'_>,
    body: impl FnOnce() -> Result<T, edgenail::Error> + Send,
) -> PyResult<T> {
    let result = py.detach(|| {
        catch_unwind(AssertUnwindSafe(body)).unwrap_or_else(|_| {
            let message = "the library failed; please report the input that led here".into();
            Err(edgenail::Error::Internal { message })
        })
    });
    result.map_err(|error| raise(py, &error))
}

/// The exception for an error; `edgenail.errors` makes it from the error's JSON.
fn raise(py: Python<'_>, error: &edgenail::Error) -> PyErr {
    match exception(py, error) {
        Ok(exception) => PyErr::from_value(exception),
        Err(failure) => failure,
    }
}

fn exception<'py>(py: Python<'py>, error: &edgenail::Error) -> PyResult<Bound<'py, PyAny>> {
    let class = py
        .import("edgenail.errors")?
        .getattr("EdgenailError")?
        .cast_into::<PyType>()?;
    class.call_method1("from_json", (error.json(), error.to_string()))
}
