//! What a row of nails costs.

use super::Prices;
use super::part::{Part, Tally};
use crate::house::NailTool;
use crate::nailing::NailRow;

impl Prices<'_> {
    /// A row of nails: its share of a box, driving it.
    pub fn nail_row(&self, row: &NailRow) -> Tally {
        let mut tally = Tally::default();
        let count = i64::from(row.count());
        if let Some(nail) = self.stock.nails.get(row.nail as usize) {
            let each = match nail.tool {
                NailTool::Gun => self.rates.nail_gun,
                NailTool::Hand => self.rates.nail_hand,
            };
            self.work(&mut tally, Part::Nails, count, each);
            let share = nail
                .price
                .scaled(i128::from(count), i128::from(nail.per_box.max(1)));
            tally.add(Part::Nails, 0, self.money(share.unwrap_or_default()));
        }
        tally
    }
}
