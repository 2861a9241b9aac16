//! What backing and nails will cost before they are known: estimates that guide the search and never reach a plan.

use super::Prices;
use crate::amount::Amount;
use crate::geometry::Interval;
use crate::house::NailTool;
use crate::length::Length;
use crate::takeoff::{Charge, Part};

impl Prices<'_> {
    fn minutes(&self, minutes: Amount) -> Amount {
        Charge::work(Part::AddedStuds, 1, minutes).worth(self.kernel.rates)
    }

    fn money(&self, money: Amount) -> Amount {
        Charge::buy(Part::StudLumber, 1, money).worth(self.kernel.rates)
    }

    /// A stud added over this height.
    pub fn added_stud(&self, height: Length) -> Amount {
        let stick = self.kernel.stock.sticks.first().and_then(|stick| {
            stick
                .price
                .scaled(i128::from(height.units()), i128::from(stick.length.units()))
        });
        self.minutes(self.kernel.rates.added_stud) + self.money(stick.unwrap_or_default())
    }

    /// A row of blocks in every bay of this stretch, with two rows of edge nails.
    pub fn block_row(&self, x: Interval) -> Amount {
        let Some(storey) = self.kernel.frame.storeys.first() else {
            return Amount::default();
        };
        let bays = x.len().spaces(storey.spacing.max(Length::from_units(1)));
        let stick = self.kernel.stock.sticks.first().and_then(|stick| {
            stick
                .price
                .scaled(i128::from(x.len().units()), i128::from(stick.length.units()))
        });
        let work = self.kernel.rates.block_flat.times(bays).unwrap_or_default();
        self.minutes(work) + self.money(stick.unwrap_or_default()) + self.level_rows(x, 2)
    }

    /// Rows of edge nails along this stretch.
    pub fn level_rows(&self, x: Interval, rows: i64) -> Amount {
        let spacing = self
            .kernel
            .practice
            .assembly
            .edge_spacing
            .max(Length::from_units(1));
        let each = match self.kernel.stock.nails.first().map(|nail| nail.tool) {
            Some(NailTool::Hand) => self.kernel.rates.nail_hand,
            _ => self.kernel.rates.nail_gun,
        };
        self.minutes(each.times(rows * x.len().spaces(spacing)).unwrap_or_default())
    }
}
