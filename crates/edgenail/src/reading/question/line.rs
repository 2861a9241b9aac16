//! A wall line, the ends of one segment, the anchors of a plate.

use super::faces::other_face;
use super::unit_shear::query;
use crate::capacity::{
    AnchorageQuery, EndAbove, EndPosts, FromAbove, HoldDown, HoldDownQuery, LineOpening, Pier, PlateAnchor,
    WallLine,
};
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
        other_face: record.maybe("other_face", other_face),
        joints_apart: record.get("joints_apart"),
        demand: record.get("demand"),
        dead: record.get("dead"),
        inset: record.get("inset"),
        posts: record.maybe("posts", |record| EndPosts {
            elasticity: record.get("elasticity"),
            area: record.get("area"),
        }),
        hold_down: record.maybe("hold_down", |record| HoldDown {
            capacity: record.get("capacity"),
            elongation: record.get::<Length>("elongation").as_inches(),
        }),
        anchor: record.maybe("anchor", |record| PlateAnchor {
            each: record.get("each"),
            each_uplift: record.get("each_uplift"),
        }),
        above: record.maybe("above", |record| FromAbove {
            shear: record.get("shear"),
            floor: record.get("floor"),
            ends: record.list("ends", |record| EndAbove {
                at: record.get("at"),
                tension: record.get("tension"),
            }),
        }),
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
