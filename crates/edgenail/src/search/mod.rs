//! Choosing a layout: the only part of the library that does.
//!
//! A wall's candidates are stacks of courses: levels by shortest paths over plate laps, rims and whole sheets, then
//! the seams of each course by shortest path over studs. Both are guided by the prices of single pieces and seams.
//! The best few of every bottom line and direction are then built through all stages, and the one whose finished
//! stages cost least wins. The result is legal, the same every time, and cheap; that none is cheaper is not proven,
//! and the plan says so.

mod course;
mod datum;
mod level;
mod space;
mod stack;

use crate::amount::Amount;
use crate::error::Error;
use crate::evaluate::{Evaluated, evaluate};
use crate::finding::{FindingCode, Severity};
use crate::frame::Frame;
use crate::geometry::Interval;
use crate::house::{End, House, StartChoice};
use crate::layout::{LayoutSpec, Running};
use crate::length::Length;
use course::{Slot, course};
use serde::Serialize;
use space::Space;
use stack::Stack;

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
    let (mut built, mut stopped) = build(&space, house, &mut effort);
    if built.is_empty() && !space.parted_rims.is_empty() {
        // No sheet ends on the rim: then it runs past.
        space.parted_rims.clear();
        (built, stopped) = build(&space, house, &mut effort);
    }
    built.sort_by_key(rank);
    let count = u64::try_from(built.len()).unwrap_or(u64::MAX);
    let mut built = built.into_iter();
    let chosen = built
        .next()
        .ok_or_else(|| none("no row of sheets in stock covers the wall between its plates"))?;
    if let Some(refusal) = chosen
        .findings
        .iter()
        .find(|finding| finding.severity == Severity::Refuse)
    {
        return Err(none(&refusal.message));
    }
    let most = space.practice.alternatives as usize;
    let alternatives = built
        .take(most)
        .map(|other| alternative(&other, chosen.cost.total))
        .collect();
    Ok(Found {
        chosen,
        start: start_end(&space),
        alternatives,
        effort,
        built: count,
        stopped,
    })
}

/// Builds the best few stacks of every bottom line through all stages, and tells whether the limit of effort was
/// reached.
fn build(space: &Space<'_>, house: &House, effort: &mut u64) -> (Vec<Evaluated>, bool) {
    let mut stopped = false;
    let start = start_end(space);
    let mut built: Vec<Evaluated> = Vec::new();
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
        for stack in stack::stacks(space, &levels, STACKS) {
            if *effort >= space.practice.effort_most {
                stopped = true;
                break;
            }
            if let Some(spec) = lay_courses(space, &stack, reach, start, effort)
                && built.iter().all(|other| other.spec != spec)
            {
                built.push(evaluate(house, space.frame, spec));
            }
        }
    }
    (built, stopped)
}

/// Stacks of each bottom line and set of directions that are built through all stages.
const STACKS: usize = 4;

/// More than any wall costs: a way that practice forbids is taken only where there is no other, and is reported.
const FORBIDDING: Amount = Amount::whole(100_000);

/// The end that sheets are laid from: what practice says, else the end that layout is pulled from.
fn start_end(space: &Space<'_>) -> End {
    match space.practice.starting_end {
        StartChoice::Left => End::Left,
        StartChoice::Right => End::Right,
        StartChoice::Either => {
            let from_right = space
                .frame
                .storeys
                .first()
                .is_some_and(|storey| storey.from_right);
            if from_right { End::Right } else { End::Left }
        }
    }
}

/// Seams for every course of a stack.
fn lay_courses(
    space: &Space<'_>,
    stack: &Stack,
    reach: Length,
    start: End,
    effort: &mut u64,
) -> Option<LayoutSpec> {
    let mut bands = Vec::new();
    let mut below: Vec<Length> = Vec::new();
    let count = stack.running.len();
    for (index, (levels, running)) in stack.levels.windows(2).zip(&stack.running).enumerate() {
        let [lo, hi] = levels else { return None };
        let unblocked = index > 0 && !space.level_on_wood(*lo) && !space.level_blocked(*lo);
        let slot = Slot {
            y: Interval::new(*lo, *hi),
            running: *running,
            lowest: index == 0,
            uppermost: index + 1 == count,
            start,
            below: if unblocked { &below } else { &[] },
        };
        let course = course(space, &slot, effort)?;
        below.clone_from(&course.seams);
        bands.push(course);
    }
    Some(LayoutSpec::Bands { reach, bands })
}

/// Legal first, then with least to mend, then cheap, then by the order of ties: fewer pieces, upright, lower bottom line,
/// the higher course below, so that what is cut ends at the top, seams.
fn rank(built: &Evaluated) -> impl Ord + use<> {
    let refused = built
        .findings
        .iter()
        .filter(|finding| finding.severity == Severity::Refuse)
        .count();
    let mends = built
        .findings
        .iter()
        .filter(|finding| finding.severity == Severity::Mend && finding.code != FindingCode::NailBlocked)
        .count();
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
    (
        refused,
        mends,
        built.cost.total,
        built.layout.pieces.len(),
        flat,
        -built.layout.reach,
        levels,
        seams,
    )
}

fn alternative(built: &Evaluated, chosen: Amount) -> Alternative {
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
            "{upright} upright and {flat} flat courses, {} blocks",
            built.blocking.blocks.len()
        ),
        total: built.cost.total,
        difference: built.cost.total - chosen,
        pieces: u32::try_from(built.layout.pieces.len()).unwrap_or(u32::MAX),
        reach: built.layout.reach,
        levels,
        breaks: refusal.map_or_else(String::new, |finding| finding.message.clone()),
    }
}
