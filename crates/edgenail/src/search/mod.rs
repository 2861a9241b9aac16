//! Choosing a layout: the only part of the library that does.
//!
//! A wall's candidates are stacks of courses: levels by shortest paths over plate laps, rims and whole sheets, then
//! the seams of each course by shortest path over studs. Both are guided by the prices of single pieces and seams.
//! The best few of every bottom line and direction are then laid out and priced without backing and nails; those that
//! may yet be the cheapest are built through all stages, and the one whose finished stages cost least wins. The result is legal, the same every time, and cheap; that none is cheaper is not proven,
//! and the plan says so.

mod course;
mod datum;
mod guess;
mod level;
mod space;
mod stack;

use crate::amount::Amount;
use crate::error::Error;
use crate::evaluate::{Evaluated, evaluate_layout};
use crate::finding::{Finding, FindingCode, Severity};
use crate::frame::Frame;
use crate::geometry::Interval;
use crate::house::{End, House};
use crate::layout::{BandSpec, Layout, LayoutSpec, Running, lay_out, starting_end};
use crate::length::Length;
use crate::price::{Part, layout_cost};
use crate::wording::counted;
use course::{Course, Slot};
use serde::Serialize;
use space::Space;
use stack::Stack;
use std::collections::HashMap;

/// A layout that was built through all stages and not chosen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Alternative {
    /// What it is, in a few words.
    pub summary: String,
    /// What it costs, in the unit of the objective.
    pub total: Amount,
    /// What it costs more than the chosen one; below zero only for one that breaks a rule or has more to mend.
    pub difference: Amount,
    /// Pieces.
    pub pieces: u32,
    /// How far it reaches below the lowest plate.
    pub reach: Length,
    /// Levels where its courses meet, the bottom line first.
    pub levels: Vec<Length>,
    /// The rule that it breaks, empty where it breaks none.
    pub breaks: String,
}

/// What a search found.
#[derive(Debug)]
pub struct Found {
    /// The layout, built through all stages.
    pub chosen: Evaluated,
    /// The end that sheets are laid from.
    pub start: End,
    /// What else was built, the cheapest first.
    pub alternatives: Vec<Alternative>,
    /// Arcs that were priced.
    pub effort: u64,
    /// Layouts that were built through all stages and priced.
    pub built: u64,
    /// The limit of effort was reached.
    pub stopped: bool,
}

/// Searches a layout for a wall.
///
/// # Errors
///
/// [`Error::NoLayout`] when every layout that was built breaks a rule that may not be broken.
pub fn search(house: &House, frame: &Frame) -> Result<Found, Error> {
    let name = house
        .walls
        .get(frame.wall as usize)
        .map_or("", |wall| wall.name.as_str());
    let none = |message: &str| Error::NoLayout {
        wall: name.to_owned(),
        message: message.to_owned(),
    };
    let mut space = Space::new(house, frame).ok_or_else(|| none("the house has no such wall"))?;
    if space.sheets.is_empty() {
        return Err(none("no sheet of the category that is asked for is in stock"));
    }
    let mut effort = 0;
    let (mut found, mut stopped) = candidates(&space, house, &mut effort);
    if found.is_empty() && !space.parted_rims.is_empty() {
        // No sheet ends on the rim: then it runs past.
        space.parted_rims.clear();
        (found, stopped) = candidates(&space, house, &mut effort);
    }
    let most = space.practice.alternatives as usize;
    let (built, count) = build(house, frame, found, most + 1);
    let mut built = built.into_iter();
    let chosen = built
        .next()
        .ok_or_else(|| none("no row of sheets in stock covers the wall between its plates"))?;
    if let Some(refusal) = chosen
        .findings
        .iter()
        .find(|finding| finding.severity == Severity::Refuse)
    {
        return Err(none(&refusal.message.written(house.drawn_in.in_text())));
    }
    let alternatives = built
        .take(most)
        .map(|other| alternative(house, &other, chosen.cost.total))
        .collect();
    Ok(Found {
        chosen,
        start: starting_end(space.practice, space.frame),
        alternatives,
        effort,
        built: count,
        stopped,
    })
}

/// Lays out the best few stacks of every bottom line, and tells whether the limit of effort was reached.
fn candidates(space: &Space<'_>, house: &House, effort: &mut u64) -> (Vec<Candidate>, bool) {
    let mut courses = Courses::new(space);
    let mut found: Vec<Candidate> = Vec::new();
    let most = space.practice.stacks_most as usize;
    for reach in datum::reaches(space) {
        let bottom = space
            .frame
            .lower
            .points()
            .iter()
            .map(|point| point.y)
            .min()
            .unwrap_or_default()
            - reach;
        let levels = level::levels(space, bottom);
        for stack in stack::stacks(space, &levels, most) {
            if *effort >= space.practice.effort_most {
                return (found, true);
            }
            if let Some(spec) = courses.lay(&stack, reach, effort)
                && found.iter().all(|other| other.spec != spec)
            {
                let layout = lay_out(house, space.frame, &spec);
                let known = layout_cost(&space.prices, &layout);
                found.push(Candidate { spec, layout, known });
            }
        }
    }
    (found, false)
}

/// A layout that may be built through the other stages.
struct Candidate {
    spec: LayoutSpec,
    layout: Layout,
    /// What it costs without backing and nails.
    known: Amount,
}

/// Takes candidates through all stages, those first that cost least without backing and nails; at least so many, and
/// all that may yet be the cheapest with nothing refused and nothing to mend.
///
/// Every layout nails the same members, so that no count of nails is far from another: a candidate is left where
/// even with three quarters of the fewest nails seen it would cost more than one that was built.
///
/// Returns the first so many by rank, and how many were built: the others are not kept.
fn build(
    house: &House,
    frame: &Frame,
    mut candidates: Vec<Candidate>,
    least: usize,
) -> (Vec<Evaluated>, u64) {
    candidates.sort_by_key(|candidate| candidate.known);
    let (mut kept, mut count) = (Vec::new(), 0);
    let (mut cheapest, mut fewest) = (None, None);
    for Candidate { spec, layout, known } in candidates {
        let nails = fewest.and_then(|nails: Amount| nails.scaled(3, 4));
        let beaten = |cheapest: Amount| cheapest < known + nails.unwrap_or_default();
        if kept.len() >= least && cheapest.is_some_and(beaten) {
            break;
        }
        let next = evaluate_layout(house, frame, spec, layout);
        let of_nails = [Part::Nails, Part::GunNails, Part::HandNails];
        let nails = next
            .cost
            .parts
            .iter()
            .filter(|part| of_nails.contains(&part.part));
        let nails: Amount = nails.map(|part| part.amount).sum();
        fewest = Some(fewest.map_or(nails, |fewest: Amount| fewest.min(nails)));
        if wrong(&next) == (0, 0) {
            let total = next.cost.total;
            cheapest = Some(cheapest.map_or(total, |cheapest: Amount| cheapest.min(total)));
        }
        let rank = rank(&next);
        let place = kept.partition_point(|(other, _)| *other <= rank);
        kept.insert(place, (rank, next));
        kept.truncate(least);
        count += 1;
    }
    (kept.into_iter().map(|(_, built)| built).collect(), count)
}

/// More than any wall costs: a way that practice forbids is taken only where there is no other, and is reported.
const FORBIDDING: Amount = Amount::whole(100_000);

/// The courses of a wall, each priced once for all stacks that it is part of.
struct Courses<'s, 'a> {
    space: &'s Space<'a>,
    start: End,
    priced: HashMap<Slot, Course<'s, 'a>>,
}

impl<'s, 'a> Courses<'s, 'a> {
    fn new(space: &'s Space<'a>) -> Self {
        Self {
            space,
            start: starting_end(space.practice, space.frame),
            priced: HashMap::new(),
        }
    }

    /// Seams for every course of a stack.
    fn lay(&mut self, stack: &Stack, reach: Length, effort: &mut u64) -> Option<LayoutSpec> {
        let mut bands: Vec<BandSpec> = Vec::new();
        let count = stack.running.len();
        for (index, (levels, running)) in stack.levels.windows(2).zip(&stack.running).enumerate() {
            let [lo, hi] = levels else { return None };
            let slot = Slot {
                y: Interval::new(*lo, *hi),
                running: *running,
                lowest: index == 0,
                uppermost: index + 1 == count,
                start: self.start,
            };
            let space = self.space;
            let course = self
                .priced
                .entry(slot)
                .or_insert_with(|| Course::new(space, slot));
            let below = bands
                .last()
                .filter(|_| !space.level_on_wood(*lo) && !space.level_blocked(*lo));
            let seams = below.map_or(&[][..], |below| &below.seams);
            bands.push(course.cheapest(seams, effort)?);
        }
        Some(LayoutSpec::Bands { reach, bands })
    }
}

/// How much of a layout is refused, and how much has to be mended.
fn wrong(built: &Evaluated) -> (usize, usize) {
    let count =
        |wanted: &dyn Fn(&Finding) -> bool| built.findings.iter().filter(|finding| wanted(finding)).count();
    let mend =
        |finding: &Finding| finding.severity == Severity::Mend && finding.code != FindingCode::NailBlocked;
    (
        count(&|finding| finding.severity == Severity::Refuse),
        count(&mend),
    )
}

/// Legal first, then with least to mend, then cheap, then by the order of ties: seams clear of plate joints, fewer pieces, upright, lower bottom line,
/// the higher course below, so that what is cut ends at the top, seams.
fn rank(built: &Evaluated) -> impl Ord + use<> {
    let flat = built
        .layout
        .bands
        .iter()
        .filter(|band| band.running == Running::Flat)
        .count();
    let levels: Vec<Length> = built.layout.bands.iter().map(|band| -band.y1).collect();
    let seams: Vec<Length> = built
        .layout
        .bands
        .iter()
        .flat_map(|band| band.seams.iter().copied())
        .collect();
    let findings = built.findings.iter();
    let near_joints = findings.filter(|finding| finding.code == FindingCode::SeamNearPlateJoint);
    (
        wrong(built),
        built.cost.total,
        near_joints.count(),
        built.layout.pieces.len(),
        flat,
        -built.layout.reach,
        levels,
        seams,
    )
}

fn alternative(house: &House, built: &Evaluated, chosen: Amount) -> Alternative {
    let bands = &built.layout.bands;
    let count = |running| bands.iter().filter(|band| band.running == running).count();
    let (upright, flat) = (count(Running::Upright), count(Running::Flat));
    let mut levels: Vec<Length> = bands.first().map(|band| band.y0).into_iter().collect();
    levels.extend(bands.iter().map(|band| band.y1));
    let refusal = built
        .findings
        .iter()
        .find(|finding| finding.severity == Severity::Refuse);
    Alternative {
        summary: format!(
            "{upright} upright and {}, {}",
            counted(flat, "flat course", "flat courses"),
            counted(built.blocking.blocks.len(), "block", "blocks")
        ),
        total: built.cost.total,
        difference: built.cost.total - chosen,
        pieces: u32::try_from(built.layout.pieces.len()).unwrap_or(u32::MAX),
        reach: built.layout.reach,
        levels,
        breaks: refusal.map_or_else(String::new, |finding| {
            finding.message.written(house.drawn_in.in_text())
        }),
    }
}

#[cfg(test)]
mod tests;
