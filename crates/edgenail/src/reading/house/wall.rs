//! Walls and their corners.

use super::given::{given_layout, measured};
use super::practice::practice;
use super::section::section;
use super::segment::segment;
use crate::house::{Corner, Level, Practice, Wall, WallEnd};
use crate::length::Length;
use crate::reading::record::Record;

pub(super) fn wall(record: &Record<'_, '_>, general: &Practice) -> Wall {
    let length: Length = record.get("length");
    let practice = record.object("practice", |record| practice(record, Some(general)));
    let mut at = Length::ZERO;
    let count = record.count("sections").max(1);
    let mut number = 0;
    let sections = record.list("sections", |record| {
        number += 1;
        let end = (number == count).then_some(length);
        let section = section(record, at, end, &practice.limits);
        at = section.to;
        section
    });
    let mut storeys: Vec<&str> = Vec::new();
    for level in sections.iter().flat_map(|section| &section.stack) {
        if let Level::Storey(storey) = level
            && !storeys.contains(&storey.name.as_str())
        {
            storeys.push(&storey.name);
        }
    }
    let only = match storeys.as_slice() {
        [only] => Some((*only).to_owned()),
        _ => None,
    };
    Wall {
        length,
        face: record.get("face"),
        other_face: record.get("other_face"),
        segments: record.list("segments", |record| {
            segment(record, only.as_deref(), &practice.assembly)
        }),
        measured: record.maybe("measured", measured),
        given_layout: record.maybe("given_layout", given_layout),
        sections,
        practice,
        name: record.get("name"),
    }
}

pub(super) fn corner(record: &Record<'_, '_>) -> Corner {
    let end = |record: &Record<'_, '_>| WallEnd {
        wall: record.get("wall"),
        end: record.get("end"),
    };
    Corner {
        through: record.object("through", end),
        butting: record.object("butting", end),
        turn: record.get("turn"),
    }
}
