//! The steps to the forces of a racked wall: sheet by sheet, then together.

use super::input::RackingWall;
use super::wall::{NATURE, Racking, SheetRacking};
use crate::capacity::derivation::Derivation;
use crate::published::Confidence;

const SHARED: &str = "statics: sheets of one hinged frame share its shear angle";
const LINEAR: &str = "nails are linear";
const BOUND: &str = "lower bound theorem: what the sheets carry at least adds";

impl Racking {
    /// The steps to what the wall does, those of each sheet first; values of sheets end with the sheet's number, counted
    /// from 1. The last steps give the forces that the wall carries at least where nails keep their strength: by the field along
    /// plates and posts, and by the largest field found.
    pub fn explain(&self, wall: &RackingWall) -> Derivation {
        let mut derivation = Derivation::default();
        let d = &mut derivation;
        let (mut held, mut strong, mut limit) = (Vec::new(), Vec::new(), Vec::new());
        for (number, (sheet, input)) in (1..).zip(self.sheets.iter().zip(&wall.sheets)) {
            if sheet.stiffness > 0.0 {
                d.steps.extend(sheet.explain_first_nail(wall, input).steps);
                d.step(
                    &format!("k_{number}"),
                    &format!("force on a sheet for one inch of movement of the top; {NATURE}"),
                    "S_xx * S_yy / (S_xx + S_yy) / h^2",
                )
                .from("S_xx", sheet.elastic.across, "in-lb")
                .from("S_yy", sheet.elastic.upright, "in-lb")
                .given("h", wall.height.as_inches(), "in")
                .rule(SHARED, Confidence::TwoSources)
                .gives(sheet.stiffness, "lb/in");
                named(d, &format!("H_1_{number}"), "H_1", sheet.first_nail);
                held.push((number, sheet));
            }
            if sheet.plastic_force > 0.0 {
                d.steps.extend(sheet.explain_plastic(wall, input).steps);
                named(d, &format!("H_p_{number}"), "H_p", sheet.plastic_force);
                strong.push((format!("H_p_{number}"), sheet.plastic_force));
            }
            if sheet.limit_force > 0.0 {
                d.steps.extend(sheet.explain_limit(wall, input).steps);
                named(d, &format!("H_l_{number}"), "H_l", sheet.limit_force);
                limit.push((format!("H_l_{number}"), sheet.limit_force));
            }
        }
        self.explain_linear(wall, &held, d);
        total(
            d,
            "H_plastic",
            "force that the wall carries at least where nails keep their strength",
            &strong,
            self.plastic_force,
        );
        total(
            d,
            "H_limit",
            "the same by the largest fields of forces found",
            &limit,
            self.limit_force,
        );
        derivation
    }

    /// The steps to what sheets that their nails hold do together while nails are linear.
    fn explain_linear(&self, wall: &RackingWall, held: &[(usize, &SheetRacking)], d: &mut Derivation) {
        let names: Vec<String> = held.iter().map(|(number, _)| format!("k_{number}")).collect();
        let mut step = d.step(
            "k_w",
            "force for one inch of movement of the top",
            &names.join(" + "),
        );
        for ((_, sheet), name) in held.iter().zip(&names) {
            step = step.from(name, sheet.stiffness, "lb/in");
        }
        step.rule(SHARED, Confidence::TwoSources)
            .gives(self.stiffness, "lb/in");
        d.step("u", "movement of the top", "H / k_w")
            .given("H", wall.force, "lb")
            .from("k_w", self.stiffness, "lb/in")
            .rule(LINEAR, Confidence::TwoSources)
            .gives(self.movement, "in");
        for (number, sheet) in held {
            d.step(
                &format!("H_{number}"),
                "force on a sheet while nails are linear",
                &format!("H * k_{number} / k_w"),
            )
            .given("H", wall.force, "lb")
            .from(&format!("k_{number}"), sheet.stiffness, "lb/in")
            .from("k_w", self.stiffness, "lb/in")
            .rule(SHARED, Confidence::TwoSources)
            .gives(sheet.force, "lb");
            d.step(
                &format!("r_{number}"),
                "force over strength of the nail of a sheet that is nearest to its strength",
                &format!("H_{number} / H_1_{number}"),
            )
            .from(&format!("H_{number}"), sheet.force, "lb")
            .from(&format!("H_1_{number}"), sheet.first_nail, "lb")
            .rule(LINEAR, Confidence::TwoSources)
            .gives(sheet.worst, "");
        }
        let terms: Vec<String> = held
            .iter()
            .map(|(number, _)| format!("H_1_{number} * k_w / k_{number}"))
            .collect();
        let meaning = format!("force at which the first nail of the wall reaches its strength; {NATURE}");
        let formula = match terms.as_slice() {
            [only] => only.clone(),
            several => format!("min({})", several.join(", ")),
        };
        let mut step = d.step("H_first", &meaning, &formula);
        for (number, sheet) in held {
            step = step.from(&format!("H_1_{number}"), sheet.first_nail, "lb").from(
                &format!("k_{number}"),
                sheet.stiffness,
                "lb/in",
            );
        }
        step.from("k_w", self.stiffness, "lb/in")
            .rule(SHARED, Confidence::TwoSources)
            .gives(self.first_nail, "lb");
        d.step("r", "force over strength of that nail", "H / H_first")
            .given("H", wall.force, "lb")
            .from("H_first", self.first_nail, "lb")
            .rule(LINEAR, Confidence::TwoSources)
            .gives(self.worst, "");
    }
}

/// The step to a sum over sheets.
fn total(derivation: &mut Derivation, symbol: &str, meaning: &str, sheets: &[(String, f64)], value: f64) {
    let names: Vec<&str> = sheets.iter().map(|(name, _)| name.as_str()).collect();
    let formula = if names.is_empty() {
        "0".to_owned()
    } else {
        names.join(" + ")
    };
    let mut step = derivation.step(symbol, &format!("{meaning}; {NATURE}"), &formula);
    for (name, force) in sheets {
        step = step.from(name, *force, "lb");
    }
    step.rule(BOUND, Confidence::TwoSources).gives(value, "lb");
}

/// A value of a sheet under the sheet's number.
fn named(derivation: &mut Derivation, symbol: &str, from: &str, value: f64) {
    derivation
        .step(symbol, "the same, by its sheet", from)
        .from(from, value, "lb")
        .rule("as worked out above", Confidence::TwoSources)
        .gives(value, "lb");
}
