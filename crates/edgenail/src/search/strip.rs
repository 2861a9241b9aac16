//! What the strips of one course cost.

use super::FORBIDDING;
use super::alike::Alike;
use super::course::Slot;
use super::space::{Space, up_and_across};
use crate::amount::Amount;
use crate::geometry::{Interval, Rect};
use crate::layout::{Joint, Sides, laps, on_sawn_rim, section_of};
use crate::length::Length;

/// Where the prices of a strip stand.
#[derive(Clone, Copy, Debug)]
pub(super) struct Offer(usize);

/// Prices strips of one course, each from every kind of sheet.
///
/// Between two [breaks](crate::price::Prices::breaks) every strip that openings do not run through costs the same in
/// one section and with the same ends: one of them is priced for all.
#[derive(Debug)]
pub(super) struct StripPrices<'s, 'a> {
    space: &'s Space<'a>,
    slot: Slot,
    /// What the course meets at the bottom and at the top.
    level: (Joint, Joint),
    /// The course's height less its gaps.
    y: Interval,
    /// The wall's upper limit comes down into the course.
    under_slope: bool,
    /// The widest that may be.
    pub widest: Length,
    /// Openings and bare zones in the course.
    holes: Vec<Rect>,
    /// For each strip that was priced, what it costs from each sheet; nothing where that does not cover it.
    offers: Vec<Option<Amount>>,
    /// The parts of the strip that is being priced.
    parts: Vec<Rect>,
    /// Prices by width, for each section and ends, past the frame or not.
    alike: Alike<Offer>,
}

impl<'s, 'a> StripPrices<'s, 'a> {
    pub fn new(space: &'s Space<'a>, slot: Slot) -> Self {
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
        let breaks = breaks(space, &slot, y.len());
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
            offers: Vec::new(),
            parts: Vec::new(),
            alike: Alike::new(breaks, 8 * space.frame.sections.len()),
        }
    }

    /// How far strips from a stop may reach before they have sheathing over the whole height of the course: openings
    /// run through shorter ones.
    pub fn through(&self, stop: Length) -> Interval {
        let half = self.space.gap.half();
        let to_right = self.holes.iter().filter(|hole| hole.x0 <= stop + half);
        let to_left = self.holes.iter().filter(|hole| stop - half <= hole.x1);
        Interval {
            lo: to_left.map(|hole| hole.x0 - half).fold(stop, Length::min),
            hi: to_right.map(|hole| hole.x1 + half).fold(stop, Length::max),
        }
    }

    /// Prices a strip; `through` is how far openings run [through](Self::through) strips from one of its ends.
    pub fn of(&mut self, strip: Interval, through: Interval) -> Offer {
        let (x, ends) = self.net(strip);
        let Some(group) = self.group(x, ends, strip, through) else {
            return self.priced(x, ends);
        };
        // Taken out, since pricing needs the rest.
        let mut alike = std::mem::replace(&mut self.alike, Alike::new(Vec::new(), 0));
        let price = alike.of(group, x.len(), || self.priced(x, ends));
        self.alike = alike;
        price
    }

    /// What a strip costs from the sheet of this kind, else from the cheapest, and the sheet.
    pub fn cheapest(&self, offer: Offer, kind: Option<usize>) -> Option<(Amount, u32)> {
        let sheets = &self.space.sheets;
        let offers = self.offers.get(offer.0..).unwrap_or_default();
        if let Some(kind) = kind {
            return Some(((*offers.get(kind)?)?, *sheets.get(kind)?));
        }
        let each = offers.iter().zip(sheets);
        each.filter_map(|(price, sheet)| Some(((*price)?, *sheet)))
            .min_by_key(|(price, _)| *price)
    }

    /// A strip less its gaps, and whether it is at the left and at the right end of the wall.
    fn net(&self, strip: Interval) -> (Interval, (bool, bool)) {
        let half = self.space.gap.half();
        let give = |at_end: bool| if at_end { Length::ZERO } else { half };
        let ends = (strip.lo == self.space.x.lo, strip.hi == self.space.x.hi);
        (
            Interval::new(strip.lo + give(ends.0), strip.hi - give(ends.1)),
            ends,
        )
    }

    /// The group of strips that cost the same as this one if they are as wide; nothing where each has its own price.
    fn group(
        &self,
        x: Interval,
        (at_left, at_right): (bool, bool),
        strip: Interval,
        through: Interval,
    ) -> Option<usize> {
        let frame = self.space.frame;
        let over = || frame.upper.y_over(x).is_some_and(|span| span.hi < self.y.hi);
        let own = (self.under_slope && over())
            || (through.covers(strip) && self.holes.iter().any(|hole| self.runs_through(hole, x)));
        if own {
            return None;
        }
        let section = section_of(frame, (x.lo + x.hi).half())?;
        let laps = laps(frame, &Rect::from_spans(x, self.y));
        let flags = [at_left, at_right, laps];
        Some(
            flags
                .iter()
                .fold(section, |group, flag| group * 2 + usize::from(*flag)),
        )
    }

    /// An opening runs across the whole width of a strip.
    fn runs_through(&self, hole: &Rect, x: Interval) -> bool {
        hole.x0 <= x.lo && x.hi <= hole.x1 && hole.y_span().overlaps(self.y)
    }

    /// Prices a strip of this width less its gaps.
    fn priced(&mut self, x: Interval, (at_left, at_right): (bool, bool)) -> Offer {
        let end = |at_end: bool| if at_end { Joint::End } else { Joint::Seam };
        let sides = Sides {
            left: end(at_left),
            right: end(at_right),
            bottom: self.level.0,
            top: self.level.1,
        };
        self.divide(x);
        let offer = Offer(self.offers.len());
        self.offer(x.len(), sides);
        offer
    }

    /// Adds what the parts of a strip cost from each sheet.
    fn offer(&mut self, width: Length, sides: Sides) {
        let (practice, parts) = (self.space.practice, &self.parts);
        let narrow = width < narrow_under(self.space, sides.left, sides.right);
        let low = |part: &Rect| part.height() <= practice.strip_least * 2;
        let penalty = if narrow && !parts.iter().all(low) {
            FORBIDDING
        } else {
            Amount::default()
        };
        let prices = &self.space.prices;
        let set: Amount = parts.iter().map(|part| prices.set_rectangle(part, sides)).sum();
        let from = |index: &u32| {
            let sheet = self.space.sheet(*index)?;
            let (up, across) = up_and_across(sheet, self.slot.running);
            let fits = |part: &Rect| {
                part.width() <= across + short(self.space, sides.left, sides.right)
                    && part.height() <= up + short(self.space, sides.bottom, sides.top)
            };
            let cut = |part: &Rect| prices.cut_rectangle(part, sheet, self.slot.running);
            let all_fit = parts.iter().all(fits);
            all_fit.then(|| penalty + set + parts.iter().map(cut).sum())
        };
        self.offers.extend(self.space.sheets.iter().map(from));
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
        let through = self.holes.iter().filter(|hole| self.runs_through(hole, x));
        let through: Vec<Interval> = through.map(Rect::y_span).collect();
        if through.is_empty() {
            self.parts.push(Rect::from_spans(x, left));
            return;
        }
        let through = Interval::union(through);
        let spans = Interval::subtract(left, &through);
        self.parts
            .extend(spans.into_iter().map(|span| Rect::from_spans(x, span)));
    }
}

/// How much a sheet may be short of a piece between these joints.
fn short(space: &Space<'_>, near: Joint, far: Joint) -> Length {
    if near == Joint::End || far == Joint::End {
        space.practice.end_short
    } else {
        Length::ZERO
    }
}

/// Strips between these joints are too narrow below this width less their gaps.
fn narrow_under(space: &Space<'_>, left: Joint, right: Joint) -> Length {
    let half = space.gap.half();
    let gaps = [left, right].map(|joint| if joint == Joint::End { Length::ZERO } else { half });
    space.practice.strip_least - space.practice.strip_allowance - gaps[0] - gaps[1]
}

/// Widths at which the price of a strip of a course changes that openings do not run through.
fn breaks(space: &Space<'_>, slot: &Slot, height: Length) -> Vec<Length> {
    let sheets = space.sheets.iter().filter_map(|index| space.sheet(*index));
    let across: Vec<Length> = sheets.map(|sheet| up_and_across(sheet, slot.running).1).collect();
    let mut breaks = space.prices.breaks(height, &across);
    let Some(shortest) = breaks.first().copied() else {
        return breaks;
    };
    for (left, right) in [
        (Joint::Seam, Joint::Seam),
        (Joint::End, Joint::Seam),
        (Joint::End, Joint::End),
    ] {
        breaks.push(narrow_under(space, left, right));
        let too_wide = |across: &Length| *across + short(space, left, right) + Length::from_units(1);
        breaks.extend(across.iter().map(too_wide));
    }
    breaks.retain(|width| *width >= shortest);
    breaks.sort_unstable();
    breaks.dedup();
    breaks
}

#[cfg(test)]
mod tests;
