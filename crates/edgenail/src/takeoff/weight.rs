//! What nails and pieces weigh.

use crate::house::Nail;

/// What a nail weighs, in millionths of a pound, rounded half up: π/4 · D² · L · 0.2836 lb/in³ for steel, and 3 % for the
/// head (arithmetic; the density from memory).
pub fn nail_micropounds(nail: &Nail) -> i64 {
    // 0.785398163 · 0.2836 · 1.03, in hundred-millionths.
    const FACTOR: i128 = 22_942_109;
    let shank = i128::from(nail.shank.in_units_of(4).unwrap_or_default());
    let length = i128::from(nail.length.units());
    let per_inch = i128::from(crate::length::Length::PER_INCH);
    // Shank in ten-thousandths of an inch, so its square carries another hundred.
    let denominator = 100_000_000 * 100 * per_inch;
    let micropounds = (FACTOR * shank * shank * length * 2 + denominator) / (denominator * 2);
    i64::try_from(micropounds).unwrap_or(i64::MAX)
}
