//! The steps to what the ends and the plate of a wall line have to hold.

use super::assembly::Method;
use super::derivation::Derivation;
use super::line::{LineCapacity, WallLine};
use super::pier::explain_overturning;
use crate::published::Confidence;

const STATICS: &str = "statics";
const PERFORATED: &str =
    "SDPWS 4.3.6.1.2 and 4.3.6.4.1.1, perforated shear walls, as two public texts state them";

impl LineCapacity {
    /// The steps to the shear of the plate and to the largest hold-down tension, after those of [`Self::explain`].
    pub fn explain_ends(&self, line: &WallLine, derivation: &mut Derivation) {
        match self.openings {
            None => self.explain_segments(line, derivation),
            Some(factor) => self.explain_perforated(line, factor, derivation),
        }
    }

    fn explain_segments(&self, line: &WallLine, derivation: &mut Derivation) {
        derivation
            .step("v_plate", "shear of the bottom plate", "V / L")
            .given("V", line.demand, "lb")
            .given("L", line.length.as_inches() / 12.0, "ft")
            .rule(STATICS, Confidence::TwoSources)
            .gives(self.plate, "plf");
        let unit = match line.query.method {
            Method::Asd => "v_ASD",
            Method::Lrfd => "v_LRFD",
        };
        let mut tensions = Vec::new();
        for (number, pier) in (1..).zip(&self.piers) {
            if pier.capacity <= 0.0 {
                continue;
            }
            let (strength, aspect) = (format!("V_{number}"), format!("C_ar{number}"));
            derivation
                .step(
                    &strength,
                    "design capacity of the segment",
                    &format!("{unit} * b * {aspect}"),
                )
                .from(unit, self.unit.design, "plf")
                .given("b", pier.pier.length, "ft")
                .from(&aspect, pier.aspect.factor.unwrap_or(0.0), "")
                .rule(STATICS, Confidence::TwoSources)
                .gives(pier.capacity, "lb");
            derivation
                .step(
                    "v",
                    "shear of the segment, by its strength",
                    &format!("V * {strength} / V_R / b"),
                )
                .given("V", line.demand, "lb")
                .from(&strength, pier.capacity, "lb")
                .from("V_R", self.capacity, "lb")
                .given("b", pier.pier.length, "ft")
                .rule(STATICS, Confidence::TwoSources)
                .gives(pier.shear, "plf");
            let inset = line.inset.as_inches() / 12.0;
            explain_overturning(&pier.pier, pier.shear, line.dead, inset, derivation);
            let tension = format!("T_{number}");
            derivation
                .step(&tension, "hold-down tension of the segment", "T")
                .from("T", pier.ends.tension, "lb")
                .rule(STATICS, Confidence::TwoSources)
                .gives(pier.ends.tension, "lb");
            tensions.push((tension, pier.ends.tension));
        }
        let names: Vec<&str> = tensions.iter().map(|(name, _)| name.as_str()).collect();
        let formula = format!("max(0, {})", names.join(", "));
        let mut step = derivation.step("T_most", "largest hold-down tension", &formula);
        for (name, value) in &tensions {
            step = step.from(name, *value, "lb");
        }
        step.rule(STATICS, Confidence::TwoSources)
            .gives(self.hold_down, "lb");
    }

    fn explain_perforated(&self, line: &WallLine, factor: f64, derivation: &mut Derivation) {
        let counted = derivation
            .steps
            .iter()
            .find(|step| step.symbol == "L_i")
            .map_or(0.0, |step| step.value);
        derivation
            .step(
                "v_plate",
                "shear and uplift of the bottom plate",
                "V / (C_o * L_i)",
            )
            .given("V", line.demand, "lb")
            .from("C_o", factor, "")
            .from("L_i", counted, "ft")
            .rule(PERFORATED, Confidence::Memory)
            .gives(self.plate, "plf");
        derivation
            .step(
                "T_most",
                "hold-down tension at the ends of the wall",
                "V * h / (C_o * L_i)",
            )
            .given("V", line.demand, "lb")
            .given("h", line.height.as_inches() / 12.0, "ft")
            .from("C_o", factor, "")
            .from("L_i", counted, "ft")
            .rule(PERFORATED, Confidence::Memory)
            .gives(self.hold_down, "lb");
    }
}
