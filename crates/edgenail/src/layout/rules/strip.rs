//! Pieces narrower than the least strip.

use super::{Ground, is_seam};
use crate::finding::{Finding, FindingCode, Severity};
use crate::layout::Piece;
use crate::length::Length;
use crate::wording::wording;

/// The smaller side of a piece's cell against the least strip, with practice's allowance. Free of it are strips along a
/// floor band, pieces over and under openings, and the last piece at a wall end.
pub(super) fn judge(ground: &Ground<'_>, out: &mut Vec<Finding>) {
    for piece in &ground.layout.pieces {
        let bounds = piece.cell.bounds();
        let (width, height) = (bounds.width(), bounds.height());
        let size = width.min(height);
        let practice = ground.practice;
        if size + practice.strip_allowance >= practice.strip_least {
            continue;
        }
        let at_end = width <= height && !(is_seam(piece.sides.left) && is_seam(piece.sides.right));
        let filler = size < practice.filler_least;
        let free = at_end
            || beside_opening(ground, piece)
            || (height < width && ground.frame.ties_band(bounds.y_span()));
        // At a wall end the last two pieces share what is left, once it gets narrow.
        let narrow_end = at_end && size < practice.strip_least.half();
        let severity = match (filler, free, narrow_end) {
            (true, ..) => Severity::Refuse,
            (false, true, true) => Severity::Advise,
            (false, true, false) => continue,
            (false, false, _) if ground.in_segment(piece) => Severity::Refuse,
            (false, false, _) => Severity::Mend,
        };
        let remedy = if at_end {
            "share what is left between the last two pieces, on a stud"
        } else {
            "move the seam"
        };
        out.push(
            ground
                .finding(FindingCode::Sliver, severity)
                .on(&piece.mark)
                .at(bounds.x0, bounds.y0)
                .against(size, least(ground))
                .says(wording![
                    "Piece ",
                    piece.mark,
                    " is only ",
                    size,
                    " wide; ",
                    remedy,
                    "."
                ]),
        );
    }
}

fn least(ground: &Ground<'_>) -> Length {
    ground.practice.strip_least - ground.practice.strip_allowance
}

/// It lies over or under an opening: a level edge of its cell runs along one.
fn beside_opening(ground: &Ground<'_>, piece: &Piece) -> bool {
    let bounds = piece.cell.bounds();
    ground.frame.openings.iter().any(|opening| {
        let over = opening.rect.y1 >= bounds.y0 && opening.rect.y1 < bounds.y1;
        let under = opening.rect.y0 <= bounds.y1 && opening.rect.y0 > bounds.y0;
        opening.rect.x_span().overlaps(bounds.x_span()) && (over || under)
    })
}
