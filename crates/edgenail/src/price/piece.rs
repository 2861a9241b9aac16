//! What one piece costs before it is nailed: its share of a sheet, its cuts, its setting.

use super::Prices;
use super::part::{Part, Tally};
use crate::geometry::{Facing, Rect, Shape};
use crate::house::Sheet;
use crate::layout::{Running, Sides};
use crate::length::Length;

impl Prices<'_> {
    /// A piece of this outline, cut from this sheet.
    pub fn piece(&self, outline: &Shape, sides: Sides, sheet: &Sheet, running: Running) -> Tally {
        let mut tally = Tally::default();
        let blank = outline.bounds();
        self.material(&mut tally, &blank, sheet);
        self.setting(&mut tally, &blank, outline, sides);
        self.cutting(&mut tally, &blank, outline, sheet, running);
        self.openings(&mut tally, &blank, outline);
        tally
    }

    /// The blank's share of the sheet's area.
    fn material(&self, tally: &mut Tally, blank: &Rect, sheet: &Sheet) {
        let whole = Rect::from_size(Length::ZERO, Length::ZERO, sheet.width, sheet.length).area();
        let share = if whole > 0 {
            sheet.price.scaled(blank.area(), whole)
        } else {
            None
        };
        tally.add(Part::Sheets, 1, self.money(share.unwrap_or_default()));
    }

    fn setting(&self, tally: &mut Tally, blank: &Rect, outline: &Shape, sides: Sides) {
        let rates = self.rates;
        let long = blank.width().max(blank.height());
        let each = if outline.area2() < 2 * SMALL {
            rates.set_small
        } else if long <= Length::feet(8) + SLACK {
            rates.set_8
        } else if long <= Length::feet(9) + SLACK {
            rates.set_9
        } else if long <= Length::feet(10) + SLACK {
            rates.set_10
        } else {
            rates.set_longer
        };
        self.work(tally, Part::Setting, 1, each);
        let narrow = blank.width().min(blank.height()) + self.practice.strip_allowance;
        let along_band = blank.width() >= blank.height() && self.lies_in_band(blank);
        let over_opening =
            sides.top == crate::layout::Joint::Opening || sides.bottom == crate::layout::Joint::Opening;
        if along_band || over_opening {
            return;
        }
        if narrow < Length::inches(12) {
            self.work(tally, Part::NarrowPieces, 1, rates.judgement.piece_under_12);
        } else if narrow < Length::inches(24) {
            self.work(tally, Part::NarrowPieces, 1, rates.judgement.piece_under_24);
        }
    }

    /// A strip along a floor band, nailed to plate, rim and plate, is no narrow piece.
    fn lies_in_band(&self, blank: &Rect) -> bool {
        self.frame
            .bands
            .iter()
            .any(|band| blank.y0 <= band.y.lo && band.y.hi <= blank.y1)
    }

    /// Saw cuts that bring the sheet to its blank, with a rake or steps.
    fn cutting(&self, tally: &mut Tally, blank: &Rect, outline: &Shape, sheet: &Sheet, running: Running) {
        let (width, length) = match running {
            Running::Upright => (blank.width(), blank.height()),
            Running::Flat => (blank.height(), blank.width()),
        };
        self.work(
            tally,
            Part::Cutting,
            i64::from(length < sheet.length),
            self.rates.cross_cut,
        );
        self.work(
            tally,
            Part::Cutting,
            i64::from(width < sheet.width),
            self.rates.rip,
        );
        let sloped = outline
            .boundary()
            .iter()
            .filter(|edge| edge.facing == Facing::Top && edge.a.y != edge.b.y)
            .count();
        self.work(
            tally,
            Part::Cutting,
            i64::try_from(sloped).unwrap_or(i64::MAX),
            self.rates.rake_cut,
        );
    }

    /// Cut-outs made in place: each takes a start and the length of its edge.
    fn openings(&self, tally: &mut Tally, blank: &Rect, outline: &Shape) {
        for hole in self
            .frame
            .holes()
            .iter()
            .chain(self.frame.penetrations.iter().map(|place| &place.rect))
        {
            let Some(part) = hole.intersect(blank) else {
                continue;
            };
            if !outline_misses(outline, &part) {
                continue;
            }
            let sides = [
                (part.x0 > blank.x0, part.height()),
                (part.x1 < blank.x1, part.height()),
                (part.y0 > blank.y0, part.width()),
                (part.y1 < blank.y1, part.width()),
            ];
            let edge: Length = sides
                .iter()
                .filter(|(cut, _)| *cut)
                .map(|(_, length)| *length)
                .sum();
            let foot = i128::from(Length::feet(1).units());
            let along = self
                .rates
                .opening_per_foot
                .scaled(i128::from(edge.units()), foot)
                .unwrap_or_default();
            let minutes = self.rates.opening.checked_add(along).unwrap_or_default();
            tally.add(Part::Openings, 1, self.minutes(minutes));
        }
    }
}

/// The outline leaves out some of this rectangle, or the rectangle is a hole yet to be cut in it.
fn outline_misses(outline: &Shape, part: &Rect) -> bool {
    part.area() > 0 && outline.bounds().overlaps(part)
}

/// 16 square feet, in square units.
const SMALL: i128 = {
    let foot = Length::feet(1).units() as i128;
    16 * foot * foot
};
/// A 97 1/8 in. sheet is handled as an 8 ft one.
const SLACK: Length = Length::sixteenths(18);
