//! What a layout costs, in one unit: money or minutes.
//!
//! Every part of a cost is a sum over pieces, seams, courses, nail rows, blocks and added studs, each priced by a
//! small function of that one thing in [`Prices`], rounded once. [`cost`] adds them up over finished stages;
//! [`crate::search`] uses the same functions on single pieces before anything is finished. All rates are the
//! user's or invented.

mod backing;
mod corner;
mod course;
mod estimate;
mod nails;
mod part;
mod piece;
mod total;

pub use part::{Cost, CostPart, Part};
pub use total::cost;

use crate::amount::Amount;
use crate::frame::Frame;
use crate::house::{House, JobRates, Objective, Practice, Stock};
use part::Tally;

/// The rates of a house, applied to one wall.
#[derive(Clone, Copy, Debug)]
pub struct Prices<'a> {
    stock: &'a Stock,
    rates: &'a JobRates,
    practice: &'a Practice,
    frame: &'a Frame,
}

impl<'a> Prices<'a> {
    /// Prices for the wall of this frame; `None` if the house does not have it.
    pub fn new(house: &'a House, frame: &'a Frame) -> Option<Self> {
        let practice = &house.walls.get(frame.wall as usize)?.practice;
        Some(Self {
            stock: &house.stock,
            rates: &house.rates,
            practice,
            frame,
        })
    }

    /// Minutes in the unit of the objective, rounded half up.
    fn minutes(&self, minutes: Amount) -> Amount {
        match self.rates.objective {
            Objective::Minutes => minutes,
            Objective::Money => {
                let labour = i128::from(self.rates.labour.ten_thousandths());
                minutes.scaled(labour, ONE).unwrap_or_default()
            }
        }
    }

    /// Money in the unit of the objective, rounded half up. Where labour is free, money has no minutes.
    fn money(&self, money: Amount) -> Amount {
        match self.rates.objective {
            Objective::Money => money,
            Objective::Minutes => {
                let labour = i128::from(self.rates.labour.ten_thousandths());
                if labour <= 0 {
                    Amount::default()
                } else {
                    money.scaled(ONE, labour).unwrap_or_default()
                }
            }
        }
    }

    /// A rate in minutes, times a count, into a tally.
    fn work(&self, tally: &mut Tally, part: Part, count: i64, each: Amount) {
        if count > 0 {
            tally.add(part, count, self.minutes(each.times(count).unwrap_or_default()));
        }
    }
}

/// One, in ten-thousandths.
const ONE: i128 = 10_000;
