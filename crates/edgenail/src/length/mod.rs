//! Exact lengths.

use serde::{Deserialize, Serialize};
use std::fmt;
use std::iter::Sum;
use std::ops::{Add, AddAssign, Mul, Neg, Sub, SubAssign};

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
    /// The largest coordinate that the library accepts, about 1,100 ft.
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
    /// Zero or less when the length is; `spacing` must be above zero.
    pub const fn spaces(self, spacing: Self) -> i64 {
        let quotient = self.0.div_euclid(spacing.0);
        if self.0.rem_euclid(spacing.0) == 0 {
            quotient
        } else {
            quotient + 1
        }
    }

    /// Half the length, rounded down to a whole unit.
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

impl fmt::Display for Length {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}/{} in.", self.0, Self::PER_INCH)
    }
}
