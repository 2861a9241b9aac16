//! The table `interfaces`.

use super::{Results, WallName};
use crate::capacity::{Carrier, InterfaceShear, StoreyLine};
use crate::table::{Field, Schema};

pub(super) struct Row<'a> {
    wall: WallName<'a>,
    line: &'a StoreyLine,
    at: &'a InterfaceShear,
}

pub(super) fn rows<'a>(results: &Results<'a>) -> Vec<Row<'a>> {
    let lines: &'a [StoreyLine] = results.capacity;
    lines
        .iter()
        .flat_map(|line| {
            let wall = results.wall_name(line.wall);
            line.interfaces.iter().map(move |at| Row { wall, line, at })
        })
        .collect()
}

/// What carries it, in words.
fn carried_by(carrier: &Carrier) -> String {
    match carrier {
        Carrier::Fasteners { name, .. } => name.clone(),
        Carrier::Sheathing { .. } => "sheathing that crosses".to_owned(),
        Carrier::Nothing => "nothing given: designer to specify".to_owned(),
    }
}

pub(super) fn schema<'a>() -> Schema<Row<'a>> {
    Schema {
        name: "interfaces",
        meaning: "Where a storey's line hands its shear on, and what carries it there. A number that does not apply is -1.",
        fields: vec![
            Field::text("wall", "The wall.", |row: &Row<'_>| row.wall.name.into()),
            Field::int("wall_index", "Place of the wall in the house.", |row| {
                row.wall.index.into()
            }),
            Field::text("storey", "The storey whose shear it is.", |row| {
                (&*row.line.storey).into()
            }),
            Field::text("load", "wind or seismic.", |row| {
                super::word(&row.line.load).into()
            }),
            Field::text(
                "interface",
                "roof_to_plate, plate_to_rim, rim_to_plate, rim_to_sill, sill_to_concrete or plate_to_floor.",
                |row| super::word(&row.at.interface).into(),
            ),
            Field::length("y", "Its height.", |row| row.at.y),
            Field::float(Some("lb"), "demand", "What it hands on.", |row| row.at.demand_lb),
            Field::float(
                Some("lb/ft"),
                "unit_demand",
                "The same over the length that carries it.",
                |row| row.at.demand_plf,
            ),
            Field::text(
                "carried_by",
                "The designer's fasteners, sheathing that crosses, or nothing.",
                |row| carried_by(&row.at.carrier).into(),
            ),
            Field::int(
                "nails_above",
                "Nails of crossing sheathing above, within the segments, or -1.",
                |row| match row.at.carrier {
                    Carrier::Sheathing { nails_above, .. } => nails_above.into(),
                    _ => -1,
                },
            ),
            Field::int(
                "nails_below",
                "Nails of crossing sheathing below, or -1.",
                |row| match row.at.carrier {
                    Carrier::Sheathing { nails_below, .. } => nails_below.into(),
                    _ => -1,
                },
            ),
            Field::float(
                Some("lb"),
                "nail_load",
                "Load of each nail on the side that has fewer, from this shear alone, or -1; whether they carry it beside \
                 their own load is not checked.",
                |row| match row.at.carrier {
                    Carrier::Sheathing { each_lb, .. } => each_lb,
                    _ => -1.0,
                },
            ),
            Field::float(
                None,
                "ratio",
                "Demand over what given fasteners carry, or -1.",
                |row| match row.at.carrier {
                    Carrier::Fasteners { ratio, .. } => ratio,
                    _ => -1.0,
                },
            ),
        ],
    }
}
