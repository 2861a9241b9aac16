//! The steps to what a wall line carries.

use super::{LineCapacity, Perforation, WallLine, feet, perforated_factor};
use crate::capacity::derivation::Derivation;
use crate::published::Confidence;

/// What of the segments is named in formulas: number, name of the factor, factor, length.
type Counted = Vec<(usize, String, f64, f64)>;

impl LineCapacity {
    /// Every step: to the ratio of demand to capacity, to the ends and the plate, to drift and anchors, to what governs.
    pub fn derive(&self, line: &WallLine) -> Derivation {
        let mut derivation = self.explain(line);
        if self.alike.is_none() {
            self.construction.unit.explain_stiffness(&mut derivation);
        }
        self.explain_ends(line, &mut derivation);
        self.explain_drift(line, &mut derivation);
        self.explain_anchors(line, &mut derivation);
        self.explain_checks(&mut derivation);
        derivation
    }

    /// The steps to the ratio of demand to capacity.
    pub fn explain(&self, line: &WallLine) -> Derivation {
        let mut derivation = Derivation::default();
        let (symbol, v) = self.construction.explain(line, &mut derivation);
        let counted = self.explain_aspects(&mut derivation);
        if let Some(alike) = &self.alike {
            self.explain_strength_alike(line, alike, &mut derivation);
        } else {
            self.explain_strength(line, (symbol, v), &counted, &mut derivation);
        }
        derivation
            .step("ratio", "demand over capacity", "V / V_R")
            .given("V", line.demand, "lb")
            .from("V_R", self.capacity, "lb")
            .rule("at most 1", Confidence::TwoSources)
            .gives(self.ratio, "");
        derivation
    }

    /// The steps to what counts of each segment for its proportion.
    fn explain_aspects(&self, derivation: &mut Derivation) -> Counted {
        let mut counted = Vec::new();
        for (number, pier) in (1..).zip(&self.piers) {
            let name = format!("C_ar{number}");
            let factor = pier.aspect.explain(&name, &pier.pier, derivation);
            if factor > 0.0 {
                counted.push((number, name, factor, pier.pier.length));
            }
        }
        counted
    }

    /// The step to the capacity as the sum of what counts, for openings reduced where the wall is perforated.
    fn explain_strength(
        &self,
        line: &WallLine,
        (symbol, v): (&str, f64),
        counted: &Counted,
        derivation: &mut Derivation,
    ) {
        let terms: Vec<String> = counted
            .iter()
            .map(|(number, name, ..)| format!("{symbol} * b{number} * {name}"))
            .collect();
        let mut formula = terms.join(" + ");
        if let Some(factor) = self.openings {
            formula = format!("C_o * ({formula})");
            self.explain_openings(line, factor, derivation);
        }
        let mut step = derivation
            .step("V_R", "design capacity of the line", &formula)
            .from(symbol, v, "plf");
        for (number, name, factor, length) in counted {
            step = step
                .given(&format!("b{number}"), *length, "ft")
                .from(name, *factor, "");
        }
        if let Some(factor) = self.openings {
            step = step.from("C_o", factor, "");
        }
        step.rule("sum over the segments that count", Confidence::TwoSources)
            .gives(self.capacity, "lb");
    }

    fn explain_openings(&self, line: &WallLine, factor: f64, derivation: &mut Derivation) {
        let wall = line.perforation(&self.piers);
        let Perforation {
            height,
            full_height: counted,
            length,
            opening_area: area,
        } = wall;
        let source = perforated_factor(&wall);
        let r = 1.0 / (1.0 + area / (height * counted));
        self.explain_area(line, area, counted, derivation);
        derivation
            .step("r", "sheathing area ratio", "1 / (1 + A_o / (h * L_i))")
            .from("A_o", area, "ft2")
            .given("h", height, "ft")
            .from("L_i", counted, "ft")
            .rule(source.source, source.confidence)
            .gives(r, "");
        derivation
            .step("C_o", "factor for openings", "min(1, r / (3 - 2 * r) * L / L_i)")
            .from("r", r, "")
            .given("L", length, "ft")
            .from("L_i", counted, "ft")
            .rule(source.source, source.confidence)
            .gives(factor, "");
    }

    /// The steps to the area of openings, slender segments with them, and to the length that counts.
    fn explain_area(&self, line: &WallLine, area: f64, counted: f64, derivation: &mut Derivation) {
        let mut formula: Vec<String> = (1..=line.openings.len())
            .map(|n| format!("w{n} * h{n}"))
            .collect();
        let mut lengths: Vec<String> = Vec::new();
        for (number, pier) in (1..).zip(&self.piers) {
            if pier.capacity > 0.0 {
                lengths.push(format!("b{number} * C_ar{number}"));
            } else {
                formula.push(format!("b{number} * h"));
            }
        }
        let formula = if formula.is_empty() {
            "0".to_owned()
        } else {
            formula.join(" + ")
        };
        let mut step = derivation.step(
            "A_o",
            "area of openings and of segments that do not count",
            &formula,
        );
        for (number, opening) in (1..).zip(&line.openings) {
            step = step
                .given(&format!("w{number}"), feet(opening.width), "ft")
                .given(&format!("h{number}"), feet(opening.height), "ft");
        }
        for (number, pier) in (1..).zip(&self.piers) {
            if pier.capacity <= 0.0 {
                step = step.given(&format!("b{number}"), pier.pier.length, "ft");
            }
        }
        step.given("h", feet(line.height), "ft")
            .rule("geometry", Confidence::TwoSources)
            .gives(area, "ft2");
        let mut step = derivation.step("L_i", "length of segments that counts", &lengths.join(" + "));
        for (number, pier) in (1..).zip(&self.piers) {
            if pier.capacity > 0.0 {
                step = step.given(&format!("b{number}"), pier.pier.length, "ft").from(
                    &format!("C_ar{number}"),
                    pier.aspect.factor.unwrap_or(0.0),
                    "",
                );
            }
        }
        step.rule("sum over the segments that count", Confidence::TwoSources)
            .gives(counted, "ft");
    }
}
