//! A wall that nothing holds down.

use crate::capacity::derivation::Derivation;
use crate::length::Length;
use crate::published::Confidence;

const SOURCE: &str = "statics: nails of the bottom plate resist uplift over one part of the wall and shear over the other, each at strength over spacing; no dead load";

/// The length in inches that counts for shear where neither a hold-down nor dead load resists overturning:
/// `sqrt(h^2 + l^2) - h`. Of a wall whose bottom plate is nailed alike over its whole length.
///
/// ```
/// use edgenail::Length;
/// use edgenail::capacity::unanchored_length;
/// // Own arithmetic: 2.4 m high and long, 0.994 m count.
/// let counted = unanchored_length(Length::mm(2400), Length::mm(2400));
/// assert!((counted * 25.4 - 994.1).abs() < 0.1);
/// ```
pub fn unanchored_length(height: Length, length: Length) -> f64 {
    let (h, l) = (height.as_inches(), length.as_inches());
    (h * h + l * l).sqrt() - h
}

/// The step to the length that counts.
pub fn explain_unanchored_length(height: Length, length: Length, derivation: &mut Derivation) -> f64 {
    derivation
        .step(
            "l_eff",
            "length that counts for shear without hold-down and without dead load",
            "sqrt(h^2 + l^2) - h",
        )
        .given("h", height.as_inches(), "in")
        .given("l", length.as_inches(), "in")
        .rule(SOURCE, Confidence::TwoSources)
        .gives(unanchored_length(height, length), "in")
}
