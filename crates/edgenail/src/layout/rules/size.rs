//! Panels against the sheets that they are cut from.

use super::Ground;
use crate::finding::{Finding, FindingCode, Severity};
use crate::house::Face;
use crate::layout::cutter::sheet_size;
use crate::layout::{Piece, Running, category_thickness, marks};
use crate::length::Length;
use crate::wording::wording;

pub(super) fn judge(ground: &Ground<'_>, out: &mut Vec<Finding>) {
    let limits = &ground.practice.limits;
    let mut weak: Vec<&Piece> = Vec::new();
    for piece in &ground.layout.pieces {
        let bounds = piece.outline.bounds();
        let Some(sheet) = ground.sheet(piece) else {
            out.push(
                ground
                    .finding(FindingCode::PanelTooLarge, Severity::Refuse)
                    .on(&piece.mark)
                    .at(bounds.x0, bounds.y0)
                    .against("a sheet that is not in stock", "a sheet of the stock")
                    .says(wording![
                        "Piece ",
                        piece.mark,
                        " is cut from a sheet that is not in stock."
                    ]),
            );
            continue;
        };
        let (width, height) = sheet_size(sheet, piece.running);
        if bounds.width() > width || bounds.height() > height {
            let size = |width: Length, height: Length| wording![width, " wide, ", height, " high"];
            out.push(
                ground
                    .finding(FindingCode::PanelTooLarge, Severity::Refuse)
                    .on(&piece.mark)
                    .at(bounds.x0, bounds.y0)
                    .against(size(bounds.width(), bounds.height()), size(width, height))
                    .says(wording![
                        "Piece ",
                        piece.mark,
                        " is ",
                        bounds.width(),
                        " by ",
                        bounds.height(),
                        "; the sheet ",
                        sheet.name,
                        " gives ",
                        width,
                        " by ",
                        height,
                        " this way."
                    ]),
            );
        }
        let thin = category_thickness(&sheet.category)
            .is_some_and(|thickness| thickness <= limits.weak_upright_thickness);
        let studs = ground.frame.storeys.iter().filter(|storey| {
            bounds.y0 < storey.studs_to
                && storey.studs_from < bounds.y1
                && storey.spacing >= limits.weak_upright_studs
        });
        if thin
            && piece.running == Running::Upright
            && ground.wall.face == Face::Exterior
            && studs.count() > 0
        {
            weak.push(piece);
        }
    }
    if let Some(first) = weak.first() {
        let bounds = first.outline.bounds();
        let studs = limits.weak_upright_studs;
        let marks = marks(weak.iter().copied());
        out.push(
            ground
                .finding(FindingCode::RunningDirection, Severity::Advise)
                .at(bounds.x0, bounds.y0)
                .against("thin panels upright", wording!["across studs ", studs, " apart"])
                .says(wording![
                    "Pieces ",
                    marks,
                    " run upright on studs ",
                    studs,
                    " apart and are weak against wind; run them flat or ask the designer."
                ]),
        );
    }
}
