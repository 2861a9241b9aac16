//! The answer of a schedule.

use super::Answer;
use crate::amount::Amount;
use crate::capacity::{Candidate, Derivation, Method, ScheduleQuery, nominal_thickness, schedule};
use crate::issue::Issue;
use crate::published::Confidence;
use serde::Serialize;

/// Numbers of a schedule.
#[derive(Debug, Serialize)]
pub(super) struct Numbers {
    /// The first candidate carries the demand.
    carried: bool,
    /// The chosen one first, then those that carry the demand for more, then those that do not carry it.
    candidates: Vec<Ranked>,
    /// Sheets whose category is no thickness, so that no table has them.
    left_out: Vec<String>,
}

#[derive(Debug, Serialize)]
struct Ranked {
    sheet: String,
    nail: String,
    edge_spacing_in: f64,
    field_spacing_in: f64,
    /// None where the tables do not allow it.
    nominal_plf: Option<f64>,
    design_plf: Option<f64>,
    ratio: Option<f64>,
    /// Sheets and nails, bought and driven, for one foot of wall.
    cost_per_foot: Amount,
    /// Why it was not chosen; empty of the chosen one.
    why_not: String,
}

pub(super) fn answer(query: &ScheduleQuery) -> Result<Answer<Numbers>, Vec<Issue>> {
    let found = schedule(query)?;
    let mut derivation = Derivation::default();
    let mut confidence = Confidence::TwoSources;
    for candidate in &found {
        explain(query, candidate, &mut derivation);
        if let Ok(unit) = &candidate.unit {
            confidence = confidence.max(unit.confidence);
        }
    }
    let left_out = query
        .stock
        .sheets
        .iter()
        .filter(|sheet| nominal_thickness(sheet).is_none())
        .map(|sheet| sheet.name.clone());
    let numbers = Numbers {
        carried: found.first().is_some_and(|first| first.why_not.is_empty()),
        left_out: left_out.collect(),
        candidates: found.iter().map(|candidate| ranked(query, candidate)).collect(),
    };
    let answer = Answer::new("schedule", Some(query.edition.name()), numbers, derivation);
    Ok(Answer {
        confidence: answer.confidence.max(confidence),
        ..answer
    })
}

/// The steps to the ratio of one candidate that the tables allow.
fn explain(query: &ScheduleQuery, candidate: &Candidate, derivation: &mut Derivation) {
    let (Ok(unit), Some(ratio)) = (&candidate.unit, candidate.ratio) else {
        return;
    };
    unit.explain(derivation);
    let name = match query.method {
        Method::Asd => "v_ASD",
        Method::Lrfd => "v_LRFD",
    };
    let (sheet, nail) = names(query, candidate);
    let spacing = candidate.assembly.edge_spacing.as_inches();
    derivation
        .step(
            "ratio",
            &format!("demand over capacity: {sheet}, {nail} at {spacing} in."),
            &format!("v / {name}"),
        )
        .given("v", query.demand.unit_shear, "plf")
        .from(name, unit.design, "plf")
        .rule("at most 1", Confidence::TwoSources)
        .gives(ratio, "");
}

fn ranked(query: &ScheduleQuery, candidate: &Candidate) -> Ranked {
    let (sheet, nail) = names(query, candidate);
    let unit = candidate.unit.as_ref().ok();
    Ranked {
        sheet,
        nail,
        edge_spacing_in: candidate.assembly.edge_spacing.as_inches(),
        field_spacing_in: candidate.assembly.field_spacing.as_inches(),
        nominal_plf: unit.map(|unit| unit.nominal),
        design_plf: unit.map(|unit| unit.design),
        ratio: candidate.ratio,
        cost_per_foot: candidate.cost,
        why_not: candidate.why_not.clone(),
    }
}

/// What the stock calls the sheet and the nail.
fn names(query: &ScheduleQuery, candidate: &Candidate) -> (String, String) {
    let sheet = query.stock.sheets.get(candidate.sheet as usize);
    let nail = query.stock.nails.get(candidate.nail as usize);
    (
        sheet.map_or_else(String::new, |sheet| sheet.name.clone()),
        nail.map_or_else(String::new, |nail| nail.name.clone()),
    )
}
