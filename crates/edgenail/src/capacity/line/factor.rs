//! Perforated shear walls: the factor for openings.

use crate::capacity::rule::Rule;
use crate::published::Confidence;

/// A wall with openings as the perforated method sees it. Feet and square feet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Perforation {
    /// Height of the wall.
    pub height: f64,
    /// Sum of the lengths of the full-height segments that count.
    pub full_height: f64,
    /// Length of the wall, openings included.
    pub length: f64,
    /// Area of all openings.
    pub opening_area: f64,
}

/// The shear capacity adjustment factor: capacity over that of its full-height segments alone.
///
/// `r = 1 / (1 + A_o / (h sum L_i))`, `C_o = r / (3 - 2 r) * L / sum L_i`, at most 1.
///
/// Two published equation forms agree in it; with the largest opening's height taken for all openings it reproduces the
/// table of the standard.
///
/// ```
/// use edgenail::capacity::{Perforation, perforated_factor};
/// // No opening: nothing is lost.
/// let whole = Perforation { height: 8.0, full_height: 20.0, length: 20.0, opening_area: 0.0 };
/// assert!((perforated_factor(&whole).value - 1.0).abs() < 1e-12);
/// ```
pub fn perforated_factor(wall: &Perforation) -> Rule<f64> {
    let r = 1.0 / (1.0 + wall.opening_area / (wall.height * wall.full_height));
    let value = (r / (3.0 - 2.0 * r) * wall.length / wall.full_height).min(1.0);
    Rule {
        value,
        source: "SDPWS 2008/2015 Eq. 4.3-5; two published forms of the equation",
        confidence: Confidence::TwoSources,
    }
}
