//! The shared cases of `tests/cases`: loaded, run and compared.
//!
//! One set of cases serves every language. A case names an operation of the library, gives its input, says what
//! must come out, and names the source of that knowledge. A runner for a language only says how the operation
//! is called there; see [`run::run`].
//!
//! [`library`] builds the C library and programs against it, for the tests of the C face.

pub mod answer;
pub mod attack;
pub mod case;
pub mod compare;
pub mod library;
pub mod run;

use std::path::PathBuf;

/// The root of the project.
pub fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../..")
}
