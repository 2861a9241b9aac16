//! What is wrong with the input, as values.

mod code;

pub use code::Code;

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

/// The entry that ends a list of faults which would be too long.
pub(crate) fn more_faults(count: usize) -> Issue {
    Issue {
        code: Code::MoreFaults,
        path: String::new(),
        wall: String::new(),
        found: format!("{count} more"),
        allowed: "no faults".into(),
        message: format!("{count} more faults are not listed."),
    }
}
