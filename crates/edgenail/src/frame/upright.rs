//! Upright members of one storey before they are placed.

use super::{MemberKind, Origin};
use crate::geometry::{Interval, Rect};
use crate::house::Segment;
use crate::length::Length;

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

    /// Makes up an end post, from a segment's end towards its middle by `step`: studs that stand there over the full
    /// height count, and others are added beside them until there are enough. Trimmers stop at a header and do not
    /// count.
    pub fn stand_post(&mut self, outermost: Upright, step: Length, segment: &Segment) {
        let span = Interval::new(segment.from, segment.to);
        let (mut stud, mut count) = (outermost, 0);
        while count < segment.end_posts && span.covers(stud.x) {
            let there = self
                .0
                .iter()
                .find(|other| other.x.overlaps(stud.x) && other.y.overlaps(stud.y))
                .copied();
            let next = if let Some(other) = there {
                if other.kind != MemberKind::Trimmer && other.kind != MemberKind::Cripple {
                    count += 1;
                }
                if step > Length::ZERO {
                    other.x.hi
                } else {
                    other.x.lo - step.abs()
                }
            } else {
                self.0.push(stud);
                count += 1;
                stud.x.lo + step
            };
            stud.x = Interval::new(next, next + step.abs());
        }
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
