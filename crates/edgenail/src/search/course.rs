//! One course: places for its seams, strips between them, and the lightest way from one end of the wall to the other.

use super::positions::positions;
use super::rows::Rows;
use super::seam::seam_weight;
use super::space::Space;
use super::strip::{Offer, StripPrices};
use super::weight::Weight;
use crate::amount::Amount;
use crate::geometry::Interval;
use crate::house::End;
use crate::layout::{BandSpec, Running};
use crate::length::Length;

/// What a course has to fit, whatever lies below it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(super) struct Slot {
    pub y: Interval,
    pub running: Running,
    /// The course is the lowest; it has no seam below.
    pub lowest: bool,
    /// The course is the uppermost; it has no seam above.
    pub uppermost: bool,
    /// Where its first sheet goes.
    pub start: End,
    /// How far the sheathing reaches below the lowest plate, where that matters to the course.
    pub reach: Length,
}

/// What taking a strip through the stages counts for, in arcs priced.
const TAKEN: u64 = 40;

/// Everything that a course may be made of.
#[derive(Debug)]
pub(super) struct Course<'s, 'a> {
    space: &'s Space<'a>,
    pub slot: Slot,
    /// From the starting end to the other, both included.
    pub stops: Vec<Length>,
    /// What a seam at each stop weighs.
    pub seams: Vec<Weight>,
    prices: StripPrices<'s, 'a>,
    /// Nails and blocks, once they are asked for.
    rows: Option<Rows>,
    /// For each stop, the strips from it to the stops after it.
    strips: Vec<Vec<Option<Strip>>>,
    /// What single strips weigh, sheet by sheet, once they were taken through the stages.
    exact: Vec<Taken>,
    /// What another sheet costs than the one that most of the course is laid with.
    unlike: Amount,
    /// The lightest ways, by the sheet that most of the course is laid with.
    ways: Vec<Option<Ways>>,
    best: Option<Way>,
    /// It was searched for.
    searched: bool,
    /// Strips are compared without nails, of which every way takes about as many.
    guesses: bool,
}

/// What is known of a strip from one kind of sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Taken {
    /// It was not taken through the stages yet.
    Open,
    /// The sheet does not cover it.
    TooSmall,
    /// What it weighs.
    Weighs(Weight),
}

impl Taken {
    /// The weight, once it was taken through the stages; in it nothing where the sheet does not cover it.
    #[expect(clippy::option_option, reason = "not known is not the same as nothing")]
    const fn weight(self) -> Option<Option<Weight>> {
        match self {
            Self::Open => None,
            Self::TooSmall => Some(None),
            Self::Weighs(weight) => Some(Some(weight)),
        }
    }
}

/// A strip that was looked at.
#[derive(Clone, Copy, Debug)]
struct Strip {
    offer: Offer,
    /// Of its nails and blocks; nothing where they were not looked at.
    nails: Option<Amount>,
    /// Where its exact weights begin.
    exact: Option<usize>,
}

/// A way along a course.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Way {
    /// What it weighs, its seams too.
    pub weight: Weight,
    /// The stops that it touches, both ends included.
    pub stops: Vec<usize>,
    /// The sheet of each strip, as a place among those that may be used.
    pub kinds: Vec<usize>,
}

/// The lightest ways to the far end.
#[derive(Clone, Debug)]
pub(super) struct Ways {
    /// From each stop, without the seam there.
    pub onward: Vec<Option<Weight>>,
    next: Vec<Option<(usize, usize)>>,
}

impl<'s, 'a> Course<'s, 'a> {
    /// Finds what a course may be made of.
    pub fn new(space: &'s Space<'a>, slot: Slot) -> Self {
        let mut stops = positions(space, &slot);
        if slot.start == End::Right {
            stops.reverse();
        }
        let prices = StripPrices::new(space, slot);
        let reach = |(from, start): (usize, &Length)| {
            let after = stops.iter().skip(from + 1);
            let near = after.take_while(|end| Interval::new(*start, **end).len() <= prices.widest);
            vec![None; near.count()]
        };
        Self {
            seams: stops.iter().map(|x| seam_weight(space, &slot, *x)).collect(),
            strips: stops.iter().enumerate().map(reach).collect(),
            exact: Vec::new(),
            unlike: space.unlike,
            ways: vec![None; space.sheets.len() + 1],
            best: None,
            searched: false,
            guesses: false,
            space,
            slot,
            stops,
            prices,
            rows: None,
        }
    }

    /// How many kinds of sheets there are.
    pub fn kinds(&self) -> usize {
        self.space.sheets.len()
    }

    /// How far a stop is from the starting end.
    pub fn along(&self, stop: usize) -> Length {
        let (first, at) = (self.stops.first(), self.stops.get(stop));
        first
            .zip(at)
            .map_or(Length::ZERO, |(first, at)| (*at - *first).abs())
    }

    /// The stops that a strip from this one may reach, the farthest first.
    pub fn reached(&self, from: usize) -> impl Iterator<Item = usize> + use<> {
        let count = self.strips.get(from).map_or(0, Vec::len);
        (from + 1..=from + count).rev()
    }

    fn strip(&mut self, from: usize, to: usize, effort: &mut u64) -> Option<Strip> {
        let (start, end) = (*self.stops.get(from)?, *self.stops.get(to)?);
        if (end - start).abs() < self.space.practice.filler_least {
            return None;
        }
        let place = self.strips.get_mut(from)?.get_mut(to.checked_sub(from + 1)?)?;
        if let Some(strip) =
            place.filter(|strip| strip.nails.is_some() || self.guesses || self.prices.own_gaps)
        {
            return Some(strip);
        }
        *effort += 1;
        let strip = Interval::new(start, end);
        let ends = match self.slot.start {
            End::Left => (from, to),
            End::Right => (to, from),
        };
        let nails = if self.guesses || self.prices.own_gaps {
            None
        } else {
            let rows = self
                .rows
                .get_or_insert_with(|| Rows::new(self.space, &self.prices.exact, &self.stops));
            Some(rows.of(strip, ends))
        };
        let through = self.prices.through(start);
        let offer = self.prices.of(strip, through);
        let found = Strip {
            offer,
            nails,
            exact: None,
        };
        *place = Some(found);
        Some(found)
    }

    /// What a strip weighs from a sheet of this kind, or less.
    pub fn at_least(&mut self, from: usize, to: usize, kind: usize, effort: &mut u64) -> Option<Weight> {
        let strip = self.strip(from, to, effort)?;
        self.of_strip(strip, kind)
    }

    /// What a strip that was looked at weighs from a sheet of this kind, or less.
    fn of_strip(&self, strip: Strip, kind: usize) -> Option<Weight> {
        let exact = strip.exact.and_then(|at| self.exact.get(at + kind));
        if let Some(known) = exact.and_then(|taken| taken.weight()) {
            return known;
        }
        let weight = self.prices.of_kind(strip.offer, kind)?;
        Some(weight + Weight::of(strip.nails.unwrap_or_default()))
    }

    /// What a strip weighs from a sheet of this kind, taken through the stages; nothing where that does not cover it.
    pub fn exactly(&mut self, from: usize, to: usize, kind: usize, effort: &mut u64) -> Option<Weight> {
        let strip = self.strip(from, to, effort)?;
        let at = strip.exact.unwrap_or_else(|| {
            let at = self.exact.len();
            self.exact.resize(at + self.space.sheets.len(), Taken::Open);
            at
        });
        if let Some(strip) = self
            .strips
            .get_mut(from)
            .and_then(|strips| strips.get_mut(to - from - 1)?.as_mut())
        {
            strip.exact = Some(at);
        }
        if let Some(known) = self.exact.get(at + kind).and_then(|taken| taken.weight()) {
            return known;
        }
        *effort += TAKEN;
        let cheap = self.prices.of_kind(strip.offer, kind);
        let least = self.at_least(from, to, kind, effort);
        let weight = cheap.and_then(|cheap| {
            let (start, end) = (*self.stops.get(from)?, *self.stops.get(to)?);
            let sheet = *self.space.sheets.get(kind)?;
            let first = self.slot.lowest && from == 0;
            let mut weight = self.prices.exact.weigh(Interval::new(start, end), sheet, first)?;
            weight.avoided = cheap.avoided;
            Some(weight)
        });
        debug_assert!(
            weight.is_none_or(|weight| least.is_some_and(|least| least.cost <= weight.cost)),
            "{:?}: {least:?} is no lower bound of {weight:?} for {:?}..{:?}",
            self.slot,
            self.stops.get(from),
            self.stops.get(to)
        );
        if let Some(place) = self.exact.get_mut(at + kind) {
            *place = weight.map_or(Taken::TooSmall, Taken::Weighs);
        }
        weight
    }

    /// What a sheet of one kind costs more in a course that is mostly laid with another.
    pub fn unlike(&self, most: Option<usize>, kind: usize) -> Weight {
        match most {
            Some(most) if most != kind => Weight::of(self.unlike),
            _ => Weight::default(),
        }
    }

    /// The lightest ways on from every stop with what is known so far, in a course that is mostly laid with sheets of
    /// this kind; with none, as if unlike sheets cost nothing.
    ///
    /// Among equal weights the longer strip comes first at the starting end, so that what is cut ends at the far end.
    fn find(&mut self, seams: &[Weight], most: Option<usize>, effort: &mut u64) -> Ways {
        let count = self.stops.len();
        let mut ways = Ways {
            onward: vec![None; count],
            next: vec![None; count],
        };
        if let Some(last) = ways.onward.last_mut() {
            *last = Some(Weight::default());
        }
        self.look_on(&mut ways, count.saturating_sub(1), seams, most, effort);
        ways
    }

    /// Finds the ways on from every stop before this one; those from it on are known.
    fn look_on(
        &mut self,
        ways: &mut Ways,
        until: usize,
        seams: &[Weight],
        most: Option<usize>,
        effort: &mut u64,
    ) {
        let end = self.stops.len().saturating_sub(1);
        for from in (0..until).rev() {
            *effort += 1;
            let mut best: Option<(Weight, usize, usize)> = None;
            for to in self.reached(from) {
                let Some(on) = ways.onward.get(to).copied().flatten() else {
                    continue;
                };
                let seam = if to == end {
                    Weight::default()
                } else {
                    seams.get(to).copied().unwrap_or_default()
                };
                let on = on + seam;
                if best.is_some_and(|(best, ..)| best <= on) {
                    continue;
                }
                let Some(strip) = self.strip(from, to, effort) else {
                    continue;
                };
                for kind in 0..self.kinds() {
                    let Some(weight) = self.of_strip(strip, kind) else {
                        continue;
                    };
                    let weight = weight + on + self.unlike(most, kind);
                    if best.is_none_or(|(best, ..)| weight < best) {
                        best = Some((weight, to, kind));
                    }
                }
            }
            if let (Some(place), Some(step)) = (ways.onward.get_mut(from), ways.next.get_mut(from)) {
                *place = best.map(|(weight, ..)| weight);
                *step = best.map(|(_, to, kind)| (to, kind));
            }
        }
    }

    /// The lightest ways in a course that is mostly laid with sheets of this kind: the lightest of all is exact, others
    /// may weigh more than they seem to.
    pub fn ways(&mut self, most: Option<usize>, effort: &mut u64) -> &Ways {
        static NONE: Ways = Ways {
            onward: Vec::new(),
            next: Vec::new(),
        };
        let slot = most.map_or(self.kinds(), |kind| kind);
        if self.ways.get(slot).is_none_or(Option::is_none) {
            let seams = std::mem::take(&mut self.seams);
            let mut ways = self.find(&seams, most, effort);
            while let Some(way) = self.lightest(&ways) {
                let mut until = 0;
                for (ends, kind) in way.stops.windows(2).zip(&way.kinds) {
                    if let [from, to] = ends
                        && !self.is_exact(*from, *to, *kind)
                    {
                        self.exactly(*from, *to, *kind, effort);
                        until = from + 1;
                    }
                }
                if until == 0 {
                    break;
                }
                self.look_on(&mut ways, until, &seams, most, effort);
            }
            self.seams = seams;
            if let Some(place) = self.ways.get_mut(slot) {
                *place = Some(ways);
            }
        }
        self.ways.get(slot).and_then(Option::as_ref).unwrap_or(&NONE)
    }

    /// A strip from a sheet of this kind was taken through the stages.
    fn is_exact(&self, from: usize, to: usize, kind: usize) -> bool {
        let strips = self.strips.get(from);
        let strip = strips.and_then(|strips| strips.get(to - from - 1).copied().flatten());
        let at = strip.and_then(|strip| strip.exact);
        at.is_some_and(|at| {
            self.exact
                .get(at + kind)
                .is_some_and(|taken| *taken != Taken::Open)
        })
    }

    /// The lightest way.
    fn lightest(&self, ways: &Ways) -> Option<Way> {
        let last = self.stops.len().checked_sub(1)?;
        let mut way = Way {
            weight: ways.onward.first().copied().flatten()?,
            stops: vec![0],
            kinds: Vec::new(),
        };
        let mut at = 0;
        while at != last {
            let (to, kind) = ways.next.get(at).copied().flatten()?;
            way.stops.push(to);
            way.kinds.push(kind);
            at = to;
        }
        Some(way)
    }

    /// A light way before any strip is taken through the stages, whose seams keep so far from these where they can.
    pub fn beside(&mut self, others: &[Length], apart: Length, effort: &mut u64) -> Option<Way> {
        let near = |x: &Length| others.iter().any(|other| (*other - *x).abs() < apart);
        let (space, y) = (self.space, self.slot.y);
        let free = space.practice.free_edge_most;
        let places = self.stops.iter().zip(&self.seams);
        let seams: Vec<Weight> = places
            .map(|(x, seam)| Weight {
                refused: seam.refused + u32::from(near(x)),
                cost: if space.bare_length(*x, y) > free {
                    seam.cost + space.prices.added_stud(y.len())
                } else {
                    seam.cost
                },
                ..*seam
            })
            .collect();
        self.guesses = true;
        let found = self.light(&seams, effort);
        self.guesses = false;
        found
    }

    /// The lightest way with these weights of seams, as far as its strips are known.
    fn light(&mut self, seams: &[Weight], effort: &mut u64) -> Option<Way> {
        let ways = self.find(seams, None, effort);
        let mut best = self.lightest(&ways)?;
        let unlike = unlike_count(&best.kinds);
        if unlike > 0 {
            best.weight += Weight::of(self.unlike.times(unlike).unwrap_or_default());
            for kind in 0..self.kinds() {
                let ways = self.find(seams, Some(kind), effort);
                if let Some(other) = self.lightest(&ways).filter(|other| other.weight < best.weight) {
                    best = other;
                }
            }
        }
        Some(best)
    }

    /// What the lightest way weighs, or less, before any strip is taken through the stages. `None` where no row of sheets
    /// fits.
    pub fn roughly(&mut self, effort: &mut u64) -> Option<Weight> {
        let seams = std::mem::take(&mut self.seams);
        let ways = self.find(&seams, None, effort);
        self.seams = seams;
        ways.onward.first().copied().flatten()
    }

    /// The lightest way and its weight, exact but for wood that is to be added. `None` where no row of sheets fits.
    pub fn best(&mut self, effort: &mut u64) -> Option<&Way> {
        if !self.searched {
            self.searched = true;
            let ways = self.ways(None, effort).clone();
            let mut best = self.lightest(&ways);
            if let Some(way) = best
                .as_mut()
                .filter(|way| way.kinds.iter().any(|kind| Some(kind) != way.kinds.first()))
            {
                let unlike = unlike_count(&way.kinds);
                way.weight += Weight::of(self.unlike.times(unlike).unwrap_or_default());
                for kind in 0..self.kinds() {
                    let ways = self.ways(Some(kind), effort).clone();
                    if let Some(other) = self.lightest(&ways)
                        && best.as_ref().is_none_or(|best| other.weight < best.weight)
                    {
                        best = Some(other);
                    }
                }
            }
            self.best = best;
        }
        self.best.as_ref()
    }

    /// The course that goes this way.
    pub fn spec(&self, stops: &[usize], kinds: &[usize]) -> Option<BandSpec> {
        let inner = stops.get(1..stops.len().checked_sub(1)?)?;
        let mut seams: Vec<Length> = inner
            .iter()
            .filter_map(|stop| self.stops.get(*stop).copied())
            .collect();
        let mut sheets: Vec<u32> = kinds
            .iter()
            .filter_map(|kind| self.space.sheets.get(*kind).copied())
            .collect();
        if self.slot.start == End::Right {
            seams.reverse();
            sheets.reverse();
        }
        Some(BandSpec {
            y0: self.slot.y.lo,
            y1: self.slot.y.hi,
            running: self.slot.running,
            seams,
            sheets,
        })
    }
}

/// How many sheets of a course are not of the kind that most are of.
fn unlike_count(kinds: &[usize]) -> i64 {
    let count = |kind: &usize| kinds.iter().filter(|other| *other == kind).count();
    let most = kinds.iter().map(count).max().unwrap_or(0);
    i64::try_from(kinds.len() - most).unwrap_or(i64::MAX)
}
