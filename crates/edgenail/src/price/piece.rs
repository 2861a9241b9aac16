//! What one piece costs before it is nailed: its share of a sheet, its cuts, its setting.

use super::Prices;
use super::part::{Part, Tally};
use crate::cutting::cuts_of_piece;
use crate::geometry::{Rect, Shape};
use crate::house::Sheet;
use crate::layout::{Running, Sides};
use crate::length::Length;

impl Prices<'_> {
    /// A piece of this outline, cut from this sheet.
    pub fn piece(&self, outline: &Shape, sides: Sides, sheet: &Sheet, running: Running) -> Tally {
        let mut tally = Tally::default();
        let blank = outline.bounds();
        self.material(&mut tally, &blank, sheet, running);
        self.setting(&mut tally, &blank, outline, sides);
        self.cutting(&mut tally, outline, sheet, running);
        tally
    }

    /// One of as many equal blanks as the sheet gives, kerf lost between them: what is left of a sheet that gives
    /// only one is no saving. Which pieces do share a sheet is known only when the whole house is cut.
    fn material(&self, tally: &mut Tally, blank: &Rect, sheet: &Sheet, running: Running) {
        let (up, across) = match running {
            Running::Upright => (sheet.length, sheet.width),
            Running::Flat => (sheet.width, sheet.length),
        };
        let fit = |size: Length, of: Length| {
            let kerf = self.practice.kerf;
            ((of + kerf).units() / (size + kerf).units().max(1)).max(1)
        };
        let gives = fit(blank.width(), across) * fit(blank.height(), up);
        let share = sheet.price.scaled(1, i128::from(gives));
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
        // A strip along a floor band, nailed to plate, rim and plate, is no narrow piece.
        let along_band = blank.width() >= blank.height() && self.frame.ties_band(blank.y_span());
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

    /// Saw work, counted by the cutting stage: at the bench, then in place.
    fn cutting(&self, tally: &mut Tally, outline: &Shape, sheet: &Sheet, running: Running) {
        let work = cuts_of_piece(outline, sheet, running);
        tally.add(
            Part::Cutting,
            i64::from(work.bench_cuts()),
            self.minutes(work.bench_minutes(self.rates)),
        );
        tally.add(
            Part::Openings,
            i64::from(work.openings),
            self.minutes(work.opening_minutes(self.rates)),
        );
    }
}

/// 16 square feet, in square units.
const SMALL: i128 = {
    let foot = Length::feet(1).units() as i128;
    16 * foot * foot
};
/// A 97 1/8 in. sheet is handled as an 8 ft one.
const SLACK: Length = Length::sixteenths(18);
