//! Both faces of a wall sheathed with wood structural panels.

use super::assembly::Method;
use super::derivation::Derivation;
use super::unit_shear::UnitShear;
use crate::published::Confidence;

/// Two faces acting together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BothFaces {
    /// Nominal unit shear in pounds per foot.
    pub nominal: f64,
    /// Design unit shear in pounds per foot.
    pub design: f64,
    /// Apparent stiffness in kips per inch.
    pub stiffness: f64,
}

const RULE: &str = "SDPWS 2008/2015 4.3.3.3, walls sheathed on both faces with the same material";

/// Faces of one material: stiffness adds; strength is what both carry when the first of them reaches its own.
///
/// The rule was recalled; whoever calls this has accepted it by the faces' own queries.
pub fn both_faces(one: &UnitShear, other: &UnitShear) -> BothFaces {
    let stiffness = one.stiffness + other.stiffness;
    let nominal = stiffness * (one.nominal / one.stiffness).min(other.nominal / other.stiffness);
    let design = match one.query.method {
        Method::Asd => nominal / one.factor.value,
        Method::Lrfd => nominal * one.factor.value,
    };
    BothFaces {
        nominal,
        design,
        stiffness,
    }
}

/// The steps to the nominal unit shear of both faces.
pub fn explain_both_faces(one: &UnitShear, other: &UnitShear, derivation: &mut Derivation) -> f64 {
    let found = both_faces(one, other);
    derivation
        .step("G_ac", "apparent stiffness of both faces", "G_a1 + G_a2")
        .from("G_a1", one.stiffness, "kips/in")
        .from("G_a2", other.stiffness, "kips/in")
        .rule(RULE, Confidence::Memory)
        .gives(found.stiffness, "kips/in");
    derivation
        .step(
            "v_nc",
            "nominal unit shear of both faces",
            "G_ac * min(v_n1 / G_a1, v_n2 / G_a2)",
        )
        .from("G_ac", found.stiffness, "kips/in")
        .from("v_n1", one.nominal, "plf")
        .from("G_a1", one.stiffness, "kips/in")
        .from("v_n2", other.nominal, "plf")
        .from("G_a2", other.stiffness, "kips/in")
        .rule(RULE, Confidence::Memory)
        .gives(found.nominal, "plf")
}
