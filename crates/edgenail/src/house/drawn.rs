//! How lengths are written on drawings.

use crate::length::{Finest, Style};
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

impl DrawnIn {
    /// The look of a length.
    ///
    /// ```
    /// use edgenail::Length;
    /// use edgenail::house::DrawnIn;
    /// use edgenail::length::Rounding;
    /// let shown = Length::sixteenths(8).show(DrawnIn::Inches.style(), Rounding::Nearest);
    /// assert_eq!(shown.text, "1/2\"");
    /// ```
    pub const fn style(self) -> Style {
        match self {
            Self::Inches => Style::Inches(Finest::Sixteenth),
            Self::FeetInches => Style::FeetInches(Finest::Sixteenth),
            Self::Millimetres => Style::Millimetres,
        }
    }
}
