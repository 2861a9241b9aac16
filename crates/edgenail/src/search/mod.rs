//! Choosing a layout: the only part of the library that does.
//!
//! A wall's candidates are stacks of courses: levels by shortest paths over plate laps, rims and whole sheets, then
//! the seams of each course by shortest path over studs. Both are guided by the prices of single pieces and seams.
//! The best few of every bottom line and direction are then laid out and judged; those that may yet be the best are
//! backed, then nailed, and the one that has least to mend and then costs least wins. The result is legal, the same
//! every time, and cheap; that none is cheaper is not proven, and the plan says so.

mod alike;
mod alternative;
mod build;
mod course;
mod datum;
mod guess;
mod level;
mod space;
mod stack;
mod strip;

use crate::amount::Amount;
use crate::error::Error;
use crate::evaluate::Evaluated;
use crate::finding::Severity;
use crate::frame::Frame;
use crate::geometry::Interval;
use crate::house::{End, House};
use crate::layout::{BandSpec, LayoutSpec, lay_out, rules, starting_end};
use crate::length::Length;
use crate::price::layout_cost;
pub use alternative::Alternative;
use alternative::alternative;
pub(crate) use alternative::summary;
use build::{Candidate, build};
use course::{Course, Slot};
use space::Space;
use stack::Stack;
use std::collections::HashMap;

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
        remedies: Vec::new(),
    };
    let mut space = Space::new(house, frame).ok_or_else(|| none("the house has no such wall"))?;
    if space.sheets.is_empty() {
        return Err(none("no sheet of the category that is asked for is on hand"));
    }
    let mut effort = 0;
    let (mut found, mut stopped) = candidates(&space, house, &mut effort);
    if found.is_empty() && !space.parted_rims.is_empty() {
        // No sheet ends on the rim: then it runs past.
        space.parted_rims.clear();
        (found, stopped) = candidates(&space, house, &mut effort);
    }
    let most = space.practice.alternatives as usize;
    let (built, count) = build(&space, house, found, most + 1);
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
        .map(|other| alternative(house, &other, &chosen))
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
                let judged = rules(house, space.frame, &layout);
                found.push(Candidate {
                    spec,
                    layout,
                    known,
                    judged,
                });
            }
        }
    }
    (found, false)
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

#[cfg(test)]
mod tests;
