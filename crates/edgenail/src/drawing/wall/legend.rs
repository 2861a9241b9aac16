//! The legend.

use super::arrange::split;
use super::nails::layer_of;
use super::{Canvas, Shows};
use crate::drawing::page::{List, Row, Sample};
use crate::drawing::{Layer, Micron};
use crate::nailing::Zone;
use crate::wording::counted;

/// Dots of a sample: small where the dashes matter, large where round and square do.
const ZONE_DOT: Micron = 510;
const KIND_DOT: Micron = 900;

impl Canvas<'_> {
    /// The legend row by row; with everything that it can say where the drawing is only being laid out.
    pub(super) fn legend(&self, shows: Shows, whole: bool) -> Vec<List> {
        split(&[], self.legend_rows(shows, whole))
    }

    /// What lines, hatches and signs of this drawing mean; everything that a legend can say where `whole`.
    fn legend_rows(&self, shows: Shows, whole: bool) -> Vec<Row> {
        let drawn = |layer: Layer| whole || self.drawing.marks.iter().any(|mark| mark.layer == layer);
        let mut rows = vec![Row::Heading("Legend".into())];
        let mut add = |used: bool, sample: Sample, text: &str| {
            if used {
                rows.push(Row::Sample(sample, text.to_owned()));
            }
        };
        add(drawn(Layer::Panel), Sample::Line(Layer::Panel), "panel edge");
        add(
            shows == Shows::Sheathing,
            Sample::Axis,
            "strength axis of the sheet",
        );
        add(drawn(Layer::Ring), Sample::Ring, "turn in the order of hanging");
        add(
            drawn(Layer::HiddenMember),
            Sample::Line(Layer::HiddenMember),
            "member behind the sheets",
        );
        add(drawn(Layer::Member), Sample::Patch(Layer::Member), "member");
        add(
            drawn(Layer::Block),
            Sample::Patch(Layer::Block),
            "block, set before the sheets",
        );
        add(
            drawn(Layer::AddedStud),
            Sample::Patch(Layer::AddedStud),
            "stud or piece added to carry a seam",
        );
        add(
            drawn(Layer::SubfloorEdge),
            Sample::Patch(Layer::SubfloorEdge),
            "edge of the subfloor: no nails",
        );
        add(drawn(Layer::Ground), Sample::Patch(Layer::Ground), "concrete");
        add(
            drawn(Layer::FreeEdge),
            Sample::Line(Layer::FreeEdge),
            "panel edge that nothing backs",
        );
        add(
            drawn(Layer::Segment),
            Sample::Line(Layer::Segment),
            "shear segment or braced panel: mark, nails edge / field",
        );
        add(
            drawn(Layer::Start),
            Sample::Patch(Layer::Start),
            "where sheets and stud layout start",
        );
        add(
            drawn(Layer::Opening),
            Sample::Patch(Layer::Opening),
            "rough opening",
        );
        add(drawn(Layer::Datum), Sample::Line(Layer::Datum), "datum line");
        add(drawn(Layer::Flag), Sample::Flag, "finding, see the list");
        let words = [
            (Zone::Edge, "nails along panel edges"),
            (
                Zone::Boundary,
                "nails along plates, rims and end posts of a segment",
            ),
            (Zone::Opening, "nails along openings"),
            (Zone::Field, "nails on members between"),
        ];
        for (zone, text) in words {
            add(
                drawn(layer_of(zone)),
                Sample::Nails(layer_of(zone), ZONE_DOT, false),
                text,
            );
        }
        if shows == Shows::Sheathing {
            rows.extend(self.nail_rows());
        }
        rows
    }

    /// How many nails of each kind the wall takes.
    fn nail_rows(&self) -> impl Iterator<Item = Row> {
        let rows = |kind: u32| self.input.nailing.rows.iter().filter(move |row| row.nail == kind);
        let stock = &self.input.house.stock.nails;
        self.nail_kinds()
            .into_iter()
            .enumerate()
            .map(move |(index, kind)| {
                let name = stock.get(kind as usize).map_or("", |nail| &nail.name);
                let count: u64 = rows(kind).map(|row| u64::from(row.count())).sum();
                Row::Sample(
                    Sample::Nails(Layer::EdgeNails, KIND_DOT, index > 0),
                    format!("{name}: {}", counted(count, "nail", "nails")),
                )
            })
    }
}
