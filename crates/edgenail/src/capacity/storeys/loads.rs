//! Loads of a wall at the level of the method: each conversion is a step, nothing is converted silently.

use crate::capacity::derivation::Derivation;
use crate::capacity::rule::Rule;
use crate::house::{Acting, DesignMethod, LateralDemand, Load, LoadKind, LoadLevel};
use crate::published::Confidence;

/// What comes into a storey's line at the level of the method.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct StoreyLoad {
    /// From the storeys above in pounds.
    pub above: f64,
    /// All that the line has to carry in pounds.
    pub shear: f64,
    /// Dead load that rights it in pounds per foot.
    pub dead: f64,
}

/// What makes a load of strength level one of the method.
const fn lateral(kind: LoadKind, method: DesignMethod) -> Rule<f64> {
    match (method, kind) {
        (DesignMethod::Asd, LoadKind::Wind) => Rule::recalled(0.6, "ASCE 7-16 2.4.1, 0.6 W"),
        (DesignMethod::Asd, LoadKind::Seismic) => Rule::recalled(0.7, "ASCE 7-16 2.4.5, 0.7 E"),
        (DesignMethod::Lrfd, LoadKind::Wind) => Rule::recalled(1.0, "ASCE 7-16 2.3.1, 1.0 W"),
        (DesignMethod::Lrfd, LoadKind::Seismic) => Rule::recalled(1.0, "ASCE 7-16 2.3.6, 1.0 E"),
    }
}

/// What remains of dead load that rights a wall, and what of it an earthquake takes for each unit of spectral acceleration.
const fn dead(kind: LoadKind, method: DesignMethod) -> (Rule<f64>, f64) {
    match (method, kind) {
        (DesignMethod::Asd, LoadKind::Wind) => (Rule::recalled(0.6, "ASCE 7-16 2.4.1, 0.6 D + 0.6 W"), 0.0),
        (DesignMethod::Asd, LoadKind::Seismic) => (
            Rule::recalled(
                0.6,
                "ASCE 7-16 2.4.5, 0.6 D - 0.7 E_v + 0.7 E_h, E_v = 0.2 S_DS D",
            ),
            0.14,
        ),
        (DesignMethod::Lrfd, LoadKind::Wind) => (Rule::recalled(0.9, "ASCE 7-16 2.3.1, 0.9 D + 1.0 W"), 0.0),
        (DesignMethod::Lrfd, LoadKind::Seismic) => (
            Rule::recalled(0.9, "ASCE 7-16 2.3.6, 0.9 D - E_v + E_h, E_v = 0.2 S_DS D"),
            0.2,
        ),
    }
}

/// The load of one storey's line, and the steps to it: `above` is what comes down to it, and how far that may be trusted.
///
/// `None` where nothing acts at or above it.
pub(super) fn storey_load(
    demand: &LateralDemand,
    kind: LoadKind,
    loads: &[&Load],
    (above, of_above): (f64, Confidence),
    steps: &mut Derivation,
) -> Option<StoreyLoad> {
    let acting = match kind {
        LoadKind::Wind => Acting::Wind,
        LoadKind::Seismic => Acting::Seismic,
    };
    let sum = |level| -> f64 {
        let of = loads
            .iter()
            .filter(|load| load.kind == acting && load.level == Some(level));
        of.map(|load| load.amount.as_f64()).sum()
    };
    let (strength, allowable) = (sum(LoadLevel::Strength), sum(LoadLevel::Asd));
    if strength <= 0.0 && allowable <= 0.0 && above <= 0.0 {
        return None;
    }
    let mut own = 0.0;
    let mut terms = Vec::new();
    if strength > 0.0 {
        let rule = lateral(kind, demand.method);
        own += steps
            .step(
                "F_s",
                "force at the storey's top from strength level",
                "c_L * F_u",
            )
            .cell("c_L", rule.value, "", rule.source, rule.confidence)
            .given("F_u", strength, "lb")
            .rule(rule.source, rule.confidence)
            .gives(rule.value * strength, "lb");
        terms.push(("F_s", own));
    }
    if allowable > 0.0 {
        own += steps
            .step("F_a", "force at the storey's top at ASD level", "F_a")
            .given("F_a", allowable, "lb")
            .rule("given", Confidence::TwoSources)
            .gives(allowable, "lb");
        terms.push(("F_a", allowable));
    }
    if above > 0.0 {
        terms.push(("V_up", above));
    }
    let formula: Vec<&str> = terms.iter().map(|(name, _)| *name).collect();
    let mut step = steps.step(
        "V",
        "shear of the storey's line, with all from above",
        &formula.join(" + "),
    );
    for (name, value) in &terms {
        step = if *name == "V_up" {
            step.cell(name, *value, "lb", "the storey above", of_above)
        } else {
            step.from(name, *value, "lb")
        };
    }
    let shear = step
        .rule(
            if of_above == Confidence::Memory {
                "statics: forces come down, those of the storey above by values that were recalled there"
            } else {
                "statics: forces come down"
            },
            Confidence::TwoSources,
        )
        .gives(own + above, "lb");
    Some(StoreyLoad {
        above,
        shear,
        dead: righting(demand, kind, loads, steps),
    })
}

/// Dead load that rights the line, and the step to it.
fn righting(demand: &LateralDemand, kind: LoadKind, loads: &[&Load], steps: &mut Derivation) -> f64 {
    let given: f64 = loads
        .iter()
        .filter(|load| load.kind == Acting::Dead)
        .map(|load| load.amount.as_f64())
        .sum();
    if given <= 0.0 {
        return 0.0;
    }
    let (rule, lost) = dead(kind, demand.method);
    // Reading asks for the acceleration where there is seismic and dead load.
    let acceleration = demand
        .spectral_acceleration
        .map_or(0.0, crate::decimal::Decimal::as_f64);
    let (formula, factor) = if lost > 0.0 {
        (
            "max(0, c_D - c_v * S_DS) * D",
            (rule.value - lost * acceleration).max(0.0),
        )
    } else {
        ("c_D * D", rule.value)
    };
    let mut step = steps
        .step("w", "dead load that rights the line", formula)
        .cell("c_D", rule.value, "", rule.source, rule.confidence)
        .given("D", given, "plf");
    if lost > 0.0 {
        step = step
            .cell("c_v", lost, "", rule.source, rule.confidence)
            .given("S_DS", acceleration, "");
    }
    step.rule(rule.source, rule.confidence)
        .gives(factor * given, "plf")
}
