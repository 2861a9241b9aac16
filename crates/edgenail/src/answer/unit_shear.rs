//! The answer of a unit shear.

use super::{Answer, refuse_recalled};
use crate::capacity::{Derivation, UnitShear, UnitShearQuery, unit_shear};
use crate::issue::Issue;
use serde::Serialize;

/// Numbers of a unit shear.
#[derive(Debug, Serialize)]
pub(super) struct Numbers {
    table_plf: f64,
    nominal_plf: f64,
    design_plf: f64,
    /// None of an estimate.
    stiffness_kips_per_in: Option<f64>,
    /// What the nail makes of the row, of an estimate only.
    estimate_factor: Option<f64>,
    /// A thicker row would serve, but its footnote was recalled and is not accepted.
    thicker_row_left: bool,
}

impl Numbers {
    pub(super) const fn of(unit: &UnitShear) -> Self {
        Self {
            table_plf: unit.cell,
            nominal_plf: unit.nominal,
            design_plf: unit.design,
            stiffness_kips_per_in: unit.stiffness,
            estimate_factor: match unit.estimate {
                Some(estimate) => Some(estimate.factor),
                None => None,
            },
            thicker_row_left: unit.thicker_row_left,
        }
    }
}

pub(super) fn answer(query: &UnitShearQuery) -> Result<Answer<Numbers>, Vec<Issue>> {
    let unit = unit_shear(query)?;
    let mut derivation = Derivation::default();
    unit.explain_stiffness(&mut derivation);
    unit.explain(&mut derivation);
    refuse_recalled(&derivation, query.accept_unverified)?;
    let answer = Answer::new(
        "unit_shear",
        Some(query.edition.name()),
        Numbers::of(&unit),
        derivation,
    );
    Ok(Answer {
        confidence: answer.confidence.max(unit.confidence),
        estimate: unit.estimate.is_some(),
        ..answer
    })
}
