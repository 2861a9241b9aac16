//! Plates and studs of one storey.

use super::opening::{Above, opening, patch};
use crate::house::{EndStuds, LayoutOrigin, Limits, Plate, Species, Storey, Stud};
use crate::length::Length;
use crate::reading::record::Record;

/// Storeys are counted from the lowest, from one.
pub(super) fn storey(record: &Record<'_, '_>, number: u32, on_concrete: bool, limits: &Limits) -> Storey {
    let mut lowest = true;
    let bottom_plates = record.list("bottom_plates", |record| {
        let on_concrete = lowest && on_concrete;
        lowest = false;
        plate(record, on_concrete)
    });
    let stud = record.object("stud", stud);
    let plates: Length = bottom_plates.iter().map(|plate| plate.thickness).sum();
    let above = Above {
        plates,
        studs: plates + stud.length,
        stud: stud.width,
        header_room_least: limits.header_room_least,
    };
    Storey {
        name: record.or("name", || ordinal(number)),
        stud,
        top_plates: record.list("top_plates", |record| plate(record, false)),
        plate_joints: record.get("plate_joints"),
        spacing: record.get("spacing"),
        origin: record.object("origin", origin),
        end_studs: record.object("end_studs", |record| EndStuds {
            left: record.get("left"),
            right: record.get("right"),
        }),
        species: record.object("species", |record| Species {
            elasticity: record.get("elasticity"),
            group: record.get("group"),
            specific_gravity: record.get("specific_gravity"),
        }),
        block_rows: record.get("block_rows"),
        openings: record.list("openings", |record| opening(record, above)),
        penetrations: record.list("penetrations", patch),
        bare_zones: record.list("bare_zones", patch),
        straps: record.list("straps", patch),
        bottom_plates,
    }
}

fn ordinal(number: u32) -> String {
    match number {
        1 => "first floor".to_owned(),
        2 => "second floor".to_owned(),
        3 => "third floor".to_owned(),
        _ => format!("floor {number}"),
    }
}

pub(super) fn plate(record: &Record<'_, '_>, on_concrete: bool) -> Plate {
    Plate {
        thickness: record.get("thickness"),
        treated: record.or("treated", || on_concrete),
    }
}

fn stud(record: &Record<'_, '_>) -> Stud {
    Stud {
        width: record.get("width"),
        depth: record.get("depth"),
        length: record.get("length"),
    }
}

pub(super) fn origin(record: &Record<'_, '_>) -> LayoutOrigin {
    LayoutOrigin {
        end: record.get("end"),
        offset: record.or("offset", || Length::ZERO),
    }
}
