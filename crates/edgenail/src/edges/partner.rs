//! Which panel faces another across a joint.

use super::{PanelEdge, Side};
use crate::geometry::Interval;
use crate::layout::Layout;
use crate::length::Length;

/// A level or plumb edge of a piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Facing {
    side: Side,
    at: Length,
    lo: Length,
    hi: Length,
    piece: u32,
}

/// Every level or plumb edge of a layout, ordered so that those that face an edge are found at once.
#[derive(Clone, Debug)]
pub struct Partners {
    edges: Vec<Facing>,
    reach: Length,
}

impl Partners {
    /// Orders the edges of a layout; panels no further apart than `reach` face each other.
    pub fn new(layout: &Layout, reach: Length) -> Self {
        let mut edges = Vec::with_capacity(layout.pieces.len() * 4);
        for piece in &layout.pieces {
            let straight = super::panel_edges(&piece.outline).filter(|edge| !edge.is_sloped());
            edges.extend(straight.map(|edge| {
                let Interval { lo, hi } = edge.span();
                Facing {
                    side: edge.side,
                    at: edge.at(),
                    lo,
                    hi,
                    piece: piece.id,
                }
            }));
        }
        edges.sort_unstable();
        Self { edges, reach }
    }

    /// The stretches over which other pieces face an edge of `piece`, nearest first, written over `out`.
    pub fn of(&self, piece: u32, edge: &PanelEdge, out: &mut Vec<(Interval, u32)>) {
        out.clear();
        if edge.lie() == super::Lie::Sloped {
            return;
        }
        let (side, at, span) = (edge.side.opposite(), edge.at(), edge.span());
        let outward = matches!(edge.side, Side::Right | Side::Top);
        let (lo, hi) = if outward {
            (at, at + self.reach)
        } else {
            (at - self.reach, at)
        };
        let mut from = self.edges.partition_point(|e| (e.side, e.at) < (side, lo));
        while let Some(first) = self.edges.get(from).filter(|e| e.side == side && e.at <= hi) {
            let until = self.edges.partition_point(|e| (e.side, e.at) <= (side, first.at));
            let line = self.edges.get(from..until).unwrap_or_default();
            let near = line.partition_point(|e| e.lo <= span.lo).saturating_sub(1);
            let meeting = line
                .get(near..)
                .unwrap_or_default()
                .iter()
                .take_while(|e| e.lo < span.hi);
            let shared = meeting.filter(|e| e.piece != piece).filter_map(|e| {
                let shared = span.intersect(Interval { lo: e.lo, hi: e.hi })?;
                Some((shared, e.piece))
            });
            out.extend(shared);
            from = until;
        }
        if !outward {
            out.reverse();
        }
    }
}
