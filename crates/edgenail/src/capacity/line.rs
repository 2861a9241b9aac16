//! A wall line under a storey's shear: what it carries by its segments, or as a perforated wall.

use super::derivation::Derivation;
use super::fault::fault;
use super::perforated::{Perforation, perforated_factor};
use super::pier::{AspectFactor, Overturning, Pier, Sharing, explain_overturning, overturning};
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
            issues.extend(more.into_iter().map(|issue| Issue {
                path: format!("/query{}", issue.path),
                ..issue
            }));
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
    let feet = |length: Length| length.as_inches() / 12.0;
    let openings: f64 = line
        .openings
        .iter()
        .map(|opening| feet(opening.width) * feet(opening.height))
        .sum();
    let full_height = piers
        .iter()
        .filter(|pier| pier.capacity > 0.0)
        .map(counted_length)
        .sum();
    // A segment that does not count is an opening of the whole height.
    let slender: f64 = piers
        .iter()
        .filter(|pier| pier.capacity <= 0.0)
        .map(|pier| pier.pier.length * pier.pier.height)
        .sum();
    Ok(perforated_factor(&Perforation {
        height: feet(line.height),
        full_height,
        length: feet(line.length),
        opening_area: openings + slender,
    })
    .value)
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
        let feet = |length: Length| length.as_inches() / 12.0;
        let counted: f64 = self
            .piers
            .iter()
            .filter(|pier| pier.capacity > 0.0)
            .map(counted_length)
            .sum();
        let openings: f64 = line
            .openings
            .iter()
            .map(|opening| feet(opening.width) * feet(opening.height))
            .sum();
        let slender: f64 = self
            .piers
            .iter()
            .filter(|pier| pier.capacity <= 0.0)
            .map(|pier| pier.pier.length * pier.pier.height)
            .sum();
        let area = openings + slender;
        let r = 1.0 / (1.0 + area / (feet(line.height) * counted));
        let source = perforated_factor(&Perforation {
            height: feet(line.height),
            full_height: counted,
            length: feet(line.length),
            opening_area: area,
        });
        self.explain_area(line, area, counted, derivation);
        derivation
            .step("r", "sheathing area ratio", "1 / (1 + A_o / (h * L_i))")
            .from("A_o", area, "ft2")
            .given("h", feet(line.height), "ft")
            .from("L_i", counted, "ft")
            .rule(source.source, source.confidence)
            .gives(r, "");
        derivation
            .step("C_o", "factor for openings", "min(1, r / (3 - 2 * r) * L / L_i)")
            .from("r", r, "")
            .given("L", feet(line.length), "ft")
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
