//! The answer of a nail.

use super::Answer;
use crate::capacity::{NailQuery, YieldMode, nail};
use crate::issue::Issue;
use serde::Serialize;

/// Numbers of a nail.
#[derive(Debug, Serialize)]
pub(super) struct Numbers {
    penetration_in: f64,
    modes_lb: Modes,
    governs: YieldMode,
    /// For a load of normal duration.
    lateral_reference_lb: f64,
    /// For the load's duration.
    lateral_lb: f64,
    withdrawal_reference_lb_per_in: f64,
    withdrawal_lb: f64,
    pull_through_reference_lb: Option<f64>,
    pull_through_lb: Option<f64>,
}

/// The yield modes as the standard names them.
#[derive(Debug, Serialize)]
#[allow(non_snake_case, reason = "the standard's names")]
struct Modes {
    Im: f64,
    Is: f64,
    II: f64,
    IIIm: f64,
    IIIs: f64,
    IV: f64,
}

pub(super) fn answer(query: &NailQuery) -> Result<Answer<Numbers>, Vec<Issue>> {
    let (values, derivation) = nail(query)?;
    let [crushed_main, crushed_side, turned, hinge_main, hinge_side, hinges] = values.lateral.modes;
    let numbers = Numbers {
        penetration_in: values.penetration,
        modes_lb: Modes {
            Im: crushed_main,
            Is: crushed_side,
            II: turned,
            IIIm: hinge_main,
            IIIs: hinge_side,
            IV: hinges,
        },
        governs: values.lateral.governs,
        lateral_reference_lb: values.lateral.value,
        lateral_lb: values.lateral_design,
        withdrawal_reference_lb_per_in: values.withdrawal,
        withdrawal_lb: values.withdrawal_design,
        pull_through_reference_lb: values.pull_through,
        pull_through_lb: values.pull_through_design,
    };
    Ok(Answer::new(
        "nail",
        Some(query.edition.name()),
        numbers,
        derivation,
    ))
}
