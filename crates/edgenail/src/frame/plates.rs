//! Plates of a storey.

use super::builder::{Material, Piece};
use super::{Axis, Frame, MemberKind};
use crate::geometry::{Interval, Rect};
use crate::house::Plate;
use crate::length::Length;

/// Lays level plates from `y` up and returns where they end. Stretches in `cuts` are left out of a plate that
/// reaches above their lower edge: an opening that comes down to it.
pub(super) fn lay_plates(
    frame: &mut Frame,
    material: &Material,
    kind: MemberKind,
    plates: &[Plate],
    x: Interval,
    y: Length,
    cuts: &[Rect],
) -> Length {
    let mut y = y;
    for plate in plates {
        let top = y + plate.thickness;
        let cut: Vec<Interval> = cuts
            .iter()
            .filter(|cut| cut.y0 < top && y < cut.y1)
            .map(Rect::x_span)
            .collect();
        for span in Interval::subtract(x, &Interval::union(cut)) {
            let piece = Piece {
                treated: plate.treated,
                ..Piece::said(kind, Axis::Horizontal)
            };
            frame.put(material, piece, Rect::from_spans(span, Interval::new(y, top)));
        }
        y = top;
    }
    y
}
