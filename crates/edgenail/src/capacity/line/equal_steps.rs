//! The steps to segments that share the shear by moving alike.

use super::compliance::{Compliance, common_drift, total};
use super::{LineCapacity, LinePier, WallLine, feet, of_all, strength_drift};
use crate::capacity::derivation::Derivation;
use crate::published::Confidence;

const THREE: &str = "SDPWS 2008/2015 Eq. 4.3-1, over the unit shear";
const ALIKE: &str = "SDPWS 2015 4.3.3.4.1, segments of one line deflect alike";

impl LineCapacity {
    /// The steps to the capacity: the shear at which the first segment reaches its own.
    pub(super) fn explain_strength_alike(
        &self,
        line: &WallLine,
        alike: &[Compliance],
        derivation: &mut Derivation,
    ) {
        let counted: Vec<(usize, LinePier)> = self.counted();
        self.construction.unit.explain_stiffness(derivation);
        line.explain_floor(derivation);
        let mut drifts = Vec::new();
        for ((number, pier), one) in counted.iter().zip(alike) {
            self.explain_compliance(line, *number, pier, one, derivation);
            let (symbol, design) = (self.construction.symbol(), self.construction.design());
            let (k, g, o) = names(*number);
            let (aspect, own) = (format!("C_ar{number}"), format!("v_R{number}"));
            let shear = derivation
                .step(
                    &own,
                    "design unit shear of the segment",
                    &format!("{symbol} * {aspect}"),
                )
                .from(symbol, design, "plf")
                .from(&aspect, pier.aspect.factor.unwrap_or(0.0), "")
                .rule("as counted", Confidence::TwoSources)
                .gives(pier.capacity / pier.pier.length, "plf");
            let name = format!("delta_R{number}");
            derivation
                .step(
                    &name,
                    "drift at which the segment reaches it",
                    &format!("{k} * {own} + max(0, {g} * {own} + {o})"),
                )
                .from(&k, one.body, "in/plf")
                .from(&own, shear, "plf")
                .from(&g, one.anchor, "in/plf")
                .from(&o, one.offset, "in")
                .rule(THREE, Confidence::Memory)
                .gives(one.drift(shear), "in");
            drifts.push((name, one.drift(shear)));
        }
        let piers: Vec<LinePier> = counted.iter().map(|(_, pier)| *pier).collect();
        let least = strength_drift(alike, &piers);
        let formula: Vec<&str> = drifts.iter().map(|(name, _)| name.as_str()).collect();
        let mut step = derivation.step(
            "delta_R",
            "drift at which the first of them reaches it",
            &of_all("min", &formula),
        );
        for (name, drift) in &drifts {
            step = step.from(name, *drift, "in");
        }
        step.rule(ALIKE, Confidence::Memory).gives(least, "in");
        let mut terms = Vec::new();
        for ((number, pier), one) in counted.iter().zip(alike) {
            let name = format!("v_a{number}");
            explain_shear(
                &name,
                *number,
                one,
                ("delta_R", least),
                one.shear(least),
                derivation,
            );
            terms.push((name, one.shear(least), *number, pier.pier.length));
        }
        let formula: Vec<String> = terms
            .iter()
            .map(|(name, _, number, _)| format!("{name} * b{number}"))
            .collect();
        let mut step = derivation.step("V_R", "design capacity of the line", &formula.join(" + "));
        for (name, shear, number, length) in &terms {
            step = step
                .from(name, *shear, "plf")
                .given(&format!("b{number}"), *length, "ft");
        }
        step.rule(ALIKE, Confidence::Memory)
            .gives(total(alike, least), "lb");
    }

    /// The steps to the drift under the demand, and to the shear of each segment.
    pub(super) fn explain_shares_alike(
        &self,
        line: &WallLine,
        alike: &[Compliance],
        derivation: &mut Derivation,
    ) {
        let drift = common_drift(alike, line.demand);
        let counted = self.counted();
        let (mut above, mut below) = (vec!["V".to_owned()], Vec::new());
        let mut inputs = vec![("V".to_owned(), line.demand, "lb")];
        let loaded = counted
            .iter()
            .zip(alike)
            .filter(|(_, one)| one.shear(drift) > 0.0);
        for ((number, pier), one) in loaded {
            let (k, g, o) = names(*number);
            let length = format!("b{number}");
            inputs.extend([
                (length.clone(), pier.pier.length, "ft"),
                (k.clone(), one.body, "in/plf"),
            ]);
            if one.pulls(one.shear(drift)) {
                above.push(format!("{length} * {o} / ({k} + {g})"));
                below.push(format!("{length} / ({k} + {g})"));
                inputs.extend([(g, one.anchor, "in/plf"), (o, one.offset, "in")]);
            } else {
                below.push(format!("{length} / {k}"));
            }
        }
        let formula = if below.is_empty() {
            inputs.truncate(1);
            "V".to_owned()
        } else {
            format!("({}) / ({})", above.join(" + "), below.join(" + "))
        };
        let mut step = derivation.step("delta", "drift of all segments under the demand", &formula);
        for (name, value, unit) in &inputs {
            step = if name == "V" || name.starts_with('b') {
                step.given(name, *value, unit)
            } else {
                step.from(name, *value, unit)
            };
        }
        step.rule(ALIKE, Confidence::Memory).gives(drift, "in");
        for ((number, _), one) in counted.iter().zip(alike) {
            let name = format!("v{number}");
            explain_shear(
                &name,
                *number,
                one,
                ("delta", drift),
                one.shear(drift),
                derivation,
            );
        }
    }

    /// Segments that count, numbered from the left.
    pub(super) fn counted(&self) -> Vec<(usize, LinePier)> {
        let all = (1..).zip(&self.piers).filter(|(_, pier)| pier.capacity > 0.0);
        all.map(|(number, pier)| (number, *pier)).collect()
    }

    /// The steps to how a segment moves with its unit shear.
    fn explain_compliance(
        &self,
        line: &WallLine,
        number: usize,
        pier: &LinePier,
        one: &Compliance,
        derivation: &mut Derivation,
    ) {
        let (Some(posts), Some(held)) = (line.posts, line.hold_down) else {
            return;
        };
        let (k, g, o) = names(number);
        let (stiffness, symbol) = (
            self.construction.stiffness().unwrap_or(0.0),
            self.construction.stiffness_symbol(),
        );
        derivation
            .step(
                &k,
                "inches for each plf by posts, panels and nails of the segment",
                &format!("8 * h^3 / (E * A * b) + h / (1000 * {symbol})"),
            )
            .given("h", pier.pier.height, "ft")
            .given("E", posts.elasticity, "psi")
            .given("A", posts.area, "in2")
            .given("b", pier.pier.length, "ft")
            .from(symbol, stiffness, "kips/in")
            .rule(THREE, Confidence::Memory)
            .gives(one.body, "in/plf");
        let loads = line.loads_on(pier);
        let arm = derivation
            .step("d", "arm between hold-down and compression post", "b - e")
            .given("b", pier.pier.length, "ft")
            .given("e", loads.inset, "ft")
            .rule("statics", Confidence::TwoSources)
            .gives(pier.ends.arm, "ft");
        let floor = loads.floor > 0.0;
        let height = if floor { "(h + h_up)" } else { "h" };
        let mut step = derivation
            .step(
                &g,
                "inches for each plf by its hold-down, once that pulls",
                &format!("h * D * {height} / (T_c * d)"),
            )
            .given("h", pier.pier.height, "ft")
            .given("D", held.elongation, "in")
            .given("T_c", held.capacity, "lb")
            .from("d", arm, "ft");
        if floor {
            step = step.from("h_up", loads.floor, "ft");
        }
        step.rule(THREE, Confidence::Memory).gives(one.anchor, "in/plf");
        derivation
            .step(
                &o,
                "inches by its hold-down without shear, were it pulled",
                "h / b * D / T_c * (T_up - w * b^2 / (2 * d))",
            )
            .given("h", pier.pier.height, "ft")
            .given("b", pier.pier.length, "ft")
            .given("D", held.elongation, "in")
            .given("T_c", held.capacity, "lb")
            .given("T_up", loads.above, "lb")
            .given("w", loads.dead, "plf")
            .from("d", arm, "ft")
            .rule(THREE, Confidence::Memory)
            .gives(one.offset, "in");
    }
}

impl WallLine {
    /// The step to the part of the floor's depth that turns a segment, where shear comes through a floor.
    pub(super) fn explain_floor(&self, derivation: &mut Derivation) {
        let Some(above) = self.above.as_ref().filter(|_| self.floor() > 0.0) else {
            return;
        };
        derivation
            .step(
                "h_up",
                "depth of the floor above, by the part of the shear that comes through it",
                "h_f * V_up / V",
            )
            .given("h_f", feet(above.floor), "ft")
            .given("V_up", above.shear, "lb")
            .given("V", self.demand, "lb")
            .rule("statics", Confidence::TwoSources)
            .gives(self.floor(), "ft");
    }
}

/// Names of a segment's compliance in the steps.
fn names(number: usize) -> (String, String, String) {
    (format!("k{number}"), format!("g{number}"), format!("o{number}"))
}

/// The step to a segment's unit shear at a drift.
fn explain_shear(
    name: &str,
    number: usize,
    one: &Compliance,
    (symbol, drift): (&str, f64),
    shear: f64,
    derivation: &mut Derivation,
) {
    let (k, g, o) = names(number);
    let pulls = one.pulls(drift / one.body);
    let formula = if pulls {
        format!("max(0, ({symbol} - {o}) / ({k} + {g}))")
    } else {
        format!("{symbol} / {k}")
    };
    let mut step = derivation
        .step(name, "shear of the segment at that drift", &formula)
        .from(symbol, drift, "in")
        .from(&k, one.body, "in/plf");
    if pulls {
        step = step.from(&g, one.anchor, "in/plf").from(&o, one.offset, "in");
    }
    step.rule(ALIKE, Confidence::Memory).gives(shear, "plf");
}
