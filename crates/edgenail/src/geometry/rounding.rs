//! The one way in which geometry rounds: to nearest, ties down.

use crate::length::Length;

/// The whole number nearest to `numerator / denominator`, ties down; the denominator must be above zero.
pub(super) fn nearest_wide(numerator: i128, denominator: i128) -> i128 {
    (2 * numerator + denominator - 1).div_euclid(2 * denominator)
}

/// `factor · numerator / denominator`, nearest, ties down; the denominator must be above zero.
pub(super) fn scale(factor: Length, numerator: i64, denominator: i64) -> Length {
    let (factor, narrow) = (factor.units(), 1 << 30);
    if factor.abs() <= narrow && numerator.abs() <= narrow && denominator <= narrow {
        // Every product stays within 2^61, where the much faster 64-bit division serves.
        return Length::from_units((2 * factor * numerator + denominator - 1).div_euclid(2 * denominator));
    }
    let exact = nearest_wide(
        i128::from(factor) * i128::from(numerator),
        i128::from(denominator),
    );
    to_length(exact)
}

/// The square root, rounded to the nearest unit.
pub(super) fn root(square: u128) -> Length {
    let floor = square.isqrt();
    // (floor + 1/2)² = floor² + floor + 1/4, so the nearest root is the next one up past floor² + floor.
    let nearest = if square - floor * floor > floor {
        floor + 1
    } else {
        floor
    };
    Length::from_units(i64::try_from(nearest).unwrap_or(i64::MAX))
}

/// The smallest whole number of which the square is not below `square`.
pub(super) fn root_up(square: u128) -> u128 {
    let floor = square.isqrt();
    if floor * floor == square { floor } else { floor + 1 }
}

/// A length from a wide number, kept within the range of a length.
pub(super) fn to_length(units: i128) -> Length {
    let limit = if units < 0 { i64::MIN } else { i64::MAX };
    Length::from_units(i64::try_from(units).unwrap_or(limit))
}

#[cfg(test)]
mod tests;
