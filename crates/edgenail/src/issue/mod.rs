//! What is wrong with the input, as values.

mod code;

pub use code::Code;

use serde::Serialize;

/// One fault of the input: where it is, what was found, what is allowed.
///
/// ```
/// let issues = edgenail::read_house(br#"{"walls": [{"name": "north", "length": "-8'"}]}"#).unwrap_err();
/// assert_eq!(issues[0].path, "/walls/0/length");
/// assert_eq!(issues[0].wall, "north");
/// assert_eq!(issues[0].code.name(), "out_of_range");
/// ```
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Issue {
    /// A stable name of the kind of fault.
    pub code: Code,
    /// JSON pointer to the field, such as `/walls/0/segments/2/from`.
    pub path: String,
    /// The wall that the fault belongs to, empty when it belongs to none.
    pub wall: String,
    /// What was found, as the user wrote it; empty where nothing was.
    pub found: String,
    /// What is allowed there.
    pub allowed: String,
    /// A sentence for a person.
    pub message: String,
}
