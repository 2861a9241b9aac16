//! The shared cases of `tests/cases`: loaded, run and compared.
//!
//! One set of cases serves every language. A case names an operation of the library, gives its input, says what
//! must come out, and names the source of that knowledge. A runner for a language only says how the operation
//! is called there; see [`run::run`].
//!
//! [`library`] builds the C library and programs against it, for the tests of the C face; [`scalar`] has those cases that
//! functions for cells can ask.

pub mod answer;
pub mod attack;
pub mod case;
pub mod compare;
pub mod library;
pub mod mirror;
pub mod panels;
pub mod run;
pub mod scalar;

use serde_json::Value;
use std::fs;
use std::path::{Path, PathBuf};

/// The root of the project.
pub fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../..")
}

/// A JSON file.
///
/// # Errors
///
/// The file's path and what is wrong with it.
pub fn json(path: &Path) -> Result<Value, String> {
    let text = fs::read_to_string(path).map_err(|error| error.to_string());
    text.and_then(|text| serde_json::from_str(&text).map_err(|error| error.to_string()))
        .map_err(|fault| format!("{}: {fault}", path.display()))
}

/// The JSON files of a folder, sorted by name.
///
/// # Errors
///
/// The folder cannot be read.
pub fn json_files(folder: &Path) -> Result<Vec<PathBuf>, String> {
    let entries = fs::read_dir(folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    let paths = entries.filter_map(|entry| entry.ok().map(|entry| entry.path()));
    let mut files: Vec<PathBuf> = paths
        .filter(|path| path.extension().is_some_and(|end| end == "json"))
        .collect();
    files.sort();
    Ok(files)
}
