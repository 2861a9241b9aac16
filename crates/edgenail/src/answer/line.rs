//! The answer of a wall line.

use super::unit_shear::Numbers as UnitNumbers;
use super::{Answer, refuse_recalled};
use crate::capacity::{LineCapacity, LinePier, WallLine, wall_line, within};
use crate::issue::Issue;
use serde::Serialize;

/// Numbers of a wall line.
#[derive(Debug, Serialize)]
pub(super) struct Numbers {
    unit_shear: UnitNumbers,
    segments: Vec<Segment>,
    /// The factor for openings of a perforated wall.
    opening_factor: Option<f64>,
    capacity_lb: f64,
    ratio: f64,
    plate_shear_plf: f64,
    hold_down_lb: f64,
}

#[derive(Debug, Serialize)]
struct Segment {
    from_in: f64,
    to_in: f64,
    height_over_length: f64,
    /// What counts of it for its proportion; 0 where it is too slender to count.
    aspect_factor: f64,
    shear_plf: f64,
    /// What it carries and what its own ends hold; of a segmented line only.
    capacity_lb: Option<f64>,
    chord_lb: Option<f64>,
    arm_ft: Option<f64>,
    tension_lb: Option<f64>,
}

impl Segment {
    fn of(pier: &LinePier, alone: bool) -> Self {
        let held = alone && pier.capacity > 0.0;
        Self {
            from_in: pier.from.as_inches(),
            to_in: pier.to.as_inches(),
            height_over_length: pier.aspect.ratio,
            aspect_factor: pier.aspect.factor.unwrap_or(0.0),
            shear_plf: pier.shear,
            capacity_lb: alone.then_some(pier.capacity),
            chord_lb: held.then_some(pier.ends.chord),
            arm_ft: held.then_some(pier.ends.arm),
            tension_lb: held.then_some(pier.ends.tension),
        }
    }
}

pub(super) fn answer(line: &WallLine) -> Result<Answer<Numbers>, Vec<Issue>> {
    let found = wall_line(line)?;
    let mut derivation = found.explain(line);
    found.unit.explain_stiffness(&mut derivation);
    found.explain_ends(line, &mut derivation);
    refuse_recalled(&derivation, line.query.accept_unverified).map_err(|issues| within("query", issues))?;
    let numbers = numbers(&found);
    let answer = Answer::new("wall_line", Some(line.query.edition.name()), numbers, derivation);
    Ok(Answer {
        confidence: answer.confidence.max(found.confidence),
        estimate: found.unit.estimate.is_some(),
        ..answer
    })
}

fn numbers(found: &LineCapacity) -> Numbers {
    let alone = found.openings.is_none();
    Numbers {
        unit_shear: UnitNumbers::of(&found.unit),
        segments: found.piers.iter().map(|pier| Segment::of(pier, alone)).collect(),
        opening_factor: found.openings,
        capacity_lb: found.capacity,
        ratio: found.ratio,
        plate_shear_plf: found.plate,
        hold_down_lb: found.hold_down,
    }
}
