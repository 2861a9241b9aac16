//! Exact decimal numbers: nail diameters, specific gravities, percentages, weights.

mod error;
mod parse;

pub use error::{DecimalError, DecimalFault};

use serde::{Serialize, Serializer};
use std::cmp::Ordering;
use std::fmt;

/// A decimal number, exact to 15 digits.
///
/// Two decimals are equal when their values are: `0.50` is `0.5`. A decimal is the key of a published table or
/// an argument of a formula, never a length. Fifteen digits are as many as a double carries both ways, so
/// [`Decimal::as_f64`] and the number in JSON lose nothing.
///
/// ```
/// use edgenail::Decimal;
/// let shank = Decimal::parse("0.131")?;
/// assert_eq!(shank, Decimal::thousandths(131));
/// assert!(shank < Decimal::parse("0.148")?);
/// assert_eq!(shank.to_string(), "0.131");
/// # Ok::<(), edgenail::decimal::DecimalError>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct Decimal {
    /// All digits as one whole number; the last is not 0 unless `scale` is 0.
    mantissa: i64,
    /// How many of the digits stand after the point.
    scale: u32,
}

/// The least number that has too many digits.
const MANTISSA_LIMIT: i128 = 1_000_000_000_000_000;
const SCALE_LIMIT: u32 = 15;

impl Decimal {
    /// Nothing.
    pub const ZERO: Self = Self::whole(0);
    /// One.
    pub const ONE: Self = Self::whole(1);

    /// A whole number.
    pub const fn whole(count: i32) -> Self {
        Self::small(count, 0)
    }

    /// So many tenths.
    pub const fn tenths(count: i32) -> Self {
        Self::small(count, 1)
    }

    /// So many hundredths, such as 50 for a specific gravity of 0.50.
    pub const fn hundredths(count: i32) -> Self {
        Self::small(count, 2)
    }

    /// So many thousandths, such as 131 for a shank of 0.131 in.
    pub const fn thousandths(count: i32) -> Self {
        Self::small(count, 3)
    }

    const fn small(mantissa: i32, scale: u32) -> Self {
        Self::normal(mantissa as i64, scale)
    }

    const fn normal(mut mantissa: i64, mut scale: u32) -> Self {
        while scale > 0 && mantissa % 10 == 0 {
            mantissa /= 10;
            scale -= 1;
        }
        Self { mantissa, scale }
    }

    /// The number `mantissa` / 10^`scale`; nothing if that takes more than 15 digits.
    ///
    /// ```
    /// use edgenail::Decimal;
    /// assert_eq!(Decimal::new(1_625, 4), Some(Decimal::parse("0.1625")?));
    /// assert_eq!(Decimal::new(1, 16), None);
    /// # Ok::<(), edgenail::decimal::DecimalError>(())
    /// ```
    pub fn new(mantissa: i64, scale: u32) -> Option<Self> {
        let normal = Self::normal(mantissa, scale);
        let fits = i128::from(normal.mantissa).abs() < MANTISSA_LIMIT && normal.scale <= SCALE_LIMIT;
        fits.then_some(normal)
    }

    /// This number × `numerator` / `denominator`, rounded half up to so many places after the point.
    ///
    /// Nothing if the denominator is zero or the result takes more than 15 digits.
    ///
    /// ```
    /// use edgenail::{Decimal, Length};
    /// // Feet in 40 in. of block, to a hundredth.
    /// let feet = Decimal::ONE.scaled(Length::inches(40).units().into(), Length::feet(1).units().into(), 2);
    /// assert_eq!(feet, Some(Decimal::hundredths(333)));
    /// ```
    pub fn scaled(self, numerator: i128, denominator: i128, places: u32) -> Option<Self> {
        let n = i128::from(self.mantissa)
            .checked_mul(numerator)?
            .checked_mul(power_of_ten(places)?)?;
        let d = denominator.checked_mul(power_of_ten(self.scale)?)?;
        Self::new(i64::try_from(divide_half_up(n, d)?).ok()?, places)
    }

    /// The number in units of 10^−`places`; nothing if it is not a whole number of them.
    ///
    /// ```
    /// use edgenail::Decimal;
    /// assert_eq!(Decimal::tenths(125).in_units_of(4), Some(125_000));
    /// assert_eq!(Decimal::tenths(125).in_units_of(0), None);
    /// ```
    pub fn in_units_of(self, places: u32) -> Option<i64> {
        let factor = 10_i64.checked_pow(places.checked_sub(self.scale)?);
        match factor {
            Some(factor) => self.mantissa.checked_mul(factor),
            // Nothing but zero has so many places and fits.
            None => (self.mantissa == 0).then_some(0),
        }
    }

    /// This number less another; nothing if that takes more than 15 digits.
    ///
    /// ```
    /// use edgenail::Decimal;
    /// assert_eq!(Decimal::tenths(125).less(Decimal::hundredths(50)), Some(Decimal::whole(12)));
    /// ```
    pub fn less(self, other: Self) -> Option<Self> {
        let scale = self.scale.max(other.scale);
        let units = self.in_units_of(scale)?.checked_sub(other.in_units_of(scale)?)?;
        Self::new(units, scale)
    }

    /// How many digits stand after the point.
    pub const fn places(self) -> u32 {
        self.scale
    }

    /// The nearest double, for formulas.
    ///
    /// ```
    /// use edgenail::Decimal;
    /// assert!((Decimal::hundredths(42).as_f64() - 0.42).abs() < f64::EPSILON);
    /// ```
    #[expect(
        clippy::cast_precision_loss,
        reason = "both are below 2^53, so the division is the one rounding"
    )]
    pub fn as_f64(self) -> f64 {
        self.mantissa as f64 / 10_i64.pow(self.scale) as f64
    }
}

/// `numerator` / `denominator` to the nearest whole number, halves up.
pub(crate) fn divide_half_up(numerator: i128, denominator: i128) -> Option<i128> {
    if let (Ok(numerator), Ok(denominator)) = (i64::try_from(numerator), i64::try_from(denominator))
        && let Some(quotient) = divide_short(numerator, denominator)
    {
        return Some(i128::from(quotient));
    }
    let twice = numerator.checked_mul(2)?.checked_add(denominator)?;
    let divisor = denominator.checked_mul(2)?;
    // For a negative divisor the quotient rounds up in `div_euclid`; turn both signs.
    if divisor < 0 {
        twice.checked_neg()?.checked_div_euclid(divisor.checked_neg()?)
    } else {
        twice.checked_div_euclid(divisor)
    }
}

/// As [`divide_half_up`] in the machine's own division; nothing where that does not do.
pub(crate) fn divide_short(numerator: i64, denominator: i64) -> Option<i64> {
    let whole = numerator.checked_div_euclid(denominator.max(0))?;
    let rest = numerator - whole * denominator;
    whole.checked_add(i64::from(rest >= denominator - rest))
}

fn power_of_ten(exponent: u32) -> Option<i128> {
    10_i128.checked_pow(exponent)
}

impl Ord for Decimal {
    fn cmp(&self, other: &Self) -> Ordering {
        let scale = self.scale.max(other.scale);
        // Fifteen digits moved by fifteen places fit.
        let at = |number: &Self| i128::from(number.mantissa) * 10_i128.pow(scale - number.scale);
        at(self).cmp(&at(other))
    }
}

impl PartialOrd for Decimal {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

/// Prints the value without trailing zeros.
impl fmt::Display for Decimal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let power = 10_u64.pow(self.scale);
        let digits = self.mantissa.unsigned_abs();
        let sign = if self.mantissa < 0 { "-" } else { "" };
        write!(f, "{sign}{}", digits / power)?;
        if self.scale > 0 {
            let places = usize::try_from(self.scale).unwrap_or(0);
            write!(f, ".{:0places$}", digits % power)?;
        }
        Ok(())
    }
}

/// Writes a number, whole where the value is.
impl Serialize for Decimal {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        if self.scale == 0 {
            serializer.serialize_i64(self.mantissa)
        } else {
            serializer.serialize_f64(self.as_f64())
        }
    }
}

#[cfg(test)]
mod tests;
