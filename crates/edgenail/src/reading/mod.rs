//! From JSON to a house: the tree, the table of fields, and every fault at once.

#[expect(dead_code, reason = "meanings are for the schema and the documents")]
mod field;
mod fields;
mod house;
mod nearest;
mod nested;
mod notes;
mod object;
mod scalar;
mod spot;
mod tree;

use crate::house::House;
use crate::issue::Issue;
use notes::Notes;
use object::Object;
use serde::Serialize;
use spot::Spot;
use std::cell::RefCell;

/// Something that the user did not say and the library filled in, or a length that it rounded.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Assumed {
    /// JSON pointer to the field.
    pub path: String,
    /// What it was taken to be.
    pub value: String,
    /// Why: where the default comes from, or how the value follows from others.
    pub why: String,
}

/// Reads a house from JSON.
///
/// What is not said and has a default is filled in and listed. Numbers for lengths are in the document's `unit`, by
/// default inches; text may name its unit.
///
/// # Errors
///
/// Every fault of the document, in its order: each with a JSON pointer, the wall, what was found and what is allowed.
///
/// ```
/// let faults = edgenail::read_house(br#"{"name": "h", "walls": [{"name": "n", "lenght": 12}]}"#).unwrap_err();
/// assert!(faults.iter().any(|fault| fault.path == "/walls/0/lenght" && fault.message.contains("`length`")));
/// ```
pub fn read_house(bytes: &[u8]) -> Result<(House, Vec<Assumed>), Vec<Issue>> {
    let document = tree::parse(bytes)?;
    let notes = RefCell::new(Notes::new());
    let read = {
        let spot = Spot {
            notes: &notes,
            path: "",
            node: &document,
        };
        match document.kind {
            tree::Kind::Object(_) => Some(house::house(&Object::new(spot, &fields::HOUSE, false))),
            _ => spot.wrong_kind("an object: a house"),
        }
    };
    let assumed = notes.into_inner().finish()?;
    match read {
        Some(house) => Ok((house, assumed)),
        None => Err(Vec::new()),
    }
}
