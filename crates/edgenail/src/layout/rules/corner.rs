//! Seams at the corners of openings.

use super::Ground;
use crate::finding::{Finding, FindingCode, Severity};
use crate::length::Length;
use crate::wording::wording;

/// A plumb seam keeps one stud bay, and at least practice's clearance, from the corners of openings that it passes.
pub(super) fn judge(ground: &Ground<'_>, out: &mut Vec<Finding>) {
    let seams = ground.plumb_seams();
    for opening in &ground.frame.openings {
        let bay = ground
            .frame
            .storeys
            .get(opening.storey as usize)
            .map(|storey| storey.spacing);
        let clear = bay.unwrap_or_default().max(ground.practice.corner_clear);
        for (x, heights) in &seams {
            let corner = |y: Length| heights.lo < y && y < heights.hi;
            let (low, high) = (corner(opening.rect.y0), corner(opening.rect.y1));
            let near = [opening.rect.x0, opening.rect.x1]
                .into_iter()
                .filter(|side| (*side - *x).abs() < clear)
                .min_by_key(|side| (*side - *x).abs());
            let (Some(side), true) = (near, low || high) else {
                continue;
            };
            let away = (side - *x).abs();
            out.push(
                ground
                    .finding(FindingCode::SeamAtOpeningCorner, Severity::Advise)
                    .at(*x, if high { opening.rect.y1 } else { opening.rect.y0 })
                    .against(wording![away, " away"], wording!["one bay, ", clear])
                    .says(wording![
                        "The seam at ",
                        *x,
                        " stands ",
                        away,
                        " from a corner of ",
                        opening.name,
                        ", where cracks start."
                    ]),
            );
        }
    }
}
