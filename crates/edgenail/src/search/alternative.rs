//! A layout that was not chosen, beside the one that was.

use crate::amount::Amount;
use crate::blocking::Blocking;
use crate::evaluate::Evaluated;
use crate::finding::{Severity, to_mend};
use crate::house::House;
use crate::layout::{Layout, LayoutSpec, Running};
use crate::length::Length;
use crate::price::{CostDifference, differences};
use crate::wording::counted;
use serde::Serialize;

/// A layout that was built through all stages and not chosen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Alternative {
    /// What it is, in a few words.
    pub summary: String,
    /// What it costs, in the unit of the objective.
    pub total: Amount,
    /// What it costs more than the chosen one; below zero only for one that breaks a rule, has more to mend, or leaves the
    /// house to buy more sheets.
    pub difference: Amount,
    /// Pieces.
    pub pieces: u32,
    /// How far it reaches below the lowest plate.
    pub reach: Length,
    /// Levels where its courses meet, the bottom line first.
    pub levels: Vec<Length>,
    /// The rule that it breaks, empty where it breaks none.
    pub breaks: String,
    /// How many more things have to be mended on it than on the chosen one; below zero for fewer.
    pub more_to_mend: i64,
    /// Parts of its cost in which it is not the same as the chosen one; they sum to `difference`.
    pub differences: Vec<CostDifference>,
    /// What it is made from: [`crate::evaluate::evaluate`] builds it again.
    #[serde(skip)]
    pub spec: LayoutSpec,
}

/// What a layout is beside the chosen one.
pub(crate) fn alternative(house: &House, built: &Evaluated, chosen: &Evaluated) -> Alternative {
    let bands = &built.layout.bands;
    let mut levels: Vec<Length> = bands.first().map(|band| band.y0).into_iter().collect();
    levels.extend(bands.iter().map(|band| band.y1));
    let refusal = built
        .findings
        .iter()
        .find(|finding| finding.severity == Severity::Refuse);
    Alternative {
        summary: summary(house, &built.layout, &built.blocking),
        total: built.cost.total,
        difference: built.cost.total - chosen.cost.total,
        pieces: u32::try_from(built.layout.pieces.len()).unwrap_or(u32::MAX),
        reach: built.layout.reach,
        levels,
        breaks: refusal.map_or_else(String::new, |finding| {
            finding.message.written(house.drawn_in.in_text())
        }),
        more_to_mend: signed(to_mend(&built.findings)) - signed(to_mend(&chosen.findings)),
        differences: differences(&built.cost, &chosen.cost),
        spec: built.spec.clone(),
    }
}

/// What a layout is, in a few words: its courses, its blocks, and which sheets its pieces are of.
pub(crate) fn summary(house: &House, layout: &Layout, blocking: &Blocking) -> String {
    let count = |running| layout.bands.iter().filter(|band| band.running == running).count();
    let (upright, flat) = (count(Running::Upright), count(Running::Flat));
    let sheets = (0u32..).zip(&house.stock.sheets).filter_map(|(sheet, kind)| {
        let pieces = layout.pieces.iter().filter(|piece| piece.sheet == sheet).count();
        (pieces > 0).then(|| format!("{} of {}", counted(pieces, "piece", "pieces"), kind.name))
    });
    format!(
        "{upright} upright and {}, {}: {}",
        counted(flat, "flat course", "flat courses"),
        counted(blocking.blocks.len(), "block", "blocks"),
        sheets.collect::<Vec<_>>().join(", ")
    )
}

fn signed(count: usize) -> i64 {
    i64::try_from(count).unwrap_or(i64::MAX)
}
