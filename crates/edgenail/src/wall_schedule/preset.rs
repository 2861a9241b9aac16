//! Ways of working that a row names in a word.

use super::list::entries;
use crate::error::Error;
use crate::issue::{Code, Issue};
use serde::Deserialize;
use serde_json::{Map, Value, json};

/// A way of working by name; the names are the words of a row's `practice`.
#[derive(Clone, Debug, PartialEq, Deserialize)]
pub struct Preset {
    /// Its name.
    pub name: String,
    /// What it means.
    pub meaning: String,
    /// Where it comes from.
    pub source: String,
    /// The fields of `practice` that it says; the others keep their defaults.
    pub practice: Map<String, Value>,
}

/// Every preset, the one first that a blank `practice` means.
///
/// # Errors
/// The library's own list cannot be read: a fault of the library.
///
/// ```
/// let presets = edgenail::wall_schedule::presets()?;
/// assert!(presets.iter().any(|preset| preset.name == "flat_blocked"));
/// # Ok::<(), edgenail::Error>(())
/// ```
pub fn presets() -> Result<Vec<Preset>, Error> {
    serde_json::from_str(include_str!("presets.json")).map_err(|error| Error::Internal {
        message: format!("presets: {error}"),
    })
}

/// The practice that a text such as `flat blocked 4/12` says: a preset, then nailing at panel edges and on members between
/// in inches if it is not the default.
pub(super) fn practice(text: &str) -> Result<Value, Error> {
    let text = text.trim();
    let (name, nailing) = match text.rsplit_once(char::is_whitespace) {
        Some((name, last)) if last.contains('/') => (name, Some(last)),
        _ if text.contains('/') => ("", Some(text)),
        _ => (text, None),
    };
    let name = name.trim().to_ascii_lowercase().replace([' ', '-'], "_");
    let presets = presets()?;
    let found = presets.iter().find(|preset| preset.name == name);
    let Some(preset) = found.or_else(|| presets.first().filter(|_| name.is_empty())) else {
        return Err(unknown(text, &presets));
    };
    let mut practice = preset.practice.clone();
    if let Some(nailing) = nailing {
        let written = nailing.replace('/', ",");
        let spacings = entries(&written, "practice", ["edge", "field"]);
        let Ok([[edge, field]]) = spacings.as_deref() else {
            return Err(unknown(text, &presets));
        };
        practice.insert(
            "assembly".to_owned(),
            json!({"edge_spacing": edge, "field_spacing": field}),
        );
    }
    Ok(Value::Object(practice))
}

fn unknown(text: &str, presets: &[Preset]) -> Error {
    let names: Vec<String> = presets
        .iter()
        .map(|preset| preset.name.replace('_', " "))
        .collect();
    let allowed = format!(
        "{}; then, if it is not 6/12, nailing at edges and between such as 4/12",
        names.join(", ")
    );
    Error::Issues {
        issues: vec![Issue {
            code: Code::NotAChoice,
            path: "/practice".to_owned(),
            wall: String::new(),
            found: text.to_owned(),
            message: format!("`{text}` is no practice: {allowed}"),
            allowed,
        }],
    }
}
