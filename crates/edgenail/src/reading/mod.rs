//! From JSON text to a house: every fault is named, every default is listed.
//!
//! The text becomes a [`tree`] that keeps numbers as they were written. The tree becomes a
//! [`House`](crate::house::House) through one table of [`fields`], which also gives the JSON schema and the
//! documentation of the input. What no single field can say, such as two openings that overlap, is checked last.

pub mod tree;

use serde::Serialize;

/// The most faults that are listed.
pub const ISSUES_MOST: usize = 1_000;

/// A value that the input left to the library.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Assumed {
    /// JSON pointer to the field.
    pub path: String,
    /// The value that was taken.
    pub value: String,
    /// Why this value.
    pub why: String,
}
