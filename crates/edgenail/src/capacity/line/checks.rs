//! What a line was checked for, and which check governs.

use super::{LineCapacity, WallLine, of_all};
use crate::capacity::derivation::Derivation;
use crate::published::Confidence;
use serde::Serialize;

/// What is checked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum CheckKind {
    /// Shear of the sheathing and its nails.
    Shear,
    /// Tension of the hold-downs.
    HoldDown,
}

/// A demand against what carries it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Check {
    /// What is checked.
    pub check: CheckKind,
    /// The demand in pounds.
    pub demand_lb: f64,
    /// What carries it in pounds.
    pub capacity_lb: f64,
    /// Demand over capacity.
    pub ratio: f64,
}

impl CheckKind {
    /// Demand and capacity in the steps, and the name of their ratio.
    const fn symbols(self) -> (&'static str, &'static str, &'static str) {
        match self {
            Self::Shear => ("V", "V_R", "r_V"),
            Self::HoldDown => ("T_most", "T_c", "r_T"),
        }
    }
}

/// Every check that the line's data allow, the governing one first; among equals the sheathing.
pub(super) fn of(line: &WallLine, found: &LineCapacity) -> Vec<Check> {
    let check = |check, demand: f64, capacity: f64| Check {
        check,
        demand_lb: demand,
        capacity_lb: capacity,
        ratio: demand / capacity,
    };
    let mut checks = vec![check(CheckKind::Shear, line.demand, found.capacity)];
    if let Some(held) = line.hold_down {
        checks.push(check(CheckKind::HoldDown, found.hold_down, held.capacity));
    }
    checks.sort_by(|one, other| other.ratio.total_cmp(&one.ratio));
    checks
}

impl LineCapacity {
    /// The governing ratio: the largest of all checks.
    pub fn governing(&self) -> f64 {
        self.checks.first().map_or(self.ratio, |check| check.ratio)
    }

    /// The steps to the ratios and to the largest of them.
    pub(super) fn explain_checks(&self, derivation: &mut Derivation) {
        let mut names = Vec::new();
        for check in &self.checks {
            let (demand, capacity, name) = check.check.symbols();
            let (symbol, meaning, value) = match check.check {
                CheckKind::Shear => (demand, "shear of the line", check.demand_lb),
                CheckKind::HoldDown => (capacity, "what the hold-down holds", check.capacity_lb),
            };
            derivation
                .step(symbol, meaning, symbol)
                .given(symbol, value, "lb")
                .rule("given", Confidence::TwoSources)
                .gives(value, "lb");
            derivation
                .step(name, "demand over capacity", &format!("{demand} / {capacity}"))
                .from(demand, check.demand_lb, "lb")
                .from(capacity, check.capacity_lb, "lb")
                .rule("at most 1", Confidence::TwoSources)
                .gives(check.ratio, "");
            names.push((name, check.ratio));
        }
        let formula: Vec<&str> = names.iter().map(|(name, _)| *name).collect();
        let mut step = derivation.step("r_most", "the governing ratio", &of_all("max", &formula));
        for (name, ratio) in &names {
            step = step.from(name, *ratio, "");
        }
        step.rule("the largest of all checks", Confidence::TwoSources)
            .gives(self.governing(), "");
    }
}
