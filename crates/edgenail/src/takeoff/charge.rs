//! What one thing takes: so many minutes or so much money for one part of the cost.

use super::Part;
use crate::amount::Amount;
use crate::house::{JobRates, Objective};

/// What one piece, row, block or line takes of one part, rounded once.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Charge {
    /// The part.
    pub part: Part,
    /// How many of what the part counts.
    pub quantity: i64,
    /// Minutes of work.
    pub minutes: Amount,
    /// Money for what is bought.
    pub money: Amount,
}

impl Charge {
    /// So many times the minutes that one takes; nothing where there are none.
    pub fn work(part: Part, quantity: i64, each: Amount) -> Self {
        Self {
            part,
            quantity,
            minutes: each.times(quantity).unwrap_or_default(),
            money: Amount::ZERO,
        }
    }

    /// Money for so many.
    pub const fn buy(part: Part, quantity: i64, money: Amount) -> Self {
        Self {
            part,
            quantity,
            minutes: Amount::ZERO,
            money,
        }
    }

    /// What it is worth in the unit of the objective, rounded half up.
    ///
    /// Minutes become money at the rate for labour, money becomes minutes by it. Where labour is free, money has no
    /// minutes.
    pub fn worth(&self, rates: &JobRates) -> Amount {
        match rates.objective {
            Objective::Money => self.money + self.minutes.at(rates.labour).unwrap_or_default(),
            Objective::Minutes if rates.labour > Amount::ZERO => {
                let labour = i128::from(rates.labour.ten_thousandths());
                let minutes = self.money.scaled(i128::from(Amount::PER_UNIT), labour);
                self.minutes + minutes.unwrap_or_default()
            }
            Objective::Minutes => self.minutes,
        }
    }
}
