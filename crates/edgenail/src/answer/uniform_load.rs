//! The answer of sheathing under wind across it, by the table of the standard.

use super::Answer;
use crate::capacity::{UniformLoadQuery, uniform_load};
use crate::issue::Issue;
use serde::Serialize;

/// Numbers of the sheathing.
#[derive(Debug, Serialize)]
pub(super) struct Numbers {
    /// The widest stud spacing that the row is listed for.
    listed_stud_spacing_in: f64,
    nominal_psf: f64,
    design_psf: f64,
}

pub(super) fn answer(query: &UniformLoadQuery) -> Result<Answer<Numbers>, Vec<Issue>> {
    let (found, derivation) = uniform_load(query)?;
    let numbers = Numbers {
        listed_stud_spacing_in: found.listed_studs,
        nominal_psf: found.nominal,
        design_psf: found.design,
    };
    Ok(Answer::new(
        "uniform_load",
        Some(query.edition.name()),
        numbers,
        derivation,
    ))
}
