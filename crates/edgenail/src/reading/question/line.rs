//! A wall line, the ends of one segment, the anchors of a plate.

use super::unit_shear::query;
use crate::capacity::{AnchorageQuery, HoldDownQuery, LineOpening, Pier, WallLine};
use crate::length::Length;
use crate::reading::record::Record;

pub(super) fn line(record: &Record<'_, '_>) -> WallLine {
    WallLine {
        length: record.get("length"),
        height: record.get("height"),
        openings: record.list("openings", |record| LineOpening {
            left: record.get("left"),
            width: record.get("width"),
            height: record.get("height"),
        }),
        method: record.get("method"),
        sharing: record.get("sharing"),
        query: record.object("query", query),
        demand: record.get("demand"),
        dead: record.get("dead"),
        inset: record.get("inset"),
    }
}

pub(super) fn hold_down(record: &Record<'_, '_>) -> HoldDownQuery {
    HoldDownQuery {
        shear: record.get("shear"),
        pier: Pier::new(record.get("length"), record.get("height")),
        dead: record.get("dead"),
        inset: record.get::<Length>("inset").as_inches() / 12.0,
    }
}

pub(super) fn anchorage(record: &Record<'_, '_>) -> AnchorageQuery {
    AnchorageQuery {
        shear: record.get("shear"),
        length: record.get::<Length>("length").as_inches() / 12.0,
        each: record.get("each"),
        uplift: record.get("uplift"),
        each_uplift: record.get("each_uplift"),
        nominal: record.get("nominal"),
        sill: record.get("sill"),
        accept_unverified: record.get("accept_unverified"),
    }
}
