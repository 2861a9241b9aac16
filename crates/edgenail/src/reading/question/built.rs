//! Walls of a house that the question carries. Faults of the other fields are found even where the house has some.

use crate::capacity::{BuiltQuery, FoundNails, NailResistance, RackingQuery};
use crate::geometry::{Interval, Rect};
use crate::house::House;
use crate::length::Length;
use crate::reading::record::Record;

pub(super) fn built(record: &Record<'_, '_>, house: Option<House>) -> Option<BuiltQuery> {
    Some(BuiltQuery {
        wall: record.get("wall"),
        edition: record.get("edition"),
        load: record.get("load"),
        method: record.get("method"),
        sharing: record.get("sharing"),
        high_seismic: record.get("high_seismic"),
        wet_framing: record.get("wet_framing"),
        accept_unverified: record.get("accept_unverified"),
        estimate: record.get("estimate"),
        house: house?,
    })
}

pub(super) fn racking(record: &Record<'_, '_>, house: Option<House>) -> Option<RackingQuery> {
    Some(RackingQuery {
        wall: record.get("wall"),
        storey: record.get("storey"),
        force: record.get("force"),
        openings: record.get("openings"),
        nails: record.list("nails", |record| {
            let values = NailResistance {
                strength: record.get("strength"),
                stiffness: record.get("stiffness"),
            };
            (record.get("name"), values)
        }),
        found: record.list("found", |record| FoundNails {
            place: Rect::from_spans(
                span(record.get("left"), record.get("width")),
                span(record.get("bottom"), record.get("height")),
            ),
            holds: record.get("holds"),
        }),
        house: house?,
    })
}

fn span(from: Length, size: Length) -> Interval {
    Interval::new(from, from + size)
}
