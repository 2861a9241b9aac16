//! What one piece costs before it is nailed: its share of a sheet, its cuts, its setting, its narrowness.

use super::{Prices, Tally};
use crate::amount::Amount;
use crate::geometry::{Rect, Shape};
use crate::house::Sheet;
use crate::layout::{Joint, Running, Sides};
use crate::length::Length;
use crate::takeoff::{Charge, Part};

impl Prices<'_> {
    /// A piece of this outline, cut from this sheet.
    pub fn piece(&self, outline: &Shape, sides: Sides, sheet: &Sheet, running: Running) -> Tally {
        let mut tally = self.tally(|charge| self.kernel.piece(outline, sheet, running, charge));
        self.narrow(&mut tally, &outline.bounds(), sides);
        tally
    }

    /// The total of [`Prices::piece`] for a rectangle; nothing for an empty one.
    pub fn rectangle(&self, blank: &Rect, sides: Sides, sheet: &Sheet, running: Running) -> Amount {
        let Some(outline) = Shape::from_rect(*blank) else {
            return Amount::ZERO;
        };
        let mut sum = self.sum(|charge| self.kernel.piece(&outline, sheet, running, charge));
        if let Some((part, each)) = self.narrowness(blank, sides) {
            sum += Charge::work(part, 1, each).worth(self.kernel.rates);
        }
        sum
    }

    pub(super) fn narrow(&self, tally: &mut Tally, blank: &Rect, sides: Sides) {
        if let Some((part, each)) = self.narrowness(blank, sides) {
            self.judge(tally, part, 1, each);
        }
    }

    /// What is held against a piece as narrow as this one.
    fn narrowness(&self, blank: &Rect, sides: Sides) -> Option<(Part, Amount)> {
        let judgement = &self.kernel.rates.judgement;
        let narrow = blank.width().min(blank.height()) + self.kernel.practice.strip_allowance;
        let part = if narrow < Length::inches(12) {
            (Part::PiecesUnder12, judgement.piece_under_12)
        } else if narrow < Length::inches(24) {
            (Part::PiecesUnder24, judgement.piece_under_24)
        } else {
            return None;
        };
        // A strip along a floor band, nailed to plate, rim and plate, is no narrow piece.
        let along_band = blank.width() >= blank.height() && self.kernel.frame.ties_band(blank.y_span());
        let over_opening = sides.top == Joint::Opening || sides.bottom == Joint::Opening;
        (!along_band && !over_opening).then_some(part)
    }
}
