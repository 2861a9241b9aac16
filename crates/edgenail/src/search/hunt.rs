//! Layouts in rising order of what they weigh, until none that is left may be the best.

use super::build::{self, Built, wrong};
use super::courses::Courses;
use super::crude::Crude;
use super::propose::{Candidate, candidates};
use super::space::Space;
use super::stack::{Stack, Stacks};
use super::sweep::{Sweep, is_coupled};
use super::weight::Weight;
use super::{datum, level};
use crate::amount::Amount;
use crate::evaluate::{BackedLayout, evaluate};
use crate::layout::LayoutSpec;
use crate::proof::Proof;

/// What building a layout counts for, in arcs priced.
pub(super) const BUILT: u64 = 400;

/// The search as far as it went.
pub(super) struct Hunt<'s, 'a> {
    space: &'s Space<'a>,
    courses: Courses<'s, 'a>,
    /// Stacks that were not laid out yet, by bottom line.
    stacks: Vec<Stacks>,
    /// Stacks that may have more layouts than the first.
    sweeps: Vec<Sweep>,
    pub built: Built,
    pub effort: u64,
}

/// How a search ended.
#[derive(Debug)]
pub(super) struct Ended {
    pub built: Built,
    /// What was spent.
    pub effort: u64,
    /// How good the best is known to be.
    pub proof: Proof,
    /// What every layout costs at least, whatever its pieces share their sheets with.
    pub least_by_area: Amount,
}

/// When a search may end before its limit of effort.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Until {
    /// With the best.
    Proven,
    /// With one that breaks no rule which may not be broken.
    Legal,
}

/// Where the lightest layout that is left may be.
#[derive(Clone, Copy)]
enum Next {
    Stacks(usize),
    Sweep(usize),
}

impl<'s, 'a> Hunt<'s, 'a> {
    pub fn new(space: &'s Space<'a>) -> Self {
        let courses = Courses::new(space);
        let base = space.frame.lower.points().iter().map(|point| point.y).min();
        let mut crude = Crude::new(space);
        let stacks = datum::reaches(space).into_iter().map(|reach| {
            let levels = level::levels(space, base.unwrap_or_default() - reach);
            Stacks::new(space, &courses, &mut crude, &levels, reach)
        });
        Self {
            stacks: stacks.collect(),
            sweeps: Vec::new(),
            built: Built::new(space.practice.alternatives as usize + 1, courses.start),
            effort: 0,
            space,
            courses,
        }
    }

    /// What the lightest layout that is left weighs, or less.
    fn next(&self) -> Option<(Weight, Next)> {
        let stacks = self.stacks.iter().enumerate();
        let stacks = stacks.filter_map(|(index, stacks)| Some((stacks.bound()?, Next::Stacks(index))));
        let sweeps = self.sweeps.iter().enumerate();
        let sweeps = sweeps.filter_map(|(index, sweep)| Some((sweep.bound()?, Next::Sweep(index))));
        stacks.chain(sweeps).min_by_key(|(bound, _)| *bound)
    }

    fn is_enough(&self, until: Until) -> bool {
        until == Until::Legal && self.built.best().is_some_and(|best| best.refused == 0)
    }

    fn may_go_on(&self) -> bool {
        self.effort < self.space.practice.effort_most
    }

    /// Until no layout that is left may be the best, or the limit of effort is reached.
    pub fn run(&mut self, until: Until) {
        self.propose(until);
        while let Some((bound, next)) = self.next() {
            if !self.may_go_on() || !self.built.may_be_best(bound) || self.is_enough(until) {
                break;
            }
            match next {
                Next::Stacks(index) => {
                    let stack = self.stacks.get_mut(index).and_then(|stacks| {
                        stacks.step(&mut self.courses, &mut self.effort, self.built.best())
                    });
                    if let Some(stack) = stack {
                        self.lay(stack);
                    }
                }
                Next::Sweep(index) => {
                    let Some(sweep) = self.sweeps.get_mut(index) else {
                        break;
                    };
                    let found = sweep.step(self.space, &mut self.courses, &mut self.effort);
                    if let Some((bound, spec)) = found
                        && self.build(bound, spec) == Some(bound.cost)
                    {
                        // Nothing else of the stack weighs less.
                        self.sweeps.swap_remove(index);
                    }
                }
            }
        }
    }

    /// Builds proposals, so that there is a layout however soon the search has to stop, and what is heavier need not be
    /// looked at.
    ///
    /// Those that have least to mend come first, then those that cost least without backing and nails: as many as are
    /// listed, and all that may be the best if their nails cost three quarters of the fewest seen.
    pub fn propose(&mut self, until: Until) {
        let space = self.space;
        let mut candidates = candidates(space, &mut self.courses, &mut self.effort);
        candidates.sort_by_cached_key(|candidate| (wrong(&candidate.judged), candidate.known));
        for candidate in candidates {
            let Candidate {
                spec,
                layout,
                weight,
                mut known,
                judged,
            } = candidate;
            if !self.built.may_be_best_of_proposals(wrong(&judged), known) || self.is_enough(until) {
                break;
            }
            let backed = BackedLayout::new(space.house, space.frame, spec, layout, judged);
            space.prices.wood(&mut known, &backed.blocking);
            if self
                .built
                .may_be_best_of_proposals(wrong(&backed.findings), known)
            {
                self.effort += BUILT;
                self.built.take(backed.nailed(space.house, space.frame), weight);
            }
        }
    }

    /// Builds the lightest layout of a stack; where it weighs more than it seemed to, or its courses have to be searched
    /// together, others may yet be lighter.
    fn lay(&mut self, stack: Stack) {
        if !is_coupled(self.space, &stack) {
            let bands = stack.courses.iter().map(|slot| {
                let course = self.courses.at(*slot)?;
                let way = course.best(&mut self.effort)?.clone();
                course.spec(&way.stops, &way.kinds)
            });
            let Some(bands) = bands.collect::<Option<Vec<_>>>() else {
                return;
            };
            let reach = stack.reach;
            if self.build(stack.bound, LayoutSpec::Bands { reach, bands }) == Some(stack.bound.cost) {
                return;
            }
        }
        let sweep = Sweep::new(self.space, stack, &mut self.courses, &mut self.effort);
        self.sweeps.push(sweep);
    }

    /// Builds a layout that weighs so much or more; gives back what it costs, nothing where it has more to mend than it
    /// seemed to.
    fn build(&mut self, known: Weight, spec: LayoutSpec) -> Option<Amount> {
        let weight = self.built.weight(&spec).unwrap_or_else(|| {
            self.effort += BUILT;
            let built = evaluate(self.space.house, self.space.frame, spec);
            self.built.take(built, known)
        });
        debug_assert!(
            known.pieces == 0 || (weight.wrong(), weight.cost) >= (known.wrong(), known.cost),
            "{known:?} is no lower bound of {weight:?}"
        );
        (weight.wrong() == known.wrong()).then_some(weight.cost)
    }

    /// How good the best is known to be.
    pub fn ended(self) -> Ended {
        let left = self.next().map(|(bound, _)| bound);
        let gap = self
            .built
            .best()
            .zip(left)
            .and_then(|(best, left)| build::gap(best, left));
        let proof = match gap {
            Some(gap) => Proof::Stopped {
                gap,
                effort: self.effort,
            },
            None => Proof::Proven,
        };
        let by_area = self.stacks.iter().filter_map(|stacks| stacks.by_area).min();
        Ended {
            built: self.built,
            effort: self.effort,
            proof,
            least_by_area: by_area.map_or(Amount::ZERO, |least| least.cost),
        }
    }
}
