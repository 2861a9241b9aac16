//! Results that would rest on what was recalled.

use super::derivation::Derivation;
use super::fault::fault;
use crate::issue::{Code, Issue};
use crate::published::Confidence;

/// Refuses a result whose steps rest on values or rules that were recalled, unless the caller accepts them.
///
/// # Errors
/// One issue of the field `accept_unverified` that names each of them.
pub fn refuse_recalled(derivation: &Derivation, accept: bool) -> Result<(), Vec<Issue>> {
    let mut sources: Vec<&str> = Vec::new();
    for step in &derivation.steps {
        if step.confidence == Confidence::Memory && !sources.contains(&step.source.as_str()) {
            sources.push(&step.source);
        }
    }
    if accept || sources.is_empty() {
        return Ok(());
    }
    Err(vec![fault(
        Code::Unverified,
        "accept_unverified",
        "false",
        "true, after checking the printed standard",
        &format!(
            "these were recalled and not checked against the printed standard: {}",
            sources.join("; ")
        ),
    )])
}
