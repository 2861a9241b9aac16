//! The steps to the forces of a racked sheet.

use super::input::{RackingNail, RackingSheet, RackingWall, from_middle};
use super::wall::{NATURE, SheetRacking};
use crate::capacity::derivation::Derivation;
use crate::published::Confidence;
use std::fmt::Write as _;

const HINGED: &str = "statics of a rigid sheet on linear nails and a hinged frame; the elastic model of Kallsner and Girhammar (2009) has this form";
const LOWER_BOUND: &str = "lower bound theorem: nail forces in equilibrium, none above its strength";

/// A sum with a term for each nail.
struct Sum<'s> {
    sheet: &'s RackingSheet,
    formula: String,
    inputs: Vec<(String, f64, &'static str)>,
}

impl Sum<'_> {
    /// Adds the term of a nail; `#` in the pattern stands for its number, counted from 1.
    fn term(&mut self, nail: usize, pattern: &str, inputs: &[(&str, f64, &'static str)]) {
        let number = (nail + 1).to_string();
        let between = if self.formula.is_empty() { "" } else { " + " };
        let _ = write!(self.formula, "{between}{}", pattern.replace('#', &number));
        for (symbol, value, unit) in inputs {
            self.inputs.push((symbol.replace('#', &number), *value, unit));
        }
    }
}

/// Ends a step that sums over nails.
fn gives(
    derivation: &mut Derivation,
    (symbol, meaning): (&str, &str),
    sum: Sum<'_>,
    also: Option<(&str, f64, &'static str)>,
    (value, unit, rule): (f64, &'static str, &str),
) {
    let formula = if sum.formula.is_empty() {
        "0".to_owned()
    } else {
        sum.formula
    };
    let mut step = derivation.step(symbol, &format!("{meaning}; {NATURE}"), &formula);
    for (symbol, value, unit) in &sum.inputs {
        step = step.given(symbol, *value, unit);
    }
    if let Some((symbol, value, unit)) = also {
        step = step.from(symbol, value, unit);
    }
    step.rule(rule, Confidence::TwoSources).gives(value, unit);
}

impl SheetRacking {
    /// The steps to the force on this sheet, as part of its wall, at which its first nail reaches its strength. Places of
    /// nails are those from the middle of the sheet's outline.
    pub fn explain_first_nail(&self, wall: &RackingWall, sheet: &RackingSheet) -> Derivation {
        let mut derivation = Derivation::default();
        let elastic = &self.elastic;
        let sum = |pattern: &str, across: Option<bool>| {
            let mut sum = Sum {
                sheet,
                formula: String::new(),
                inputs: Vec::new(),
            };
            for (number, nail) in sum.sheet.nails.iter().enumerate() {
                let (x, y) = from_middle(&sheet.outline, nail.at);
                let stiffness = ("k#", nail.stiffness, "lb/in");
                match across {
                    None => sum.term(number, pattern, &[stiffness]),
                    Some(true) => sum.term(number, pattern, &[stiffness, ("x#", x, "in")]),
                    Some(false) => sum.term(number, pattern, &[stiffness, ("y#", y, "in")]),
                }
            }
            sum
        };
        let d = &mut derivation;
        gives(
            d,
            ("K", "stiffness of all nails"),
            sum("k#", None),
            None,
            (elastic.total, "lb/in", HINGED),
        );
        for (symbol, moment, across, centre) in [
            ("x", "S_x", true, elastic.centre_x),
            ("y", "S_y", false, elastic.centre_y),
        ] {
            let terms = sum(&format!("k# * {symbol}#"), Some(across));
            // Summed again in the same order: the mean times the stiffness differs in the last digits.
            let value = sheet.nails.iter().fold(0.0, |sum, nail| {
                let (x, y) = from_middle(&sheet.outline, nail.at);
                sum + nail.stiffness * if across { x } else { y }
            });
            gives(
                d,
                (moment, "first moment of the stiffnesses"),
                terms,
                None,
                (value, "lb", HINGED),
            );
            d.step(
                &format!("{symbol}_c"),
                "centre of stiffness",
                &format!("{moment} / K"),
            )
            .from(moment, value, "lb")
            .from("K", elastic.total, "lb/in")
            .rule(HINGED, Confidence::TwoSources)
            .gives(centre, "in");
        }
        let across = sum("k# * (x# - x_c)^2", Some(true));
        let middle = Some(("x_c", elastic.centre_x, "in"));
        gives(
            d,
            ("S_xx", "second moment to both sides"),
            across,
            middle,
            (elastic.across, "in-lb", HINGED),
        );
        let upright = sum("k# * (y# - y_c)^2", Some(false));
        let middle = Some(("y_c", elastic.centre_y, "in"));
        gives(
            d,
            ("S_yy", "second moment above and below"),
            upright,
            middle,
            (elastic.upright, "in-lb", HINGED),
        );
        if let Some(nail) = self.governing.and_then(|number| sheet.nails.get(number)) {
            self.explain_nail(wall, sheet, nail, d);
        }
        derivation
    }

    fn explain_nail(
        &self,
        wall: &RackingWall,
        sheet: &RackingSheet,
        nail: &RackingNail,
        derivation: &mut Derivation,
    ) {
        let elastic = &self.elastic;
        let (x, y) = from_middle(&sheet.outline, nail.at);
        derivation
            .step(
                "H_1",
                &format!("force on the sheet at which its governing nail reaches its strength; {NATURE}"),
                "R / (h * k * sqrt(((x - x_c) / S_xx)^2 + ((y - y_c) / S_yy)^2))",
            )
            .given("R", nail.strength, "lb")
            .given("h", wall.height.as_inches(), "in")
            .given("k", nail.stiffness, "lb/in")
            .given("x", x, "in")
            .given("y", y, "in")
            .from("x_c", elastic.centre_x, "in")
            .from("y_c", elastic.centre_y, "in")
            .from("S_xx", elastic.across, "in-lb")
            .from("S_yy", elastic.upright, "in-lb")
            .rule(HINGED, Confidence::TwoSources)
            .gives(self.first_nail, "lb");
    }

    /// The steps to the force that the sheet carries at least where nails keep their strength: the moment of the forces
    /// along the plates, that of the forces along the posts, the lesser of both over the height.
    pub fn explain_plastic(&self, wall: &RackingWall, sheet: &RackingSheet) -> Derivation {
        let mut derivation = Derivation::default();
        let shares = self.plastic.shares(sheet);
        for (symbol, meaning, plates) in [
            (
                "M_x",
                "moment of the forces along the plates, each a share of its nail's strength",
                true,
            ),
            (
                "M_y",
                "moment of the forces along the posts, each a share of its nail's strength",
                false,
            ),
        ] {
            let mut sum = Sum {
                sheet,
                formula: String::new(),
                inputs: Vec::new(),
            };
            for share in &shares {
                let force = if plates {
                    share.along_plates
                } else {
                    share.along_posts
                };
                // Nails on the line of the median have no arm, those without a share add nothing.
                if force.abs() > 0.0 {
                    if plates {
                        sum.term(
                            share.nail,
                            "f# * y#",
                            &[("f#", force, "lb"), ("y#", share.y, "in")],
                        );
                    } else {
                        sum.term(
                            share.nail,
                            "f# * x#",
                            &[("f#", force, "lb"), ("x#", share.x, "in")],
                        );
                    }
                }
            }
            let couple = if plates {
                &self.plastic.along_plates
            } else {
                &self.plastic.along_posts
            };
            gives(
                &mut derivation,
                (symbol, meaning),
                sum,
                None,
                (couple.moment, "in-lb", LOWER_BOUND),
            );
        }
        derivation
            .step(
                "H_p",
                &format!("force that the sheet carries at least where nails keep their strength; {NATURE}"),
                "min(M_x, M_y) / h",
            )
            .from("M_x", self.plastic.along_plates.moment, "in-lb")
            .from("M_y", self.plastic.along_posts.moment, "in-lb")
            .given("h", wall.height.as_inches(), "in")
            .rule(LOWER_BOUND, Confidence::TwoSources)
            .gives(self.plastic_force, "lb");
        derivation
    }

    /// The steps to the largest force at which forces of all nails of this sheet can be in equilibrium: at least that of a
    /// field of forces that cancel, turn the sheet alike both ways, and are none above its nail's strength.
    pub fn explain_limit(&self, wall: &RackingWall, sheet: &RackingSheet) -> Derivation {
        let mut derivation = Derivation::default();
        let mut sum = Sum {
            sheet,
            formula: String::new(),
            inputs: Vec::new(),
        };
        for (number, (nail, force)) in sheet.nails.iter().zip(&self.limit_nails).enumerate() {
            let (_, y) = from_middle(&sheet.outline, nail.at);
            let inputs = [("f#", force.along_plates, "lb"), ("y#", y, "in")];
            sum.term(number, "f# * y#", &inputs);
        }
        let moment = self.limit_force * wall.height.as_inches();
        gives(
            &mut derivation,
            ("M_l", "moment of a field of nail forces along the plates"),
            sum,
            None,
            (moment, "in-lb", LOWER_BOUND),
        );
        derivation
            .step(
                "H_l",
                &format!("force on the sheet at which its nails can be in equilibrium at least; {NATURE}"),
                "M_l / h",
            )
            .from("M_l", moment, "in-lb")
            .given("h", wall.height.as_inches(), "in")
            .rule(LOWER_BOUND, Confidence::TwoSources)
            .gives(self.limit_force, "lb");
        derivation
    }
}
