//! The cheapest plan among all that may be cheaper than one that is known.
//!
//! Values of pieces tell how much each pattern falls short of its origin's price. A plan that is to be so cheap can
//! afford only so much of that in all, so that few patterns come into question.

use super::columns::{POINTS, Rest, UNIT, Values};
use super::dive::Chosen;
use super::patterns::{Room, Wanted, patterns};
use super::problem::Problem;
use std::collections::HashMap;

/// What came of it.
pub(super) enum Covered {
    /// A cheaper plan.
    Cheaper(Chosen),
    /// There is none.
    None,
    /// The work was spent before that was known.
    Stopped,
}

/// A pattern that comes into question.
struct Pattern {
    origin: usize,
    items: Box<[u16]>,
    /// What it falls short of its origin's price and excess.
    short: i64,
}

/// Looks for a plan for the rest that costs at most so many steps of price, among patterns that fall short by no more than
/// a share of what the plan as a whole may: of one half for 2; of all, which proves that there is none, for 1.
/// `fits` says whether chosen patterns can be cut in
/// building order.
pub(super) fn cover(
    problem: &Problem,
    rest: &Rest,
    values: &Values,
    at_most: i64,
    share: i64,
    work: &mut u64,
    fits: impl Fn(&Chosen) -> bool,
) -> Covered {
    let slack = at_most * UNIT - values.bound;
    if slack < 0 {
        return Covered::None;
    }
    let Some(patterns) = all(problem, rest, values, slack / share.max(1), work) else {
        return Covered::Stopped;
    };
    let items = problem.items.len();
    let mut having: Vec<Vec<usize>> = vec![Vec::new(); items];
    for (index, pattern) in patterns.iter().enumerate() {
        let mut last = None;
        for item in &pattern.items {
            if last != Some(item) {
                having[usize::from(*item)].push(index);
            }
            last = Some(item);
        }
    }
    let mut order: Vec<usize> = (0..items).collect();
    order.sort_by_key(|item| (having[*item].len(), *item));
    let mut search = Search {
        problem,
        values,
        at_most,
        patterns,
        having,
        order,
        chosen: Vec::new(),
        failed: HashMap::new(),
        stopped: false,
        unsure: false,
    };
    let found = search.go(rest, slack, 0, work, &fits);
    match found {
        Some(chosen) => Covered::Cheaper(chosen),
        None if search.stopped || search.unsure || share > 1 => Covered::Stopped,
        None => Covered::None,
    }
}

/// All patterns that fall short by no more than the slack; nothing if the work is spent before they are known.
fn all(problem: &Problem, rest: &Rest, values: &Values, slack: i64, work: &mut u64) -> Option<Vec<Pattern>> {
    let mut all = Vec::new();
    for (index, origin) in problem.origins.iter().enumerate() {
        let full = origin.price * UNIT + values.excess[index];
        let most = rest.most(origin);
        let room = Room {
            size: origin.size,
            items: &problem.items,
            most: &most,
        };
        let least = (full - slack).max(1);
        let outcome = patterns(&room, &values.items, Wanted::All { least }, POINTS, work);
        if outcome.stopped || outcome.found.len() > MOST_PATTERNS {
            return None;
        }
        all.extend(outcome.found.iter().map(|found| {
            let part = &outcome.parts[*found as usize];
            Pattern {
                origin: index,
                items: part.items.clone(),
                short: full - part.value,
            }
        }));
    }
    all.sort_by_key(|pattern| pattern.short);
    Some(all)
}

const MOST_PATTERNS: usize = 20_000;

struct Search<'a> {
    problem: &'a Problem,
    values: &'a Values,
    at_most: i64,
    patterns: Vec<Pattern>,
    /// Patterns that have an item, by what they fall short.
    having: Vec<Vec<usize>>,
    /// Items with few patterns first.
    order: Vec<usize>,
    chosen: Vec<usize>,
    /// What was left when a search failed, with the slack that it had.
    failed: HashMap<Vec<u32>, i64>,
    stopped: bool,
    /// A plan was given up for the order of building, which `failed` does not know.
    unsure: bool,
}

impl Search<'_> {
    /// Cuts what is left; `from` is the first pattern that may be taken for the item that was looked at last.
    fn go(
        &mut self,
        rest: &Rest,
        slack: i64,
        spent: i64,
        work: &mut u64,
        fits: &impl Fn(&Chosen) -> bool,
    ) -> Option<Chosen> {
        let Some(item) = self.order.iter().copied().find(|item| rest.demand[*item] > 0) else {
            let patterns = self.chosen.iter().map(|index| &self.patterns[*index]);
            let chosen: Chosen = patterns
                .map(|pattern| (pattern.origin, pattern.items.clone()))
                .collect();
            // Drops that are born too late: another choice with the same rest might fit.
            self.unsure |= !fits(&chosen);
            return fits(&chosen).then_some(chosen);
        };
        let key: Vec<u32> = rest
            .demand
            .iter()
            .copied()
            .chain(rest.limits.iter().copied().flatten())
            .collect();
        if self.failed.get(&key).is_some_and(|failed| *failed >= slack) {
            return None;
        }
        for place in 0..self.having[item].len() {
            let index = self.having[item][place];
            let (origin, short) = (self.patterns[index].origin, self.patterns[index].short);
            if short > slack {
                break;
            }
            *work = work.saturating_sub(self.problem.items.len() as u64 / 4 + 4);
            if *work == 0 {
                self.stopped = true;
                return None;
            }
            let price = self.problem.origins[origin].price;
            if rest.limits[origin] == Some(0) || spent + price > self.at_most {
                continue;
            }
            let items = &self.patterns[index].items;
            let mut next = rest.clone();
            let mut over = 0;
            for item in items {
                let item = usize::from(*item);
                if next.demand[item] == 0 {
                    over += self.values.items[item];
                } else {
                    next.demand[item] -= 1;
                }
            }
            if short + over > slack {
                continue;
            }
            if let Some(limit) = &mut next.limits[origin] {
                *limit -= 1;
            }
            self.chosen.push(index);
            let found = self.go(&next, slack - short - over, spent + price, work, fits);
            self.chosen.pop();
            if found.is_some() || self.stopped {
                return found;
            }
        }
        let failed = self.failed.entry(key).or_insert(slack);
        *failed = (*failed).max(slack);
        None
    }
}
