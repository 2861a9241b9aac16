//! The table `capacity`.

use super::{Results, WallName};
use crate::capacity::{Resists, StoreyLine};
use crate::table::{Field, Schema};

pub(super) struct Row<'a> {
    wall: WallName<'a>,
    edition: &'static str,
    line: &'a StoreyLine,
}

pub(super) fn rows<'a>(results: &Results<'a>) -> Vec<Row<'a>> {
    let edition = results
        .house
        .demand
        .as_ref()
        .map_or("", |demand| demand.edition.name());
    let lines: &'a [StoreyLine] = results.capacity;
    lines
        .iter()
        .map(|line| Row {
            wall: results.wall_name(line.wall),
            edition,
            line,
        })
        .collect()
}

/// How the line resists, in a word.
fn method(line: &StoreyLine) -> &'static str {
    match &line.resists {
        Some(Resists::Line { found, .. }) if found.openings.is_some() => "perforated",
        Some(Resists::Line { .. }) => "segmented",
        Some(Resists::Transfer { .. }) => "force_transfer",
        None => "",
    }
}

fn drift(line: &StoreyLine) -> Option<f64> {
    match &line.resists {
        Some(Resists::Line { found, .. }) => found.drift.map(|drift| drift.three.total),
        _ => None,
    }
}

fn governs(line: &StoreyLine) -> &'static str {
    match &line.resists {
        Some(Resists::Line { found, .. }) => {
            found.checks.first().map_or("", |check| super::word(&check.check))
        }
        Some(Resists::Transfer { .. }) => "shear",
        None => "",
    }
}

pub(super) fn schema<'a>() -> Schema<Row<'a>> {
    Schema {
        name: "capacity",
        meaning: "What a storey of a wall resists of the house's demand, as it was built. It does not replace the code in \
                  force or a licensed design professional. A number that is not known is -1.",
        fields: vec![
            Field::text("wall", "The wall.", |row: &Row<'_>| row.wall.name.into()),
            Field::int("wall_index", "Place of the wall in the house.", |row| {
                row.wall.index.into()
            }),
            Field::text("storey", "The storey.", |row| (&*row.line.storey).into()),
            Field::text("load", "wind or seismic.", |row| {
                super::word(&row.line.load).into()
            }),
            Field::text("edition", "Edition of the standard.", |row| row.edition.into()),
            Field::text(
                "method",
                "segmented, perforated or force_transfer; empty where nothing could be taken.",
                |row| method(row.line).into(),
            ),
            Field::float(
                Some("lb"),
                "demand",
                "Shear with all from above, at the level of the method.",
                |row| row.line.demand,
            ),
            Field::float(
                Some("lb"),
                "resists",
                "Design capacity of the sheathing, or -1.",
                |row| row.line.capacity().unwrap_or(-1.0),
            ),
            Field::float(None, "ratio", "Demand over that, or -1.", |row| {
                row.line.ratio().unwrap_or(-1.0)
            }),
            Field::text(
                "governs",
                "What is fullest of sheathing and hold-down: shear or hold_down.",
                |row| governs(row.line).into(),
            ),
            Field::float(
                None,
                "governing_ratio",
                "Largest ratio of all that was checked, fasteners of interfaces too, or -1.",
                |row| row.line.governing().unwrap_or(-1.0),
            ),
            Field::float(
                Some("lb/ft"),
                "plate_shear",
                "Shear of the bottom plate, or -1.",
                |row| row.line.plate().unwrap_or(-1.0),
            ),
            Field::float(
                Some("lb"),
                "hold_down",
                "Largest tension at an end of a segment, with what comes from above, or -1.",
                |row| row.line.hold_down().unwrap_or(-1.0),
            ),
            Field::float(
                Some("in"),
                "drift",
                "Largest drift by the three-term equation, or -1.",
                |row| drift(row.line).unwrap_or(-1.0),
            ),
            Field::text(
                "confidence",
                "The least of all values used: two_sources, source or memory.",
                |row| super::word(&row.line.confidence).into(),
            ),
            Field::int(
                "estimate",
                "1 where a number is an engineering estimate, else 0.",
                |row| row.line.estimate().into(),
            ),
            Field::text(
                "faults",
                "Why a segment, or the line, does not count; sentences.",
                |row| {
                    let all = row.line.faults.iter().map(|fault| fault.message.as_str());
                    all.collect::<Vec<_>>().join(". ").into()
                },
            ),
        ],
    }
}
