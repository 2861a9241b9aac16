//! What would make an impossible wall possible.

use serde::Serialize;
use serde_json::Value;
use std::fmt;

/// A demand of practice or stock that cannot be met beside the others, and what was tried in its place.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Unmet {
    /// JSON pointer to the field that demands it, in the house as it is understood, where every field is said.
    pub path: String,
    /// What the field says.
    pub found: Value,
    /// What was tried in its place, as the field takes it.
    pub wanted: Value,
    /// What is demanded, for a person.
    pub demand: String,
    /// What would make it possible, for a person.
    pub remedy: String,
}

impl Unmet {
    /// What the field says, as a document writes it; text without quotes.
    pub fn found_text(&self) -> String {
        written(&self.found)
    }

    /// What was tried in its place, likewise.
    pub fn wanted_text(&self) -> String {
        written(&self.wanted)
    }
}

fn written(value: &Value) -> String {
    value.as_str().map_or_else(|| value.to_string(), str::to_owned)
}

/// A change of a few demands under which the wall has a layout: it was tried. Where it has several parts, none of them may
/// be left out.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Remedy {
    /// The demands that it changes.
    pub changes: Vec<Unmet>,
}

/// Which demands, and what would make it possible.
impl fmt::Display for Remedy {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for change in &self.changes {
            write!(f, "{}: {}; ", change.path, change.demand)?;
        }
        let remedies: Vec<&str> = self.changes.iter().map(|change| change.remedy.as_str()).collect();
        write!(f, "possible with {}", remedies.join(" and "))
    }
}
