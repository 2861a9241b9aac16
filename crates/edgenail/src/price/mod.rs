//! What a layout costs, in one unit: money or minutes.
//!
//! Every part of a cost is a sum over pieces, seams, courses, nail rows, blocks and added studs, each priced by a
//! small function of that one thing in [`Prices`]: what it takes comes from the take-off's [`Kernel`], what a framer
//! would rather not have is judged here; each charge is rounded once. [`cost`] adds them up over finished stages;
//! [`crate::search`] uses the same functions on single pieces before anything is finished. All rates are the
//! user's or invented.
//!
//! The law: for every layout, legal or not, the sum of [`local`] prices, each piece nailed for itself, equals what the
//! finished take-off charges the wall with, and [`judgement`].

mod breaks;
mod corner;
mod cost;
mod course;
mod difference;
mod estimate;
mod least;
mod piece;
mod total;

pub use crate::takeoff::{Part, PartKind};
pub use cost::{Account, Cost, CostPart, Tally};
pub use difference::{CostDifference, differences};
pub use total::{cost, judgement, layout_cost, local};

use crate::amount::Amount;
use crate::blocking::Block;
use crate::frame::Frame;
use crate::geometry::{Interval, Rect};
use crate::house::House;
use crate::nailing::NailRow;
use crate::takeoff::{Charge, Kernel};

/// The rates of a house, applied to one wall.
#[derive(Clone, Copy, Debug)]
pub struct Prices<'a> {
    kernel: Kernel<'a>,
}

impl<'a> Prices<'a> {
    /// Prices for the wall of this frame; `None` if the house does not have it.
    pub fn new(house: &'a House, frame: &'a Frame) -> Option<Self> {
        let kernel = Kernel::new(house, frame)?;
        Some(Self { kernel })
    }

    /// Takes what a kernel charges into an account, in the unit of the objective.
    fn into(&self, account: &mut impl Account) -> impl FnMut(Charge) {
        |charge| account.add(charge.part, charge.quantity, charge.worth(self.kernel.rates))
    }

    /// Minutes of judgement, times a count.
    fn judge(&self, account: &mut impl Account, part: Part, count: i64, each: Amount) {
        if count > 0 {
            self.into(account)(Charge::work(part, count, each));
        }
    }

    /// Adds a row of nails: its share of a box, driving it.
    pub fn nail_row(&self, row: &NailRow, account: &mut impl Account) {
        self.kernel.nail_row(row, &mut self.into(account));
    }

    /// Adds a block: its share of a stick, its end nails, setting it.
    pub fn block(&self, block: &Block, account: &mut impl Account) {
        self.kernel.block(block, &mut self.into(account));
    }

    /// Adds a stud that is added, or what widens a member, with this face: its share of a stick, setting it.
    pub fn upright(&self, stick: u32, rect: &Rect, account: &mut impl Account) {
        self.kernel.upright(stick, rect, &mut self.into(account));
    }

    /// Adds the line that a course is laid to, snapped in pulls.
    pub fn line(&self, x: Interval, account: &mut impl Account) {
        self.into(account)(self.kernel.line(x));
    }
}
