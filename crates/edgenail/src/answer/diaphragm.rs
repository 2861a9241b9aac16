//! The answer of a storey's force on its lines.

use super::Answer;
use crate::capacity::{DiaphragmQuery, share_storey_force};
use crate::issue::Issue;
use serde::Serialize;

/// Numbers of the diaphragm.
#[derive(Debug, Serialize)]
pub(super) struct Numbers {
    stiffness_lb_per_in: f64,
    /// Of the lines along the force: y of lines along x, x of lines along y.
    centre_in: f64,
    /// Of the perpendicular lines; none without such.
    centre_across_in: Option<f64>,
    torsional_in_lb: f64,
    eccentricity_in: f64,
    lines: Vec<Line>,
}

#[derive(Debug, Serialize)]
struct Line {
    name: String,
    flexible_lb: f64,
    /// Of a rigid diaphragm before it turns.
    direct_lb: f64,
    turning_beyond_lb: f64,
    turning_short_lb: f64,
    /// The largest of both diaphragms.
    envelope_lb: f64,
}

pub(super) fn answer(query: &DiaphragmQuery) -> Result<Answer<Numbers>, Vec<Issue>> {
    let shared = share_storey_force(&query.lines, &query.force)?;
    let derivation = shared.explain_all(&query.lines, &query.force);
    let lines = query.lines.iter().zip(&shared.lines).map(|(line, share)| Line {
        name: line.name.clone(),
        flexible_lb: share.flexible,
        direct_lb: share.direct,
        turning_beyond_lb: share.turning_beyond,
        turning_short_lb: share.turning_short,
        envelope_lb: share.envelope,
    });
    let numbers = Numbers {
        stiffness_lb_per_in: shared.rigidity.total,
        centre_in: shared.rigidity.centre,
        centre_across_in: shared.rigidity.centre_across,
        torsional_in_lb: shared.rigidity.torsional,
        eccentricity_in: shared.rigidity.eccentricity,
        lines: lines.collect(),
    };
    Ok(Answer::new("diaphragm", None, numbers, derivation))
}
