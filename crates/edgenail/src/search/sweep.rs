//! All layouts of one stack of courses in rising order of what they weigh.
//!
//! Courses whose seams have to keep apart, or should lie half a sheet apart, are searched together: the one furthest
//! behind goes on by one strip. What is left of each course weighs at least what its lightest way weighs alone.

use super::courses::Courses;
use super::space::{Space, up_and_across};
use super::stack::Stack;
use super::weight::Weight;
use crate::amount::Amount;
use crate::geometry::Interval;
use crate::layout::{BandSpec, LayoutSpec, Running};
use crate::length::Length;
use std::cmp::{Ordering, Reverse};
use std::collections::{BinaryHeap, HashMap};
use std::rc::Rc;

/// How many ways to one place are gone on from, before it is known that more are needed; each time so many times more.
const MORE: u32 = 4;

/// Two courses of which the seams are weighed against each other.
#[derive(Clone, Debug, Default)]
struct Pair {
    /// Seams nearer than practice allows are refused, outside these stretches.
    stagger: Option<Vec<Interval>>,
    /// Seams should lie half a sheet apart.
    offsets: bool,
}

/// The layouts of one stack.
#[derive(Debug)]
pub(super) struct Sweep {
    pub stack: Stack,
    /// Between each course and the one above it.
    pairs: Vec<Pair>,
    /// The first course of the group of each course.
    groups: Vec<usize>,
    open: BinaryHeap<Reverse<State>>,
    /// How often each place was gone on from.
    left: HashMap<Vec<usize>, u32>,
    most: u32,
    /// The lightest of those that were not gone on from.
    floor: Option<Weight>,
    uneven: Amount,
}

/// Courses as far as they are laid.
#[derive(Clone, Debug, PartialEq, Eq)]
struct State {
    bound: Weight,
    /// What is laid weighs so much, without the strip that is not taken through the stages yet.
    laid: Weight,
    /// The course whose last strip is not taken through the stages.
    last: Option<usize>,
    courses: Rc<Vec<Laid>>,
}

/// One course as far as it is laid.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Laid {
    stops: Vec<usize>,
    kinds: Vec<usize>,
    /// The kind of sheet that most of it is laid with, once that is chosen.
    most: Option<usize>,
}

impl Ord for State {
    fn cmp(&self, other: &Self) -> Ordering {
        let far = |state: &Self| {
            let stops = state
                .courses
                .iter()
                .flat_map(|course| course.stops.iter().copied());
            stops.map(Reverse).collect::<Vec<_>>()
        };
        let first = self.bound.cmp(&other.bound);
        first
            .then_with(|| far(self).cmp(&far(other)))
            .then_with(|| self.last.cmp(&other.last))
            .then_with(|| {
                let kinds = |state: &Self| {
                    let courses = state.courses.iter();
                    courses
                        .map(|course| (course.kinds.clone(), course.most))
                        .collect::<Vec<_>>()
                };
                kinds(self).cmp(&kinds(other))
            })
    }
}

impl PartialOrd for State {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

/// What stands between two courses of a stack.
fn pair(space: &Space<'_>, below: Running, above: Running, y: Length) -> Pair {
    let stagger =
        space.practice.stagger_least > Length::ZERO && !space.level_on_wood(y) && !space.level_blocked(y);
    Pair {
        stagger: stagger.then(|| space.maybe_backed(y)),
        offsets: (below, above) == (Running::Flat, Running::Flat),
    }
}

/// Courses of a stack have to be searched together.
pub(super) fn is_coupled(space: &Space<'_>, stack: &Stack) -> bool {
    stack.courses.windows(2).any(|courses| {
        let [below, above] = courses else { return false };
        let pair = pair(space, below.running, above.running, above.y.lo);
        pair.stagger.is_some() || pair.offsets
    })
}

impl Sweep {
    pub fn new(space: &Space<'_>, stack: Stack, courses: &mut Courses<'_, '_>, effort: &mut u64) -> Self {
        let pairs: Vec<Pair> = stack
            .courses
            .iter()
            .zip(stack.courses.iter().skip(1))
            .map(|(below, above)| pair(space, below.running, above.running, above.y.lo))
            .collect();
        let mut groups = vec![0];
        for (index, pair) in pairs.iter().enumerate() {
            let together = pair.stagger.is_some() || pair.offsets;
            let group = if together {
                groups.last().copied().unwrap_or(0)
            } else {
                index + 1
            };
            groups.push(group);
        }
        let mut sweep = Self {
            uneven: space
                .prices
                .least_judged(space.house.rates.judgement.uneven_offset),
            stack,
            pairs,
            groups,
            open: BinaryHeap::new(),
            left: HashMap::new(),
            most: 1,
            floor: None,
        };
        sweep.begin(courses, effort);
        sweep
    }

    fn begin(&mut self, courses: &mut Courses<'_, '_>, effort: &mut u64) {
        self.open.clear();
        self.left.clear();
        self.floor = None;
        let none = Laid {
            stops: vec![0],
            kinds: Vec::new(),
            most: None,
        };
        let state = State {
            bound: self.stack.bound,
            laid: self.stack.levels,
            last: None,
            courses: Rc::new(vec![none; self.stack.courses.len()]),
        };
        if let Some(bound) = self.bound_of(&state, courses, effort) {
            self.open.push(Reverse(State { bound, ..state }));
        }
    }

    /// What the lightest layout that is left weighs, or less.
    pub fn bound(&self) -> Option<Weight> {
        let head = self.open.peek().map(|state| state.0.bound);
        [head, self.floor].into_iter().flatten().min()
    }

    /// What is laid and the least that is left.
    fn bound_of(&self, state: &State, courses: &mut Courses<'_, '_>, effort: &mut u64) -> Option<Weight> {
        let mut sum = state.laid;
        for (slot, laid) in self.stack.courses.iter().zip(state.courses.iter()) {
            let course = courses.at(*slot)?;
            let last = *laid.stops.last()?;
            sum += course
                .ways(laid.most, effort)
                .onward
                .get(last)
                .copied()
                .flatten()?;
        }
        Some(sum)
    }

    /// Goes on by one step from the lightest; gives back a whole layout and what it weighs, or less.
    pub fn step(
        &mut self,
        space: &Space<'_>,
        courses: &mut Courses<'_, '_>,
        effort: &mut u64,
    ) -> Option<(Weight, LayoutSpec)> {
        *effort += 1;
        let head = self.open.peek().map(|state| state.0.bound);
        if self
            .floor
            .is_some_and(|floor| head.is_none_or(|head| floor < head))
        {
            self.most = self.most.saturating_mul(MORE);
            self.begin(courses, effort);
            return None;
        }
        let mut state = self.open.pop()?.0;
        if let Some(last) = state.last {
            state.laid += self.exactly(&state, last, courses, effort)?;
            state.last = None;
            let bound = self.bound_of(&state, courses, effort)?;
            self.open.push(Reverse(State { bound, ..state }));
            return None;
        }
        let Some((next, key)) = self.furthest_behind(&state, courses) else {
            return Some((state.bound, self.spec(&state, courses)?));
        };
        let times = self.left.entry(key).or_insert(0);
        if *times >= self.most {
            self.floor = Some(self.floor.map_or(state.bound, |floor| floor.min(state.bound)));
            return None;
        }
        *times += 1;
        self.go_on(space, &state, next, courses, effort);
        None
    }

    fn exactly(
        &self,
        state: &State,
        course: usize,
        courses: &mut Courses<'_, '_>,
        effort: &mut u64,
    ) -> Option<Weight> {
        let laid = state.courses.get(course)?;
        let [.., from, to] = laid.stops[..] else {
            return None;
        };
        let kind = *laid.kinds.last()?;
        let found = courses.at(*self.stack.courses.get(course)?)?;
        Some(found.exactly(from, to, kind, effort)? + found.unlike(laid.most, kind))
    }

    /// The course that goes on next, and what matters of the state for all that may follow; nothing once all courses are
    /// laid.
    fn furthest_behind(&self, state: &State, courses: &mut Courses<'_, '_>) -> Option<(usize, Vec<usize>)> {
        let lasts: Vec<(usize, usize)> = self
            .stack
            .courses
            .iter()
            .zip(state.courses.iter())
            .map(|(slot, laid)| {
                let end = courses
                    .at(*slot)
                    .map_or(0, |course| course.stops.len().saturating_sub(1));
                (laid.stops.last().copied().unwrap_or(0), end)
            })
            .collect();
        let group = lasts
            .iter()
            .zip(&self.groups)
            .find(|((last, end), _)| last < end)
            .map(|(_, group)| *group)?;
        let mut place = |course: usize, stop: usize| {
            let slot = self.stack.courses.get(course).copied();
            slot.and_then(|slot| courses.at(slot))
                .map_or(Length::ZERO, |course| course.along(stop))
        };
        let members: Vec<usize> = (0..lasts.len())
            .filter(|course| self.groups.get(*course) == Some(&group))
            .collect();
        let next = members
            .iter()
            .copied()
            .filter(|course| lasts.get(*course).is_some_and(|(last, end)| last < end))
            .min_by_key(|course| {
                (
                    place(*course, lasts.get(*course).map_or(0, |last| last.0)),
                    *course,
                )
            })?;
        let front = place(next, lasts.get(next).map_or(0, |last| last.0));
        let mut key = vec![group];
        for course in members {
            let laid = state.courses.get(course)?;
            key.push(usize::MAX);
            key.push(laid.most.map_or(usize::MAX, |most| most));
            let behind = laid
                .stops
                .iter()
                .rposition(|stop| place(course, *stop) <= front)
                .unwrap_or(0);
            key.extend(laid.stops.iter().skip(behind));
        }
        Some((next, key))
    }

    /// All ways on by one strip of this course.
    fn go_on(
        &mut self,
        space: &Space<'_>,
        state: &State,
        next: usize,
        courses: &mut Courses<'_, '_>,
        effort: &mut u64,
    ) {
        let Some((slot, laid)) = self.stack.courses.get(next).copied().zip(state.courses.get(next)) else {
            return;
        };
        let Some(course) = courses.at(slot) else { return };
        let (from, end, kinds) = (
            laid.stops.last().copied().unwrap_or(0),
            course.stops.len() - 1,
            course.kinds(),
        );
        let choices: Vec<Option<usize>> = match laid.most {
            None if kinds > 1 => (0..kinds).map(Some).collect(),
            most => vec![most],
        };
        for to in course.reached(from).collect::<Vec<_>>() {
            let Some(course) = courses.at(slot) else { return };
            let mut ways = Vec::new();
            for most in &choices {
                let of_kind = |kind| {
                    Some((
                        course.at_least(from, to, kind, effort)? + course.unlike(*most, kind),
                        kind,
                    ))
                };
                let mut offers: Vec<(Weight, usize)> = (0..kinds).filter_map(of_kind).collect();
                offers.sort_unstable();
                // Another kind is worth a look only where it may be lighter than the lightest is.
                let first = offers.first().copied();
                let exact = first.filter(|_| kinds > 1).and_then(|(_, kind)| {
                    Some(course.exactly(from, to, kind, effort)? + course.unlike(*most, kind))
                });
                let may_be = |offer: &&(Weight, usize)| {
                    exact.is_none_or(|exact| offer.0 < exact) || Some(**offer) == first
                };
                ways.extend(
                    offers
                        .iter()
                        .filter(may_be)
                        .map(|(weight, kind)| (*weight, *kind, *most)),
                );
            }
            for (strip, kind, most) in ways {
                let Some(course) = courses.at(slot) else { return };
                let seam = if to == end {
                    Weight::default()
                } else {
                    course.seams.get(to).copied().unwrap_or_default()
                };
                let mut all = (*state.courses).clone();
                if let Some(laid) = all.get_mut(next) {
                    laid.stops.push(to);
                    laid.kinds.push(kind);
                    laid.most = most;
                }
                *effort += 3;
                let joined = self.joined(space, &all, next, courses);
                let laid = state.laid + seam + joined;
                let mut child = State {
                    bound: state.bound,
                    laid: laid + strip,
                    last: Some(next),
                    courses: Rc::new(all),
                };
                let Some(bound) = self.bound_of(&child, courses, effort) else {
                    continue;
                };
                child.bound = bound;
                child.laid = laid;
                self.open.push(Reverse(child));
            }
        }
    }

    /// What the last strip of a course adds for how its seams lie to those of the courses below and above.
    fn joined(&self, space: &Space<'_>, all: &[Laid], next: usize, courses: &mut Courses<'_, '_>) -> Weight {
        let mut weight = Weight::default();
        let mut places = |index: usize| -> Option<Places> {
            let (slot, laid) = (self.stack.courses.get(index)?, all.get(index)?);
            let course = courses.at(*slot)?;
            let end = course.stops.len() - 1;
            let seam = |stop: &usize| (course.along(*stop), *stop != 0 && *stop != end);
            let kind = laid.most.unwrap_or(0);
            let sheet = space.sheets.get(kind).and_then(|sheet| space.sheet(*sheet));
            let half = sheet.map_or(Length::ZERO, |sheet| {
                (up_and_across(sheet, Running::Flat).1 + space.practice.gap).half()
            });
            Some(Places {
                stops: laid.stops.iter().map(seam).collect(),
                half,
            })
        };
        let Some(own) = places(next) else { return weight };
        let [.., (before, _), (last, is_seam)] = own.stops[..] else {
            return weight;
        };
        let below = next.checked_sub(1).filter(|_| is_seam);
        if let Some((pair, below)) = below.and_then(|below| Some((self.pairs.get(below)?, places(below)?))) {
            weight.refused += self.near(space, pair, last, &below);
            let reached = below.stops.last().is_some_and(|(at, _)| last <= *at);
            if pair.offsets && reached && below.is_uneven(last, own.half, space.practice.gap) {
                weight.cost += self.uneven;
            }
        }
        if let Some((pair, above)) = self
            .pairs
            .get(next)
            .and_then(|pair| Some((pair, places(next + 1)?)))
        {
            if is_seam {
                weight.refused += self.near(space, pair, last, &above);
            }
            if pair.offsets {
                let passed = above
                    .stops
                    .iter()
                    .filter(|(at, seam)| *seam && before < *at && *at <= last);
                let uneven = passed.filter(|(at, _)| own.is_uneven(*at, above.half, space.practice.gap));
                let count = i64::try_from(uneven.count()).unwrap_or(0);
                weight.cost += self.uneven.times(count).unwrap_or_default();
            }
        }
        weight
    }

    /// How many seams of a neighbouring course lie too near to a seam over an edge that stays unblocked.
    fn near(&self, space: &Space<'_>, pair: &Pair, seam: Length, others: &Places) -> u32 {
        let Some(backed) = &pair.stagger else { return 0 };
        let least = space.practice.stagger_least;
        let from_left = self
            .stack
            .courses
            .first()
            .is_none_or(|slot| slot.start == crate::house::End::Left);
        let x = |along: Length| {
            if from_left {
                space.x.lo + along
            } else {
                space.x.hi - along
            }
        };
        let near = others.stops.iter().filter(|(other, is_seam)| {
            if !*is_seam || (*other - seam).abs() >= least {
                return false;
            }
            let around = Interval::new(x(*other), x(seam));
            let around = around
                .grown(least - Length::from_units(1))
                .and_then(|around| around.intersect(space.x));
            around.is_some_and(|around| !Interval::subtract(around, backed).is_empty())
        });
        u32::try_from(near.count()).unwrap_or(u32::MAX)
    }

    fn spec(&self, state: &State, courses: &mut Courses<'_, '_>) -> Option<LayoutSpec> {
        let mut bands: Vec<BandSpec> = Vec::new();
        for (slot, laid) in self.stack.courses.iter().zip(state.courses.iter()) {
            bands.push(courses.at(*slot)?.spec(&laid.stops, &laid.kinds)?);
        }
        Some(LayoutSpec::Bands {
            reach: self.stack.reach,
            bands,
        })
    }
}

/// Where a course's stops are, counted from the starting end, and whether each is a seam.
struct Places {
    stops: Vec<(Length, bool)>,
    /// Half the sheet that most of it is laid with.
    half: Length,
}

impl Places {
    /// A seam over or under this course lies other than half a sheet from its nearest seam.
    fn is_uneven(&self, at: Length, half: Length, gap: Length) -> bool {
        let seams = self.stops.iter().filter(|(_, seam)| *seam);
        let nearest = seams.map(|(seam, _)| (*seam - at).abs()).min();
        nearest.is_some_and(|nearest| (nearest - half).abs() > gap)
    }
}
