//! A nail as a fastener: lateral load, withdrawal, its head pulled through.

use super::derivation::Derivation;
use super::dowel::{Dowel, Lateral, bearing_length, bearing_strength, yield_strength};
use super::fault::{fault, inches};
use super::question::{NailEdition, NailQuery};
use super::recalled::refuse_recalled;
use super::withdrawal::{pull_through, withdrawal};
use crate::issue::{Code, Issue};
use crate::length::Length;
use crate::published::Confidence;

/// What a nail holds; pounds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NailValues {
    /// How far the point goes into the main member, in inches.
    pub penetration: f64,
    /// The yield modes.
    pub lateral: Lateral,
    /// Lateral value for the load's duration.
    pub lateral_design: f64,
    /// Withdrawal for a load of normal duration, in pounds an inch.
    pub withdrawal: f64,
    /// Withdrawal of the whole penetration for the load's duration.
    pub withdrawal_design: f64,
    /// Pull-through for a load of normal duration.
    pub pull_through: Option<f64>,
    /// Pull-through for the load's duration.
    pub pull_through_design: Option<f64>,
}

/// The least penetration, in diameters; from [`FULL`] on nothing is lost.
const LEAST: f64 = 6.0;
const FULL: f64 = 10.0;

const OLD_DEPTH: &str = "NDS 2005 Table 11N, footnote on penetration: p / (10 D) from 6 D to 10 D";
const DEPTH: &str =
    "NDS 12.3.5, bearing length: without the point below ten diameters, as a teaching text has it";
const BEARING: &str = "NDS 12.3.3, dowel bearing strength by specific gravity: 16,600 G^1.84, rounded to 50";
const GEOMETRY: &str = "geometry";
const DURATION: &str = "NDS load duration factor";

/// Takes a nail, with its steps.
///
/// # Errors
/// A nail that goes not deep enough, a shank whose bending strength is not listed, a value that was recalled and is not
/// accepted.
///
/// ```
/// use edgenail::Length;
/// use edgenail::capacity::{NailEdition, NailQuery, nail};
/// // A published example, NDS 2005: 16d common through a 2x plate and floor sheathing, 174 lb for wind.
/// let query = NailQuery {
///     edition: NailEdition::Nds2005, shank: 0.162, length: Length::sixteenths(56), head: None, bending_yield: Some(90_000.0),
///     side_thickness: Length::sixteenths(24), side_gravity: 0.50, between: Length::sixteenths(12), main_gravity: 0.50,
///     main_depth: None, load_duration: 1.6, accept_unverified: false,
/// };
/// let (values, _) = nail(&query).map_err(|issues| issues[0].message.clone())?;
/// assert_eq!(values.lateral_design.round(), 174.0);
/// # Ok::<(), String>(())
/// ```
pub fn nail(query: &NailQuery) -> Result<(NailValues, Derivation), Vec<Issue>> {
    let mut steps = Derivation::default();
    let diameter = query.shank;
    let (dowel, penetration) = dowel(query, &mut steps)?;
    let lateral = dowel.lateral();
    let lateral_design = explain_lateral(query, &dowel, penetration, &mut steps);
    let rule = withdrawal(query.main_gravity, diameter);
    steps
        .step("W", "withdrawal of an inch of nail", "1380 * G_m^2.5 * D")
        .given("G_m", query.main_gravity, "")
        .given("D", diameter, "in")
        .rule(rule.source, rule.confidence)
        .gives(rule.value, "lb/in");
    let withdrawal_design = steps
        .step("W_p", "withdrawal for the load's duration", "W * p * C_D")
        .from("W", rule.value, "lb/in")
        .from("p", penetration, "in")
        .given("C_D", query.load_duration, "")
        .rule(DURATION, Confidence::Source)
        .gives(rule.value * penetration * query.load_duration, "lb");
    let (pull_through, pull_through_design) = explain_head(query, &mut steps)?;
    refuse_recalled(&steps, query.accept_unverified)?;
    let values = NailValues {
        penetration,
        lateral,
        lateral_design,
        withdrawal: rule.value,
        withdrawal_design,
        pull_through,
        pull_through_design,
    };
    Ok((values, steps))
}

/// The nail as a dowel with the steps to its values, and how far its point goes into the main member.
pub(super) fn dowel(query: &NailQuery, steps: &mut Derivation) -> Result<(Dowel, f64), Vec<Issue>> {
    let penetration = penetration(query, steps)?;
    let dowel = Dowel {
        diameter: query.shank,
        yield_strength: bending(query, steps)?,
        main_length: bearing(query, penetration, steps)?,
        main_bearing: bearing_of("F_em", "main member", query.main_gravity, steps),
        side_length: query.side_thickness.as_inches(),
        side_bearing: bearing_of("F_es", "side member", query.side_gravity, steps),
    };
    Ok((dowel, penetration))
}

/// How far the point goes into the main member.
fn penetration(query: &NailQuery, steps: &mut Derivation) -> Result<f64, Vec<Issue>> {
    let beyond = query.length - query.side_thickness - query.between;
    let within = query.main_depth.map_or(beyond, |depth| depth.min(beyond));
    let least = LEAST * query.shank;
    if within <= Length::ZERO || within.as_inches() < least {
        return Err(vec![fault(
            Code::OutOfRange,
            "length",
            &inches(query.length),
            &format!("the point at least six diameters, {least} in., in the main member"),
            "the nail goes not deep enough to be counted",
        )]);
    }
    let formula = if query.main_depth.is_some() {
        "min(L - t_s - t_b, t_m)"
    } else {
        "L - t_s - t_b"
    };
    let mut step = steps
        .step("p", "penetration into the main member", formula)
        .given("L", query.length.as_inches(), "in")
        .given("t_s", query.side_thickness.as_inches(), "in")
        .given("t_b", query.between.as_inches(), "in");
    if let Some(depth) = query.main_depth {
        step = step.given("t_m", depth.as_inches(), "in");
    }
    Ok(step
        .rule(GEOMETRY, Confidence::TwoSources)
        .gives(within.as_inches(), "in"))
}

/// What of the penetration bears.
fn bearing(query: &NailQuery, penetration: f64, steps: &mut Derivation) -> Result<f64, Vec<Issue>> {
    if query.edition == NailEdition::Nds2005 {
        return Ok(steps
            .step("l_m", "bearing length in the main member", "p")
            .from("p", penetration, "in")
            .rule(OLD_DEPTH, Confidence::Source)
            .gives(penetration, "in"));
    }
    let Some(length) = bearing_length(query.shank, penetration) else {
        return Err(vec![fault(
            Code::OutOfRange,
            "length",
            &inches(query.length),
            "the point at least six diameters in the main member",
            "the nail goes not deep enough to be counted",
        )]);
    };
    let step = if length < penetration {
        steps
            .step("l_m", "bearing length in the main member", "p - 2 * D")
            .from("p", penetration, "in")
            .given("D", query.shank, "in")
    } else {
        steps
            .step("l_m", "bearing length in the main member", "p")
            .from("p", penetration, "in")
    };
    Ok(step.rule(DEPTH, Confidence::Source).gives(length, "in"))
}

fn bending(query: &NailQuery, steps: &mut Derivation) -> Result<f64, Vec<Issue>> {
    let meaning = "bending yield strength of the nail";
    if let Some(said) = query.bending_yield {
        return Ok(steps
            .step("F_yb", meaning, "F_yb")
            .given("F_yb", said, "psi")
            .rule("given", Confidence::TwoSources)
            .gives(said, "psi"));
    }
    let Some(listed) = yield_strength(query.shank) else {
        return Err(vec![fault(
            Code::UnlistedValue,
            "shank",
            &query.shank.to_string(),
            "0.099 to 0.375 in., or a `bending_yield`",
            "no bending yield strength is listed for so thin a nail",
        )]);
    };
    Ok(steps
        .step("F_yb", meaning, "F_yb")
        .cell("F_yb", listed.value, "psi", listed.source, listed.confidence)
        .rule(listed.source, listed.confidence)
        .gives(listed.value, "psi"))
}

fn bearing_of(symbol: &str, member: &str, gravity: f64, steps: &mut Derivation) -> f64 {
    let value = bearing_strength(gravity);
    let source = format!("{BEARING}; G = {gravity}");
    steps
        .step(symbol, &format!("bearing strength of the {member}"), symbol)
        .cell(symbol, value, "psi", &source, Confidence::Source)
        .rule(&source, Confidence::Source)
        .gives(value, "psi")
}

fn explain_lateral(query: &NailQuery, dowel: &Dowel, penetration: f64, steps: &mut Derivation) -> f64 {
    let reference = dowel.explain(steps);
    let short = query.edition == NailEdition::Nds2005 && penetration < FULL * query.shank;
    let factor = if short {
        steps
            .step("C_d", "factor for short penetration", "p / (10 * D)")
            .from("p", penetration, "in")
            .given("D", query.shank, "in")
            .rule(OLD_DEPTH, Confidence::Source)
            .gives(penetration / (FULL * query.shank), "")
    } else {
        1.0
    };
    let formula = if short { "Z * C_d * C_D" } else { "Z * C_D" };
    let mut step = steps
        .step("Z_D", "lateral value for the load's duration", formula)
        .from("Z", reference, "lb");
    if short {
        step = step.from("C_d", factor, "");
    }
    step.given("C_D", query.load_duration, "")
        .rule(DURATION, Confidence::Source)
        .gives(reference * factor * query.load_duration, "lb")
}

fn explain_head(query: &NailQuery, steps: &mut Derivation) -> Result<(Option<f64>, Option<f64>), Vec<Issue>> {
    let Some(head) = query.head else {
        return Ok((None, None));
    };
    if query.edition == NailEdition::Nds2005 {
        return Err(vec![fault(
            Code::UnlistedValue,
            "head",
            &head.to_string(),
            "null",
            "this edition has no pull-through",
        )]);
    }
    let thickness = query.side_thickness.as_inches();
    let rule = pull_through(query.side_gravity, head, thickness);
    let pi = std::f64::consts::PI;
    let thin = thickness <= 2.5 * head;
    let formula = if thin {
        "690 * pi * D_H * G_s^2 * t_s"
    } else {
        "1725 * pi * D_H^2 * G_s^2"
    };
    let mut step = steps
        .step("P", "head pulled through the side member", formula)
        .cell("pi", pi, "", "mathematics", Confidence::TwoSources)
        .given("D_H", head, "in")
        .given("G_s", query.side_gravity, "");
    if thin {
        step = step.given("t_s", thickness, "in");
    }
    let value = step.rule(rule.source, rule.confidence).gives(rule.value, "lb");
    let design = steps
        .step("P_D", "pull-through for the load's duration", "P * C_D")
        .from("P", value, "lb")
        .given("C_D", query.load_duration, "")
        .rule(DURATION, Confidence::Source)
        .gives(value * query.load_duration, "lb");
    Ok((Some(value), Some(design)))
}
