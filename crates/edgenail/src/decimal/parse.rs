//! Decimal text to an exact number.

use super::{Decimal, DecimalError, DecimalFault};
use std::str::FromStr;

impl Decimal {
    /// Reads a decimal number, such as `0.131`, `-2`, `.5` or, as JSON allows, `1.5e-3`.
    ///
    /// # Errors
    /// The text is not a number, or takes more than 15 digits.
    ///
    /// ```
    /// use edgenail::Decimal;
    /// assert_eq!(Decimal::parse("0.50")?, Decimal::parse("5e-1")?);
    /// assert!(Decimal::parse("0,5").is_err());
    /// # Ok::<(), edgenail::decimal::DecimalError>(())
    /// ```
    pub fn parse(text: &str) -> Result<Self, DecimalError> {
        read(text).map_err(|fault| DecimalError::new(fault, text))
    }
}

impl FromStr for Decimal {
    type Err = DecimalError;
    fn from_str(text: &str) -> Result<Self, DecimalError> {
        Self::parse(text)
    }
}

fn read(text: &str) -> Result<Decimal, DecimalFault> {
    let (negative, unsigned) = sign(text);
    let (number, exponent) = match unsigned.split_once(['e', 'E']) {
        Some((number, exponent)) => (number, read_exponent(exponent)?),
        None => (unsigned, 0),
    };
    let (whole, fraction) = match number.split_once('.') {
        Some((_, "")) => return Err(DecimalFault::NotANumber),
        Some(parts) => parts,
        None => (number, ""),
    };
    let mut digits = whole.bytes().chain(fraction.bytes());
    if !digits.clone().all(|digit| digit.is_ascii_digit()) || digits.clone().count() == 0 {
        return Err(DecimalFault::NotANumber);
    }
    // Zeros at the end say nothing, so a long text of them is still exact.
    let mut places = i64::try_from(fraction.len()).map_err(|_| DecimalFault::TooManyDigits)? - exponent;
    let significant =
        digits.clone().count() - digits.clone().rev().take_while(|digit| *digit == b'0').count();
    let mut mantissa = digits
        .by_ref()
        .take(significant)
        .try_fold(0_i64, |sum, digit| {
            sum.checked_mul(10)?.checked_add(i64::from(digit - b'0'))
        })
        .ok_or(DecimalFault::TooManyDigits)?;
    if mantissa == 0 {
        return Ok(Decimal::ZERO);
    }
    places -= i64::try_from(digits.count()).map_err(|_| DecimalFault::TooManyDigits)?;
    if places < 0 {
        let zeros = u32::try_from(-places).map_err(|_| DecimalFault::TooManyDigits)?;
        let factor = 10_i64.checked_pow(zeros).ok_or(DecimalFault::TooManyDigits)?;
        mantissa = mantissa.checked_mul(factor).ok_or(DecimalFault::TooManyDigits)?;
        places = 0;
    }
    let scale = u32::try_from(places).map_err(|_| DecimalFault::TooManyDigits)?;
    let signed = if negative { -mantissa } else { mantissa };
    Decimal::new(signed, scale).ok_or(DecimalFault::TooManyDigits)
}

fn read_exponent(text: &str) -> Result<i64, DecimalFault> {
    let (negative, digits) = sign(text);
    if digits.is_empty() || !digits.bytes().all(|digit| digit.is_ascii_digit()) {
        return Err(DecimalFault::NotANumber);
    }
    // Any exponent of more than nine digits takes too many places.
    let size: i64 = if digits.len() > 9 {
        999_999_999
    } else {
        digits.parse().unwrap_or(999_999_999)
    };
    Ok(if negative { -size } else { size })
}

fn sign(text: &str) -> (bool, &str) {
    match text.strip_prefix('-') {
        Some(rest) => (true, rest),
        None => (false, text.strip_prefix('+').unwrap_or(text)),
    }
}
