//! What is wrong with the text of a decimal number.

use serde::Serialize;
use std::fmt;

/// Kinds of fault in the text of a decimal number.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
#[non_exhaustive]
pub enum DecimalFault {
    /// Not an optional sign, digits, an optional point with digits and an optional exponent.
    NotANumber,
    /// More digits than are kept exactly.
    TooManyDigits,
    /// More digits after the point than an amount has.
    TooFine,
    /// Too large.
    OutOfRange,
}

impl DecimalFault {
    /// What is allowed, as a phrase for a person.
    pub const fn allowed(self) -> &'static str {
        match self {
            Self::NotANumber => "a number such as 0.131, with a point and without a comma or a unit",
            Self::TooManyDigits => "at most 15 digits, and at most 15 of them after the point",
            Self::TooFine => "at most four digits after the point",
            Self::OutOfRange => "a number under 100,000,000,000",
        }
    }
}

/// A text that is not an exact decimal number, or not one of the wanted kind.
///
/// ```
/// use edgenail::Amount;
/// use edgenail::decimal::DecimalFault;
/// let error = Amount::parse("0.12345").unwrap_err();
/// assert_eq!(error.fault, DecimalFault::TooFine);
/// assert_eq!(error.to_string(), "`0.12345` is finer than 1/10,000; allowed: at most four digits after the point");
/// ```
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize)]
pub struct DecimalError {
    /// What is wrong.
    pub fault: DecimalFault,
    /// The text as it was found, cut after 200 characters.
    pub text: String,
}

impl DecimalError {
    pub(crate) fn new(fault: DecimalFault, text: &str) -> Self {
        Self {
            fault,
            text: text.chars().take(200).collect(),
        }
    }
}

impl fmt::Display for DecimalError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let problem = match self.fault {
            DecimalFault::NotANumber => "is not a decimal number",
            DecimalFault::TooManyDigits => "has too many digits",
            DecimalFault::TooFine => "is finer than 1/10,000",
            DecimalFault::OutOfRange => "is too large",
        };
        write!(f, "`{}` {problem}; allowed: {}", self.text, self.fault.allowed())
    }
}

impl std::error::Error for DecimalError {}
