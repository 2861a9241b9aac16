//! A nail pulled straight out, and its head pulled through the panel.

use super::rule::Rule;
use crate::published::Confidence;

/// Withdrawal of a smooth-shank nail from side grain, pounds for each inch that it goes in, for a load of normal
/// duration.
///
/// Specific gravity of the framing; shank diameter in inches.
///
/// ```
/// use edgenail::capacity::withdrawal;
/// // 8d common in G = 0.50: 32 lb an inch (own arithmetic with 1380 G^2.5 D of the NDS).
/// assert!((withdrawal(0.50, 0.131).value - 32.0).abs() < 0.05);
/// ```
pub fn withdrawal(specific_gravity: f64, diameter: f64) -> Rule<f64> {
    Rule {
        value: 1380.0 * libm::pow(specific_gravity, 2.5) * diameter,
        source: "NDS withdrawal of smooth nails, 1380 G^2.5 D, as cited in two public texts",
        confidence: Confidence::TwoSources,
    }
}

/// Pull-through of a round head in pounds, for a load of normal duration.
///
/// Specific gravity of the panel; head diameter and panel thickness in inches.
///
/// ```
/// use edgenail::capacity::pull_through;
/// // Own arithmetic: head 0.281 in. in 7/16 in. of G = 0.50.
/// assert!((pull_through(0.50, 0.281, 0.4375).value - 66.6).abs() < 0.05);
/// ```
pub fn pull_through(specific_gravity: f64, head: f64, thickness: f64) -> Rule<f64> {
    let squared = specific_gravity * specific_gravity;
    let value = if thickness <= 2.5 * head {
        690.0 * std::f64::consts::PI * head * squared * thickness
    } else {
        1725.0 * std::f64::consts::PI * head * head * squared
    };
    Rule {
        value,
        source: "NDS 2018 head pull-through of round heads",
        confidence: Confidence::Memory,
    }
}
