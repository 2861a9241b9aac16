//! The seams of one course: the cheapest way from one end of the wall to the other.

use super::FORBIDDING;
use super::space::{Space, up_and_across};
use crate::amount::Amount;
use crate::frame::Axis;
use crate::geometry::{Interval, Rect};
use crate::house::End;
use crate::layout::{BandSpec, Joint, Running, Sides, on_sawn_rim};
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
}

/// Everything that a course may be made of: places for its seams, and strips between them.
#[derive(Debug)]
pub(super) struct Course<'s, 'a> {
    space: &'s Space<'a>,
    slot: Slot,
    /// From the starting end to the other, both included.
    stops: Vec<Length>,
    seams: Vec<Amount>,
    /// Strips from whichever sheet is cheapest.
    of_any: Strips<'s, 'a>,
    /// Strips from sheets of one kind only, in the order of the kinds.
    of_one: Vec<Strips<'s, 'a>>,
}

/// Strips of a course from some kinds of sheet, priced when they are first looked at.
#[derive(Debug)]
struct Strips<'s, 'a> {
    prices: StripPrices<'s, 'a>,
    /// For each stop, the strips from it to the stops after it.
    priced: Vec<Vec<Looked>>,
}

/// Nothing before a strip is looked at; then its price and its sheet where some sheet can cover it.
type Looked = Option<Option<(Amount, u32)>>;

/// The way on from a stop to the far end.
#[derive(Clone, Copy, Debug)]
struct Way {
    price: Amount,
    to: usize,
    sheet: u32,
}

impl<'s, 'a> Course<'s, 'a> {
    /// Finds what a course may be made of.
    pub fn new(space: &'s Space<'a>, slot: Slot) -> Self {
        let mut stops = positions(space, &slot);
        if slot.start == End::Right {
            stops.reverse();
        }
        Self {
            seams: stops.iter().map(|x| seam_price(space, &slot, *x)).collect(),
            of_any: Strips::new(space, slot, space.sheets.clone(), &stops),
            of_one: Vec::new(),
            space,
            slot,
            stops,
        }
    }

    /// The cheapest seams. Those nearer than practice allows to one of the course below, where the edge between them
    /// stays unblocked, are taken only if there is no other way. `None` where no row of sheets fits. `effort` counts
    /// the strips that are priced.
    ///
    /// Where the cheapest strips come from unlike sheets, the cheapest from sheets of one kind are weighed against
    /// them.
    pub fn cheapest(&mut self, below: &[Length], effort: &mut u64) -> Option<BandSpec> {
        let Self {
            space,
            slot,
            stops,
            of_any,
            of_one,
            ..
        } = self;
        let apart = space.practice.stagger_least;
        let near = |x: &Length| below.iter().any(|other| (*other - *x).abs() < apart);
        let places = stops.iter().zip(&self.seams);
        let seams: Vec<Amount> = places
            .map(|(x, seam)| if near(x) { *seam + FORBIDDING } else { *seam })
            .collect();
        let mut best = of_any.cheapest(slot, stops, &seams, effort)?;
        let mut unlike = Amount::ZERO;
        space.prices.unlike(&best.1.sheets, &mut unlike);
        if unlike > Amount::ZERO {
            best.0 += unlike;
            if of_one.is_empty() {
                let each = space.sheets.iter();
                *of_one = each
                    .map(|sheet| Strips::new(space, *slot, vec![*sheet], stops))
                    .collect();
            }
            for strips in of_one {
                let alike = strips.cheapest(slot, stops, &seams, effort);
                if let Some(alike) = alike.filter(|alike| alike.0 < best.0) {
                    best = alike;
                }
            }
        }
        Some(best.1)
    }
}

impl<'s, 'a> Strips<'s, 'a> {
    fn new(space: &'s Space<'a>, slot: Slot, sheets: Vec<u32>, stops: &[Length]) -> Self {
        let prices = StripPrices::new(space, slot, sheets);
        let reach = |(from, start): (usize, &Length)| {
            let after = stops.iter().skip(from + 1);
            let near = after.take_while(|end| Interval::new(*start, **end).len() <= prices.widest);
            vec![None; near.count()]
        };
        Self {
            priced: stops.iter().enumerate().map(reach).collect(),
            prices,
        }
    }

    /// The cheapest seams and their price: a shortest path over the stops.
    ///
    /// Among equal prices the longer strip comes first at the starting end, so that what is cut ends at the far end.
    fn cheapest(
        &mut self,
        slot: &Slot,
        stops: &[Length],
        seams: &[Amount],
        effort: &mut u64,
    ) -> Option<(Amount, BandSpec)> {
        let last = stops.len().checked_sub(1)?;
        let mut ways: Vec<Option<Way>> = vec![None; stops.len()];
        // What the way on from each stop costs together with the seam there.
        let mut onward = vec![None; stops.len()];
        onward[last] = Some(Amount::ZERO);
        for from in (0..last).rev() {
            let mut best: Option<Way> = None;
            let through = self.prices.through(stops[from]);
            // The longest first: the way on from near stops costs so much that most need no price.
            for (step, strip) in self.priced[from].iter_mut().enumerate().rev() {
                let to = from + 1 + step;
                let Some(onward) = onward[to] else { continue };
                let span = Interval::new(stops[from], stops[to]);
                if best.is_some_and(|best| best.price <= onward + self.prices.least(span, through)) {
                    continue;
                }
                let priced = strip.get_or_insert_with(|| {
                    *effort += 1;
                    self.prices.of(span)
                });
                let Some((price, sheet)) = *priced else { continue };
                let price = price + onward;
                if best.is_none_or(|best| price < best.price) {
                    best = Some(Way { price, to, sheet });
                }
            }
            ways[from] = best;
            onward[from] = best.map(|best| best.price + seams[from]);
        }
        let price = ways.first().copied().flatten()?.price;
        Some((price, along(&ways, slot, stops)?))
    }
}

/// The course along the ways from the starting end.
fn along(ways: &[Option<Way>], slot: &Slot, stops: &[Length]) -> Option<BandSpec> {
    let last = stops.len().checked_sub(1)?;
    let (mut at, mut seams, mut sheets) = (0, Vec::new(), Vec::new());
    while at != last {
        let way = ways.get(at).copied().flatten()?;
        sheets.push(way.sheet);
        if way.to != last {
            seams.push(*stops.get(way.to)?);
        }
        at = way.to;
    }
    if slot.start == End::Right {
        seams.reverse();
        sheets.reverse();
    }
    Some(BandSpec {
        y0: slot.y.lo,
        y1: slot.y.hi,
        running: slot.running,
        seams,
        sheets,
    })
}

/// Seam positions from left to right, the ends of the wall included: the middle of upright faces, joints of faces
/// that touch, and whole sheets counted from either end.
fn positions(space: &Space<'_>, slot: &Slot) -> Vec<Length> {
    let mut stops = vec![space.x.lo, space.x.hi];
    let uprights = space
        .faces
        .iter()
        .filter(|(face, axis)| *axis == Axis::Vertical && face.y_span().overlaps(slot.y));
    stops.extend(
        uprights
            .filter(|(face, _)| face.width() >= space.seam_half())
            .map(|(face, _)| (face.x0 + face.x1).half()),
    );
    for across in space
        .sheets
        .iter()
        .filter_map(|index| Some(up_and_across(space.sheet(*index)?, slot.running).1))
    {
        let module = across + space.gap;
        let first = across + space.gap.half();
        // A sized sheet leaves half a gap at the end of the wall, so that its seam keeps to the module.
        for start in [first, module] {
            let mut at = start;
            while at < space.x.len() {
                stops.extend([space.x.lo + at, space.x.hi - at]);
                at += module;
            }
        }
    }
    stops.retain(|x| space.x.contains(*x));
    stops.sort_unstable();
    stops.dedup();
    stops
}

/// What a seam at this place costs: judgement, the studs that have to be added. Near a joint of the topmost plate it
/// takes the least amount more, which decides between seams that cost the same.
fn seam_price(space: &Space<'_>, slot: &Slot, x: Length) -> Amount {
    let mut price = Amount::ZERO;
    space.prices.seam(x, slot.y, &mut price);
    if space.bare_length(x, slot.y) > space.practice.free_edge_most {
        price += space.prices.added_stud(slot.y.len());
    }
    let clear = space.practice.limits.plate_joint_clear;
    if space.frame.near_plate_joint(x, slot.y, clear) {
        price += Amount::from_ten_thousandths(1);
    }
    price
}

/// What the strips of one course cost.
#[derive(Debug)]
struct StripPrices<'s, 'a> {
    space: &'s Space<'a>,
    slot: Slot,
    /// What the course meets at the bottom and at the top.
    level: (Joint, Joint),
    /// The course's height less its gaps.
    y: Interval,
    /// The wall's upper limit comes down into the course.
    under_slope: bool,
    /// The widest that may be.
    widest: Length,
    /// Openings and bare zones in the course.
    holes: Vec<Rect>,
    /// No strip with sheathing over the whole height of the course costs less than this and, for each unit of its
    /// length, so many 1/65536.
    floor: (Amount, i64),
    /// Sheets that it may be cut from.
    sheets: Vec<u32>,
    /// The parts of the strip that is being priced.
    parts: Vec<Rect>,
}

impl<'s, 'a> StripPrices<'s, 'a> {
    fn new(space: &'s Space<'a>, slot: Slot, sheets: Vec<u32>) -> Self {
        let level = |y: Length, at_end: bool| match (at_end, on_sawn_rim(space.practice, space.frame, y)) {
            (true, _) => Joint::End,
            (false, true) => Joint::RimSeam,
            (false, false) => Joint::Seam,
        };
        let give = |y: Length, at_end: bool| if at_end { Length::ZERO } else { space.half_gap(y) };
        let y = Interval::new(
            slot.y.lo + give(slot.y.lo, slot.lowest),
            slot.y.hi - give(slot.y.hi, slot.uppermost),
        );
        let under_slope = space.frame.upper.points().iter().any(|point| point.y < y.hi);
        let least = sheets.iter().filter_map(|index| {
            let sheet = space.sheet(*index)?;
            Some(space.prices.least_material(y.len(), sheet, slot.running))
        });
        Self {
            space,
            slot,
            level: (level(slot.y.lo, slot.lowest), level(slot.y.hi, slot.uppermost)),
            y,
            under_slope,
            widest: space.widest(slot.running),
            holes: space
                .holes
                .iter()
                .filter(|hole| hole.y_span().overlaps(y))
                .copied()
                .collect(),
            floor: (space.prices.least_setting(), least.min().unwrap_or(0)),
            sheets,
            parts: Vec::new(),
        }
    }

    /// How far strips from a stop may reach before they have sheathing over the whole height of the course: openings
    /// run through shorter ones.
    fn through(&self, stop: Length) -> Interval {
        let half = self.space.gap.half();
        let to_right = self.holes.iter().filter(|hole| hole.x0 <= stop + half);
        let to_left = self.holes.iter().filter(|hole| stop - half <= hole.x1);
        Interval {
            lo: to_left.map(|hole| hole.x0 - half).fold(stop, Length::min),
            hi: to_right.map(|hole| hole.x1 + half).fold(stop, Length::max),
        }
    }

    /// Less than what a strip costs, or as much; `through` is how far openings run [through](Self::through) strips from
    /// one of its ends.
    fn least(&self, strip: Interval, through: Interval) -> Amount {
        if self.under_slope || through.covers(strip) {
            return Amount::ZERO;
        }
        // A sheet at the end of the wall may be a little short of its strip.
        let length = strip.len() - self.space.gap - self.space.practice.end_short;
        let material = (length.max(Length::ZERO).units() * self.floor.1) >> 16;
        self.floor.0 + Amount::from_ten_thousandths(material)
    }

    /// The cheapest sheet for a strip, with its price.
    fn of(&mut self, strip: Interval) -> Option<(Amount, u32)> {
        let (at_left, at_right) = (strip.lo == self.space.x.lo, strip.hi == self.space.x.hi);
        let end = |at_end: bool| if at_end { Joint::End } else { Joint::Seam };
        let sides = Sides {
            left: end(at_left),
            right: end(at_right),
            bottom: self.level.0,
            top: self.level.1,
        };
        let half = self.space.gap.half();
        let give = |at_end: bool| if at_end { Length::ZERO } else { half };
        let x = Interval::new(strip.lo + give(at_left), strip.hi - give(at_right));
        self.divide(x);
        self.cheapest(strip, sides)
    }

    /// The cheapest sheet for the parts of a strip.
    fn cheapest(&self, strip: Interval, sides: Sides) -> Option<(Amount, u32)> {
        let (practice, parts) = (self.space.practice, &self.parts);
        let narrow = strip.len() + practice.strip_allowance < practice.strip_least;
        let low = |part: &Rect| part.height() <= practice.strip_least * 2;
        let penalty = if narrow && !parts.iter().all(low) {
            FORBIDDING
        } else {
            Amount::default()
        };
        let mut best: Option<(Amount, u32)> = None;
        for index in &self.sheets {
            let Some(sheet) = self.space.sheet(*index) else {
                continue;
            };
            let (up, across) = up_and_across(sheet, self.slot.running);
            let short = |near: Joint, far: Joint| {
                if near == Joint::End || far == Joint::End {
                    practice.end_short
                } else {
                    Length::ZERO
                }
            };
            let fits = |part: &Rect| {
                part.width() <= across + short(sides.left, sides.right)
                    && part.height() <= up + short(sides.bottom, sides.top)
            };
            if !parts.iter().all(fits) {
                continue;
            }
            let of = |part: &Rect| self.space.prices.rectangle(part, sides, sheet, self.slot.running);
            let price = penalty + parts.iter().filter(|part| !part.is_empty()).map(of).sum();
            if best.is_none_or(|(least, _)| price < least) {
                best = Some((price, *index));
            }
        }
        best
    }

    /// Writes over the parts what is left of a strip where openings run across its whole width, under a rake up to
    /// its highest point.
    fn divide(&mut self, x: Interval) {
        let (space, y) = (self.space, self.y);
        self.parts.clear();
        let high = if self.under_slope {
            let over = space.frame.upper.y_over(x);
            over.map_or(y.hi, |span| span.hi.min(y.hi))
        } else {
            y.hi
        };
        if y.lo >= high {
            return;
        }
        let left = Interval::new(y.lo, high);
        let runs_through = |hole: &&Rect| hole.x0 <= x.lo && x.hi <= hole.x1 && hole.y_span().overlaps(y);
        if !self.holes.iter().any(|hole| runs_through(&hole)) {
            self.parts.push(Rect::from_spans(x, left));
            return;
        }
        let through = self.holes.iter().filter(runs_through).map(Rect::y_span);
        let through = Interval::union(through.collect());
        let spans = Interval::subtract(left, &through);
        self.parts
            .extend(spans.into_iter().map(|span| Rect::from_spans(x, span)));
    }
}
