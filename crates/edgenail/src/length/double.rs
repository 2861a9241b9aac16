//! A double to a length.

use super::{Length, LengthError, LengthFault, Parsed, Unit};

/// How far a double may lie from a whole number of units and still count as exact: the noise of conversions.
const NOISE: f64 = 1e-3;

impl Length {
    /// The length nearest to so many of `unit`, ties away from zero.
    ///
    /// It counts as exact if it lies within 1/1000 of a library unit of the double.
    ///
    /// # Errors
    /// The double is not finite, or is beyond [`Length::LIMIT`].
    ///
    /// ```
    /// use edgenail::Length;
    /// use edgenail::length::Unit;
    /// let spacing = Length::from_double(0.1 * 192.0, Unit::Inch)?;
    /// assert_eq!((spacing.length, spacing.exact), (Length::from_units(780_288), true));
    /// assert!(!Length::from_double(1.0 / 3.0, Unit::Inch)?.exact);
    /// assert!(Length::from_double(f64::NAN, Unit::Inch).is_err());
    /// # Ok::<(), edgenail::length::LengthError>(())
    /// ```
    #[expect(
        clippy::cast_precision_loss,
        clippy::cast_possible_truncation,
        reason = "a unit and the limit are below 2^53, and the range is checked before the cast"
    )]
    pub fn from_double(value: f64, unit: Unit) -> Result<Parsed, LengthError> {
        let fail = |fault| Err(LengthError::new(fault, &value.to_string()));
        if !value.is_finite() {
            return fail(LengthFault::NotFinite);
        }
        let units = value * unit.length().units() as f64;
        let nearest = units.round();
        if nearest.abs() > Self::LIMIT.units() as f64 {
            return fail(LengthFault::OutOfRange);
        }
        Ok(Parsed {
            length: Self::from_units(nearest as i64),
            exact: (units - nearest).abs() <= NOISE,
        })
    }
}

#[cfg(test)]
mod tests;
