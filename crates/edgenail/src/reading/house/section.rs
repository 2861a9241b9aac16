//! Sections, their levels and what these are made of.

use super::storey::{origin, plate, storey};
use super::top::top;
use crate::house::{
    BandLayer, BandMembers, Bearing, Bottom, Direction, FloorBand, Level, Limits, MemberKindInBand, Rim,
    Section,
};
use crate::length::Length;
use crate::reading::fields::{BAND_MEMBERS, BAND_PLATE, LEVEL_BAND};
use crate::reading::record::Record;

/// A section that begins at `from` and, if it is the last, ends with the wall.
pub(super) fn section(
    record: &Record<'_, '_>,
    from: Length,
    end: Option<Length>,
    limits: &Limits,
) -> Section {
    let from = record.or("from", || from);
    let to = match end {
        Some(end) => record.or("to", || end),
        None => record.need("to"),
    };
    let bottom = record.object("bottom", bottom);
    let mut storeys = 0;
    let mut bands = 0;
    let mut lowest = true;
    let stack = record.list("stack", |record| {
        let on_concrete = lowest && bottom.bears == Bearing::Concrete;
        lowest = false;
        if record.is(&LEVEL_BAND) {
            bands += 1;
            Level::FloorBand(floor_band(record, bands, on_concrete))
        } else {
            storeys += 1;
            Level::Storey(storey(record, storeys, on_concrete, limits))
        }
    });
    Section {
        from,
        to,
        base: record.get("base"),
        bottom,
        stack,
        top: record.object("top", |record| top(record, from, to)),
    }
}

fn bottom(record: &Record<'_, '_>) -> Bottom {
    Bottom {
        bears: record.get("bears"),
        reach: record.get("reach"),
        above_grade: record.get("above_grade"),
    }
}

fn floor_band(record: &Record<'_, '_>, number: u32, on_concrete: bool) -> FloorBand {
    let mut lowest = true;
    FloorBand {
        name: record.or("name", || format!("floor band {number}")),
        layers: record.list("layers", |record| {
            let on_concrete = lowest && on_concrete;
            lowest = false;
            if record.is(&BAND_PLATE) {
                BandLayer::Plate(plate(record, on_concrete))
            } else if record.is(&BAND_MEMBERS) {
                BandLayer::Members(members(record))
            } else {
                BandLayer::Subfloor {
                    thickness: record.get("thickness"),
                }
            }
        }),
    }
}

fn members(record: &Record<'_, '_>) -> BandMembers {
    let direction = record.get("direction");
    let member = record.get("member");
    let rimmed = direction == Direction::Across && member == MemberKindInBand::SawnJoist;
    BandMembers {
        direction,
        member,
        width: record.get("width"),
        depth: record.get("depth"),
        chord: record.get("chord"),
        spacing: record.get("spacing"),
        origin: record.object("origin", origin),
        rim: record.maybe_or("rim", rim, rimmed),
        blocking_between: record.get("blocking_between"),
    }
}

fn rim(record: &Record<'_, '_>) -> Rim {
    Rim {
        kind: record.get("kind"),
        thickness: record.get("thickness"),
    }
}
