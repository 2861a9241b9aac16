//! The steps to how far a line's top moves.

use super::{LineCapacity, SegmentDrift, WallLine, of_all};
use crate::capacity::derivation::Derivation;
use crate::capacity::drift::{explain_four_terms, explain_three_terms};
use crate::published::Confidence;

impl LineCapacity {
    /// The steps to the drift of each segment by both equations, and to the largest by three terms.
    pub(super) fn explain_drift(&self, line: &WallLine, derivation: &mut Derivation) {
        let Some(largest) = self.drift else { return };
        let mut names = Vec::new();
        if self.openings.is_some() {
            let name = self.explain_one("", &largest, (self.hold_down, "T_most"), line, derivation);
            names.push((name, largest.three.total));
        }
        for (number, pier) in self.counted() {
            if let Some(drift) = &pier.drift {
                let (number, pull) = (number.to_string(), format!("T_{number}"));
                let tension = (pier.ends.tension, pull.as_str());
                let name = self.explain_one(&number, drift, tension, line, derivation);
                if pier.shear > 0.0 || line.demand <= 0.0 {
                    names.push((name, drift.three.total));
                }
            }
        }
        let formula: Vec<&str> = names.iter().map(|(name, _)| name.as_str()).collect();
        let mut step = derivation.step(
            "delta_most",
            "largest drift by three terms",
            &of_all("max", &formula),
        );
        for (name, drift) in &names {
            step = step.from(name, *drift, "in");
        }
        step.rule("the largest of all segments", Confidence::TwoSources)
            .gives(largest.three.total, "in");
    }

    /// The steps of one segment; the name of its drift by three terms.
    fn explain_one(
        &self,
        number: &str,
        drift: &SegmentDrift,
        (tension, pull): (f64, &str),
        line: &WallLine,
        derivation: &mut Derivation,
    ) -> String {
        let (stiffness, held) = (self.construction.stiffness(), line.hold_down);
        let (Some(stiffness), Some(held)) = (stiffness, held) else {
            return String::new();
        };
        derivation
            .step(
                "D_a",
                "elongation of the hold-down, in proportion to its pull",
                &format!("D * max(0, {pull}) / T_c"),
            )
            .given("D", held.elongation, "in")
            .from(pull, tension, "lb")
            .given("T_c", held.capacity, "lb")
            .rule(
                "as its maker gives it, taken as a straight line",
                Confidence::TwoSources,
            )
            .gives(drift.wall.anchor, "in");
        explain_three_terms(&drift.wall, stiffness, derivation);
        let three = format!("delta_3_{number}");
        named(&three, "drift by three terms", drift.three.total, derivation);
        if let (Some(four), Some(skin)) = (drift.four, drift.skin) {
            explain_four_terms(&drift.wall, &skin, derivation);
            let name = format!("delta_4_{number}");
            named(&name, "drift by four terms", four.total, derivation);
        }
        three
    }
}

/// The drift that the steps before gave, under a name of its own.
fn named(name: &str, meaning: &str, value: f64, derivation: &mut Derivation) {
    derivation
        .step(name, meaning, "delta")
        .from("delta", value, "in")
        .rule("as above", Confidence::TwoSources)
        .gives(value, "in");
}
