//! Exact areas.

use super::Length;
use crate::decimal::{Decimal, divide_half_up};
use serde::{Serialize, Serializer, ser};
use std::fmt;
use std::iter::Sum;
use std::ops::{Add, AddAssign, Mul, Neg, Sub, SubAssign};

/// An area, exact in square units of [`Length`].
///
/// In JSON it is a number of square feet, rounded half up to 1/10,000: an exact count would pass the whole numbers
/// that a double carries. The exact area follows from the lengths that are written beside it.
///
/// ```
/// use edgenail::{Area, Length};
/// let sheet = Length::feet(4) * Length::feet(8);
/// assert_eq!(sheet, Area::SQUARE_FOOT * 32);
/// assert_eq!(sheet.to_string(), "32.00 sq ft");
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Area(i128);

impl Area {
    /// Nothing.
    pub const ZERO: Self = Self(0);
    /// One square inch.
    pub const SQUARE_INCH: Self = Self((Length::PER_INCH as i128) * (Length::PER_INCH as i128));
    /// One square foot.
    pub const SQUARE_FOOT: Self = Self(Self::SQUARE_INCH.0 * 144);

    /// An area of so many square units of 1/40640 inch.
    pub const fn from_square_units(count: i128) -> Self {
        Self(count)
    }

    /// The number of square units of 1/40640 inch.
    pub const fn square_units(self) -> i128 {
        self.0
    }

    /// Square feet as a double, for display only.
    ///
    /// ```
    /// use edgenail::Length;
    /// assert!(((Length::feet(4) * Length::inches(6)).as_square_feet() - 2.0).abs() < f64::EPSILON);
    /// ```
    #[expect(clippy::cast_precision_loss, reason = "a double is for display only")]
    pub fn as_square_feet(self) -> f64 {
        self.0 as f64 / Self::SQUARE_FOOT.0 as f64
    }

    /// Square feet, rounded half up to so many places after the point; nothing if that takes more than 15 digits.
    ///
    /// ```
    /// use edgenail::{Decimal, Length};
    /// let piece = Length::inches(16) * Length::inches(97);
    /// assert_eq!(piece.square_feet(2), Some(Decimal::hundredths(1_078)));
    /// ```
    pub fn square_feet(self, places: u32) -> Option<Decimal> {
        Decimal::ONE.scaled(self.0, Self::SQUARE_FOOT.0, places)
    }
}

impl Mul for Length {
    type Output = Area;
    fn mul(self, other: Self) -> Area {
        Area(i128::from(self.units()) * i128::from(other.units()))
    }
}
impl Add for Area {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}
impl Sub for Area {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0 - other.0)
    }
}
impl Neg for Area {
    type Output = Self;
    fn neg(self) -> Self {
        Self(-self.0)
    }
}
impl Mul<i64> for Area {
    type Output = Self;
    fn mul(self, count: i64) -> Self {
        Self(self.0 * i128::from(count))
    }
}
impl AddAssign for Area {
    fn add_assign(&mut self, other: Self) {
        self.0 += other.0;
    }
}
impl SubAssign for Area {
    fn sub_assign(&mut self, other: Self) {
        self.0 -= other.0;
    }
}
impl Sum for Area {
    fn sum<I: Iterator<Item = Self>>(iter: I) -> Self {
        iter.fold(Self::ZERO, Add::add)
    }
}

/// Prints square feet to 1/100, rounded half up.
impl fmt::Display for Area {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let whole = self.0.div_euclid(Self::SQUARE_FOOT.0);
        let rest = self.0.rem_euclid(Self::SQUARE_FOOT.0);
        // The remainder is below one square foot, so that its hundredths cannot overflow.
        let hundredths = divide_half_up(rest * 100, Self::SQUARE_FOOT.0).unwrap_or(0);
        let count = whole * 100 + hundredths;
        let sign = if count < 0 { "-" } else { "" };
        let size = count.unsigned_abs();
        write!(f, "{sign}{}.{:02} sq ft", size / 100, size % 100)
    }
}

impl Serialize for Area {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self.square_feet(4) {
            Some(number) => number.serialize(serializer),
            None => Err(ser::Error::custom("the area is beyond 99,999,999,999.9999 sq ft")),
        }
    }
}

#[cfg(test)]
mod tests;
