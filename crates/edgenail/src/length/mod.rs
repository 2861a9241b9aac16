//! Exact lengths: the type, reading from text and from doubles, printing, areas.
//!
//! One unit is 1/40640 in., the largest that divides 1/64 in., 1/5 in. and 1/10 mm alike; see [`Length`].
//! [`Length::parse`] reads what people write, [`Length::show`] prints rounded in a stated direction, and plain
//! printing is exact and read back.

mod area;
mod display;
mod double;
mod error;
mod parse;
mod token;
mod unit;

pub use area::Area;
pub use display::{Finest, Rounding, Shown, Style};
pub use error::{LengthError, LengthFault};
pub use parse::Parsed;
pub use unit::Unit;

use serde::{Deserialize, Serialize};
use std::iter::Sum;
use std::ops::{Add, AddAssign, Mul, Neg, Sub, SubAssign};

/// The most characters of a text that is read as a length.
const TEXT_LIMIT: usize = 200;

/// A length, exact in units of 1/40640 inch (1/1600 mm).
///
/// Sixteenths and sixty-fourths of an inch, 19.2 in. spacing and tenths of a millimetre are whole numbers
/// of units, so equality of two lengths means equality.
///
/// ```
/// use edgenail::Length;
/// assert_eq!(Length::inches(97) + Length::sixteenths(2), Length::from_units(3_947_160));
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Length(i64);

impl Length {
    /// Units in one inch.
    pub const PER_INCH: i64 = 40_640;
    /// Units in one millimetre.
    pub const PER_MM: i64 = 1_600;
    /// Nothing.
    pub const ZERO: Self = Self(0);
    /// The largest coordinate that the library accepts, about 1,100 ft: every cross product of two differences
    /// of such coordinates fits an `i64`.
    pub const LIMIT: Self = Self(1 << 29);

    /// A length of so many units of 1/40640 inch.
    pub const fn from_units(units: i64) -> Self {
        Self(units)
    }

    /// Whole inches.
    pub const fn inches(count: i64) -> Self {
        Self(count * Self::PER_INCH)
    }

    /// Whole feet.
    pub const fn feet(count: i64) -> Self {
        Self(count * 12 * Self::PER_INCH)
    }

    /// Sixteenths of an inch.
    pub const fn sixteenths(count: i64) -> Self {
        Self(count * (Self::PER_INCH / 16))
    }

    /// Whole millimetres.
    pub const fn mm(count: i64) -> Self {
        Self(count * Self::PER_MM)
    }

    /// The number of units of 1/40640 inch.
    pub const fn units(self) -> i64 {
        self.0
    }

    /// Inches as a double, for display and plots only.
    #[expect(clippy::cast_precision_loss, reason = "coordinates stay below 2^53 units")]
    pub fn as_inches(self) -> f64 {
        self.0 as f64 / Self::PER_INCH as f64
    }

    /// The length without its sign.
    #[must_use]
    pub const fn abs(self) -> Self {
        Self(self.0.abs())
    }

    /// How many spaces no wider than `spacing` divide this length: the quotient, rounded up.
    ///
    /// Zero or less when the length is.
    ///
    /// # Panics
    /// `spacing` is zero. Spacings of a house are checked where they are read.
    ///
    /// ```
    /// use edgenail::Length;
    /// assert_eq!(Length::inches(96).spaces(Length::inches(6)), 16);
    /// assert_eq!(Length::inches(97).spaces(Length::inches(6)), 17);
    /// ```
    pub const fn spaces(self, spacing: Self) -> i64 {
        let quotient = self.0.div_euclid(spacing.0);
        if self.0.rem_euclid(spacing.0) == 0 {
            quotient
        } else {
            quotient + 1
        }
    }

    /// Half the length, rounded down to a whole unit.
    ///
    /// ```
    /// use edgenail::Length;
    /// assert_eq!(Length::inches(3).half(), Length::sixteenths(24));
    /// assert_eq!(Length::from_units(-1).half(), Length::from_units(-1));
    /// ```
    #[must_use]
    pub const fn half(self) -> Self {
        Self(self.0.div_euclid(2))
    }
}

impl Add for Length {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}
impl Sub for Length {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0 - other.0)
    }
}
impl Neg for Length {
    type Output = Self;
    fn neg(self) -> Self {
        Self(-self.0)
    }
}
impl Mul<i64> for Length {
    type Output = Self;
    fn mul(self, count: i64) -> Self {
        Self(self.0 * count)
    }
}
impl AddAssign for Length {
    fn add_assign(&mut self, other: Self) {
        self.0 += other.0;
    }
}
impl SubAssign for Length {
    fn sub_assign(&mut self, other: Self) {
        self.0 -= other.0;
    }
}
impl Sum for Length {
    fn sum<I: Iterator<Item = Self>>(iter: I) -> Self {
        iter.fold(Self::ZERO, Add::add)
    }
}

#[cfg(test)]
mod tests;
