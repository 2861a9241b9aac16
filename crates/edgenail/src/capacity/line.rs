//! A wall line under a storey's shear: what it carries by its segments, or as a perforated wall.

use super::assembly::Edition;
use super::fault::{fault, within};
use super::perforated::{Perforation, perforated_factor};
use super::pier::{AspectFactor, Overturning, Pier, Sharing, overturning};
use super::unit_shear::{UnitShear, UnitShearQuery, unit_shear};
use crate::issue::{Code, Issue};
use crate::length::Length;
use crate::published::Confidence;
use serde::Serialize;

/// How a line with openings is taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum LineMethod {
    /// Full-height segments, each held down at both ends.
    Segmented,
    /// One wall with openings, held down at its ends only.
    Perforated,
}

/// An opening of a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct LineOpening {
    /// From the left end of the line.
    pub left: Length,
    /// Width.
    pub width: Length,
    /// Height; the whole wall's where nothing is sheathed above or below.
    pub height: Length,
}

/// A wall line.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct WallLine {
    /// Length between the outer faces of its end posts.
    pub length: Length,
    /// From the underside of the bottom plate to the top of the top plates.
    pub height: Length,
    /// Openings from left to right.
    pub openings: Vec<LineOpening>,
    /// How it is taken.
    pub method: LineMethod,
    /// How shear is shared.
    pub sharing: Sharing,
    /// What is asked of the tables for its one construction.
    pub query: UnitShearQuery,
    /// The shear at its top at the level of the method, in pounds: nothing is converted.
    pub demand: f64,
    /// Factored dead load along its top that rights it, in pounds per foot; 0 where it is not known.
    pub dead: f64,
    /// From the outer faces to the hold-down's rod and the middle of the compression post, together.
    pub inset: Length,
}

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
}

/// What a line resists.
#[derive(Clone, Debug)]
pub struct LineCapacity {
    /// The unit shear of its construction.
    pub unit: UnitShear,
    /// Its full-height segments from left to right; those that are too slender carry nothing.
    pub piers: Vec<LinePier>,
    /// The factor for openings of a perforated wall.
    pub openings: Option<f64>,
    /// Design capacity in pounds.
    pub capacity: f64,
    /// Demand over capacity.
    pub ratio: f64,
    /// Uniform uplift of the bottom plate between the ends of a perforated wall, and its plate shear, in pounds per foot.
    pub plate: f64,
    /// The largest tension at an end in pounds.
    pub hold_down: f64,
    /// The least confidence of all that was used.
    pub confidence: Confidence,
}

/// Takes a wall line under its demand.
///
/// # Errors
/// What the line or its construction cannot be taken with, each with its field.
pub fn wall_line(line: &WallLine) -> Result<LineCapacity, Vec<Issue>> {
    let mut issues = sizes(line);
    let unit = match unit_shear(&line.query) {
        Ok(unit) => Some(unit),
        Err(more) => {
            issues.extend(within("query", more));
            None
        }
    };
    let Some(unit) = unit.filter(|_| issues.is_empty()) else {
        return Err(issues);
    };
    let mut piers = piers(line, &unit);
    let mut confidence = unit.confidence;
    for pier in piers
        .iter()
        .filter(|pier| pier.aspect.ratio > super::pier::RATIO_FULL)
    {
        confidence = confidence.max(pier.aspect.confidence);
    }
    let (openings, capacity) = match line.method {
        LineMethod::Segmented => (None, piers.iter().map(|pier| pier.capacity).sum::<f64>()),
        LineMethod::Perforated => {
            // The forces at its ends and along its plate were recalled.
            confidence = Confidence::Memory;
            let factor = perforated(line, &piers)?;
            let strength: f64 = piers.iter().map(|pier| pier.capacity).sum();
            (Some(factor), factor * strength)
        }
    };
    if confidence == Confidence::Memory && !line.query.accept_unverified {
        return Err(vec![fault(
            Code::Unverified,
            "query/accept_unverified",
            "false",
            "true, after checking the printed standard",
            "the reduction for a slender segment, or the end forces of a perforated wall, were recalled and not checked against print",
        )]);
    }
    if capacity <= 0.0 {
        return Err(vec![fault(
            Code::NothingResists,
            "openings",
            "no segment that counts",
            "a full-height segment no slenderer than the standard allows",
            "every full-height segment is too slender to count",
        )]);
    }
    // Each segment takes its share by strength; a perforated wall the same shear over all that counts.
    let counted: f64 = piers
        .iter()
        .filter(|pier| pier.capacity > 0.0)
        .map(counted_length)
        .sum();
    for pier in piers.iter_mut().filter(|pier| pier.capacity > 0.0) {
        pier.shear = match openings {
            None => line.demand * pier.capacity / capacity / pier.pier.length,
            Some(factor) => line.demand / (factor * counted),
        };
        pier.ends = overturning(&pier.pier, pier.shear, line.dead, line.inset.as_inches() / 12.0);
    }
    let largest = piers.iter().map(|pier| pier.ends.tension).fold(0.0, f64::max);
    let hold_down = match openings {
        None => largest,
        // A perforated wall is held at its ends, by V h / (C_o sum L_i).
        Some(factor) => line.demand * line.height.as_inches() / 12.0 / (factor * counted),
    };
    let plate = match openings {
        None => line.demand / (line.length.as_inches() / 12.0),
        Some(factor) => line.demand / (factor * counted),
    };
    Ok(LineCapacity {
        unit,
        piers,
        openings,
        capacity,
        ratio: line.demand / capacity,
        plate,
        hold_down,
        confidence,
    })
}

/// What of a segment's length is counted in a perforated wall: shortened for its proportion.
fn counted_length(pier: &LinePier) -> f64 {
    pier.pier.length * pier.aspect.factor.unwrap_or(0.0)
}

/// Full-height segments between the openings.
fn piers(line: &WallLine, unit: &UnitShear) -> Vec<LinePier> {
    let mut found = Vec::new();
    let mut from = Length::ZERO;
    let ends = line
        .openings
        .iter()
        .map(|opening| (opening.left, opening.left + opening.width));
    for (to, next) in ends.chain([(line.length, line.length)]) {
        if to > from {
            let pier = Pier::new(to - from, line.height);
            let query = &line.query;
            let aspect = pier.aspect_factor(query.edition, query.load, line.sharing, query.assembly.blocked);
            found.push(LinePier {
                from,
                to,
                pier,
                aspect,
                capacity: unit.design * pier.length * aspect.factor.unwrap_or(0.0),
                shear: 0.0,
                ends: Overturning {
                    chord: 0.0,
                    arm: 0.0,
                    tension: 0.0,
                },
            });
        }
        from = next;
    }
    found
}

/// The highest perforated wall; recalled.
const PERFORATED_HEIGHT_MOST: Length = Length::feet(20);

/// The factor of a perforated wall with the true area of its openings.
fn perforated(line: &WallLine, piers: &[LinePier]) -> Result<f64, Vec<Issue>> {
    if line.height > PERFORATED_HEIGHT_MOST {
        return Err(vec![fault(
            Code::OutOfRange,
            "height",
            &super::fault::inches(line.height),
            "at most 20 ft",
            "perforated walls are no higher (SDPWS 4.3.5.3, recalled)",
        )]);
    }
    let at_ends = [Length::ZERO, line.length];
    let held = |end: Length| {
        piers
            .iter()
            .any(|pier| pier.capacity > 0.0 && (pier.from == end || pier.to == end))
    };
    if !at_ends.into_iter().all(held) {
        return Err(vec![fault(
            Code::NothingResists,
            "openings",
            "an end without a segment that counts",
            "a full-height segment at each end",
            "a perforated wall needs a full-height segment at each of its ends",
        )]);
    }
    if line.query.edition == Edition::Sdpws2021 {
        return Err(vec![fault(
            Code::UnlistedValue,
            "query/edition",
            line.query.edition.name(),
            "SDPWS 2008 or SDPWS 2015",
            "the factor for openings was changed in 2021 and its new form was not collected",
        )]);
    }
    Ok(perforated_factor(&perforation(line, piers)).value)
}

/// The line as the perforated method sees it: true areas; a segment that does not count is an opening of the whole
/// height.
pub(super) fn perforation(line: &WallLine, piers: &[LinePier]) -> Perforation {
    let feet = |length: Length| length.as_inches() / 12.0;
    let openings = line
        .openings
        .iter()
        .map(|opening| feet(opening.width) * feet(opening.height));
    let slender = piers.iter().filter(|pier| pier.capacity <= 0.0);
    let counted = piers.iter().filter(|pier| pier.capacity > 0.0);
    Perforation {
        height: feet(line.height),
        full_height: counted.map(counted_length).sum(),
        length: feet(line.length),
        opening_area: openings.sum::<f64>()
            + slender
                .map(|pier| pier.pier.length * pier.pier.height)
                .sum::<f64>(),
    }
}

/// Sizes and loads that no line has.
fn sizes(line: &WallLine) -> Vec<Issue> {
    let mut issues = Vec::new();
    let mut refuse = |field: &str, found: String, allowed: &str, message: &str| {
        issues.push(fault(Code::OutOfRange, field, &found, allowed, message));
    };
    let most = Length::feet(1000);
    for (field, length) in [("length", line.length), ("height", line.height)] {
        if length <= Length::ZERO || length > most {
            refuse(
                field,
                super::fault::inches(length),
                "above 0, at most 1,000 ft",
                "a wall line has a size",
            );
        }
    }
    for (field, force) in [("demand", line.demand), ("dead", line.dead)] {
        if !force.is_finite() || force < 0.0 {
            refuse(
                field,
                force.to_string(),
                "0 or more, a number",
                "a load without its direction",
            );
        }
    }
    if line.inset < Length::ZERO || line.inset >= line.length {
        refuse(
            "inset",
            super::fault::inches(line.inset),
            "0 or more, less than the line",
            "the arm of the hold-down",
        );
    }
    let mut from = Length::ZERO;
    for (index, opening) in line.openings.iter().enumerate() {
        let at = |field: &str| format!("openings/{index}/{field}");
        if opening.left < from || opening.width <= Length::ZERO || opening.left + opening.width > line.length
        {
            refuse(
                &at("left"),
                super::fault::inches(opening.left),
                "on the line, right of the opening before it",
                "an opening lies on the line",
            );
        }
        if opening.height <= Length::ZERO || opening.height > line.height {
            refuse(
                &at("height"),
                super::fault::inches(opening.height),
                "above 0, at most the wall's",
                "an opening is no higher than the wall",
            );
        }
        from = opening.left + opening.width;
    }
    issues
}
