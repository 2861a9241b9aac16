//! The answer of both faces of a wall.

use super::facing::Numbers as FacingNumbers;
use super::unit_shear::Numbers as UnitNumbers;
use super::{Answer, refuse_recalled};
use crate::capacity::{Derivation, FacesQuery, OtherShear, faces};
use crate::issue::Issue;
use serde::Serialize;

/// Numbers of both faces.
#[derive(Debug, Serialize)]
pub(super) struct Numbers {
    one: UnitNumbers,
    /// None where its nominal unit shear was given.
    other: Option<Other>,
    nominal_plf: f64,
    design_plf: f64,
    /// Of panels on both faces.
    stiffness_kips_per_in: Option<f64>,
}

/// Numbers of the other face.
#[derive(Debug, Serialize)]
#[serde(untagged)]
enum Other {
    Panels(UnitNumbers),
    Facing(FacingNumbers),
}

impl Other {
    fn of(other: &OtherShear) -> Self {
        match other {
            OtherShear::Panels(unit) => Self::Panels(UnitNumbers::of(unit)),
            OtherShear::Facing(facing) => Self::Facing(FacingNumbers::of(facing)),
        }
    }
}

pub(super) fn answer(query: &FacesQuery) -> Result<Answer<Numbers>, Vec<Issue>> {
    let mut derivation = Derivation::default();
    let found = faces(query, &mut derivation)?;
    refuse_recalled(&derivation, query.one.accept_unverified)?;
    let numbers = Numbers {
        one: UnitNumbers::of(&found.one),
        other: found.other.as_ref().map(Other::of),
        nominal_plf: found.nominal,
        design_plf: found.design,
        stiffness_kips_per_in: found.stiffness,
    };
    let edition = query.one.edition.name();
    // The rule that puts two faces together was recalled: nothing is less sure than that.
    Ok(Answer::new("faces", Some(edition), numbers, derivation))
}
