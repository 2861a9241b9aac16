//! The answer of a face of another material.

use super::{Answer, refuse_recalled};
use crate::capacity::{Derivation, FacingQuery, FacingShear, Reduction, facing};
use crate::issue::Issue;
use crate::published::Confidence;
use serde::Serialize;

/// Numbers of a face.
#[derive(Debug, Serialize)]
pub(super) struct Numbers {
    /// Its table.
    table: &'static str,
    /// Its cell, as it was collected.
    cell: &'static str,
    table_plf: f64,
    /// None of a table of allowable values.
    nominal_plf: Option<f64>,
    design_plf: f64,
    /// None where it was not collected or is left out.
    stiffness_kips_per_in: Option<f64>,
    /// None where it was not collected or is left out.
    proportion: Option<Slenderness>,
    /// What was collected from memory and is left out, because that is not accepted.
    left_out: Vec<&'static str>,
    not_checked: Vec<&'static str>,
}

/// How slender a segment may be: height over length.
#[derive(Debug, Serialize)]
struct Slenderness {
    ratio_most: f64,
    source: &'static str,
    confidence: Confidence,
    /// What slender segments lose, as it was collected; nothing of it is in the numbers above.
    reductions: Vec<Loss>,
}

#[derive(Debug, Serialize)]
struct Loss {
    table: &'static str,
    segments: &'static str,
    formula: &'static str,
    source: &'static str,
    confidence: Confidence,
}

impl Numbers {
    pub(super) fn of(found: &FacingShear) -> Self {
        Self {
            table: found.row.table.name(),
            cell: found.cell.cell.key,
            table_plf: found.cell.value.as_f64(),
            nominal_plf: found.nominal,
            design_plf: found.design,
            stiffness_kips_per_in: found.stiffness,
            proportion: found.proportion().map(|proportion| Slenderness {
                ratio_most: proportion.most,
                source: proportion.source,
                confidence: proportion.confidence,
                reductions: proportion.reductions.iter().map(loss).collect(),
            }),
            left_out: found.left_out(),
            not_checked: found.not_checked(),
        }
    }
}

const fn loss(reduction: &Reduction) -> Loss {
    Loss {
        table: reduction.of.0,
        segments: reduction.of.1,
        formula: reduction.formula,
        source: reduction.source,
        confidence: reduction.confidence,
    }
}

pub(super) fn answer(query: &FacingQuery) -> Result<Answer<Numbers>, Vec<Issue>> {
    let found = facing(query)?;
    let mut derivation = Derivation::default();
    found.explain_stiffness(&mut derivation);
    found.explain(&mut derivation);
    refuse_recalled(&derivation, query.accept_unverified)?;
    let numbers = Numbers::of(&found);
    // A recalled proportion is part of the answer, and it says so.
    let of_proportion = numbers.proportion.iter().flat_map(|proportion| {
        let reductions = proportion.reductions.iter().map(|loss| loss.confidence);
        reductions.chain([proportion.confidence])
    });
    let confidence = of_proportion.fold(found.confidence, Confidence::max);
    let answer = Answer::new("facing", Some(query.edition.name()), numbers, derivation);
    Ok(Answer { confidence, ..answer })
}
