//! Stacks of courses: which levels they meet at and which way their sheets run.

use super::guess::{Guess, Guesses};
use super::level::Levels;
use super::space::{Space, directions};
use crate::amount::Amount;
use crate::layout::Running;
use crate::length::Length;
use std::cmp::Ordering;

/// Courses from the lowest up, each with its direction.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Stack {
    /// What the stack seems to cost, before its seams are known.
    pub guess: Amount,
    /// Levels, the bottom line first.
    pub levels: Vec<Length>,
    /// Direction of each course.
    pub running: Vec<Running>,
}

/// The cheapest stacks by a guess that knows levels but no seams, at most `most` for each set of directions.
pub(super) fn stacks(space: &Space<'_>, levels: &Levels, most: usize) -> Vec<Stack> {
    let mut found: Vec<Stack> = Vec::new();
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
    before: &'k Stack,
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

    fn stack(&self, to: Length) -> Stack {
        let mut stack = self.before.clone();
        stack.guess = self.guess;
        stack.levels.push(to);
        stack.running.push(self.running);
        stack
    }
}

/// Shortest paths over levels, keeping the best few at each.
fn best_stacks(guesses: &Guesses<'_, '_>, set: &[Vec<Vec<Guess>>], most: usize) -> Vec<Stack> {
    let levels = guesses.levels;
    let Some((bottom, _)) = levels.split_first() else {
        return Vec::new();
    };
    let mut kept: Vec<Vec<Stack>> = Vec::with_capacity(levels.len());
    kept.push(vec![Stack {
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
    let mut stacks: Vec<Stack> = arrived.flat_map(|(_, stacks)| stacks).collect();
    stacks.sort();
    stacks.truncate(most);
    stacks
}
