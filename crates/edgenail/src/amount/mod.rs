//! Amounts of money or of minutes, exact in 1/10,000.

use crate::decimal::{Decimal, DecimalError, DecimalFault, divide_half_up, divide_short};
use serde::{Serialize, Serializer, ser};
use std::fmt;
use std::iter::Sum;
use std::ops::{Add, AddAssign, Mul, Neg, Sub, SubAssign};
use std::str::FromStr;

/// An amount of money or of minutes, exact in 1/10,000 of the unit.
///
/// Which unit it is, the field that holds the amount says. A rate times a quantity is rounded half up, once, by
/// [`Amount::scaled`]; sums are exact.
///
/// ```
/// use edgenail::Amount;
/// let sheet = Amount::parse("18.50")?;
/// assert_eq!(sheet * 32, Amount::parse("592")?);
/// assert_eq!(format!("{sheet}, {sheet:.2}"), "18.5, 18.50");
/// # Ok::<(), edgenail::decimal::DecimalError>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Amount(i64);

/// Digits after the point.
const PLACES: u32 = 4;

impl Amount {
    /// Parts in one unit of money or one minute.
    pub const PER_UNIT: i64 = 10_000;
    /// Nothing.
    pub const ZERO: Self = Self(0);
    /// The largest amount that is read from text or written as a number.
    pub const LIMIT: Self = Self(999_999_999_999_999);

    /// So many 1/10,000 of the unit.
    pub const fn from_ten_thousandths(count: i64) -> Self {
        Self(count)
    }

    /// So many whole units.
    pub const fn whole(count: i32) -> Self {
        Self(count as i64 * Self::PER_UNIT)
    }

    /// The number of 1/10,000 of the unit.
    pub const fn ten_thousandths(self) -> i64 {
        self.0
    }

    /// Reads an amount from decimal text, such as `18.50`.
    ///
    /// # Errors
    /// The text is not a number, is finer than 1/10,000 or is beyond [`Amount::LIMIT`].
    ///
    /// ```
    /// use edgenail::Amount;
    /// assert_eq!(Amount::parse("0.8")?, Amount::from_ten_thousandths(8_000));
    /// assert!(Amount::parse("$0.80").is_err());
    /// # Ok::<(), edgenail::decimal::DecimalError>(())
    /// ```
    pub fn parse(text: &str) -> Result<Self, DecimalError> {
        let number = Decimal::parse(text)?;
        match number.in_units_of(PLACES) {
            Some(count) if count.abs() <= Self::LIMIT.0 => Ok(Self(count)),
            _ if number.places() > PLACES => Err(DecimalError::new(DecimalFault::TooFine, text)),
            _ => Err(DecimalError::new(DecimalFault::OutOfRange, text)),
        }
    }

    /// The amount so many times; nothing if that does not fit.
    ///
    /// ```
    /// use edgenail::Amount;
    /// assert_eq!(Amount::whole(3).times(4), Some(Amount::whole(12)));
    /// assert_eq!(Amount::whole(3).times(i64::MAX), None);
    /// ```
    pub fn times(self, count: i64) -> Option<Self> {
        self.0.checked_mul(count).map(Self)
    }

    /// This rate × `numerator` / `denominator`, rounded half up; nothing if the denominator is zero or the
    /// result does not fit.
    ///
    /// ```
    /// use edgenail::{Amount, Length};
    /// // 0.35 minutes a foot along 17 in. is 0.49583…
    /// let rate = Amount::parse("0.35")?;
    /// let cut = rate.scaled(Length::inches(17).units().into(), Length::feet(1).units().into());
    /// assert_eq!(cut, Some(Amount::parse("0.4958")?));
    /// # Ok::<(), edgenail::decimal::DecimalError>(())
    /// ```
    pub fn scaled(self, numerator: i128, denominator: i128) -> Option<Self> {
        // Nearly every product fits the machine's own numbers, which are several times faster.
        if let (Ok(numerator), Ok(denominator)) = (i64::try_from(numerator), i64::try_from(denominator))
            && let Some(product) = self.0.checked_mul(numerator)
            && let Some(quotient) = divide_short(product, denominator)
        {
            return Some(Self(quotient));
        }
        let product = i128::from(self.0).checked_mul(numerator)?;
        i64::try_from(divide_half_up(product, denominator)?)
            .ok()
            .map(Self)
    }

    /// This many units at a rate for each, rounded half up; nothing if that does not fit.
    ///
    /// ```
    /// use edgenail::Amount;
    /// // 2.5 minutes at 0.85 a minute.
    /// let worth = Amount::parse("2.5")?.at(Amount::parse("0.85")?);
    /// assert_eq!(worth, Some(Amount::parse("2.125")?));
    /// # Ok::<(), edgenail::decimal::DecimalError>(())
    /// ```
    pub fn at(self, rate: Self) -> Option<Self> {
        // Nearly every product fits, and division by a known number is quick.
        let near = self.0.checked_mul(rate.0);
        match near.and_then(|product| product.checked_add(Self::PER_UNIT / 2)) {
            Some(raised) => Some(Self(raised.div_euclid(Self::PER_UNIT))),
            None => self.scaled(i128::from(rate.0), i128::from(Self::PER_UNIT)),
        }
    }

    /// The sum; nothing if it does not fit.
    pub fn checked_add(self, other: Self) -> Option<Self> {
        self.0.checked_add(other.0).map(Self)
    }

    /// The difference; nothing if it does not fit.
    pub fn checked_sub(self, other: Self) -> Option<Self> {
        self.0.checked_sub(other.0).map(Self)
    }
}

impl FromStr for Amount {
    type Err = DecimalError;
    fn from_str(text: &str) -> Result<Self, DecimalError> {
        Self::parse(text)
    }
}

impl Add for Amount {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}
impl Sub for Amount {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0 - other.0)
    }
}
impl Neg for Amount {
    type Output = Self;
    fn neg(self) -> Self {
        Self(-self.0)
    }
}
impl Mul<i64> for Amount {
    type Output = Self;
    fn mul(self, count: i64) -> Self {
        Self(self.0 * count)
    }
}
impl AddAssign for Amount {
    fn add_assign(&mut self, other: Self) {
        self.0 += other.0;
    }
}
impl SubAssign for Amount {
    fn sub_assign(&mut self, other: Self) {
        self.0 -= other.0;
    }
}
impl Sum for Amount {
    fn sum<I: Iterator<Item = Self>>(iter: I) -> Self {
        iter.fold(Self::ZERO, Add::add)
    }
}

/// Prints the value without trailing zeros; with a precision, such as `{:.2}`, that many digits after the point,
/// rounded half up.
impl fmt::Display for Amount {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let wanted = f.precision();
        let kept = wanted.unwrap_or(4).min(4);
        let step = 10_i128.pow(u32::try_from(4 - kept).unwrap_or(0));
        let count = (2 * i128::from(self.0) + step).div_euclid(2 * step);
        let power = 10_u128.pow(u32::try_from(kept).unwrap_or(0));
        let sign = if count < 0 { "-" } else { "" };
        let whole = count.unsigned_abs() / power;
        let fraction = match kept {
            0 => String::new(),
            _ => format!(".{:0kept$}", count.unsigned_abs() % power),
        };
        match wanted {
            None => write!(
                f,
                "{sign}{whole}{}",
                fraction.trim_end_matches('0').trim_end_matches('.')
            ),
            Some(places) => write!(f, "{sign}{whole}{fraction}{}", "0".repeat(places - kept)),
        }
    }
}

/// Writes a number with up to four digits after the point, whole where the value is.
///
/// Up to [`Amount::LIMIT`] a double carries every digit; beyond it the writer gets an error instead of a number
/// that is nearly right.
impl Serialize for Amount {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match Decimal::new(self.0, PLACES) {
            Some(number) => number.serialize(serializer),
            None => Err(ser::Error::custom("the amount is beyond 99,999,999,999.9999")),
        }
    }
}

#[cfg(test)]
mod tests;
