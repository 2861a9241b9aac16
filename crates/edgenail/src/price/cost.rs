//! A cost and its parts.

use crate::amount::Amount;
use crate::takeoff::Part;
use serde::Serialize;

/// One part of a cost.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct CostPart {
    /// Which.
    pub part: Part,
    /// How many of what it counts.
    pub quantity: i64,
    /// What one of them weighs in the unit of the objective: its rate, where one rate holds for all, else their mean,
    /// rounded half up.
    pub weight: Amount,
    /// What they cost, in the unit of the objective.
    pub amount: Amount,
}

/// A cost and its parts.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Cost {
    /// The sum of the parts, in the unit of the objective.
    pub total: Amount,
    /// Parts that are not nothing.
    pub parts: Vec<CostPart>,
}

impl Cost {
    /// What all parts but this one cost.
    pub fn without(&self, part: Part) -> Amount {
        let own = self.parts.iter().find(|own| own.part == part);
        self.total - own.map_or(Amount::ZERO, |own| own.amount)
    }
}

/// What charges are added up in: a [`Tally`] keeps the parts apart, an [`Amount`] their total alone.
pub trait Account {
    /// Adds to a part.
    fn add(&mut self, part: Part, quantity: i64, amount: Amount);
}

impl Account for Amount {
    fn add(&mut self, _: Part, _: i64, amount: Amount) {
        *self += amount;
    }
}

/// Parts being added up, without allocation.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tally([(i64, Amount); Part::ALL.len()]);

impl Default for Tally {
    fn default() -> Self {
        Self([(0, Amount::ZERO); Part::ALL.len()])
    }
}

impl Account for Tally {
    fn add(&mut self, part: Part, quantity: i64, amount: Amount) {
        if let Some((count, sum)) = self.0.get_mut(part as usize) {
            *count += quantity;
            *sum += amount;
        }
    }
}

impl Tally {
    /// The sum of all parts.
    pub fn total(&self) -> Amount {
        self.0.iter().map(|(_, amount)| *amount).sum()
    }

    /// What a part comes to.
    pub fn amount(&self, part: Part) -> Amount {
        self.0
            .get(part as usize)
            .map_or(Amount::ZERO, |(_, amount)| *amount)
    }

    /// The cost with its parts.
    pub fn cost(&self) -> Cost {
        let parts = Part::ALL.iter().zip(&self.0);
        Cost {
            total: self.total(),
            parts: parts
                .filter(|(_, (quantity, _))| *quantity != 0)
                .map(|(part, (quantity, amount))| CostPart {
                    part: *part,
                    quantity: *quantity,
                    weight: amount.scaled(1, i128::from(*quantity)).unwrap_or_default(),
                    amount: *amount,
                })
                .collect(),
        }
    }
}
