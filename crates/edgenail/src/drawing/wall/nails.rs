//! Every nail, row by row.

use super::Canvas;
use crate::drawing::view::on_paper;
use crate::drawing::{Extent, Form, Layer};
use crate::length::Length;
use crate::nailing::Zone;

/// The layer of a zone.
pub(super) const fn layer_of(zone: Zone) -> Layer {
    match zone {
        Zone::Edge => Layer::EdgeNails,
        Zone::Boundary => Layer::BoundaryNails,
        Zone::Opening => Layer::OpeningNails,
        Zone::Field => Layer::FieldNails,
    }
}

impl Canvas<'_> {
    /// Nails in the order of their stock that this wall uses; the first is drawn round, the others square.
    pub(super) fn nail_kinds(&self) -> Vec<u32> {
        let mut kinds: Vec<u32> = self.input.nailing.rows.iter().map(|row| row.nail).collect();
        kinds.sort_unstable();
        kinds.dedup();
        kinds
    }

    /// Draws the rows and keeps labels off them where that is possible.
    pub(super) fn nails(&mut self) {
        let round = self.nail_kinds().first().copied();
        // A head is about 1/4 in. across: drawn true where that can be seen.
        let dot = on_paper(Length::sixteenths(5), self.view.denominator).clamp(220, 500);
        for row in &self.input.nailing.rows {
            let (from, to) = (self.view.spot(row.from), self.view.spot(row.to));
            let reach = Extent::new(
                from.x.min(to.x),
                from.y.min(to.y),
                from.x.max(to.x),
                from.y.max(to.y),
            );
            self.room.spare(reach.grown(dot / 2));
            let form = Form::Nails {
                from,
                to,
                spaces: row.spaces,
                first: row.first,
                last: row.last,
                dot,
                square: Some(row.nail) != round,
            };
            self.drawing.mark(layer_of(row.zone), form);
        }
    }
}
