//! The answer of force transfer around openings.

use super::unit_shear::Numbers as UnitNumbers;
use super::{Answer, refuse_recalled};
use crate::capacity::{
    Derivation, Transfer, TransferQuery, TransferRatio, TransferWall, explain_transfer,
    explain_transfer_ratio, transfer, transfer_ratio,
};
use crate::issue::Issue;
use crate::published::Confidence;
use serde::Serialize;

/// Numbers of a strapped wall.
#[derive(Debug, Serialize)]
pub(super) struct Numbers {
    hold_down_lb: f64,
    plate_shear_plf: f64,
    above_and_below_plf: f64,
    piers: Vec<Segment>,
    openings: Vec<Straps>,
    largest_plf: f64,
    strap_lb: f64,
    /// Of the construction, where one was given.
    unit_shear: Option<UnitNumbers>,
    ratio: Option<f64>,
}

#[derive(Debug, Serialize)]
struct Segment {
    /// Beside the tallest opening.
    height_over_length: f64,
    aspect_factor: Option<f64>,
    beside_plf: f64,
    /// Below zero it turns round.
    corners_plf: f64,
}

#[derive(Debug, Serialize)]
struct Straps {
    left_strap_lb: f64,
    right_strap_lb: f64,
}

pub(super) fn answer(query: &TransferQuery) -> Result<Answer<Numbers>, Vec<Issue>> {
    let wall = &query.wall;
    let forces = transfer(wall)?;
    let mut derivation = explain_transfer(wall)?;
    let plate = explain_whole(wall, &forces, &mut derivation);
    let resisted = match &query.query {
        None => None,
        Some(of) => {
            let found = transfer_ratio(wall, &forces, of)?;
            found.unit.explain_stiffness(&mut derivation);
            explain_transfer_ratio(wall, &forces, &found, &mut derivation);
            Some(found)
        }
    };
    refuse_recalled(&derivation, query.accept_unverified)?;
    let edition = query.query.as_ref().map(|of| of.edition.name());
    let numbers = numbers(wall, &forces, plate, resisted.as_ref());
    let answer = Answer::new("transfer", edition, numbers, derivation);
    let estimate = resisted
        .as_ref()
        .is_some_and(|found| found.unit.estimate.is_some());
    let of_tables = resisted.map_or(Confidence::TwoSources, |found| found.confidence);
    Ok(Answer {
        confidence: answer.confidence.max(of_tables),
        estimate,
        ..answer
    })
}

/// The steps to the largest strap force and to the shear of the plate, which is returned.
fn explain_whole(wall: &TransferWall, forces: &Transfer, derivation: &mut Derivation) -> f64 {
    let straps: Vec<(String, f64)> = (1..)
        .zip(&forces.straps)
        .flat_map(|(number, (left, right))| [(format!("F{number}l"), *left), (format!("F{number}r"), *right)])
        .collect();
    let names: Vec<&str> = straps.iter().map(|(name, _)| name.as_str()).collect();
    let mut step = derivation.step(
        "F_max",
        "largest strap force",
        &format!("max({})", names.join(", ")),
    );
    for (name, value) in &straps {
        step = step.from(name, *value, "lb");
    }
    step.rule("the largest of all corners", Confidence::TwoSources)
        .gives(forces.strap(), "lb");
    let length: f64 = wall.piers.iter().chain(&wall.openings).sum();
    derivation
        .step("v_plate", "shear of the bottom plate", "V / L")
        .given("V", wall.shear, "lb")
        .from("L", length, "ft")
        .rule(
            "anchorage over the whole length: APA's answers to questions on shear walls",
            Confidence::Source,
        )
        .gives(wall.shear / length, "plf")
}

fn numbers(wall: &TransferWall, forces: &Transfer, plate: f64, resisted: Option<&TransferRatio>) -> Numbers {
    let height = wall.height - wall.above_and_below;
    let segment = |index: usize| Segment {
        height_over_length: height / wall.piers[index],
        aspect_factor: resisted.and_then(|found| found.aspects[index].factor),
        beside_plf: forces.beside[index],
        corners_plf: forces.corners[index],
    };
    let straps = |(left, right): &(f64, f64)| Straps {
        left_strap_lb: *left,
        right_strap_lb: *right,
    };
    Numbers {
        hold_down_lb: forces.hold_down,
        plate_shear_plf: plate,
        above_and_below_plf: forces.above_and_below,
        piers: (0..wall.piers.len()).map(segment).collect(),
        openings: forces.straps.iter().map(straps).collect(),
        largest_plf: forces.largest(),
        strap_lb: forces.strap(),
        unit_shear: resisted.map(|found| UnitNumbers::of(&found.unit)),
        ratio: resisted.map(|found| found.ratio),
    }
}
