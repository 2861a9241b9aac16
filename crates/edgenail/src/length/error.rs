//! What is wrong with a length as it was written.

use serde::Serialize;
use std::fmt;

/// Kinds of fault in a length as it was written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
#[non_exhaustive]
pub enum LengthFault {
    /// There is no number.
    Empty,
    /// More than 200 characters.
    TooLong,
    /// A character that no length is written with.
    UnknownCharacter,
    /// A word that is not a unit.
    UnknownUnit,
    /// The parts do not follow each other as in a length.
    Malformed,
    /// A comma: it may mark decimals or thousands.
    Comma,
    /// A sign that is not at the front, or a second sign.
    SignInside,
    /// Two numbers without a unit between them, such as `8-1`: feet and inches, or something else.
    TwoNumbers,
    /// A dash in a number of feet, such as `8-1/2'`: 8 ft 1/2 in., or 8 1/2 ft.
    DashedFeet,
    /// Inches before feet.
    FeetAfterInches,
    /// Feet that are not whole, with inches after them.
    BrokenFeet,
    /// A fraction after a whole number that is one or more, such as `97 9/8`.
    ImproperFraction,
    /// A fraction over zero.
    ZeroDenominator,
    /// A number of more than 18 digits.
    TooManyDigits,
    /// Not a whole number of units where only an exact length will do, or a figure marked as rounded.
    NotExact,
    /// A double that is infinite or not a number.
    NotFinite,
    /// Beyond the coordinate limit.
    OutOfRange,
}

impl LengthFault {
    /// What is wrong, as the end of a sentence that begins with the text.
    pub const fn problem(self) -> &'static str {
        match self {
            Self::Empty => "has no number",
            Self::TooLong => "is too long",
            Self::UnknownCharacter => "has a character that no length is written with",
            Self::UnknownUnit => "has an unknown unit",
            Self::Malformed => "is not written as a length",
            Self::Comma => "has a comma, which may mark decimals or thousands",
            Self::SignInside => "has a sign inside or more than one sign",
            Self::TwoNumbers => "has two numbers without a unit between them",
            Self::DashedFeet => "may be feet and a fraction of an inch, or a broken number of feet",
            Self::FeetAfterInches => "has feet after inches",
            Self::BrokenFeet => "has inches after feet that are not whole",
            Self::ImproperFraction => "has a fraction of one or more after a whole number",
            Self::ZeroDenominator => "has a fraction over zero",
            Self::TooManyDigits => "has too many digits",
            Self::NotExact => "is not exact",
            Self::NotFinite => "is not finite",
            Self::OutOfRange => "is out of range",
        }
    }

    /// What is allowed, as a phrase for a person.
    pub const fn allowed(self) -> &'static str {
        match self {
            Self::Empty | Self::Malformed | Self::UnknownCharacter => {
                "97 1/8, 97-1/8\", 97.125 in., 8' 1 1/8\", 2467 mm, 1.2 m"
            }
            Self::TooLong => "at most 200 characters",
            Self::UnknownUnit => "in., ft, mm, cm, m, ' or \"",
            Self::Comma => "a point for decimals and no mark for thousands",
            Self::SignInside => "one sign at the front",
            Self::TwoNumbers | Self::DashedFeet => {
                "8' 1\" for feet and inches, 8 1/2 for a number and a fraction"
            }
            Self::FeetAfterInches => "feet before inches",
            Self::BrokenFeet => "whole feet before inches, or feet alone",
            Self::ImproperFraction => "a fraction under one after a whole number",
            Self::ZeroDenominator => "a denominator of 1 or more",
            Self::TooManyDigits => "at most 18 digits in a number",
            Self::NotExact => "a whole number of 1/40640 in., without a mark of rounding",
            Self::NotFinite => "a finite number",
            Self::OutOfRange => "within 2^29/40640 in. of zero, about 1,100 ft",
        }
    }
}

/// A length that could not be read.
///
/// ```
/// use edgenail::Length;
/// use edgenail::length::{LengthFault, Unit};
/// let error = Length::parse("97,125", Unit::Inch).unwrap_err();
/// assert_eq!(error.fault, LengthFault::Comma);
/// assert_eq!(
///     error.to_string(),
///     "`97,125` has a comma, which may mark decimals or thousands; \
///      allowed: a point for decimals and no mark for thousands",
/// );
/// ```
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize)]
pub struct LengthError {
    /// What is wrong.
    pub fault: LengthFault,
    /// The length as it was found, cut after 200 characters.
    pub text: String,
}

impl LengthError {
    pub(super) fn new(fault: LengthFault, text: &str) -> Self {
        Self {
            fault,
            text: text.chars().take(super::TEXT_LIMIT).collect(),
        }
    }
}

impl fmt::Display for LengthError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "`{}` {}; allowed: {}",
            self.text,
            self.fault.problem(),
            self.fault.allowed()
        )
    }
}

impl std::error::Error for LengthError {}
