//! A plan in a few figures.

use super::Plan;
use crate::amount::Amount;
use crate::cutting::{Proof, Source};
use crate::finding::Severity;
use serde::Serialize;

/// The figures of a planned house. Tables and drawings are in its plan.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Figures {
    /// Walls.
    pub walls: u64,
    /// Pieces of sheathing.
    pub panels: u64,
    /// New sheets that are cut or used whole, without spare.
    pub sheets: u64,
    /// Blocks that the plan adds.
    pub blocks: u64,
    /// Nails.
    pub nails: u64,
    /// Money for all that is ordered, in the currency of its prices.
    pub money: Amount,
    /// Work in minutes.
    pub minutes: Amount,
    /// What the layouts of its walls cost together, in the unit of the objective.
    pub cost: Amount,
    /// The same with the sheets that the house buys in place of shares.
    pub house_cost: Amount,
    /// What that is at least, however its walls are laid out and cut.
    pub house_cost_least: Amount,
    /// Findings that must not be built so.
    pub refuse: u64,
    /// Findings to be mended before sheathing goes on.
    pub mend: u64,
    /// Findings that are worth a thought.
    pub advise: u64,
    /// Walls whose search ran into its limit of effort.
    pub stopped: u64,
    /// How good its cutting is known to be.
    pub cutting: Proof,
}

impl Figures {
    /// The figures of a plan.
    ///
    /// ```
    /// use edgenail::plan::Figures;
    /// let plan = edgenail::plan_json(edgenail::demo::HOUSE_JSON)?;
    /// let figures = Figures::of(&plan);
    /// assert_eq!(figures.walls, plan.walls().len() as u64);
    /// assert_eq!(figures.refuse + figures.mend + figures.advise, plan.findings().len() as u64);
    /// # Ok::<(), edgenail::Error>(())
    /// ```
    pub fn of(plan: &Plan) -> Self {
        let built = || plan.walls().iter().map(|wall| &wall.built);
        let found = |severity: Severity| {
            let findings = plan.findings().iter();
            count(findings.filter(|finding| finding.severity == severity).count())
        };
        let house = || plan.takeoff().lines.iter().filter(|line| line.scope == "house");
        let new = |source: &Source| matches!(source, Source::Sheet { .. });
        Self {
            walls: count(plan.walls().len()),
            panels: built().map(|built| count(built.layout.pieces.len())).sum(),
            sheets: count(
                plan.cutting()
                    .sheets
                    .iter()
                    .filter(|sheet| new(&sheet.source))
                    .count(),
            ),
            blocks: built().map(|built| count(built.blocking.blocks.len())).sum(),
            nails: built().map(|built| built.nailing.count()).sum(),
            money: house()
                .filter(|line| line.ordered.is_some())
                .map(|line| line.money)
                .sum(),
            minutes: house().map(|line| line.minutes).sum(),
            cost: built().map(|built| built.cost.total).sum(),
            house_cost: plan.cost().total,
            house_cost_least: plan.cost().bound,
            refuse: found(Severity::Refuse),
            mend: found(Severity::Mend),
            advise: found(Severity::Advise),
            stopped: count(
                plan.walls()
                    .iter()
                    .filter(|wall| matches!(wall.proof, Some(Proof::Stopped { .. })))
                    .count(),
            ),
            cutting: plan.cutting().proof.clone(),
        }
    }
}

fn count(count: usize) -> u64 {
    u64::try_from(count).unwrap_or(u64::MAX)
}
