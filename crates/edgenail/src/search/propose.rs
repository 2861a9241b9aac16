//! Stacks that are likely to be good: built first, so that what is heavier than they are need not be looked at.

use super::courses::Courses;
use super::datum::reaches;
use super::guess::{Guess, Guesses};
use super::level::{Levels, levels};
use super::space::{Space, directions};
use super::weight::Weight;
use crate::amount::Amount;
use crate::finding::Finding;
use crate::geometry::Interval;
use crate::layout::{BandSpec, Layout, LayoutSpec, Running, lay_out, rules};
use crate::length::Length;
use crate::price::layout_cost;
use std::cmp::Ordering;

/// A layout that is likely to be good.
pub(super) struct Candidate {
    pub spec: LayoutSpec,
    pub layout: Layout,
    /// What no finished stage tells of its weight.
    pub weight: Weight,
    /// What it costs without backing and nails.
    pub known: Amount,
    /// What the rules of layouts say.
    pub judged: Vec<Finding>,
}

/// The best few stacks of every bottom line, laid out.
pub(super) fn candidates(
    space: &Space<'_>,
    courses: &mut Courses<'_, '_>,
    effort: &mut u64,
) -> Vec<Candidate> {
    let base = space.frame.lower.points().iter().map(|point| point.y).min();
    let most = space.practice.stacks_most as usize;
    let mut found: Vec<Candidate> = Vec::new();
    for reach in reaches(space) {
        let levels = levels(space, base.unwrap_or_default() - reach);
        for proposal in proposals(space, &levels, most) {
            if let Some((weight, spec)) = laid(space, courses, &proposal, reach, effort)
                && found.iter().all(|other| other.spec != spec)
            {
                let layout = lay_out(space.house, space.frame, &spec);
                found.push(Candidate {
                    known: layout_cost(&space.prices, &layout),
                    judged: rules(space.house, space.frame, &layout),
                    spec,
                    layout,
                    weight,
                });
            }
        }
    }
    found
}

/// Seams for every course of a proposal.
fn laid(
    space: &Space<'_>,
    courses: &mut Courses<'_, '_>,
    proposal: &Proposal,
    reach: Length,
    effort: &mut u64,
) -> Option<(Weight, LayoutSpec)> {
    let mut weight = Weight::default();
    let mut bands: Vec<BandSpec> = Vec::new();
    let count = proposal.running.len();
    for (index, (levels, running)) in proposal.levels.windows(2).zip(&proposal.running).enumerate() {
        let [lo, hi] = levels else { return None };
        let slot = courses.slot(
            Interval::new(*lo, *hi),
            *running,
            index == 0,
            index + 1 == count,
            reach,
        );
        let below = bands
            .last()
            .filter(|_| !space.level_on_wood(*lo) && !space.level_blocked(*lo));
        let seams = below.map_or(&[][..], |below| &below.seams);
        let course = courses.at(slot)?;
        let way = course.beside(seams, space.practice.stagger_least, effort)?;
        weight += way.weight;
        bands.push(course.spec(&way.stops, &way.kinds)?);
    }
    Some((weight, LayoutSpec::Bands { reach, bands }))
}

/// Courses from the lowest up, each with its direction.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Proposal {
    /// What the stack seems to cost, before its seams are known.
    guess: Amount,
    /// Levels, the bottom line first.
    levels: Vec<Length>,
    /// Direction of each course.
    running: Vec<Running>,
}

/// The cheapest stacks by a guess that knows levels but no seams, at most `most` for each set of directions.
fn proposals(space: &Space<'_>, levels: &Levels, most: usize) -> Vec<Proposal> {
    let mut found: Vec<Proposal> = Vec::new();
    let guesses = Guesses::new(space, levels);
    let all = directions(space.practice);
    let courses: Vec<Vec<Vec<Guess>>> = all.iter().map(|running| guesses.courses(*running)).collect();
    let mut sets: Vec<&[Vec<Vec<Guess>>]> = courses.chunks(1).collect();
    if all.len() > 1 {
        sets.push(&courses);
    }
    for set in sets {
        found.extend(best_stacks(&guesses, set, most));
    }
    found.sort();
    found.dedup();
    found
}

/// A stack that goes on by one course from one that was kept.
#[derive(Clone, Copy)]
struct Arrival<'k> {
    guess: Amount,
    before: &'k Proposal,
    running: Running,
}

impl Arrival<'_> {
    /// The order of the stacks that arrivals at one level become.
    fn compare(&self, other: &Self, to: Length) -> Ordering {
        let levels = |arrival: &Self| arrival.before.levels.iter().copied().chain([to]);
        let running = |arrival: &Self| arrival.before.running.iter().copied().chain([arrival.running]);
        self.guess
            .cmp(&other.guess)
            .then_with(|| levels(self).cmp(levels(other)))
            .then_with(|| running(self).cmp(running(other)))
    }

    fn stack(&self, to: Length) -> Proposal {
        let mut stack = self.before.clone();
        stack.guess = self.guess;
        stack.levels.push(to);
        stack.running.push(self.running);
        stack
    }
}

/// Shortest paths over levels, keeping the best few at each.
fn best_stacks(guesses: &Guesses<'_, '_>, set: &[Vec<Vec<Guess>>], most: usize) -> Vec<Proposal> {
    let levels = guesses.levels;
    let Some((bottom, _)) = levels.split_first() else {
        return Vec::new();
    };
    let mut kept: Vec<Vec<Proposal>> = Vec::with_capacity(levels.len());
    kept.push(vec![Proposal {
        guess: Amount::default(),
        levels: vec![*bottom],
        running: Vec::new(),
    }]);
    for (to, level) in levels.iter().enumerate().skip(1) {
        let mut arrivals: Vec<Arrival<'_>> = Vec::with_capacity(most + 1);
        for course in set.iter().filter_map(|courses| courses.get(to)).flatten() {
            for before in kept.get(course.from).into_iter().flatten() {
                let guess = before.guess + course.price;
                if arrivals.len() == most && arrivals.last().is_some_and(|worst| worst.guess < guess) {
                    // What is kept at a level rises.
                    break;
                }
                let arrival = Arrival {
                    guess,
                    before,
                    running: course.running,
                };
                let place = arrivals.partition_point(|other| other.compare(&arrival, *level).is_le());
                if place < most {
                    arrivals.truncate(most - 1);
                    arrivals.insert(place, arrival);
                }
            }
        }
        let best = arrivals.iter().map(|arrival| arrival.stack(*level)).collect();
        kept.push(best);
    }
    let arrived = guesses.ends.iter().zip(kept).filter(|(end, _)| **end);
    let mut stacks: Vec<Proposal> = arrived.flat_map(|(_, stacks)| stacks).collect();
    stacks.sort();
    stacks.truncate(most);
    stacks
}
