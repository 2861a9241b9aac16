//! How lengths are written on drawings.

use serde::Serialize;

/// How lengths are written on drawings.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum DrawnIn {
    /// Inches and sixteenths.
    Inches,
    /// Feet, inches and sixteenths.
    FeetInches,
    /// Millimetres.
    Millimetres,
}
