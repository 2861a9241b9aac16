//! Stacks of courses: which levels they meet at and which way their sheets run, in rising order of what they weigh.

use super::course::Slot;
use super::courses::Courses;
use super::crude::Crude;
use super::level::Levels;
use super::space::{Space, always, directions};
use super::weight::Weight;
use crate::finding::Severity;
use crate::geometry::Interval;
use crate::layout::{Layout, LayoutBand, Running, rules_of_seams};
use crate::length::Length;
use std::cmp::Reverse;
use std::collections::BinaryHeap;

/// Courses from the lowest up.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Stack {
    /// What its lightest layout weighs, or less.
    pub bound: Weight,
    /// What its levels weigh, without their courses.
    pub levels: Weight,
    /// How far it reaches below the lowest plate.
    pub reach: Length,
    /// From the lowest up.
    pub courses: Vec<Slot>,
}

/// All stacks that reach so far below the lowest plate.
#[derive(Debug)]
pub(super) struct Stacks {
    reach: Length,
    /// What every one of them weighs.
    base: Weight,
    /// Courses that begin at each level.
    courses: Vec<Vec<Candidate>>,
    /// The least from each level to the top.
    onward: Vec<Option<Weight>>,
    open: BinaryHeap<Reverse<Partial>>,
    /// What every one of them weighs at least, whatever its pieces share their sheets with.
    pub by_area: Option<Weight>,
}

/// A course that may be.
#[derive(Debug)]
struct Candidate {
    to: usize,
    slot: Slot,
    /// What its upper level weighs.
    level: Weight,
    /// What it weighs with its upper level, or less; nothing once it is known that no row of sheets fits.
    weight: Option<Weight>,
    /// The same by area.
    by_area: Weight,
    known: Known,
}

/// How much is known of a course.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Known {
    /// Its height.
    Height,
    /// Its lightest seams, before any strip is taken through the stages.
    Roughly,
    /// Its lightest seams.
    Seams,
}

/// Courses up to some level.
#[derive(Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Partial {
    bound: Weight,
    at: usize,
    /// Where each course begins, and its place among those that begin there.
    courses: Vec<(usize, usize)>,
}

impl Stacks {
    pub fn new(
        space: &Space<'_>,
        courses: &Courses<'_, '_>,
        crude: &mut Crude<'_, '_>,
        levels: &Levels,
        reach: Length,
    ) -> Self {
        let all = &levels.all;
        let ends: Vec<bool> = all.iter().map(|level| levels.ends.contains(level)).collect();
        let weights: Vec<Weight> = all.iter().map(|level| level_weight(space, *level)).collect();
        let mut found: Vec<Vec<Candidate>> = Vec::with_capacity(all.len());
        let bottom = all.first().copied().unwrap_or_default();
        let whole = directions(space.practice)
            .iter()
            .map(|running| courses.slot(Interval::new(bottom, space.top), *running, true, true, reach));
        crude.begin(&whole.collect::<Vec<_>>());
        for (from, lo) in all.iter().enumerate() {
            let mut here = Vec::new();
            for (to, hi) in all.iter().enumerate().skip(from + 1) {
                if ends.get(from) == Some(&true) {
                    break;
                }
                let uppermost = ends.get(to) == Some(&true);
                for running in directions(space.practice) {
                    let slot = courses.slot(Interval::new(*lo, *hi), *running, from == 0, uppermost, reach);
                    if !may_be(space, &slot) {
                        continue;
                    }
                    let Some(least) = crude.of(&slot) else { continue };
                    let level = match weights.get(to) {
                        Some(weight) if !uppermost => *weight,
                        _ => Weight::default(),
                    };
                    here.push(Candidate {
                        to,
                        slot,
                        level,
                        weight: Some(level + Weight::of(least.cost)),
                        by_area: level + Weight::of(least.by_area),
                        known: Known::Height,
                    });
                }
            }
            found.push(here);
        }
        let on_top: Vec<Option<Weight>> = ends.iter().map(|end| end.then(Weight::default)).collect();
        let base = always(space.house, space.frame, reach);
        let mut by_area = on_top.clone();
        look_down(&found, &mut by_area, |course| Some(course.by_area));
        let mut stacks = Self {
            by_area: by_area.first().copied().flatten().map(|least| base + least),
            reach,
            base,
            onward: on_top,
            courses: found,
            open: BinaryHeap::new(),
        };
        stacks.look_down();
        if let Some(bound) = stacks.onward.first().copied().flatten() {
            stacks.open.push(Reverse(Partial {
                bound: stacks.base + bound,
                at: 0,
                courses: Vec::new(),
            }));
        }
        stacks
    }

    /// What the lightest stack that is left weighs, or less.
    pub fn bound(&self) -> Option<Weight> {
        self.open.peek().map(|partial| partial.0.bound)
    }

    fn look_down(&mut self) {
        look_down(&self.courses, &mut self.onward, |course| course.weight);
    }

    /// The courses of the lightest way from a level to the top.
    fn lightest(&self, mut at: usize) -> Vec<(usize, usize)> {
        let mut found = Vec::new();
        while let Some(courses) = self.courses.get(at).filter(|courses| !courses.is_empty()) {
            let on =
                |course: &Candidate| Some(course.weight? + self.onward.get(course.to).copied().flatten()?);
            let lightest = courses.iter().enumerate();
            let lightest = lightest
                .filter_map(|(index, course)| Some((on(course)?, index, course.to)))
                .min();
            let Some((_, index, to)) = lightest else { break };
            found.push((at, index));
            at = to;
        }
        found
    }

    fn course(&self, (from, index): (usize, usize)) -> Option<&Candidate> {
        self.courses.get(from)?.get(index)
    }

    /// What the courses of a partial stack weigh with the least above them.
    fn weigh(&self, partial: &Partial) -> Option<Weight> {
        let mut sum = self.base + self.onward.get(partial.at).copied().flatten()?;
        for course in &partial.courses {
            sum += self.course(*course)?.weight?;
        }
        Some(sum)
    }

    /// Goes on by one step from the lightest; gives it back once it is whole and the seams of all its courses are known.
    /// What weighs more than the best layout so far is left out.
    pub fn step(
        &mut self,
        courses: &mut Courses<'_, '_>,
        effort: &mut u64,
        best: Option<Weight>,
    ) -> Option<Stack> {
        let mut partial = self.open.pop()?.0;
        let bound = self.weigh(&partial)?;
        if bound > partial.bound {
            partial.bound = bound;
            self.open.push(Reverse(partial));
            return None;
        }
        let above = self.courses.get(partial.at).filter(|courses| !courses.is_empty());
        // Its seams are searched for once a stack is whole.
        let wanted = if above.is_some() {
            Known::Roughly
        } else {
            Known::Seams
        };
        let unknown = partial
            .courses
            .iter()
            .copied()
            .chain(self.lightest(partial.at))
            .filter_map(|place| Some((self.course(place)?.known, place)))
            .min()
            .filter(|(known, _)| *known < wanted);
        if let Some((known, (from, index))) = unknown {
            if let Some(course) = self
                .courses
                .get_mut(from)
                .and_then(|courses| courses.get_mut(index))
            {
                let line = courses.line();
                let found = courses.at(course.slot).and_then(|course| match known {
                    Known::Height => course.roughly(effort),
                    Known::Roughly | Known::Seams => course.best(effort).map(|way| way.weight),
                });
                course.known = match known {
                    Known::Height => Known::Roughly,
                    Known::Roughly | Known::Seams => Known::Seams,
                };
                let found = found.map(|found| found + course.level + line);
                let least = course.weight;
                debug_assert!(
                    known == Known::Height
                        || found.is_none_or(|found| least.is_none_or(|least| least <= found)),
                    "{:?}: {least:?} is no lower bound of {found:?}",
                    course.slot
                );
                // Either of two rough bounds may be the tighter.
                course.weight = found.map(|found| least.map_or(found, |least| least.max(found)));
            }
            self.look_down();
            if let Some(bound) = self.weigh(&partial) {
                partial.bound = bound;
                self.open.push(Reverse(partial));
            }
            return None;
        }
        let above = self.courses.get(partial.at).filter(|courses| !courses.is_empty());
        if let Some(above) = above {
            let next = (0..above.len()).map(|index| {
                let mut courses = partial.courses.clone();
                courses.push((partial.at, index));
                let at = above.get(index).map_or(partial.at, |course| course.to);
                Partial { bound, at, courses }
            });
            for mut next in next.collect::<Vec<_>>() {
                if let Some(bound) = self
                    .weigh(&next)
                    .filter(|bound| best.is_none_or(|best| *bound <= best))
                {
                    next.bound = bound;
                    self.open.push(Reverse(next));
                }
            }
            return None;
        }
        let slots = || partial.courses.iter().filter_map(|course| self.course(*course));
        let lines = slots().fold(self.base, |sum, course| sum + course.level + courses.line());
        Some(Stack {
            bound,
            levels: lines,
            reach: self.reach,
            courses: slots().map(|course| course.slot).collect(),
        })
    }
}

/// The least from every level to the top by what courses weigh; at levels where no course begins it stands already.
fn look_down(
    courses: &[Vec<Candidate>],
    onward: &mut [Option<Weight>],
    weigh: impl Fn(&Candidate) -> Option<Weight>,
) {
    for (from, above) in courses.iter().enumerate().rev() {
        if above.is_empty() {
            continue;
        }
        let on = |course: &Candidate| Some(weigh(course)? + onward.get(course.to).copied().flatten()?);
        let best = above.iter().filter_map(on).min();
        if let Some(place) = onward.get_mut(from) {
            *place = best;
        }
    }
}

/// The course is no mere filler, does not run past a rim where practice parts the sheathing, and short of the top a last
/// one ends only where that saves a cut.
fn may_be(space: &Space<'_>, slot: &Slot) -> bool {
    let y = slot.y;
    let gap = |at: Length, end: bool| if end { Length::ZERO } else { space.half_gap(at) };
    let net = y.len() - gap(y.lo, slot.lowest) - gap(y.hi, slot.uppermost);
    if net < space.practice.filler_least
        || (slot.uppermost && y.hi != space.top && !space.last_sizes.contains(&net))
        || space.runs_past_rim(y)
    {
        return false;
    }
    net >= space.practice.strip_least || space.frame.ties_band(y)
}

/// A level seam: judgement, and what the rules say of it.
pub(super) fn level_weight(space: &Space<'_>, y: Length) -> Weight {
    let mut weight = Weight::default();
    space.prices.level(y, space.x, &mut weight.cost);
    let band = |y0: Length, y1: Length| LayoutBand {
        y0,
        y1,
        running: Running::Upright,
        seams: Vec::new(),
    };
    let parted = Layout {
        bands: vec![band(y - Length::feet(1), y), band(y, y + Length::feet(1))],
        ..Layout::default()
    };
    let count = |layout: &Layout, severity: Severity| {
        let found = rules_of_seams(space.house, space.frame, layout);
        u32::try_from(
            found
                .iter()
                .filter(|finding| finding.severity == severity)
                .count(),
        )
        .unwrap_or(u32::MAX)
    };
    let whole = Layout::default();
    let more = |severity| count(&parted, severity).saturating_sub(count(&whole, severity));
    weight.refused = more(Severity::Refuse);
    weight.mend = more(Severity::Mend);
    weight
}
