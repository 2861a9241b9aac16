//! Openings with their framing, and other rectangles.

use crate::house::{Header, Opening, OpeningKind, Patch};
use crate::length::Length;
use crate::reading::record::Record;

/// What an opening's defaults follow from.
#[derive(Clone, Copy, Debug)]
pub(super) struct Above {
    /// Height of the bottom plates.
    pub plates: Length,
    /// Height of the stud tops above the storey's base.
    pub studs: Length,
    /// Width of a stud.
    pub stud: Length,
    /// A header of less room than this is left to the designer.
    pub header_room_least: Length,
}

pub(super) fn opening(record: &Record<'_, '_>, storey: Above) -> Opening {
    let kind = record.get("kind");
    let sill = match kind {
        OpeningKind::Door | OpeningKind::Garage => record.or("sill", || Length::ZERO),
        OpeningKind::Window | OpeningKind::Other => record.need("sill"),
    };
    let left: Length = record.get("left");
    let width: Length = record.get("width");
    let height: Length = record.get("height");
    let trimmers: u32 = record.get("trimmers");
    let room = storey.studs - (sill + height);
    let bearing = storey.stud * i64::from(trimmers);
    let built = |record: &Record<'_, '_>| Header {
        from: record.or("from", || (left - bearing).max(Length::ZERO)),
        to: record.or("to", || left + width + bearing),
        plies: record.get("plies"),
        depth: record.from("depth", |usual: Length| {
            if room >= storey.header_room_least {
                usual.min(room)
            } else {
                usual
            }
        }),
        y: record.or("y", || sill + height),
        setback: record.get("setback"),
    };
    Opening {
        name: record.get("name"),
        kind,
        left,
        sill,
        width,
        height,
        header: record.maybe_or("header", built, room >= storey.header_room_least),
        trimmers,
        kings: record.get("kings"),
        sills: record.or("sills", || u32::from(sill > storey.plates)),
    }
}

pub(super) fn patch(record: &Record<'_, '_>) -> Patch {
    Patch {
        name: record.get("name"),
        left: record.get("left"),
        bottom: record.get("bottom"),
        width: record.get("width"),
        height: record.get("height"),
    }
}
