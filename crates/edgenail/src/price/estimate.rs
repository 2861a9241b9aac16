//! What backing and nails will cost before they are known: estimates that guide the search and never reach a plan.

use super::Prices;
use crate::amount::Amount;
use crate::geometry::Interval;
use crate::house::{NailTool, Sheet};
use crate::layout::Running;
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

    /// No piece costs less than this and its [least material](Prices::least_material): the cheapest setting, less what
    /// rounding may take off the material.
    pub fn least_setting(&self) -> Amount {
        let rates = self.kernel.rates;
        let each = [
            rates.set_small,
            rates.set_8,
            rates.set_9,
            rates.set_10,
            rates.set_longer,
        ];
        each.into_iter()
            .map(|each| self.minutes(each))
            .min()
            .unwrap_or_default()
            - self.money(Amount::from_ten_thousandths(1))
            - Amount::from_ten_thousandths(2)
    }

    /// What a rectangle of this height takes of a sheet at least, for each unit of its length, in 1/65536.
    pub fn least_material(&self, height: Length, sheet: &Sheet, running: Running) -> i64 {
        let (up, across) = match running {
            Running::Upright => (sheet.length, sheet.width),
            Running::Flat => (sheet.width, sheet.length),
        };
        let kerf = self.kernel.practice.kerf;
        let rows = ((up + kerf).units() / (height + kerf).units().max(1)).max(1);
        let column = (across + kerf).units().max(1) * rows;
        let price = i128::from(self.money(sheet.price).ten_thousandths());
        i64::try_from((price << 16) / i128::from(column)).unwrap_or(0)
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
