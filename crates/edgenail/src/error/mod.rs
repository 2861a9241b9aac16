//! What ends a computation without a plan.

use crate::issue::Issue;
use serde::Serialize;
use std::fmt;

/// Why there is no plan.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "error", rename_all = "snake_case")]
#[non_exhaustive]
pub enum Error {
    /// The input is wrong; every fault is listed, in the order of the document.
    Issues {
        /// The faults.
        issues: Vec<Issue>,
    },
    /// No layout of a wall satisfies the rules that may not be broken.
    NoLayout {
        /// The wall's name.
        wall: String,
        /// A sentence for a person: which rule, and where.
        message: String,
    },
    /// The library contradicted itself; a fault of the library, never of the input.
    Internal {
        /// What did not agree.
        message: String,
    },
}

impl Error {
    /// The faults of the input; empty for other kinds.
    pub fn issues(&self) -> &[Issue] {
        match self {
            Self::Issues { issues } => issues,
            _ => &[],
        }
    }

    /// The error as JSON, the same in every language.
    pub fn json(&self) -> String {
        // Serializing text into memory has no way to fail.
        serde_json::to_string(self).unwrap_or_default()
    }
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Issues { issues } => {
                for (position, issue) in issues.iter().enumerate() {
                    let line = if position == 0 { "" } else { "\n" };
                    write!(f, "{line}{}: {}", issue.path, issue.message)?;
                }
                Ok(())
            }
            Self::NoLayout { wall, message } => write!(f, "{wall}: {message}"),
            Self::Internal { message } => write!(f, "internal error: {message}"),
        }
    }
}

impl std::error::Error for Error {}
