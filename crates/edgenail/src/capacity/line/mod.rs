//! A wall line under a storey's shear: what it carries by its segments, or as a perforated wall.

mod anchors;
mod checks;
mod compliance;
mod construction;
mod drift;
mod drift_steps;
mod ends;
mod equal_steps;
mod factor;
mod input;
mod perforation;
mod segments;
mod sizes;
mod steps;

pub use checks::{Check, CheckKind};
pub use construction::Construction;
pub use drift::SegmentDrift;
pub use factor::{Perforation, perforated_factor};
pub use input::{EndAbove, EndPosts, FromAbove, HoldDown, LineMethod, LineOpening, PlateAnchor, WallLine};

use super::anchorage::PlateAnchors;
use super::fault::fault;
use super::pier::{AspectFactor, Overturning, Pier, RATIO_FULL, Sharing};
use crate::issue::{Code, Issue};
use crate::length::Length;
use crate::published::Confidence;
use compliance::Compliance;

/// What one segment carries.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LinePier {
    /// Where it begins.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
    /// Its sizes in feet.
    pub pier: Pier,
    /// What counts for its proportion.
    pub aspect: AspectFactor,
    /// Its design capacity in pounds.
    pub capacity: f64,
    /// Its share of the demand in pounds per foot.
    pub shear: f64,
    /// What its ends have to hold.
    pub ends: Overturning,
    /// How far its top moves; of a segmented line, where posts and hold-down are given.
    pub drift: Option<SegmentDrift>,
}

/// What a line resists.
#[derive(Clone, Debug)]
pub struct LineCapacity {
    /// What it is sheathed with.
    pub construction: Construction,
    /// Its full-height segments from left to right; those that are too slender carry nothing.
    pub piers: Vec<LinePier>,
    /// The factor for openings of a perforated wall.
    pub openings: Option<f64>,
    /// Design capacity in pounds.
    pub capacity: f64,
    /// Demand over capacity.
    pub ratio: f64,
    /// Shear of the bottom plate, and of a perforated wall its uplift between the ends, in pounds per foot.
    pub plate: f64,
    /// The largest tension at an end in pounds.
    pub hold_down: f64,
    /// How far its top moves in inches by the equation of three terms; where posts and hold-down are given.
    pub drift: Option<SegmentDrift>,
    /// The anchors of its plate, where one was given.
    pub anchors: Option<PlateAnchors>,
    /// Tensions from above that land on no end post of this line.
    pub unsupported: Vec<EndAbove>,
    /// What was checked, the governing check first.
    pub checks: Vec<Check>,
    /// The least confidence of all that was used.
    pub confidence: Confidence,
    /// What moves the segments, where they share the shear by moving alike.
    alike: Option<Vec<Compliance>>,
}

/// Takes a wall line under its demand.
///
/// # Errors
/// What the line or its construction cannot be taken with, each with its field.
pub fn wall_line(line: &WallLine) -> Result<LineCapacity, Vec<Issue>> {
    let mut issues = sizes::check(line);
    let construction = match Construction::of(line) {
        Ok(construction) => Some(construction),
        Err(more) => {
            issues.extend(more);
            None
        }
    };
    let Some(construction) = construction.filter(|_| issues.is_empty()) else {
        return Err(issues);
    };
    let mut piers = line.segments(construction.design());
    let mut confidence = construction.confidence();
    for pier in piers.iter().filter(|pier| pier.aspect.ratio > RATIO_FULL) {
        confidence = confidence.max(pier.aspect.confidence);
    }
    let counted: Vec<LinePier> = piers.iter().filter(|pier| pier.capacity > 0.0).copied().collect();
    let alike = alike(line, &counted, &construction)?;
    let moves = line.posts.is_some() && line.hold_down.is_some();
    if line.method == LineMethod::Perforated || alike.is_some() || moves || line.anchor.is_some() {
        // The forces of a perforated wall, the equations of drift and the limit of plate washers were recalled.
        confidence = Confidence::Memory;
    }
    let strength: f64 = counted.iter().map(|pier| pier.capacity).sum();
    let openings = match line.method {
        LineMethod::Segmented => None,
        LineMethod::Perforated => Some(line.perforated(&piers)?),
    };
    if confidence == Confidence::Memory && !line.query.accept_unverified {
        return Err(vec![unverified()]);
    }
    if strength <= 0.0 {
        return Err(vec![nothing_counts()]);
    }
    let capacity = match (&alike, openings) {
        (Some(alike), _) => compliance::total(alike, strength_drift(alike, &counted)),
        (None, Some(factor)) => factor * strength,
        (None, None) => strength,
    };
    let common = alike
        .as_ref()
        .map(|alike| compliance::common_drift(alike, line.demand));
    let full: f64 = counted.iter().map(LinePier::counted_length).sum();
    let mut of_alike = alike.iter().flatten();
    for pier in piers.iter_mut().filter(|pier| pier.capacity > 0.0) {
        pier.shear = match (common, openings) {
            (Some(drift), _) => of_alike.next().map_or(0.0, |one| one.shear(drift)),
            (None, Some(factor)) => line.demand / (factor * full),
            // By strength.
            (None, None) => line.demand * pier.capacity / capacity / pier.pier.length,
        };
        pier.ends = line.ends_of(pier, pier.shear);
        if openings.is_none() {
            pier.drift = drift::of_segment(line, pier, &construction);
        }
    }
    let hold_down = match openings {
        None => piers.iter().map(|pier| pier.ends.tension).fold(0.0, f64::max),
        Some(factor) => line.perforated_tension(factor * full),
    };
    let plate = match openings {
        None => line.demand / feet(line.length),
        Some(factor) => line.demand / (factor * full),
    };
    let drift = match openings {
        None => drift::largest(&piers, line.demand),
        Some(factor) => drift::of_perforated(line, &construction, plate, full, factor),
    };
    let mut found = LineCapacity {
        construction,
        openings,
        capacity,
        ratio: line.demand / capacity,
        plate,
        hold_down,
        drift,
        anchors: None,
        unsupported: line.unsupported(&piers),
        checks: Vec::new(),
        confidence,
        alike,
        piers,
    };
    found.anchors = anchors::of(line, &found)?;
    found.checks = checks::of(line, &found);
    Ok(found)
}

/// What moves the segments, where they are to move alike.
fn alike(
    line: &WallLine,
    counted: &[LinePier],
    construction: &Construction,
) -> Result<Option<Vec<Compliance>>, Vec<Issue>> {
    let shared = line.method == LineMethod::Segmented && line.sharing == Sharing::EqualDeflection;
    if !shared || counted.len() < 2 {
        return Ok(None);
    }
    let all: Option<Vec<Compliance>> = counted
        .iter()
        .map(|pier| Compliance::of(line, pier, construction.stiffness()))
        .collect();
    all.map(Some).ok_or_else(|| {
        vec![fault(
            Code::MissingField,
            "sharing",
            "equal_deflection, without what moves the segments",
            "end posts, hold-downs and a construction that has an apparent stiffness; or reduced_strength",
            "segments share the shear by moving alike, and nothing says how far they move",
        )]
    })
}

/// The drift at which the first segment reaches its capacity.
fn strength_drift(alike: &[Compliance], counted: &[LinePier]) -> f64 {
    let each = alike.iter().zip(counted);
    each.map(|(one, pier)| one.drift(pier.capacity / pier.pier.length))
        .fold(f64::INFINITY, f64::min)
}

fn unverified() -> Issue {
    fault(
        Code::Unverified,
        "query/accept_unverified",
        "false",
        "true, after checking the printed standard",
        "the reduction for a slender segment, the end forces of a perforated wall, the equations of drift or the limit of plate washers were recalled and not checked against print",
    )
}

fn nothing_counts() -> Issue {
    fault(
        Code::NothingResists,
        "openings",
        "no segment that counts",
        "a full-height segment no slenderer than the standard allows",
        "every full-height segment is too slender to count",
    )
}

fn feet(length: Length) -> f64 {
    length.as_inches() / 12.0
}

/// The largest or smallest of several symbols; one alone is itself.
fn of_all(function: &str, symbols: &[&str]) -> String {
    match symbols {
        [one] => (*one).to_owned(),
        _ => format!("{function}({})", symbols.join(", ")),
    }
}
