//! What nails and backing cost at least, before they are known: never more than what they will cost.

use super::Prices;
use crate::amount::Amount;
use crate::decimal::Decimal;
use crate::geometry::Rect;
use crate::house::{NailTool, Sheet};
use crate::layout::Running;
use crate::length::Length;
use crate::takeoff::{Charge, Part};

/// What rounding may take from a charge.
const ROUNDING: Amount = Amount::from_ten_thousandths(1);

impl Prices<'_> {
    fn worth(&self, charge: Charge) -> Amount {
        charge.worth(self.kernel.rates)
    }

    /// A nail, driven: the cheapest in stock.
    pub(crate) fn least_nail(&self) -> Amount {
        let (rates, stock) = (self.kernel.rates, self.kernel.stock);
        let each = stock.nails.iter().map(|nail| {
            let minutes = match nail.tool {
                NailTool::Gun => rates.nail_gun,
                NailTool::Hand => rates.nail_hand,
            };
            let share = nail.price.scaled(1, i128::from(nail.per_box.max(1)));
            let work = self.worth(Charge::work(Part::GunNails, 1, minutes));
            let bought = self.worth(Charge::buy(Part::Nails, 1, share.unwrap_or_default()));
            at_least_nothing(work - ROUNDING) + at_least_nothing(bought - ROUNDING)
        });
        each.min().unwrap_or_default()
    }

    /// A stud that is added, without its lumber.
    pub(crate) fn least_stud(&self) -> Amount {
        self.worth(Charge::work(Part::AddedStuds, 1, self.kernel.rates.added_stud))
    }

    /// What judging so many minutes costs for each of a great many, rounded down.
    pub(crate) fn least_judged(&self, each: Amount) -> Amount {
        at_least_nothing(self.worth(Charge::work(Part::UnevenOffsets, 1, each)) - ROUNDING)
    }

    /// What is bought for so much.
    pub(crate) fn bought(&self, money: Amount) -> Amount {
        self.worth(Charge::buy(Part::Sheets, 1, money))
    }

    /// A blank's share of a sheet.
    pub(crate) fn share(&self, blank: &Rect, sheet: &Sheet, running: Running) -> Amount {
        let mut share = Amount::ZERO;
        self.kernel.rectangle(blank, sheet, running, &mut |charge| {
            if charge.part == Part::Sheets {
                share += self.worth(charge);
            }
        });
        share
    }

    /// Sawing a blank out of a sheet.
    pub(crate) fn sawn(&self, blank: &Rect, sheet: &Sheet, running: Running) -> Amount {
        self.cut_rectangle(blank, sheet, running) - self.share(blank, sheet, running)
    }

    /// Setting a piece of any size from any place.
    pub(crate) fn least_setting(&self) -> Amount {
        let rates = self.kernel.rates;
        let places = &rates.places;
        let factors = [places.standing, places.ladder, places.upper_storey, places.high];
        if factors.iter().any(|factor| *factor < Decimal::ONE) {
            return Amount::ZERO;
        }
        let each = [
            rates.set_8,
            rates.set_9,
            rates.set_10,
            rates.set_longer,
            rates.set_small,
        ];
        let least = each.into_iter().min().unwrap_or_default();
        self.worth(Charge::work(Part::SetSmall, 1, least))
    }

    /// Setting a piece that is its whole blank, as it is and if it counted as small.
    pub(crate) fn setting(&self, blank: &Rect) -> (Amount, Amount) {
        let (mut whole, mut small) = (Amount::ZERO, Amount::ZERO);
        self.kernel.set_rectangle(blank, &mut self.into(&mut whole));
        self.kernel.set_small(blank, &mut self.into(&mut small));
        (whole, small)
    }

    /// How wide a piece of this height is at least that is not small.
    pub(crate) fn small_width(&self, height: Length) -> Length {
        self.kernel.small_width(height)
    }

    /// A piece with twice this area is set as a small one.
    pub(crate) fn is_small(&self, area2: i128) -> bool {
        self.kernel.is_small(area2)
    }
}

fn at_least_nothing(amount: Amount) -> Amount {
    amount.max(Amount::ZERO)
}
