//! Stacks of courses: which levels they meet at and which way their sheets run.

use super::FORBIDDING;
use super::level::Levels;
use super::space::{Space, directions, up_and_across};
use crate::amount::Amount;
use crate::geometry::{Interval, Rect, Shape};
use crate::layout::{Joint, Running, Sides};
use crate::length::Length;

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
    for set in sets {
        found.extend(best_stacks(space, levels, set, most));
    }
    found.sort();
    found.dedup();
    found
}

/// Shortest paths over levels, keeping the best few at each.
fn best_stacks(space: &Space<'_>, levels: &Levels, set: &[Running], most: usize) -> Vec<Stack> {
    let Levels { all: levels, ends } = levels;
    let Some((bottom, _)) = levels.split_first() else {
        return Vec::new();
    };
    let mut kept: Vec<Vec<Stack>> = vec![Vec::new(); levels.len()];
    kept[0].push(Stack {
        guess: Amount::default(),
        levels: vec![*bottom],
        running: Vec::new(),
    });
    for to in 1..levels.len() {
        let mut arrivals: Vec<Stack> = Vec::new();
        for from in 0..to {
            if ends.contains(&levels[from]) {
                continue;
            }
            let span = Interval::new(levels[from], levels[to]);
            let last = ends.contains(&span.hi);
            if space.runs_past_rim(span) {
                continue;
            }
            // Short of the top a last course ends only where that saves a cut.
            if last && span.hi != space.top && !space.last_sizes.contains(&net(space, span, from == 0, last))
            {
                continue;
            }
            for running in set {
                let Some(guess) = guess(space, span, *running, from == 0, last) else {
                    continue;
                };
                arrivals.extend(kept[from].iter().map(|stack| {
                    let mut next = stack.clone();
                    next.guess += guess;
                    next.levels.push(levels[to]);
                    next.running.push(*running);
                    next
                }));
            }
        }
        arrivals.sort();
        arrivals.truncate(most);
        kept[to] = arrivals;
    }
    let arrived = levels.iter().zip(kept).filter(|(level, _)| ends.contains(level));
    let mut stacks: Vec<Stack> = arrived.flat_map(|(_, stacks)| stacks).collect();
    stacks.sort();
    stacks.truncate(most);
    stacks
}

/// How high the sheets of a course stand.
fn net(space: &Space<'_>, y: Interval, lowest: bool, uppermost: bool) -> Length {
    let half = |y: Length, end: bool| if end { Length::ZERO } else { space.half_gap(y) };
    y.len() - half(y.lo, lowest) - half(y.hi, uppermost)
}

/// What a course between two levels seems to cost: its sheets as if there were no openings, its line, its level seam
/// with a row of blocks where nothing carries it. `None` where no sheet fits or the course is a mere filler.
fn guess(space: &Space<'_>, y: Interval, running: Running, lowest: bool, uppermost: bool) -> Option<Amount> {
    let net = net(space, y, lowest, uppermost);
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
        let Some(shape) = Shape::from_rect(Rect::from_size(Length::ZERO, y.lo, across, net.min(up))) else {
            continue;
        };
        let each = space.prices.piece(&shape, sides, sheet, running).total();
        let price = each.times(count).unwrap_or_default();
        if best.is_none_or(|least| price < least) {
            best = Some(price);
        }
    }
    let mut price = best? + space.prices.line(space.x).total();
    if !uppermost {
        if space.parts_gable(y.hi) {
            price += FORBIDDING;
        }
        price += space.prices.level(y.hi, space.x).total();
        price += if space.level_on_wood(y.hi) {
            space.prices.level_rows(space.x, 2)
        } else if space.level_blocked(y.hi) {
            space.prices.block_row(space.x)
        } else {
            Amount::default()
        };
    }
    Some(price)
}
