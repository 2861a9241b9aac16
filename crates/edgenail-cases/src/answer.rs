//! What a language answers to a case, and the answers of Rust itself.

use crate::case::Case;

/// What an operation gave.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Answer {
    /// A result: a JSON document.
    Result(String),
    /// An error: the document that every language gives for it.
    Error(String),
}

impl Answer {
    /// The document.
    pub fn text(&self) -> &str {
        match self {
            Self::Result(text) | Self::Error(text) => text,
        }
    }
}

/// The answer of the Rust library.
///
/// # Errors
///
/// A sentence when the operation is unknown or its input has another form.
pub fn rust(case: &Case) -> Result<Answer, String> {
    match case.operation.as_str() {
        "plan" => Ok(match edgenail::plan_json(&case.text) {
            Ok(plan) => Answer::Result(plan.json()),
            Err(error) => Answer::Error(error.json()),
        }),
        other => Err(format!("no operation `{other}`")),
    }
}
