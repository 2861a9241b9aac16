//! Both faces of a wall sheathed: wood structural panels with the like, or with another material.

use super::assembly::{Edition, LoadKind, Method};
use super::derivation::Derivation;
use super::facing::{Facing, FacingQuery, FacingShear, facing};
use super::fault::{fault, inches, within};
use super::question::{FaceMaterial, FacesQuery, OtherFace};
use super::rule::{self, Rule};
use super::unit_shear::{UnitShear, UnitShearQuery, unit_shear};
use crate::issue::{Code, Issue};
use crate::length::Length;
use crate::published::{Confidence, FacingMaterial};

/// Two faces acting together.
#[derive(Clone, Copy, Debug)]
pub struct FacesCapacity {
    /// The face of wood structural panels.
    pub one: UnitShear,
    /// The other face, where it was looked up.
    pub other: Option<OtherShear>,
    /// Nominal unit shear of both in pounds per foot.
    pub nominal: f64,
    /// Design unit shear of both in pounds per foot.
    pub design: f64,
    /// Apparent stiffness of both in kips per inch; of panels on both faces only.
    pub stiffness: Option<f64>,
}

/// The other face as its table lists it.
#[derive(Clone, Copy, Debug)]
pub enum OtherShear {
    /// Wood structural panels.
    Panels(UnitShear),
    /// Another material.
    Facing(FacingShear),
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
            let other = face(&asked).map_err(of_other)?;
            check_panels(query, &other.unit)?;
            Ok(panels(&one, &other, steps))
        }
        OtherFace::Facing(other) => {
            check_unlike(query)?;
            let (other, nominal) = look_up(query, other)?;
            explain_face(1, &one, steps);
            other.explain_stiffness(steps);
            other.explain(steps);
            explain_strength(2, nominal, steps);
            let both = unlike(&one, other.row.material.into(), nominal, steps);
            Ok(FacesCapacity {
                other: Some(OtherShear::Facing(other)),
                ..both
            })
        }
        OtherFace::Material { material, nominal } => {
            check_unlike(query)?;
            explain_face(1, &one, steps);
            steps
                .step("v_n2", "nominal unit shear of the other face", "v_n2")
                .given("v_n2", *nominal, "plf")
                .rule("given", Confidence::TwoSources)
                .gives(*nominal, "plf");
            Ok(unlike(&one, *material, *nominal, steps))
        }
    }
}

/// Faults of the other face, where its fields stand; those of what is asked of both stay.
fn of_other(issues: Vec<Issue>) -> Vec<Issue> {
    let (own, both) = issues.into_iter().partition(|issue| {
        ["/assembly", "/facing"]
            .iter()
            .any(|face| issue.path.starts_with(face))
    });
    let mut all: Vec<Issue> = both;
    all.extend(within("other", own));
    all
}

/// Faces of unlike materials have rules in some editions only.
fn check_unlike(query: &FacesQuery) -> Result<(), Vec<Issue>> {
    if query.one.edition != Edition::Sdpws2021 {
        return Ok(());
    }
    Err(vec![fault(
        Code::UnlistedValue,
        "edition",
        query.one.edition.name(),
        "SDPWS 2008 or SDPWS 2015",
        "the rules of 2021 for faces of unlike materials were not collected",
    )])
}

/// Looks the other face up as the first one is.
fn look_up(query: &FacesQuery, other: &Facing) -> Result<(FacingShear, f64), Vec<Issue>> {
    use FacingMaterial::{
        PlywoodSiding, PlywoodSidingOverGypsum, SheathingOverGypsum, StapledStructuralI,
        StapledStructuralIOverGypsum, StructuralIOverGypsum,
    };
    let one = &query.one;
    let same = || {
        vec![fault(
            Code::UnlistedValue,
            "other/facing/material",
            other.material.name(),
            "gypsum, plaster, fiberboard or particleboard",
            "nothing was collected that says whether these panels and the ones of the first face are one material",
        )]
    };
    if let PlywoodSiding
    | PlywoodSidingOverGypsum
    | SheathingOverGypsum
    | StapledStructuralI
    | StapledStructuralIOverGypsum
    | StructuralIOverGypsum = other.material
    {
        return Err(same());
    }
    let found = facing(&FacingQuery {
        edition: one.edition.into(),
        load: one.load,
        method: one.method,
        facing: *other,
        high_seismic: one.high_seismic,
        accept_unverified: one.accept_unverified,
    })
    .map_err(of_other)?;
    let nominal = found.nominal.ok_or_else(same)?;
    Ok((found, nominal))
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
    steps
        .step(
            &format!("G_a{number}"),
            &format!("apparent stiffness of face {number}"),
            "G_a",
        )
        .from("G_a", face.stiffness, "kips/in")
        .rule("as looked up", Confidence::TwoSources)
        .gives(face.stiffness, "kips/in");
    explain_strength(number, face.unit.nominal, steps);
}

/// The strength of one face under its numbered name.
fn explain_strength(number: u32, nominal: f64, steps: &mut Derivation) {
    steps
        .step(
            &format!("v_n{number}"),
            &format!("nominal unit shear of face {number}"),
            "v_n",
        )
        .from("v_n", nominal, "plf")
        .rule("as looked up", Confidence::TwoSources)
        .gives(nominal, "plf");
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
        other: Some(OtherShear::Panels(other.unit)),
        nominal,
        stiffness: Some(stiffness),
    }
}

/// The steps from the strengths of unlike faces to that of both.
fn unlike(one: &Face, material: FaceMaterial, other: f64, steps: &mut Derivation) -> FacesCapacity {
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
