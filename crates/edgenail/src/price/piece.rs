//! What one piece costs before it is nailed: its share of a sheet, its cuts, its setting, its narrowness.

use super::{Account, Prices};
use crate::amount::Amount;
use crate::geometry::{Rect, Shape};
use crate::house::Sheet;
use crate::layout::{Joint, Running, Sides};
use crate::takeoff::Part;

impl Prices<'_> {
    /// Adds a piece of this outline, cut from this sheet.
    pub fn piece(
        &self,
        outline: &Shape,
        sides: Sides,
        sheet: &Sheet,
        running: Running,
        account: &mut impl Account,
    ) {
        self.kernel
            .piece(outline, sheet, running, &mut self.into(account));
        self.narrow(account, &outline.bounds(), sides);
    }

    /// What [`Prices::piece`] adds for a rectangle whatever sheet it is cut from; nothing for an empty one.
    pub fn set_rectangle(&self, blank: &Rect, sides: Sides) -> Amount {
        let mut total = Amount::ZERO;
        if !blank.is_empty() {
            self.kernel.set_rectangle(blank, &mut self.into(&mut total));
            self.narrow(&mut total, blank, sides);
        }
        total
    }

    /// What [`Prices::piece`] adds for a rectangle that is cut from this sheet; nothing for an empty one.
    pub fn cut_rectangle(&self, blank: &Rect, sheet: &Sheet, running: Running) -> Amount {
        let mut total = Amount::ZERO;
        if !blank.is_empty() {
            self.kernel
                .rectangle(blank, sheet, running, &mut self.into(&mut total));
        }
        total
    }

    pub(super) fn narrow(&self, account: &mut impl Account, blank: &Rect, sides: Sides) {
        let judgement = &self.kernel.rates.judgement;
        let narrow = blank.width().min(blank.height()) + self.kernel.practice.strip_allowance;
        // A strip along a floor band, nailed to plate, rim and plate, is no narrow piece.
        let along_band = blank.width() >= blank.height() && self.kernel.frame.ties_band(blank.y_span());
        let over_opening = sides.top == Joint::Opening || sides.bottom == Joint::Opening;
        if along_band || over_opening {
            return;
        }
        if narrow < judgement.very_narrow_under {
            self.judge(account, Part::VeryNarrowPieces, 1, judgement.very_narrow_piece);
        } else if narrow < judgement.narrow_under {
            self.judge(account, Part::NarrowPieces, 1, judgement.narrow_piece);
        }
    }
}
