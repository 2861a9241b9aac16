//! Performance categories of panels.

use crate::length::Length;

/// The thickness that a performance category is named after, such as `7/16` or `1`.
pub fn category_thickness(category: &str) -> Option<Length> {
    let (above, below) = category.trim().split_once('/').unwrap_or((category.trim(), "1"));
    let (above, below): (i64, i64) = (above.trim().parse().ok()?, below.trim().parse().ok()?);
    let legal = (1..=64).contains(&below) && (1..=640).contains(&above);
    legal.then(|| Length::from_units(above * Length::PER_INCH / below))
}
