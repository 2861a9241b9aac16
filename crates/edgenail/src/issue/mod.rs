//! What is wrong with the input, as values.

use serde::Serialize;

/// One fault of the input: where it is, what was found, what is allowed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Issue {
    /// A stable name of the kind of fault.
    pub code: Code,
    /// JSON pointer to the field, such as `/walls/0/openings/2/width`.
    pub path: String,
    /// The wall that the fault belongs to, empty when it belongs to none.
    pub wall: String,
    /// What was found, as the user wrote it.
    pub found: String,
    /// What is allowed there.
    pub allowed: String,
    /// A sentence for a person.
    pub message: String,
}

/// Kinds of fault, with numbers that never change.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
#[non_exhaustive]
pub enum Code {
    /// The text is not JSON.
    Syntax = 100,
}
