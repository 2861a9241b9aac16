//! Units in which lengths are written.

use super::Length;
use serde::{Deserialize, Serialize};

/// A unit in which lengths are written.
///
/// An inch is 25.4 mm exactly (international inch, NIST SP 811, appendix B; from memory, not checked against
/// print), so each of these is a whole number of the library's units.
///
/// ```
/// use edgenail::Length;
/// use edgenail::length::Unit;
/// assert_eq!(Unit::Foot.length(), Length::inches(12));
/// assert_eq!(Unit::Inch.length() * 10, Length::mm(254));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Unit {
    /// Inch.
    Inch,
    /// Foot, 12 inches.
    Foot,
    /// Millimetre.
    Millimetre,
    /// Centimetre.
    Centimetre,
    /// Metre.
    Metre,
}

impl Unit {
    /// Every unit.
    pub const ALL: [Self; 5] = [
        Self::Inch,
        Self::Foot,
        Self::Millimetre,
        Self::Centimetre,
        Self::Metre,
    ];

    /// One of this unit.
    pub const fn length(self) -> Length {
        match self {
            Self::Inch => Length::inches(1),
            Self::Foot => Length::feet(1),
            Self::Millimetre => Length::mm(1),
            Self::Centimetre => Length::mm(10),
            Self::Metre => Length::mm(1000),
        }
    }

    /// The unit of this name or abbreviation in lower case, such as `feet` or `mm`.
    ///
    /// ```
    /// use edgenail::length::Unit;
    /// assert_eq!(Unit::named("inches"), Some(Unit::Inch));
    /// assert_eq!(Unit::named("furlong"), None);
    /// ```
    pub fn named(name: &str) -> Option<Self> {
        match name {
            "in" | "inch" | "inches" => Some(Self::Inch),
            "ft" | "foot" | "feet" => Some(Self::Foot),
            "mm" | "millimetre" | "millimetres" | "millimeter" | "millimeters" => Some(Self::Millimetre),
            "cm" | "centimetre" | "centimetres" | "centimeter" | "centimeters" => Some(Self::Centimetre),
            "m" | "metre" | "metres" | "meter" | "meters" => Some(Self::Metre),
            _ => None,
        }
    }
}
