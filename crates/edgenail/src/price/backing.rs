//! What a block or an added stud costs.

use super::Prices;
use super::part::{Part, Tally};
use crate::blocking::{AddedStud, Block, BlockLie};
use crate::length::Length;

impl Prices<'_> {
    /// A block: its share of a stick, its end nails, setting it.
    pub fn block(&self, block: &Block) -> Tally {
        let mut tally = Tally::default();
        let each = match block.lie {
            BlockLie::Flat => self.rates.block_flat,
            BlockLie::OnEdge => self.rates.block_on_edge,
        };
        self.work(&mut tally, Part::Blocks, 1, each);
        self.stick(&mut tally, Part::Blocks, block.stick, block.length);
        tally
    }

    /// An added stud: its share of a stick, setting it.
    pub fn stud(&self, stud: &AddedStud) -> Tally {
        let mut tally = Tally::default();
        self.work(&mut tally, Part::AddedStuds, 1, self.rates.added_stud);
        self.stick(
            &mut tally,
            Part::AddedStuds,
            stud.stick,
            stud.rect.height().max(stud.rect.width()),
        );
        tally
    }

    fn stick(&self, tally: &mut Tally, part: Part, stick: u32, length: Length) {
        if let Some(stick) = self.stock.sticks.get(stick as usize) {
            let share = stick
                .price
                .scaled(i128::from(length.units()), i128::from(stick.length.units()));
            tally.add(part, 0, self.money(share.unwrap_or_default()));
        }
    }
}
