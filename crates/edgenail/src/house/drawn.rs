//! How lengths are written on drawings and in sentences.

use crate::length::{Finest, Style};
use serde::Serialize;

/// How lengths are written on drawings and in sentences.
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

    /// The look of a length in a sentence: finer than on a drawing, and never in feet.
    ///
    /// ```
    /// use edgenail::Length;
    /// use edgenail::house::DrawnIn;
    /// use edgenail::length::Rounding;
    /// let shown = |drawn: DrawnIn| Length::inches(24).show(drawn.in_text(), Rounding::Nearest).text;
    /// assert_eq!(shown(DrawnIn::FeetInches), "24\"");
    /// assert_eq!(shown(DrawnIn::Millimetres), "609.6 mm");
    /// ```
    pub const fn in_text(self) -> Style {
        match self {
            Self::Inches | Self::FeetInches => Style::Inches(Finest::SixtyFourth),
            Self::Millimetres => Style::Millimetres,
        }
    }
}
