//! Plywood of few plies across studs that stand wide apart.

use super::Ground;
use crate::finding::{Finding, FindingCode, Severity};
use crate::house::StrengthAxis;
use crate::layout::{Piece, Running, marks};
use crate::wording::wording;

/// Pieces of few plies whose strength runs up studs too far apart for them (a prescriptive code's rule, from memory, not
/// checked against print).
pub(super) fn judge(ground: &Ground<'_>, out: &mut Vec<Finding>) {
    let limits = &ground.practice.limits;
    let weak = |piece: &&Piece| {
        let Some(sheet) = ground.sheet(piece) else {
            return false;
        };
        let up = matches!(
            (piece.running, sheet.strength_axis),
            (Running::Upright, StrengthAxis::Length) | (Running::Flat, StrengthAxis::Width)
        );
        let bounds = piece.outline.bounds();
        let wide = ground.frame.storeys.iter().any(|storey| {
            bounds.y0 < storey.studs_to
                && storey.studs_from < bounds.y1
                && storey.spacing > limits.few_plies_studs
        });
        up && wide && sheet.plies.is_some_and(|plies| plies <= limits.few_plies_most)
    };
    let pieces: Vec<&Piece> = ground.layout.pieces.iter().filter(weak).collect();
    let Some(first) = pieces.first() else { return };
    let bounds = first.outline.bounds();
    let studs = limits.few_plies_studs;
    out.push(
        ground
            .finding(FindingCode::RunningDirection, Severity::Mend)
            .at(bounds.x0, bounds.y0)
            .against(
                wording![
                    "plywood of ",
                    limits.few_plies_most,
                    " plies or fewer up the studs"
                ],
                wording!["its strength across studs more than ", studs, " apart"],
            )
            .says(wording![
                "Pieces ",
                marks(pieces.iter().copied()),
                " are plywood of ",
                limits.few_plies_most,
                " plies or fewer and run up studs more than ",
                studs,
                " apart; run them across, or take plywood of more plies."
            ]),
    );
}
