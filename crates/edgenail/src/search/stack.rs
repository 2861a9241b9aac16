//! Stacks of courses: which levels they meet at and which way their sheets run.

use super::FORBIDDING;
use super::level::Levels;
use super::space::{Space, directions, up_and_across};
use crate::amount::Amount;
use crate::geometry::{Interval, Rect};
use crate::layout::{Joint, Running, Sides};
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
    let all = directions(space.practice);
    let mut sets: Vec<&[Running]> = all.chunks(1).collect();
    if all.len() > 1 {
        sets.push(all);
    }
    let guesses = Guesses::new(space, levels);
    for set in sets {
        found.extend(best_stacks(&guesses, &levels.all, set, most));
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
fn best_stacks(guesses: &Guesses, levels: &[Length], set: &[Running], most: usize) -> Vec<Stack> {
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
        for (from, stacks) in kept.iter().enumerate() {
            for running in set {
                let Some(guess) = guesses.of(from, to, *running) else {
                    continue;
                };
                for before in stacks {
                    let full = arrivals.len() == most;
                    if full
                        && arrivals
                            .last()
                            .is_some_and(|worst| worst.guess < before.guess + guess)
                    {
                        // What is kept at a level rises.
                        break;
                    }
                    let arrival = Arrival {
                        guess: before.guess + guess,
                        before,
                        running: *running,
                    };
                    let place = arrivals.partition_point(|other| other.compare(&arrival, *level).is_le());
                    if place < most {
                        arrivals.truncate(most - 1);
                        arrivals.insert(place, arrival);
                    }
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

/// What courses between levels seem to cost, worked out once for every set of directions.
struct Guesses {
    /// For each direction, from each level to each higher one.
    upright: Vec<Vec<Option<Amount>>>,
    flat: Vec<Vec<Option<Amount>>>,
    /// Levels where the uppermost course may end.
    ends: Vec<bool>,
}

impl Guesses {
    fn new(space: &Space<'_>, levels: &Levels) -> Self {
        let Levels { all: levels, ends } = levels;
        let ends: Vec<bool> = levels.iter().map(|level| ends.contains(level)).collect();
        let line = space.prices.line(space.x).total();
        let seams: Vec<Amount> = levels
            .iter()
            .zip(&ends)
            .map(|(level, end)| {
                if *end {
                    Amount::default()
                } else {
                    level_seam(space, *level)
                }
            })
            .collect();
        let of = |running: Running| {
            let allowed = directions(space.practice).contains(&running);
            let from = levels.iter().zip(&ends).enumerate();
            from.map(|(from, (lo, end))| {
                let above = levels.iter().zip(&ends).zip(&seams).skip(from + 1);
                above
                    .map(|((hi, uppermost), seam)| {
                        if *end || !allowed {
                            return None;
                        }
                        let y = Interval::new(*lo, *hi);
                        if space.runs_past_rim(y) {
                            return None;
                        }
                        let sheets = sheets_of(space, y, running, from == 0, *uppermost)?;
                        Some(sheets + line + *seam)
                    })
                    .collect()
            })
            .collect()
        };
        Self {
            upright: of(Running::Upright),
            flat: of(Running::Flat),
            ends,
        }
    }

    /// The course from one level to another; `None` where there can be none.
    fn of(&self, from: usize, to: usize, running: Running) -> Option<Amount> {
        let table = match running {
            Running::Upright => &self.upright,
            Running::Flat => &self.flat,
        };
        *table.get(from)?.get(to.checked_sub(from + 1)?)?
    }
}

/// A level seam with its nails, and with a row of blocks where nothing carries it.
fn level_seam(space: &Space<'_>, y: Length) -> Amount {
    let rows = if space.level_on_wood(y) {
        space.prices.level_rows(space.x, 2)
    } else if space.level_blocked(y) {
        space.prices.block_row(space.x)
    } else {
        Amount::ZERO
    };
    let parted = if space.parts_gable(y) {
        FORBIDDING
    } else {
        Amount::ZERO
    };
    space.prices.level(y, space.x).total() + rows + parted
}

/// How high the sheets of a course stand.
fn net(space: &Space<'_>, y: Interval, lowest: bool, uppermost: bool) -> Length {
    let half = |y: Length, end: bool| if end { Length::ZERO } else { space.half_gap(y) };
    y.len() - half(y.lo, lowest) - half(y.hi, uppermost)
}

/// The sheets of a course between two levels as if there were no openings. `None` where no sheet fits or the course
/// is a mere filler.
fn sheets_of(
    space: &Space<'_>,
    y: Interval,
    running: Running,
    lowest: bool,
    uppermost: bool,
) -> Option<Amount> {
    let net = net(space, y, lowest, uppermost);
    // Short of the top a last course ends only where that saves a cut.
    if uppermost && y.hi != space.top && !space.last_sizes.contains(&net) {
        return None;
    }
    let least = if space.frame.ties_band(y) {
        space.practice.filler_least
    } else {
        space.practice.strip_least
    };
    if net < least.max(space.practice.filler_least) {
        return None;
    }
    let end = |at_end: bool| if at_end { Joint::End } else { Joint::Seam };
    let sides = Sides {
        left: Joint::Seam,
        right: Joint::Seam,
        bottom: end(lowest),
        top: end(uppermost),
    };
    let mut best: Option<Amount> = None;
    for sheet in space.sheets.iter().filter_map(|index| space.sheet(*index)) {
        let (up, across) = up_and_across(sheet, running);
        let short = if lowest || uppermost {
            space.practice.end_short
        } else {
            Length::ZERO
        };
        if net > up + short {
            continue;
        }
        let count = space.x.len().spaces(across + space.gap);
        let blank = Rect::from_size(Length::ZERO, y.lo, across, net.min(up));
        if blank.is_empty() {
            continue;
        }
        let each = space.prices.rectangle(&blank, sides, sheet, running);
        let price = each.times(count).unwrap_or_default();
        if best.is_none_or(|least| price < least) {
            best = Some(price);
        }
    }
    best
}
