//! Answers to questions of capacity.

use crate::errors::call;
use pyo3::prelude::*;

/// The answer to the question that JSON text or bytes ask: (JSON, steps as text, as Markdown, as HTML).
#[pyfunction]
#[pyo3(signature = (question, /))]
pub(crate) fn capacity(py: Python<'_>, question: &[u8]) -> PyResult<(String, String, String, String)> {
    call(py, || {
        let answered = edgenail::answer::capacity(question)?;
        let steps = &answered.derivation;
        let (text, markdown, html) = (steps.text(), steps.markdown(), steps.html());
        Ok((answered.json, text, markdown, html))
    })
}
