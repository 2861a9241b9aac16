//! The answer of the ends of a segment.

use super::Answer;
use crate::capacity::{Derivation, EndLoads, HoldDownQuery, explain_overturning, overturning};
use crate::issue::{Code, Issue};
use crate::published::Confidence;
use serde::Serialize;

/// Numbers of the ends.
#[derive(Debug, Serialize)]
pub(super) struct Numbers {
    chord_lb: f64,
    arm_ft: f64,
    /// Below zero nothing pulls.
    tension_lb: f64,
}

pub(super) fn answer(query: &HoldDownQuery) -> Result<Answer<Numbers>, Vec<Issue>> {
    if query.inset >= query.pier.length {
        return Err(vec![Issue {
            code: Code::OutOfRange,
            path: "/inset".to_owned(),
            wall: String::new(),
            found: format!("{} ft", query.inset),
            allowed: "less than the segment".to_owned(),
            message: "the hold-down stands beyond the other end".to_owned(),
        }]);
    }
    let mut derivation = Derivation::default();
    derivation
        .step("v", "unit shear", "v")
        .given("v", query.shear, "plf")
        .rule("given", Confidence::TwoSources)
        .gives(query.shear, "plf");
    let loads = EndLoads {
        dead: query.dead,
        inset: query.inset,
        ..EndLoads::default()
    };
    explain_overturning(&query.pier, query.shear, &loads, &mut derivation);
    let ends = overturning(&query.pier, query.shear, &loads);
    let numbers = Numbers {
        chord_lb: ends.chord,
        arm_ft: ends.arm,
        tension_lb: ends.tension,
    };
    Ok(Answer::new("hold_down", None, numbers, derivation))
}
