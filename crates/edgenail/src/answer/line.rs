//! The answer of a wall line.

use super::anchorage::Numbers as AnchorNumbers;
use super::unit_shear::Numbers as UnitNumbers;
use super::{Answer, refuse_recalled};
use crate::capacity::{
    Check, CheckKind, EndAbove, LineCapacity, LinePier, SegmentDrift, WallLine, wall_line, within,
};
use crate::issue::Issue;
use serde::Serialize;

/// Numbers of a wall line.
#[derive(Debug, Serialize)]
pub(super) struct Numbers {
    unit_shear: UnitNumbers,
    /// Of both faces, where another one was given.
    both_faces: Option<BothFaces>,
    segments: Vec<Segment>,
    /// The factor for openings of a perforated wall.
    opening_factor: Option<f64>,
    capacity_lb: f64,
    ratio: f64,
    plate_shear_plf: f64,
    /// Uplift of the plate between the ends of a perforated wall.
    plate_uplift_plf: Option<f64>,
    hold_down_lb: f64,
    /// Largest of all segments; where posts and hold-down were given.
    drift: Option<Drift>,
    anchorage: Option<AnchorNumbers>,
    /// What comes down from above on no end post of this line.
    unsupported_ends: Vec<End>,
    checks: Vec<Check>,
    governs: Option<CheckKind>,
    governing_ratio: f64,
}

#[derive(Debug, Serialize)]
struct BothFaces {
    nominal_plf: f64,
    design_plf: f64,
    stiffness_kips_per_in: Option<f64>,
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
    drift: Option<Drift>,
}

#[derive(Debug, Serialize)]
struct Drift {
    three_terms_in: f64,
    four_terms_in: Option<f64>,
}

#[derive(Debug, Serialize)]
struct End {
    at_in: f64,
    tension_lb: f64,
}

impl Drift {
    fn of(drift: &SegmentDrift) -> Self {
        Self {
            three_terms_in: drift.three.total,
            four_terms_in: drift.four.map(|four| four.total),
        }
    }
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
            drift: pier.drift.as_ref().map(Drift::of),
        }
    }
}

pub(super) fn answer(line: &WallLine) -> Result<Answer<Numbers>, Vec<Issue>> {
    let found = wall_line(line)?;
    let derivation = found.derive(line);
    refuse_recalled(&derivation, line.query.accept_unverified).map_err(|issues| within("query", issues))?;
    let numbers = Numbers::of(&found);
    let answer = Answer::new("wall_line", Some(line.query.edition.name()), numbers, derivation);
    Ok(Answer {
        confidence: answer.confidence.max(found.confidence),
        estimate: found.construction.unit.estimate.is_some(),
        ..answer
    })
}

impl Numbers {
    fn of(found: &LineCapacity) -> Self {
        let alone = found.openings.is_none();
        let end = |end: &EndAbove| End {
            at_in: end.at.as_inches(),
            tension_lb: end.tension,
        };
        Self {
            unit_shear: UnitNumbers::of(&found.construction.unit),
            both_faces: found.construction.both.map(|both| BothFaces {
                nominal_plf: both.nominal,
                design_plf: both.design,
                stiffness_kips_per_in: both.stiffness,
            }),
            segments: found.piers.iter().map(|pier| Segment::of(pier, alone)).collect(),
            opening_factor: found.openings,
            capacity_lb: found.capacity,
            ratio: found.ratio,
            plate_shear_plf: found.plate,
            plate_uplift_plf: (!alone).then_some(found.plate),
            hold_down_lb: found.hold_down,
            drift: found.drift.as_ref().map(Drift::of),
            anchorage: found.anchors.as_ref().map(AnchorNumbers::of),
            unsupported_ends: found.unsupported.iter().map(end).collect(),
            checks: found.checks.clone(),
            governs: found.checks.first().map(|check| check.check),
            governing_ratio: found.governing(),
        }
    }
}
