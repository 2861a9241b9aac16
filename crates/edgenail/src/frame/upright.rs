//! Upright members of one storey before they are placed.

use super::{MemberKind, Origin};
use crate::geometry::{Interval, Rect};

/// A stud, king, trimmer or cripple.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Upright {
    pub kind: MemberKind,
    pub origin: Origin,
    pub x: Interval,
    pub y: Interval,
    pub opening: Option<u32>,
}

/// Uprights that do not stand in one another.
#[derive(Debug, Default)]
pub(super) struct Uprights(pub Vec<Upright>);

impl Uprights {
    /// Stands an upright unless something stands there already: who comes first stays. Says whether it stands.
    pub fn stand(&mut self, upright: Upright) -> bool {
        let free = !upright.x.is_empty()
            && !upright.y.is_empty()
            && !self
                .0
                .iter()
                .any(|other| other.x.overlaps(upright.x) && other.y.overlaps(upright.y));
        if free {
            self.0.push(upright);
        }
        free
    }

    /// Parts every upright that a header runs through: what is below carries it, what is above is a cripple.
    pub fn part_at(&mut self, header: Rect) {
        let mut parted = Vec::with_capacity(self.0.len());
        for upright in &self.0 {
            if !upright.x.overlaps(header.x_span()) || !upright.y.overlaps(header.y_span()) {
                parted.push(*upright);
                continue;
            }
            if upright.y.lo < header.y0 {
                parted.push(Upright {
                    y: Interval::new(upright.y.lo, header.y0),
                    ..*upright
                });
            }
            if header.y1 < upright.y.hi {
                let y = Interval::new(header.y1, upright.y.hi);
                parted.push(Upright {
                    kind: MemberKind::Cripple,
                    y,
                    ..*upright
                });
            }
        }
        self.0 = parted;
    }

    /// From left to right, then from the bottom.
    pub fn sorted(mut self) -> Vec<Upright> {
        self.0
            .sort_by_key(|upright| (upright.x.lo, upright.y.lo, upright.x.hi));
        self.0
    }
}
