//! The table `resistance`.

use super::{Results, WallName};
use crate::capacity::{LinePier, Resists, SegmentBuilt, StoreyLine};
use crate::table::{Field, Schema};

pub(super) struct Row<'a> {
    wall: WallName<'a>,
    line: &'a StoreyLine,
    segment: &'a SegmentBuilt,
    /// Of a line by segments or of a perforated wall.
    pier: Option<&'a LinePier>,
    /// Unit shear beside openings that force is handed around.
    beside: Option<f64>,
    /// Its ends are held by itself.
    alone: bool,
}

pub(super) fn rows<'a>(results: &Results<'a>) -> Vec<Row<'a>> {
    let lines: &'a [StoreyLine] = results.capacity;
    let mut rows = Vec::new();
    for line in lines {
        for (index, segment) in line.segments.iter().enumerate() {
            let (pier, beside, alone) = match &line.resists {
                Some(Resists::Line { found, .. }) => {
                    let from = segment.place.rect.x0 - line.from;
                    let pier = found.piers.iter().find(|pier| pier.from == from);
                    (pier, None, found.openings.is_none())
                }
                Some(Resists::Transfer { forces, .. }) => (None, forces.beside.get(index).copied(), false),
                None => (None, None, false),
            };
            rows.push(Row {
                wall: results.wall_name(line.wall),
                line,
                segment,
                pier,
                beside,
                alone,
            });
        }
    }
    rows
}

impl Row<'_> {
    /// What its own ends hold, where it is held by itself.
    fn tension(&self) -> Option<f64> {
        self.pier
            .filter(|pier| self.alone && pier.capacity > 0.0)
            .map(|pier| pier.ends.tension)
    }
}

pub(super) fn schema<'a>() -> Schema<Row<'a>> {
    Schema {
        name: "resistance",
        meaning: "A full-height segment as it was built, and its share of a storey's demand. It does not replace the code in \
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
            Field::text("mark", "The designer's mark.", |row| {
                (&*row.segment.place.mark).into()
            }),
            Field::length("x0", "Left end.", |row| row.segment.place.rect.x0),
            Field::length("x1", "Right end.", |row| row.segment.place.rect.x1),
            Field::float(None, "height_over_length", "Its proportion.", |row| {
                row.segment.built.pier.ratio()
            }),
            Field::length(
                "edge_spacing",
                "Listed edge nailing that its widest gap between nails allows.",
                |row| row.segment.built.assembly.edge_spacing,
            ),
            Field::length("widest_gap", "Its widest gap between nails.", |row| {
                row.segment.built.widest_gap
            }),
            Field::int("blocked", "1 where every panel edge is backed, else 0.", |row| {
                row.segment.built.assembly.blocked.into()
            }),
            Field::float(
                Some("lb/ft"),
                "nominal",
                "Nominal unit shear of what was built.",
                |row| row.segment.unit.nominal,
            ),
            Field::float(
                Some("lb/ft"),
                "design",
                "Design unit shear of what was built; a line takes that of its weakest segment.",
                |row| row.segment.unit.design,
            ),
            Field::float(
                None,
                "aspect_factor",
                "What counts of it for its proportion; 0 where it is too slender, or -1.",
                |row| row.pier.map_or(-1.0, |pier| pier.aspect.factor.unwrap_or(0.0)),
            ),
            Field::float(
                Some("lb/ft"),
                "shear",
                "Its share of the demand; beside openings where force is handed around them; or -1.",
                |row| row.pier.map(|pier| pier.shear).or(row.beside).unwrap_or(-1.0),
            ),
            Field::float(
                Some("lb"),
                "resists",
                "Its design capacity in the line, or -1.",
                |row| row.pier.map_or(-1.0, |pier| pier.capacity),
            ),
            Field::text(
                "hold_down",
                "Whether its own ends are held down: yes or no.",
                |row| (if row.tension().is_some() { "yes" } else { "no" }).into(),
            ),
            Field::float(
                Some("lb"),
                "tension",
                "Tension at its ends with what comes from above; below 0 nothing pulls; 0 where the line is held at its ends only.",
                |row| row.tension().unwrap_or(0.0),
            ),
        ],
    }
}
