//! How far the top of a segment moves.

use super::derivation::Derivation;
use super::slip::{grade_factor, slip, slip_curve};
use crate::published::{Confidence, Grade, Pennyweight};
use serde::Serialize;

/// A segment under unit shear. Feet, pounds and inches as the standard mixes them.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Racked {
    /// Unit shear in pounds per foot.
    pub shear: f64,
    /// Height in feet.
    pub height: f64,
    /// Length in feet.
    pub length: f64,
    /// Modulus of elasticity of the end posts in psi.
    pub elasticity: f64,
    /// Section of an end post in square inches.
    pub post_area: f64,
    /// Elongation of the hold-down at the load, with all slip, in inches.
    pub anchor: f64,
}

/// Nails and panel of a segment, for the four-term equation.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Skin {
    /// The nail.
    pub nail: Pennyweight,
    /// Grade of the panel.
    pub grade: Grade,
    /// Spacing of the edge nails in inches.
    pub edge_spacing: f64,
    /// Rigidity through the thickness in pounds per inch.
    pub rigidity: f64,
}

/// The terms of a drift in inches.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Drift {
    /// Posts stretching and shortening.
    pub bending: f64,
    /// Panels shearing; in the three-term equation with the slip of nails.
    pub shear: f64,
    /// Nails slipping; nothing in the three-term equation.
    pub slip: f64,
    /// The hold-down giving.
    pub anchor: f64,
    /// All together.
    pub total: f64,
}

const THREE: &str = "SDPWS 2008/2015 Eq. 4.3-1";
const FOUR: &str = "APA TT-053A (2007), shear wall deflection";
const RIGIDITY: &str = "SDPWS commentary Table C4.2.2A";

fn bending(wall: &Racked) -> f64 {
    8.0 * wall.shear * wall.height * wall.height * wall.height
        / (wall.elasticity * wall.post_area * wall.length)
}

fn anchor(wall: &Racked) -> f64 {
    wall.height * wall.anchor / wall.length
}

/// Drift with apparent stiffness in kips per inch.
///
/// ```
/// use edgenail::capacity::{Racked, drift_three_terms};
/// // Own arithmetic: 0.0152 + 0.1333 + 0.2000 in.
/// let wall = Racked { shear: 250.0, height: 8.0, length: 4.0, elasticity: 1.6e6, post_area: 10.5, anchor: 0.10 };
/// assert!((drift_three_terms(&wall, 15.0).total - 0.3486).abs() < 0.0001);
/// ```
pub fn drift_three_terms(wall: &Racked, stiffness: f64) -> Drift {
    let bending = bending(wall);
    let shear = wall.shear * wall.height / (1000.0 * stiffness);
    let anchor = anchor(wall);
    Drift {
        bending,
        shear,
        slip: 0.0,
        anchor,
        total: bending + shear + anchor,
    }
}

/// Drift with panel and nails apart.
pub fn drift_four_terms(wall: &Racked, skin: &Skin) -> Drift {
    let bending = bending(wall);
    let shear = wall.shear * wall.height / skin.rigidity;
    let slip = 0.75 * wall.height * slip(skin.nail, skin.grade, wall.shear * skin.edge_spacing / 12.0);
    let anchor = anchor(wall);
    Drift {
        bending,
        shear,
        slip,
        anchor,
        total: bending + shear + slip + anchor,
    }
}

/// The steps to the drift by the three-term equation.
pub fn explain_three_terms(wall: &Racked, stiffness: f64, derivation: &mut Derivation) -> f64 {
    let drift = drift_three_terms(wall, stiffness);
    explain_bending(wall, drift.bending, THREE, Confidence::Memory, derivation);
    derivation
        .step(
            "delta_s",
            "panels shearing, with the slip of nails",
            "v * h / (1000 * G_a)",
        )
        .given("v", wall.shear, "plf")
        .given("h", wall.height, "ft")
        .given("G_a", stiffness, "kips/in")
        .rule(THREE, Confidence::Memory)
        .gives(drift.shear, "in");
    explain_anchor(wall, drift.anchor, THREE, Confidence::Memory, derivation);
    derivation
        .step(
            "delta",
            "drift, three-term equation",
            "delta_b + delta_s + delta_a",
        )
        .from("delta_b", drift.bending, "in")
        .from("delta_s", drift.shear, "in")
        .from("delta_a", drift.anchor, "in")
        .rule(THREE, Confidence::Memory)
        .gives(drift.total, "in")
}

/// The steps to the drift by the four-term equation.
pub fn explain_four_terms(wall: &Racked, skin: &Skin, derivation: &mut Derivation) -> f64 {
    let drift = drift_four_terms(wall, skin);
    explain_bending(wall, drift.bending, FOUR, Confidence::Source, derivation);
    let load = wall.shear * skin.edge_spacing / 12.0;
    derivation
        .step("V_n", "load of one edge nail", "v * s / 12")
        .given("v", wall.shear, "plf")
        .given("s", skin.edge_spacing, "in")
        .rule("statics", Confidence::TwoSources)
        .gives(load, "lb");
    let curve = slip_curve(skin.nail);
    let (source, confidence) = (curve.source, curve.confidence);
    let slip = slip(skin.nail, skin.grade, load);
    derivation
        .step("e_n", "slip of one edge nail", "C_grade * (V_n / a)^n")
        .cell("C_grade", grade_factor(skin.grade), "", source, confidence)
        .from("V_n", load, "lb")
        .cell("a", curve.value.a, "lb", source, confidence)
        .cell("n", curve.value.b, "", source, confidence)
        .rule(source, confidence)
        .gives(slip, "in");
    derivation
        .step("delta_s", "panels shearing", "v * h / G_t")
        .given("v", wall.shear, "plf")
        .given("h", wall.height, "ft")
        .cell("G_t", skin.rigidity, "lb/in", RIGIDITY, Confidence::Memory)
        .rule(FOUR, Confidence::Source)
        .gives(drift.shear, "in");
    derivation
        .step("delta_n", "nails slipping", "0.75 * h * e_n")
        .given("h", wall.height, "ft")
        .from("e_n", slip, "in")
        .rule(FOUR, Confidence::Source)
        .gives(drift.slip, "in");
    explain_anchor(wall, drift.anchor, FOUR, Confidence::Source, derivation);
    derivation
        .step(
            "delta",
            "drift, four-term equation",
            "delta_b + delta_s + delta_n + delta_a",
        )
        .from("delta_b", drift.bending, "in")
        .from("delta_s", drift.shear, "in")
        .from("delta_n", drift.slip, "in")
        .from("delta_a", drift.anchor, "in")
        .rule(FOUR, Confidence::Source)
        .gives(drift.total, "in")
}

fn explain_bending(
    wall: &Racked,
    value: f64,
    source: &str,
    confidence: Confidence,
    derivation: &mut Derivation,
) {
    derivation
        .step(
            "delta_b",
            "posts stretching and shortening",
            "8 * v * h^3 / (E * A * b)",
        )
        .given("v", wall.shear, "plf")
        .given("h", wall.height, "ft")
        .given("b", wall.length, "ft")
        .given("E", wall.elasticity, "psi")
        .given("A", wall.post_area, "in2")
        .rule(source, confidence)
        .gives(value, "in");
}

fn explain_anchor(
    wall: &Racked,
    value: f64,
    source: &str,
    confidence: Confidence,
    derivation: &mut Derivation,
) {
    derivation
        .step("delta_a", "the hold-down giving", "h * D_a / b")
        .given("h", wall.height, "ft")
        .given("b", wall.length, "ft")
        .given("D_a", wall.anchor, "in")
        .rule(source, confidence)
        .gives(value, "in");
}
