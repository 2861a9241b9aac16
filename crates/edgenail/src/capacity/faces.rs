//! Both faces of a wall sheathed: wood structural panels with the like, or with another material.

use super::assembly::{Edition, LoadKind, Method};
use super::derivation::Derivation;
use super::fault::{fault, inches, within};
use super::question::{FaceMaterial, FacesQuery, OtherFace};
use super::rule::{self, Rule};
use super::unit_shear::{UnitShear, UnitShearQuery, unit_shear};
use crate::issue::{Code, Issue};
use crate::length::Length;
use crate::published::Confidence;

/// Two faces acting together.
#[derive(Clone, Copy, Debug)]
pub struct FacesCapacity {
    /// The face of wood structural panels.
    pub one: UnitShear,
    /// The other face, where it is of the like.
    pub other: Option<UnitShear>,
    /// Nominal unit shear of both in pounds per foot.
    pub nominal: f64,
    /// Design unit shear of both in pounds per foot.
    pub design: f64,
    /// Apparent stiffness of both in kips per inch; of panels on both faces only.
    pub stiffness: Option<f64>,
}

const LIKE: &str = "SDPWS 2008/2015 4.3.3.3, walls sheathed on both faces with the same material";
const UNLIKE: &str = "SDPWS 2008/2015 4.3.3.3, walls sheathed on both faces with unlike materials";
const ADDED: &str =
    "SDPWS 2008/2015 4.3.3.3, exception for wind: wood structural panels and gypsum wallboard are added";

/// Nails closer than this on either face ask for joints of the two faces on different members.
const JOINTS: Rule<Length> = Rule::recalled(
    Length::inches(6),
    "SDPWS 4.3.7.1, panels on both faces with nails closer than 6 in.",
);

/// Takes both faces of a wall, with the steps to their nominal and their design unit shear.
///
/// Faces of panels: stiffness adds; strength is what both carry when the first of them reaches its own. Unlike faces: twice
/// the weaker or the stronger alone, whichever is more; under wind panels and gypsum wallboard are added. The rules were
/// recalled.
///
/// # Errors
/// What either face cannot be looked up with; faces that no collected rule puts together.
pub fn faces(query: &FacesQuery, steps: &mut Derivation) -> Result<FacesCapacity, Vec<Issue>> {
    let one = face(&query.one)?;
    match &query.other {
        OtherFace::Panels(assembly) => {
            let asked = UnitShearQuery {
                assembly: *assembly,
                ..query.one
            };
            let other = face(&asked).map_err(|issues| within("other", issues))?;
            check_panels(query, &other.unit)?;
            Ok(panels(&one, &other, steps))
        }
        OtherFace::Material { material, nominal } => {
            if query.one.edition == Edition::Sdpws2021 {
                return Err(vec![fault(
                    Code::UnlistedValue,
                    "edition",
                    query.one.edition.name(),
                    "SDPWS 2008 or SDPWS 2015",
                    "the rules of 2021 for faces of unlike materials were not collected",
                )]);
            }
            Ok(unlike(&one, *material, *nominal, steps))
        }
    }
}

/// A face with its stiffness.
#[derive(Clone, Copy, Debug)]
struct Face {
    unit: UnitShear,
    stiffness: f64,
}

/// Looks a face up.
fn face(query: &UnitShearQuery) -> Result<Face, Vec<Issue>> {
    let unit = unit_shear(query)?;
    let Some(stiffness) = unit.stiffness else {
        return Err(vec![fault(
            Code::NailNotListed,
            "assembly/nail",
            "an estimate",
            "a nail that the table lists",
            "two faces act together by their stiffness, and an estimate has none",
        )]);
    };
    Ok(Face { unit, stiffness })
}

/// What panels on both faces have to keep together.
fn check_panels(query: &FacesQuery, other: &UnitShear) -> Result<(), Vec<Issue>> {
    let (one, two) = (&query.one.assembly, &other.query.assembly);
    let mut issues = Vec::new();
    if one.blocked != two.blocked {
        issues.push(fault(
            Code::UnlistedValue,
            "other/assembly/blocked",
            &two.blocked.to_string(),
            "as on the first face",
            "no rule was collected for a blocked and an unblocked face together",
        ));
    }
    let close = one.edge_spacing.min(two.edge_spacing) < JOINTS.value;
    let narrow = one.seam_member.min(two.seam_member);
    if close && narrow < rule::THREE_X && !query.joints_apart {
        issues.push(fault(
            Code::MemberTooNarrow,
            "joints_apart",
            &format!("joints of both faces on one member of {}", inches(narrow)),
            "true, or members of 2 1/2 in. or wider that panels share, nails staggered",
            &format!(
                "nails closer than 6 in. on both faces of one member ({})",
                JOINTS.source
            ),
        ));
    }
    if issues.is_empty() { Ok(()) } else { Err(issues) }
}

/// The steps of one face, its values under numbered names at the end.
fn explain_face(number: u32, face: &Face, steps: &mut Derivation) {
    face.unit.explain_stiffness(steps);
    face.unit.explain(steps);
    for (symbol, meaning, value, unit) in [
        ("G_a", "apparent stiffness of a face", face.stiffness, "kips/in"),
        ("v_n", "nominal unit shear of a face", face.unit.nominal, "plf"),
    ] {
        steps
            .step(
                &format!("{symbol}{number}"),
                &format!("{meaning}, face {number}"),
                symbol,
            )
            .from(symbol, value, unit)
            .rule("as looked up", Confidence::TwoSources)
            .gives(value, unit);
    }
}

fn panels(one: &Face, other: &Face, steps: &mut Derivation) -> FacesCapacity {
    explain_face(1, one, steps);
    explain_face(2, other, steps);
    let stiffness = one.stiffness + other.stiffness;
    let nominal = stiffness * (one.unit.nominal / one.stiffness).min(other.unit.nominal / other.stiffness);
    steps
        .step("G_ac", "apparent stiffness of both faces", "G_a1 + G_a2")
        .from("G_a1", one.stiffness, "kips/in")
        .from("G_a2", other.stiffness, "kips/in")
        .rule(LIKE, Confidence::Memory)
        .gives(stiffness, "kips/in");
    steps
        .step(
            "v_nc",
            "nominal unit shear of both faces",
            "G_ac * min(v_n1 / G_a1, v_n2 / G_a2)",
        )
        .from("G_ac", stiffness, "kips/in")
        .from("v_n1", one.unit.nominal, "plf")
        .from("G_a1", one.stiffness, "kips/in")
        .from("v_n2", other.unit.nominal, "plf")
        .from("G_a2", other.stiffness, "kips/in")
        .rule(LIKE, Confidence::Memory)
        .gives(nominal, "plf");
    FacesCapacity {
        design: design(&one.unit, nominal, steps),
        one: one.unit,
        other: Some(other.unit),
        nominal,
        stiffness: Some(stiffness),
    }
}

fn unlike(one: &Face, material: FaceMaterial, other: f64, steps: &mut Derivation) -> FacesCapacity {
    explain_face(1, one, steps);
    steps
        .step("v_n2", "nominal unit shear of the other face", "v_n2")
        .given("v_n2", other, "plf")
        .rule("given", Confidence::TwoSources)
        .gives(other, "plf");
    let added = one.unit.query.load == LoadKind::Wind && material == FaceMaterial::GypsumWallboard;
    let (formula, source, nominal) = if added {
        ("v_n1 + v_n2", ADDED, one.unit.nominal + other)
    } else {
        let most = (2.0 * one.unit.nominal.min(other)).max(one.unit.nominal.max(other));
        ("max(2 * min(v_n1, v_n2), max(v_n1, v_n2))", UNLIKE, most)
    };
    steps
        .step("v_nc", "nominal unit shear of both faces", formula)
        .from("v_n1", one.unit.nominal, "plf")
        .from("v_n2", other, "plf")
        .rule(source, Confidence::Memory)
        .gives(nominal, "plf");
    FacesCapacity {
        design: design(&one.unit, nominal, steps),
        one: one.unit,
        other: None,
        nominal,
        stiffness: None,
    }
}

/// The design unit shear of both faces, by the factor of the first.
fn design(one: &UnitShear, nominal: f64, steps: &mut Derivation) -> f64 {
    let factor = one.factor;
    let (formula, name, value) = match one.query.method {
        Method::Asd => ("v_nc / Omega", "Omega", nominal / factor.value),
        Method::Lrfd => ("v_nc * phi", "phi", nominal * factor.value),
    };
    steps
        .step("v_c", "design unit shear of both faces", formula)
        .from("v_nc", nominal, "plf")
        .cell(name, factor.value, "", factor.source, factor.confidence)
        .rule(factor.source, factor.confidence)
        .gives(value, "plf")
}
