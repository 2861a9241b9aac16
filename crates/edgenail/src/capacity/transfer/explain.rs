//! The steps to the forces around openings.

use super::{Transfer, TransferWall, transfer};
use crate::capacity::derivation::{Derivation, Writing};
use crate::issue::Issue;
use crate::published::Confidence;
use std::fmt::Write as _;

const METHOD: &str = "free-body method of force transfer around openings as published by APA (T555), recalled; every cut is in equilibrium";

/// The steps to the forces around the openings; the last gives the largest unit shear.
///
/// # Errors
/// As [`transfer`].
pub fn explain_transfer(wall: &TransferWall) -> Result<Derivation, Vec<Issue>> {
    let found = transfer(wall)?;
    let mut derivation = Derivation::default();
    let length: f64 = wall.piers.iter().chain(&wall.openings).sum();
    let terms: Vec<String> = (1..=wall.openings.len())
        .map(|number| format!(" + L_o{number} + L_p{}", number + 1))
        .collect();
    let mut step = derivation.step("L", "length of the wall", &format!("L_p1{}", terms.concat()));
    for (letter, lengths) in [("p", &wall.piers), ("o", &wall.openings)] {
        for (number, length) in (1..).zip(lengths) {
            step = step.given(&format!("L_{letter}{number}"), *length, "ft");
        }
    }
    step.rule("geometry", Confidence::TwoSources).gives(length, "ft");
    let step = derivation
        .step("H", "tension at the ends of the wall", "V * h / L")
        .given("V", wall.shear, "lb")
        .given("h", wall.height, "ft")
        .from("L", length, "ft");
    by(step, found.hold_down, "lb");
    let step = derivation
        .step("v_ab", "unit shear above and below the openings", "H / h_ab")
        .from("H", found.hold_down, "lb")
        .given("h_ab", wall.above_and_below, "ft");
    by(step, found.above_and_below, "plf");
    for (number, ((opening, pair), straps)) in
        (1..).zip(wall.openings.iter().zip(wall.piers.windows(2)).zip(&found.straps))
    {
        for (side, value, formula) in [
            ("l", straps.0, "v_ab * L_o * L_l / (L_l + L_r)"),
            ("r", straps.1, "v_ab * L_o * L_r / (L_l + L_r)"),
        ] {
            let step = derivation
                .step(
                    &format!("F{number}{side}"),
                    "strap force at the corners of an opening",
                    formula,
                )
                .from("v_ab", found.above_and_below, "plf")
                .given("L_o", *opening, "ft")
                .given("L_l", pair[0], "ft")
                .given("L_r", pair[1], "ft");
            by(step, value, "lb");
        }
    }
    for index in 0..wall.piers.len() {
        explain_pier(wall, &found, index, &mut derivation);
    }
    let mut names = vec!["v_ab".to_owned()];
    let mut values = vec![found.above_and_below];
    for (index, (beside, corner)) in found.beside.iter().zip(&found.corners).enumerate() {
        let number = index + 1;
        for (name, value) in [(format!("v{number}"), *beside), (format!("vc{number}"), *corner)] {
            // A shear that turns round counts by its size.
            names.push(format!("max({name}, -{name})"));
            values.push(value);
        }
    }
    let mut step = derivation.step(
        "v_max",
        "largest unit shear of the wall",
        &format!("max({})", names.join(", ")),
    );
    let symbols = names.iter().map(|name| {
        name.trim_start_matches("max(")
            .split(',')
            .next()
            .unwrap_or(name)
            .to_owned()
    });
    for (symbol, value) in symbols.zip(values) {
        step = step.from(&symbol, value, "plf");
    }
    by(step, found.largest(), "plf");
    Ok(derivation)
}

/// Ends a step of the method.
fn by(step: Writing<'_>, value: f64, unit: &'static str) -> f64 {
    step.rule(METHOD, Confidence::Memory).gives(value, unit)
}

/// The steps to the unit shears of one segment.
fn explain_pier(wall: &TransferWall, found: &Transfer, index: usize, derivation: &mut Derivation) {
    let pier = &wall.piers[index];
    let length: f64 = wall.piers.iter().chain(&wall.openings).sum();
    let number = index + 1;
    let mut formula = format!("V / L * (L_p{number}");
    let mut inputs = Vec::new();
    if let Some(before) = index.checked_sub(1) {
        let _ = write!(
            formula,
            " + L_o{index} * L_p{number} / (L_p{index} + L_p{number})"
        );
        inputs.push((format!("L_o{index}"), wall.openings[before]));
        inputs.push((format!("L_p{index}"), wall.piers[before]));
    }
    if let Some(opening) = wall.openings.get(index) {
        let next = number + 1;
        let _ = write!(
            formula,
            " + L_o{number} * L_p{number} / (L_p{number} + L_p{next})"
        );
        inputs.push((format!("L_o{number}"), *opening));
        inputs.push((format!("L_p{next}"), wall.piers[number]));
    }
    let _ = write!(formula, ") / L_p{number}");
    let mut step = derivation
        .step(
            &format!("v{number}"),
            "unit shear of a segment beside the openings",
            &formula,
        )
        .given("V", wall.shear, "lb")
        .from("L", length, "ft")
        .given(&format!("L_p{number}"), *pier, "ft");
    for (symbol, value) in inputs {
        step = step.given(&symbol, value, "ft");
    }
    by(step, found.beside[index], "plf");
    let mut formula = format!("v{number}");
    let mut forces = Vec::new();
    if let Some(before) = index.checked_sub(1) {
        let _ = write!(formula, " - F{index}r / L_p{number}");
        forces.push((format!("F{index}r"), found.straps[before].1));
    }
    if let Some(straps) = found.straps.get(index) {
        let _ = write!(formula, " - F{number}l / L_p{number}");
        forces.push((format!("F{number}l"), straps.0));
    }
    let mut step = derivation
        .step(
            &format!("vc{number}"),
            "unit shear in the corners of a segment",
            &formula,
        )
        .from(&format!("v{number}"), found.beside[index], "plf")
        .given(&format!("L_p{number}"), *pier, "ft");
    for (symbol, value) in forces {
        step = step.from(&symbol, value, "lb");
    }
    by(step, found.corners[index], "plf");
}
