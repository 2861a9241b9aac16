//! What ends a computation without a plan.

mod remedy;

pub use remedy::{Remedy, Unmet};

use crate::issue::Issue;
use crate::length::{LengthError, LengthFault};
use serde::{Serialize, Serializer};
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
    /// A text or a double that stands alone is no length.
    Length {
        /// What is wrong with it.
        #[serde(rename = "issues", serialize_with = "one_issue")]
        error: LengthError,
    },
    /// No layout of a wall satisfies the rules that may not be broken; of several such walls the first in the house.
    NoLayout {
        /// The wall's name.
        wall: String,
        /// A sentence for a person: which rule, and where.
        message: String,
        /// What would make it possible, each tried; empty where nothing that was tried does, and from a search alone.
        remedies: Vec<Remedy>,
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
            Self::Length { error } => error.fmt(f),
            Self::NoLayout {
                wall,
                message,
                remedies,
            } => {
                write!(f, "{wall}: {message}")?;
                remedies.iter().try_for_each(|remedy| write!(f, "\n{remedy}"))
            }
            Self::Internal { message } => write!(f, "internal error: {message}"),
        }
    }
}

impl std::error::Error for Error {}

impl From<LengthError> for Error {
    fn from(error: LengthError) -> Self {
        Self::Length { error }
    }
}

/// A length's fault in the form of the faults of a document.
fn one_issue<S: Serializer>(error: &LengthError, serializer: S) -> Result<S::Ok, S::Error> {
    #[derive(Serialize)]
    struct LengthIssue<'a> {
        code: LengthFault,
        path: &'a str,
        wall: &'a str,
        found: &'a str,
        allowed: &'a str,
        message: String,
    }
    let issue = LengthIssue {
        code: error.fault,
        path: "",
        wall: "",
        found: &error.text,
        allowed: error.fault.allowed(),
        message: error.to_string(),
    };
    [issue].serialize(serializer)
}

#[cfg(test)]
mod tests;
