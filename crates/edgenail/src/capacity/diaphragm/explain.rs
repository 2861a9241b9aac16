//! The steps to what a line takes.

use super::input::{DiaphragmLine, PlanAxis, StoreyForce};
use super::share::{Diaphragm, LineShare};
use crate::capacity::derivation::{Derivation, Writing};
use crate::published::Confidence;

const STATICS: &str = "statics of a rigid diaphragm on linear lines";
const TRIBUTARY: &str =
    "statics of a flexible diaphragm: each line takes what comes from its tributary width";

/// Lines with their numbers, counted from 1.
type Numbered<'l> = Vec<(usize, &'l DiaphragmLine)>;

fn sum(lines: &Numbered<'_>, pattern: &str) -> String {
    let terms: Vec<String> = lines
        .iter()
        .map(|(number, _)| pattern.replace('#', &number.to_string()))
        .collect();
    terms.join(" + ")
}

fn stiffnesses<'d>(mut step: Writing<'d>, lines: &Numbered<'_>, places: bool) -> Writing<'d> {
    for (number, line) in lines {
        step = step.given(&format!("k{number}"), line.stiffness, "lb/in");
        if places {
            step = step.given(&format!("x{number}"), line.at.as_inches(), "in");
        }
    }
    step
}

impl Diaphragm {
    /// The steps to the forces on all lines: the diaphragm once, then line by line.
    pub fn explain_all(&self, lines: &[DiaphragmLine], force: &StoreyForce) -> Derivation {
        let mut derivation = Derivation::default();
        self.explain_rigidity(lines, force, &mut derivation);
        for (line, share) in lines.iter().zip(&self.lines) {
            self.explain_line(line, share, force, &mut derivation);
        }
        derivation
    }

    /// The steps to the force on one line of those that were shared among; `None` where there is no such line. `x` stands
    /// for the coordinate across the line, whichever way it runs.
    pub fn explain(&self, lines: &[DiaphragmLine], force: &StoreyForce, number: usize) -> Option<Derivation> {
        let (line, share) = (lines.get(number)?, self.lines.get(number)?);
        let mut derivation = Derivation::default();
        self.explain_rigidity(lines, force, &mut derivation);
        self.explain_line(line, share, force, &mut derivation);
        Some(derivation)
    }

    fn explain_rigidity(&self, lines: &[DiaphragmLine], force: &StoreyForce, d: &mut Derivation) {
        let (along, across): (Numbered<'_>, Numbered<'_>) =
            (1..).zip(lines).partition(|(_, line)| line.along == force.along);
        let rigidity = &self.rigidity;
        let step = d.step("K", "stiffness of the lines along the force", &sum(&along, "k#"));
        stiffnesses(step, &along, false)
            .rule(STATICS, Confidence::TwoSources)
            .gives(rigidity.total, "lb/in");
        let formula = format!("({}) / K", sum(&along, "k# * x#"));
        let step = d.step("x_r", "centre of rigidity of the lines along the force", &formula);
        stiffnesses(step, &along, true)
            .from("K", rigidity.total, "lb/in")
            .rule(STATICS, Confidence::TwoSources)
            .gives(rigidity.centre, "in");
        let mut formula = sum(&along, "k# * (x# - x_r)^2");
        if let Some(centre) = rigidity.centre_across {
            let centre_formula = format!("({}) / ({})", sum(&across, "k# * x#"), sum(&across, "k#"));
            let step = d.step(
                "x_p",
                "centre of rigidity of the perpendicular lines",
                &centre_formula,
            );
            stiffnesses(step, &across, true)
                .rule(STATICS, Confidence::TwoSources)
                .gives(centre, "in");
            formula = format!("{formula} + {}", sum(&across, "k# * (x# - x_p)^2"));
        }
        // Where all lines pass through the centre their arms are rounding only.
        let formula = if rigidity.torsional > 0.0 {
            formula
        } else {
            "0".to_owned()
        };
        let mut step = d.step("J", "torsional stiffness about the centre", &formula);
        if rigidity.torsional > 0.0 {
            step = stiffnesses(stiffnesses(step, &along, true), &across, true).from(
                "x_r",
                rigidity.centre,
                "in",
            );
            if let Some(centre) = rigidity.centre_across {
                step = step.from("x_p", centre, "in");
            }
        }
        step.rule(STATICS, Confidence::TwoSources)
            .gives(rigidity.torsional, "in-lb");
        d.step("e", "eccentricity of the force", "x_V - x_r")
            .given("x_V", force.at.as_inches(), "in")
            .from("x_r", rigidity.centre, "in")
            .rule(STATICS, Confidence::TwoSources)
            .gives(rigidity.eccentricity, "in");
        let mut step = d.step(
            "W",
            "tributary widths of the lines along the force, together",
            &sum(&along, "w#"),
        );
        for (number, line) in &along {
            step = step.given(&format!("w{number}"), line.tributary.as_inches(), "in");
        }
        step.rule(TRIBUTARY, Confidence::TwoSources)
            .gives(self.tributary, "in");
    }

    fn explain_line(&self, line: &DiaphragmLine, share: &LineShare, force: &StoreyForce, d: &mut Derivation) {
        let rigidity = &self.rigidity;
        let parallel = line.along == force.along;
        let axis = if line.along == PlanAxis::X { "y" } else { "x" };
        let (formula, centre, middle) = if parallel {
            ("x - x_r", "x_r", rigidity.centre)
        } else {
            ("x_p - x", "x_p", rigidity.centre_across.unwrap_or_default())
        };
        let arm = rigidity.arm(line, force.along);
        d.step("d", &format!("arm of line {}, by its {axis}", line.name), formula)
            .given("x", line.at.as_inches(), "in")
            .from(centre, middle, "in")
            .rule(STATICS, Confidence::TwoSources)
            .gives(arm, "in");
        if parallel {
            d.step("V_d", "direct share of a rigid diaphragm", "V * k / K")
                .given("V", force.size, "lb")
                .given("k", line.stiffness, "lb/in")
                .from("K", rigidity.total, "lb/in")
                .rule(STATICS, Confidence::TwoSources)
                .gives(share.direct, "lb");
        }
        let given = if self.assumed.is_empty() {
            "given"
        } else {
            "0 assumed: none given"
        };
        let mut turned = Vec::new();
        for (symbol, meaning, sign, turning) in [
            (
                "V_t1",
                "turning, accidental eccentricity beyond",
                "+",
                share.turning_beyond,
            ),
            (
                "V_t2",
                "turning, accidental eccentricity short",
                "-",
                share.turning_short,
            ),
        ] {
            // Without turning resistance there was no turning either.
            if rigidity.torsional > 0.0 {
                d.step(symbol, meaning, &format!("V * (e {sign} e_a) * k * d / J"))
                    .given("V", force.size, "lb")
                    .from("e", rigidity.eccentricity, "in")
                    .cell(
                        "e_a",
                        self.accidental.as_inches(),
                        "in",
                        given,
                        Confidence::TwoSources,
                    )
                    .given("k", line.stiffness, "lb/in")
                    .from("d", arm, "in")
                    .from("J", rigidity.torsional, "in-lb")
                    .rule(STATICS, Confidence::TwoSources)
                    .gives(turning, "lb");
                turned.push((symbol, turning));
            }
        }
        self.explain_envelope(line, share, force, &turned, d);
    }

    fn explain_envelope(
        &self,
        line: &DiaphragmLine,
        share: &LineShare,
        force: &StoreyForce,
        turned: &[(&str, f64)],
        d: &mut Derivation,
    ) {
        let parallel = line.along == force.along;
        if parallel {
            d.step("V_f", "share of a flexible diaphragm", "V * w / W")
                .given("V", force.size, "lb")
                .given("w", line.tributary.as_inches(), "in")
                .from("W", self.tributary, "in")
                .rule(TRIBUTARY, Confidence::TwoSources)
                .gives(share.flexible, "lb");
        }
        let rigid: Vec<String> = match (parallel, turned.is_empty()) {
            (true, true) => vec!["V_d".to_owned()],
            (true, false) => turned
                .iter()
                .map(|(symbol, _)| format!("V_d + {symbol}"))
                .collect(),
            (false, _) => turned.iter().map(|(symbol, _)| (*symbol).to_owned()).collect(),
        };
        let mut terms: Vec<String> = rigid
            .iter()
            .flat_map(|one| [one.clone(), format!("-({one})")])
            .collect();
        if parallel {
            terms.push("V_f".to_owned());
        }
        let formula = if terms.is_empty() {
            "0".to_owned()
        } else {
            format!("max({})", terms.join(", "))
        };
        let meaning = format!("force on line {}: the largest of both diaphragms", line.name);
        let mut step = d.step("V_line", &meaning, &formula);
        for (symbol, turning) in turned {
            step = step.from(symbol, *turning, "lb");
        }
        if parallel {
            step = step
                .from("V_d", share.direct, "lb")
                .from("V_f", share.flexible, "lb");
        }
        step.rule(
            "envelope of a flexible and a rigid diaphragm",
            Confidence::TwoSources,
        )
        .gives(share.envelope, "lb");
    }
}
