//! A layout that was not chosen, beside the one that was.

use crate::amount::Amount;
use crate::evaluate::Evaluated;
use crate::finding::Severity;
use crate::house::House;
use crate::layout::Running;
use crate::length::Length;
use crate::wording::counted;
use serde::Serialize;

/// A layout that was built through all stages and not chosen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Alternative {
    /// What it is, in a few words.
    pub summary: String,
    /// What it costs, in the unit of the objective.
    pub total: Amount,
    /// What it costs more than the chosen one; below zero only for one that breaks a rule or has more to mend.
    pub difference: Amount,
    /// Pieces.
    pub pieces: u32,
    /// How far it reaches below the lowest plate.
    pub reach: Length,
    /// Levels where its courses meet, the bottom line first.
    pub levels: Vec<Length>,
    /// The rule that it breaks, empty where it breaks none.
    pub breaks: String,
}

/// What a layout is beside the chosen one, which costs so much.
pub(super) fn alternative(house: &House, built: &Evaluated, chosen: Amount) -> Alternative {
    let bands = &built.layout.bands;
    let count = |running| bands.iter().filter(|band| band.running == running).count();
    let (upright, flat) = (count(Running::Upright), count(Running::Flat));
    let mut levels: Vec<Length> = bands.first().map(|band| band.y0).into_iter().collect();
    levels.extend(bands.iter().map(|band| band.y1));
    let refusal = built
        .findings
        .iter()
        .find(|finding| finding.severity == Severity::Refuse);
    Alternative {
        summary: format!(
            "{upright} upright and {}, {}",
            counted(flat, "flat course", "flat courses"),
            counted(built.blocking.blocks.len(), "block", "blocks")
        ),
        total: built.cost.total,
        difference: built.cost.total - chosen,
        pieces: u32::try_from(built.layout.pieces.len()).unwrap_or(u32::MAX),
        reach: built.layout.reach,
        levels,
        breaks: refusal.map_or_else(String::new, |finding| {
            finding.message.written(house.drawn_in.in_text())
        }),
    }
}
