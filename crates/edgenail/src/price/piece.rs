//! What one piece costs before it is nailed: its share of a sheet, its cuts, its setting, its narrowness.

use super::{Prices, Tally};
use crate::amount::Amount;
use crate::geometry::{Rect, Shape};
use crate::house::Sheet;
use crate::layout::{Joint, Running, Sides};
use crate::takeoff::Part;

impl Prices<'_> {
    /// A piece of this outline, cut from this sheet.
    pub fn piece(&self, outline: &Shape, sides: Sides, sheet: &Sheet, running: Running) -> Tally {
        let mut tally = self.tally(|charge| self.kernel.piece(outline, sheet, running, charge));
        self.narrow(&mut tally, &outline.bounds(), sides);
        tally
    }

    /// The total of [`Prices::piece`] for a rectangle; nothing for an empty one.
    pub fn rectangle(&self, blank: &Rect, sides: Sides, sheet: &Sheet, running: Running) -> Amount {
        let outline = Shape::from_rect(*blank);
        outline.map_or_else(Amount::default, |outline| {
            self.piece(&outline, sides, sheet, running).total()
        })
    }

    pub(super) fn narrow(&self, tally: &mut Tally, blank: &Rect, sides: Sides) {
        let judgement = &self.kernel.rates.judgement;
        let narrow = blank.width().min(blank.height()) + self.kernel.practice.strip_allowance;
        // A strip along a floor band, nailed to plate, rim and plate, is no narrow piece.
        let along_band = blank.width() >= blank.height() && self.kernel.frame.ties_band(blank.y_span());
        let over_opening = sides.top == Joint::Opening || sides.bottom == Joint::Opening;
        if along_band || over_opening {
            return;
        }
        if narrow < judgement.very_narrow_under {
            self.judge(tally, Part::VeryNarrowPieces, 1, judgement.very_narrow_piece);
        } else if narrow < judgement.narrow_under {
            self.judge(tally, Part::NarrowPieces, 1, judgement.narrow_piece);
        }
    }
}
