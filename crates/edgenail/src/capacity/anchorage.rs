//! The bottom plate held against sliding.

use super::derivation::Derivation;
use super::fault::fault;
use crate::issue::{Code, Issue};
use crate::published::Confidence;
use serde::Serialize;

/// Anchors of a bottom plate.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct PlateAnchors {
    /// Anchors that the shear takes, at least.
    pub count: u32,
    /// Nominal unit shear is so large that plate washers are asked for near the sheathed edge.
    pub washers: bool,
}

/// Nominal unit shear above which plate washers reach to within 1/2 in. of the sheathed edge, in pounds per foot;
/// recalled.
pub const WASHER_SHEAR: f64 = 400.0;

/// Anchors for a plate shear in pounds with so many pounds an anchor at the same level; capacities of anchors are the
/// caller's.
///
/// # Errors
/// A force that is no number, or an anchor that carries nothing.
pub fn plate_anchors(shear: f64, each: f64, nominal: f64) -> Result<PlateAnchors, Vec<Issue>> {
    let mut issues = Vec::new();
    for (field, value, least) in [
        ("shear", shear, 0.0),
        ("each", each, f64::MIN_POSITIVE),
        ("nominal", nominal, 0.0),
    ] {
        if !(least..=1e9).contains(&value) {
            issues.push(fault(
                Code::OutOfRange,
                field,
                &value.to_string(),
                "0 to 1,000,000,000 pounds; an anchor carries more than 0",
                "a force of the plate",
            ));
        }
    }
    if !issues.is_empty() {
        return Err(issues);
    }
    let count = (shear / each).ceil();
    if count > f64::from(u32::MAX) {
        return Err(vec![fault(
            Code::OutOfRange,
            "each",
            &each.to_string(),
            "an anchor that carries a share of the shear",
            "more anchors than can be counted",
        )]);
    }
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a whole number from 0 up to u32::MAX"
    )]
    let count = count as u32;
    Ok(PlateAnchors {
        count,
        washers: nominal > WASHER_SHEAR,
    })
}

/// The step to how many anchors the shear asks for before rounding up.
pub fn explain_plate_anchors(shear: f64, each: f64, derivation: &mut Derivation) -> f64 {
    derivation
        .step(
            "n",
            "anchors that the plate shear takes, to be rounded up",
            "V / Z_anchor",
        )
        .from("V", shear, "lb")
        .given("Z_anchor", each, "lb")
        .rule(
            "statics; the anchor's capacity is the caller's",
            Confidence::TwoSources,
        )
        .gives(shear / each, "")
}
