//! The answer of a panel under pressure.

use super::Answer;
use crate::capacity::{PanelQuery, RATINGS_SOURCE, panel};
use crate::issue::Issue;
use serde::Serialize;

/// Numbers of a panel.
#[derive(Debug, Serialize)]
pub(super) struct Numbers {
    /// For a load of normal duration.
    bending_reference_psf: f64,
    /// For the load's duration.
    bending_psf: f64,
    /// At the deflection that is allowed.
    stiffness_psf: Option<f64>,
    deflection_in: Option<f64>,
}

pub(super) fn answer(query: &PanelQuery) -> Result<Answer<Numbers>, Vec<Issue>> {
    let (values, derivation) = panel(query)?;
    let numbers = Numbers {
        bending_reference_psf: values.bending,
        bending_psf: values.bending_design,
        stiffness_psf: values.stiffness,
        deflection_in: values.deflection,
    };
    Ok(Answer::new("panel", Some(RATINGS_SOURCE), numbers, derivation))
}
