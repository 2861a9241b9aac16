//! The steps to what a wall line carries.

use super::derivation::Derivation;
use super::line::{LineCapacity, LinePier, WallLine, perforation};
use super::perforated::{Perforation, perforated_factor};
use super::pier::explain_overturning;
use crate::length::Length;
use crate::published::Confidence;

impl LineCapacity {
    /// The steps to the ratio of demand to capacity, then to the largest hold-down tension.
    pub fn explain(&self, line: &WallLine) -> Derivation {
        let mut derivation = Derivation::default();
        let v = self.unit.explain(&mut derivation);
        let symbol = derivation
            .steps
            .last()
            .map_or_else(String::new, |step| step.symbol.clone());
        let mut terms = Vec::new();
        for (number, pier) in (1..).zip(&self.piers) {
            let name = format!("C_ar{number}");
            let factor = pier.aspect.factor.unwrap_or(0.0);
            let mut step = derivation.step(
                &name,
                "what counts of a segment for its proportion",
                pier.aspect.formula,
            );
            if pier.aspect.formula.contains('b') {
                step = step
                    .given("b", pier.pier.length, "ft")
                    .given("h", pier.pier.height, "ft");
            }
            step.rule(pier.aspect.source, pier.aspect.confidence)
                .gives(factor, "");
            if factor > 0.0 {
                terms.push((number, name, factor, pier));
            }
        }
        let formula: Vec<String> = terms
            .iter()
            .map(|(number, name, ..)| format!("{symbol} * b{number} * {name}"))
            .collect();
        let formula = if self.openings.is_some() {
            format!("C_o * ({})", formula.join(" + "))
        } else {
            formula.join(" + ")
        };
        if let Some(factor) = self.openings {
            self.explain_openings(line, factor, &mut derivation);
        }
        let mut step = derivation
            .step("V_R", "design capacity of the line", &formula)
            .from(&symbol, v, "plf");
        for (number, name, factor, pier) in &terms {
            step = step
                .given(&format!("b{number}"), pier.pier.length, "ft")
                .from(name, *factor, "");
        }
        if let Some(factor) = self.openings {
            step = step.from("C_o", factor, "");
        }
        step.rule("sum over the segments that count", Confidence::TwoSources)
            .gives(self.capacity, "lb");
        derivation
            .step("ratio", "demand over capacity", "V / V_R")
            .given("V", line.demand, "lb")
            .from("V_R", self.capacity, "lb")
            .rule("at most 1", Confidence::TwoSources)
            .gives(self.ratio, "");
        derivation
    }

    /// The steps to the hold-down tension of one segment.
    pub fn explain_hold_down(&self, line: &WallLine, pier: &LinePier) -> Derivation {
        let mut derivation = Derivation::default();
        explain_overturning(
            &pier.pier,
            pier.shear,
            line.dead,
            line.inset.as_inches() / 12.0,
            &mut derivation,
        );
        derivation
    }

    fn explain_openings(&self, line: &WallLine, factor: f64, derivation: &mut Derivation) {
        let wall = perforation(line, &self.piers);
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
        let feet = |length: Length| length.as_inches() / 12.0;
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
