//! Force transfer around openings.

use super::unit_shear::query;
use crate::capacity::{TransferQuery, TransferWall};
use crate::length::Length;
use crate::reading::record::Record;

pub(super) fn transfer(record: &Record<'_, '_>) -> TransferQuery {
    let feet = |length: Length| length.as_inches() / 12.0;
    let all = |name: &str| record.get::<Vec<Length>>(name).into_iter().map(feet).collect();
    TransferQuery {
        wall: TransferWall {
            height: feet(record.get("height")),
            piers: all("piers"),
            openings: all("openings"),
            above_and_below: feet(record.get("above_and_below")),
            shear: record.get("shear"),
        },
        query: record.maybe("query", query),
        accept_unverified: record.get("accept_unverified"),
    }
}
