//! The seams of one course: the cheapest way from one end of the wall to the other.

use super::FORBIDDING;
use super::space::{Space, up_and_across};
use super::strip::{Offer, StripPrices};
use crate::amount::Amount;
use crate::frame::Axis;
use crate::geometry::Interval;
use crate::house::End;
use crate::layout::{BandSpec, Running};
use crate::length::Length;
use std::collections::HashMap;

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
    strips: Strips<'s, 'a>,
    /// The cheapest seams over seams of the course below, as they were found.
    known: HashMap<Vec<Length>, Option<BandSpec>>,
}

/// Strips of a course, priced when they are first looked at.
#[derive(Debug)]
struct Strips<'s, 'a> {
    prices: StripPrices<'s, 'a>,
    /// For each stop, the strips from it to the stops after it.
    priced: Vec<Vec<Looked>>,
}

/// Nothing before a strip is looked at.
type Looked = Option<Offer>;

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
            strips: Strips::new(space, slot, &stops),
            known: HashMap::new(),
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
        if let Some(known) = self.known.get(below) {
            return known.clone();
        }
        let found = self.search(below, effort);
        self.known.insert(below.to_vec(), found.clone());
        found
    }

    fn search(&mut self, below: &[Length], effort: &mut u64) -> Option<BandSpec> {
        let Self {
            space,
            slot,
            stops,
            strips,
            ..
        } = self;
        let apart = space.practice.stagger_least;
        let near = |x: &Length| below.iter().any(|other| (*other - *x).abs() < apart);
        let places = stops.iter().zip(&self.seams);
        let seams: Vec<Amount> = places
            .map(|(x, seam)| if near(x) { *seam + FORBIDDING } else { *seam })
            .collect();
        let mut best = strips.cheapest(None, slot, stops, &seams, effort)?;
        let mut unlike = Amount::ZERO;
        space.prices.unlike(&best.1.sheets, &mut unlike);
        if unlike > Amount::ZERO {
            best.0 += unlike;
            for kind in 0..space.sheets.len() {
                let alike = strips.cheapest(Some(kind), slot, stops, &seams, effort);
                if let Some(alike) = alike.filter(|alike| alike.0 < best.0) {
                    best = alike;
                }
            }
        }
        Some(best.1)
    }
}

impl<'s, 'a> Strips<'s, 'a> {
    fn new(space: &'s Space<'a>, slot: Slot, stops: &[Length]) -> Self {
        let prices = StripPrices::new(space, slot);
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

    /// The cheapest seams and their price, with sheets of one kind or of any: a shortest path over the stops.
    ///
    /// Among equal prices the longer strip comes first at the starting end, so that what is cut ends at the far end.
    fn cheapest(
        &mut self,
        kind: Option<usize>,
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
                if best.is_some_and(|best| best.price <= onward) {
                    continue;
                }
                let offer = *strip.get_or_insert_with(|| {
                    *effort += 1;
                    self.prices.of(Interval::new(stops[from], stops[to]), through)
                });
                let Some((price, sheet)) = self.prices.cheapest(offer, kind) else {
                    continue;
                };
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
