//! The steps to what the ends and the plate of a wall line have to hold.

use super::{LineCapacity, LinePier, WallLine, feet};
use crate::capacity::derivation::Derivation;
use crate::capacity::pier::explain_overturning;
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
        for (number, end) in (1..).zip(&self.unsupported) {
            let name = format!("T_loose{number}");
            derivation
                .step(&name, "tension from above on no end post of this line", &name)
                .given(&name, end.tension, "lb")
                .rule("given", Confidence::TwoSources)
                .gives(end.tension, "lb");
        }
    }

    fn explain_segments(&self, line: &WallLine, derivation: &mut Derivation) {
        derivation
            .step("v_plate", "shear of the bottom plate", "V / L")
            .given("V", line.demand, "lb")
            .given("L", feet(line.length), "ft")
            .rule(STATICS, Confidence::TwoSources)
            .gives(self.plate, "plf");
        if let Some(alike) = &self.alike {
            self.explain_shares_alike(line, alike, derivation);
        } else {
            line.explain_floor(derivation);
        }
        let mut tensions = Vec::new();
        for (number, pier) in self.counted() {
            self.explain_share(line, number, &pier, derivation);
            explain_overturning(&pier.pier, pier.shear, &line.loads_on(&pier), derivation);
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

    /// The steps to a segment's capacity and to its unit shear.
    fn explain_share(&self, line: &WallLine, number: usize, pier: &LinePier, derivation: &mut Derivation) {
        let (unit, design) = (self.construction.symbol(), self.construction.design());
        let (strength, aspect) = (format!("V_{number}"), format!("C_ar{number}"));
        derivation
            .step(
                &strength,
                "design capacity of the segment",
                &format!("{unit} * b * {aspect}"),
            )
            .from(unit, design, "plf")
            .given("b", pier.pier.length, "ft")
            .from(&aspect, pier.aspect.factor.unwrap_or(0.0), "")
            .rule(STATICS, Confidence::TwoSources)
            .gives(pier.capacity, "lb");
        if self.alike.is_some() {
            let share = format!("v{number}");
            derivation
                .step("v", "shear of the segment, by its stiffness", &share)
                .from(&share, pier.shear, "plf")
                .rule("as shared", Confidence::TwoSources)
                .gives(pier.shear, "plf");
            return;
        }
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
        line.explain_floor(derivation);
        let (floor, above) = (line.floor(), line.tension_on_line());
        let height = if floor > 0.0 { "(h + h_up)" } else { "h" };
        let down = if above > 0.0 { " + T_up" } else { "" };
        let mut step = derivation
            .step(
                "T_most",
                "hold-down tension at the ends of the wall",
                &format!("V * {height} / (C_o * L_i){down}"),
            )
            .given("V", line.demand, "lb")
            .given("h", feet(line.height), "ft")
            .from("C_o", factor, "")
            .from("L_i", counted, "ft");
        if floor > 0.0 {
            step = step.from("h_up", floor, "ft");
        }
        if above > 0.0 {
            step = step.given("T_up", above, "lb");
        }
        step.rule(PERFORATED, Confidence::Memory)
            .gives(self.hold_down, "lb");
    }
}
