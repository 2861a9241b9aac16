//! The price law, checked on every plan.

use super::WallPlan;
use super::shared::shared;
use crate::edges::Site;
use crate::error::Error;
use crate::evaluate::Evaluated;
use crate::frame::Frame;
use crate::house::House;
use crate::price::{Prices, judgement, local};
use crate::takeoff::Takeoff;
use std::num::NonZeroUsize;

/// Holds every wall to the law: the sum of local prices is what the take-off and judgement charge, and what the layout
/// was chosen by.
///
/// # Errors
///
/// [`Error::Internal`] with the wall and the amounts that differ.
pub(super) fn check(
    threads: NonZeroUsize,
    house: &House,
    walls: &[WallPlan],
    takeoff: &Takeoff,
) -> Result<(), Error> {
    let held = shared(walls.len(), threads, |index| {
        let wall = walls.get(index);
        wall.map_or(Ok(()), |wall| {
            hold(house, &wall.name, &wall.frame, &wall.built, takeoff)
        })
    });
    held.into_iter().collect()
}

/// Holds one wall to the law.
pub(super) fn hold(
    house: &House,
    name: &str,
    frame: &Frame,
    built: &Evaluated,
    takeoff: &Takeoff,
) -> Result<(), Error> {
    let (Some(prices), Some(site)) = (Prices::new(house, frame), Site::new(house, &built.backed)) else {
        return Err(Error::Internal {
            message: format!("{name}: a wall that was planned has no prices"),
        });
    };
    let local = local(&prices, &site, &built.layout, &built.runs, &built.blocking).total();
    let read = takeoff.charged(name) + judgement(&prices, &built.layout).total();
    let total = built.cost.total;
    if local == read && local == total {
        return Ok(());
    }
    Err(Error::Internal {
        message: format!(
            "{name}: local prices are {local}, the take-off reads {read}, the layout cost {total}"
        ),
    })
}

#[cfg(test)]
mod tests;
