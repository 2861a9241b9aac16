//! The whole plan of a house.

use crate::error::Error;
use crate::issue::{Code, Issue};
use crate::report::{Definition, definitions};
use crate::table::Table;

/// The plan of a house: immutable, so that any number of threads may read it.
#[derive(Clone, Debug)]
pub struct Plan {
    json: String,
}

impl Plan {
    /// The whole plan as one JSON document, with the same bytes in every language.
    pub fn json(&self) -> String {
        self.json.clone()
    }

    /// Every table of the plan, each defined in [`crate::report`].
    pub fn tables(&self) -> Vec<Table> {
        definitions().iter().map(Definition::empty).collect()
    }

    /// The table of this name.
    pub fn table(&self, name: &str) -> Option<Table> {
        definitions()
            .iter()
            .find(|table| table.name == name)
            .map(Definition::empty)
    }

    /// The drawing of a wall.
    pub fn wall_svg(&self, _wall: &str) -> Option<String> {
        None
    }
}

/// Plans the house that this JSON text describes.
///
/// # Errors
///
/// [`Error::Issues`] when the text is not JSON.
pub fn plan_json(text: &str) -> Result<Plan, Error> {
    plan_bytes(text.as_bytes())
}

/// Plans the house that these bytes of JSON describe.
///
/// # Errors
///
/// As [`plan_json`]; bytes that are not UTF-8 are an issue too.
pub fn plan_bytes(bytes: &[u8]) -> Result<Plan, Error> {
    match serde_json::from_slice::<serde_json::Value>(bytes) {
        Ok(house) => Ok(Plan {
            json: serde_json::json!({ "house": house }).to_string(),
        }),
        Err(error) => Err(Error::Issues {
            issues: vec![Issue {
                code: Code::Syntax,
                path: String::new(),
                wall: String::new(),
                found: String::from_utf8_lossy(bytes).chars().take(40).collect(),
                allowed: "JSON".into(),
                message: error.to_string(),
            }],
        }),
    }
}
