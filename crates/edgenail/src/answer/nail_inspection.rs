//! The answer of nails found missing or too deep.

use super::{Answer, refuse_recalled};
use crate::capacity::{
    ADDED_SPACING, Derivation, EdgeNails, INSPECTION_NATURE, NailInspectionQuery, NailRemedy,
    OVERDRIVEN_COUNTS, inspect_nails,
};
use crate::issue::Issue;
use serde::Serialize;

/// Numbers of an inspection.
#[derive(Debug, Serialize)]
pub(super) struct Numbers {
    /// What the result is.
    nature: &'static str,
    edges: Vec<Edge>,
    overdriven_ratio: f64,
    /// Up to this share nothing is lost, as long as no head is deeper than 1/8 in.
    overdriven_most: f64,
    /// In order.
    mend: Vec<Mend>,
    nail_ratio: f64,
    at_most_plf: Option<f64>,
}

#[derive(Debug, Serialize)]
struct Edge {
    name: String,
    specified: u32,
    overdriven: u32,
    missing: u32,
    nail_ratio: f64,
}

#[derive(Debug, Serialize)]
struct Mend {
    remedy: NailRemedy,
    nails: u32,
    /// In words.
    meaning: &'static str,
    source: &'static str,
}

impl Mend {
    const fn of(remedy: NailRemedy, nails: u32) -> Self {
        let (meaning, source) = match remedy {
            NailRemedy::DriveMissing => ("drive the missing nails first", "common practice, no source"),
            NailRemedy::AddNails => (
                "add these nails, one for every two that are too deep; where there is no room, three approved staples for each",
                OVERDRIVEN_COUNTS.source,
            ),
            NailRemedy::AskDesigner => (
                "so many nails would be added, but edge nails stand 4 in. apart or closer: a design professional decides",
                ADDED_SPACING.source,
            ),
        };
        Self {
            remedy,
            nails,
            meaning,
            source,
        }
    }
}

pub(super) fn answer(query: &NailInspectionQuery) -> Result<Answer<Numbers>, Vec<Issue>> {
    let mut derivation = Derivation::default();
    let found = inspect_nails(query, &mut derivation)?;
    refuse_recalled(&derivation, false)?;
    let edges = found.edges.into_iter().map(|edge: EdgeNails| Edge {
        name: edge.name,
        specified: edge.specified,
        overdriven: edge.overdriven,
        missing: edge.missing,
        nail_ratio: edge.ratio,
    });
    let numbers = Numbers {
        nature: INSPECTION_NATURE,
        edges: edges.collect(),
        overdriven_ratio: found.share,
        overdriven_most: found.share_most,
        mend: found
            .mend
            .iter()
            .map(|(remedy, nails)| Mend::of(*remedy, *nails))
            .collect(),
        nail_ratio: found.ratio,
        at_most_plf: found.at_most,
    };
    Ok(Answer::new("nail_inspection", None, numbers, derivation))
}
