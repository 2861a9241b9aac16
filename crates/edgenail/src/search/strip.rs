//! What the strips of one course cost.

use super::alike::Alike;
use super::course::Slot;
use super::exact::Exact;
use super::space::{Space, up_and_across};
use super::weight::Weight;
use crate::geometry::{Interval, Rect};
use crate::layout::{Joint, Sides, laps, on_sawn_rim, section_of};
use crate::length::Length;

/// Where the prices of a strip stand.
#[derive(Clone, Copy, Debug)]
pub(super) struct Offer(usize);

/// A piece of a strip: the rectangle around it.
#[derive(Clone, Copy, Debug)]
struct StripPart {
    rect: Rect,
    /// It is set as a small piece: surely, perhaps.
    small: (bool, bool),
}

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
    pub y: Interval,
    /// The wall's upper limit comes down into the course.
    pub under_slope: bool,
    /// Sheets keep gaps of their own, or the course follows a stepped base: no strip is like another.
    unlike: bool,
    /// Sheets keep gaps of their own.
    pub own_gaps: bool,
    /// Single strips, as they are cut.
    pub exact: Exact<'s, 'a>,
    /// The widest that may be.
    pub widest: Length,
    /// Openings and bare zones in the course.
    holes: Vec<Rect>,
    /// For each strip that was priced, what it weighs from each sheet without nails and backing, or less; nothing where
    /// that does not cover it.
    offers: Vec<Option<Weight>>,
    /// The parts of the strip that is being priced.
    parts: Vec<StripPart>,
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
        let own_gap = |sheet: &crate::house::Sheet| sheet.gap.unwrap_or(space.practice.gap) != space.gap;
        let mut sheets = space.sheets.iter().filter_map(|index| space.sheet(*index));
        let base = space.frame.lower.points();
        let stepped = base
            .iter()
            .any(|point| base.first().is_some_and(|first| point.y != first.y));
        let own_gaps = sheets.any(own_gap);
        Self {
            unlike: stepped || own_gaps,
            own_gaps,
            exact: Exact::new(space, slot),
            space,
            slot,
            level: (level(slot.y.lo, slot.lowest), level(slot.y.hi, slot.uppermost)),
            y,
            under_slope,
            widest: space.widest(slot.running),
            holes: space
                .holes
                .iter()
                .map(|hole| hole.grown(space.practice.opening_cut_back))
                .filter(|hole| hole.y_span().overlaps(y))
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
        if self.unlike {
            return self.measured(strip, x, ends);
        }
        let Some(group) = self.group(x, ends, strip, through) else {
            return self.priced(x, ends);
        };
        // Taken out, since pricing needs the rest.
        let mut alike = std::mem::replace(&mut self.alike, Alike::new(Vec::new(), 0));
        let price = alike.of(group, x.len(), || self.priced(x, ends));
        self.alike = alike;
        price
    }

    /// What a strip weighs from the sheet of this kind.
    pub fn of_kind(&self, offer: Offer, kind: usize) -> Option<Weight> {
        *self.offers.get(offer.0 + kind)?
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
        let over = || frame.upper.y_over(x).is_some_and(|span| span.lo < self.y.hi);
        let own = (self.under_slope && over())
            || (through.covers(strip) && self.holes.iter().any(|hole| self.runs_through(hole, x)))
            || self.is_parted(x);
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

    /// Openings may part the strip, or leave so little of it that it is set as a small piece.
    fn is_parted(&self, x: Interval) -> bool {
        let strip = Rect::from_spans(x, self.y);
        let mut high = Length::ZERO;
        let mut left = strip.area();
        for hole in &self.holes {
            if let Some(shared) = hole.intersect(&strip) {
                high += shared.height();
                left -= shared.area();
            }
        }
        let small = |area: i128| self.space.prices.is_small(2 * area);
        high >= self.y.len() || (high > Length::ZERO && small(left) && !small(strip.area()))
    }

    /// Prices a strip that is like no other, as it is cut.
    fn measured(&mut self, strip: Interval, x: Interval, (at_left, at_right): (bool, bool)) -> Offer {
        let end = |at_end: bool| if at_end { Joint::End } else { Joint::Seam };
        self.divide(x);
        let avoided = self.avoided(x.len(), end(at_left), end(at_right));
        let offer = Offer(self.offers.len());
        let from = |sheet: &u32| {
            let mut weight = self.exact.cut(strip, *sheet)?;
            weight.avoided += avoided;
            Some(weight)
        };
        self.offers.extend(self.space.sheets.iter().map(from));
        offer
    }

    /// 1 for a strip that practice takes only where there is no other way: it is narrower than the least strip.
    fn avoided(&self, width: Length, left: Joint, right: Joint) -> u32 {
        let narrow = width < narrow_under(self.space, left, right);
        let low = |part: &StripPart| part.rect.height() <= self.space.practice.strip_least * 2;
        u32::from(narrow && !self.parts.iter().all(low))
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
        let avoided = self.avoided(width, sides.left, sides.right);
        let parts = &self.parts;
        let prices = &self.space.prices;
        let from = |index: &u32| {
            let sheet = self.space.sheet(*index)?;
            let (up, across) = up_and_across(sheet, self.slot.running);
            let fits = |part: &StripPart| {
                part.rect.width() <= across + short(self.space, sides.left, sides.right)
                    && part.rect.height() <= up + short(self.space, sides.bottom, sides.top)
            };
            // A sheet that is a little short is taken as it is.
            let cut = |part: &StripPart| {
                let (width, height) = (part.rect.width().min(across), part.rect.height().min(up));
                let blank = Rect::from_size(part.rect.x0, part.rect.y0, width, height);
                let set = prices.set_rectangle(&blank, sides);
                let (whole, small) = prices.setting(&blank);
                let set = match part.small {
                    (true, _) => set - whole + small,
                    (false, true) => set - whole + whole.min(small),
                    (false, false) => set,
                };
                set + prices.cut_rectangle(&blank, sheet, self.slot.running)
            };
            let all_fit = parts.iter().all(fits);
            all_fit.then(|| Weight {
                avoided,
                pieces: u32::try_from(parts.len()).unwrap_or(u32::MAX),
                ..Weight::of(parts.iter().map(cut).sum())
            })
        };
        self.offers.extend(self.space.sheets.iter().map(from));
    }

    /// Writes over the parts the pieces that openings leave of a strip, under a rake up to its highest point.
    fn divide(&mut self, x: Interval) {
        self.parts.clear();
        let (mut x, mut high) = (x, self.y.hi);
        let mut sloped = false;
        if self.under_slope
            && let Some(over) = self.space.frame.upper.y_over(x)
        {
            high = high.min(over.hi);
            sloped = over.lo < high;
            if over.lo < self.y.lo {
                x = self.under_roof(x);
            }
        }
        if self.y.lo < high {
            self.part(Rect::from_spans(x, Interval::new(self.y.lo, high)), sloped);
        }
    }

    /// The stretch of a strip over which the wall comes up into the course, less than a unit taken off where it is cut.
    fn under_roof(&self, x: Interval) -> Interval {
        let low = self.y.lo;
        let mut found: Option<Interval> = None;
        for ends in self.space.frame.upper.points().windows(2) {
            let [a, b] = ends else { continue };
            let Some(mut span) = Interval::new(a.x, b.x)
                .intersect(x)
                .filter(|_| a.y.max(b.y) > low)
            else {
                continue;
            };
            if a.y.min(b.y) < low {
                let along = i128::from((b.x - a.x).units()) * i128::from((low - a.y).units());
                let at = along.div_euclid(i128::from((b.y - a.y).units()));
                let cut = a.x + Length::from_units(i64::try_from(at).unwrap_or_default());
                if a.y < b.y {
                    span.lo = span.lo.max(cut + Length::from_units(1));
                } else {
                    span.hi = span.hi.min(cut);
                }
            }
            if span.lo <= span.hi {
                found = Some(found.map_or(span, |found| {
                    Interval::new(found.lo.min(span.lo), found.hi.max(span.hi))
                }));
            }
        }
        found.unwrap_or(Interval::new(x.lo, x.lo))
    }

    /// Adds the pieces that openings leave of a rectangle.
    fn part(&mut self, rect: Rect, sloped: bool) {
        let inside = |hole: &&Rect| hole.overlaps(&rect);
        let over = |hole: &&Rect| hole.y_span().covers(rect.y_span());
        let across = |hole: &&Rect| hole.x_span().covers(rect.x_span());
        let holes = || self.holes.iter().filter(inside);
        if holes().next().is_none() {
            self.parts.push(StripPart {
                rect,
                small: (false, sloped),
            });
            return;
        }
        let rests: Vec<Rect> = if holes().any(|hole| over(&hole)) {
            let taken = Interval::union(holes().filter(over).map(Rect::x_span).collect());
            let spans = Interval::subtract(rect.x_span(), &taken);
            spans
                .into_iter()
                .map(|x| Rect::from_spans(x, rect.y_span()))
                .collect()
        } else if holes().any(|hole| across(&hole)) {
            let taken = Interval::union(holes().filter(across).map(Rect::y_span).collect());
            let spans = Interval::subtract(rect.y_span(), &taken);
            spans
                .into_iter()
                .map(|y| Rect::from_spans(rect.x_span(), y))
                .collect()
        } else {
            let left = holes().filter_map(|hole| hole.intersect(&rect));
            let left = left.fold(rect.area(), |left, shared| left - shared.area());
            let small = self.space.prices.is_small(2 * left);
            self.parts.push(StripPart {
                rect,
                small: (small, small || sloped),
            });
            return;
        };
        for rest in rests {
            self.part(rest, sloped);
        }
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
    let sizes: Vec<(Length, Length)> = sheets.map(|sheet| up_and_across(sheet, slot.running)).collect();
    let across: Vec<Length> = sizes.iter().map(|(_, across)| *across).collect();
    let mut breaks = space.prices.breaks(height, &across);
    for (up, _) in sizes.iter().filter(|(up, _)| *up < height) {
        // A sheet that is a little short is taken as it is.
        breaks.extend(space.prices.breaks(*up, &across));
    }
    breaks.sort_unstable();
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
