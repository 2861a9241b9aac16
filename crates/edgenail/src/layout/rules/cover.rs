//! What the panels leave bare, and where they lie too near each other.

use super::Ground;
use crate::finding::{Finding, FindingCode, Severity};
use crate::frame::{Frame, MemberKind};
use crate::geometry::{Rect, Region, Shape, Trapezoid};
use crate::house::{Practice, Top};
use crate::layout::Piece;
use crate::length::Length;
use crate::wording::wording;

pub(super) fn judge(ground: &Ground<'_>, out: &mut Vec<Finding>) {
    for bare in bare(ground) {
        out.push(describe(ground, &bare));
    }
    neighbours(ground, out);
}

/// The parts of the wall that have to be covered and are not. At the top and at the bottom the outermost plate has to be
/// covered by the least that practice accepts; below or above that the sheathing may end.
fn bare(ground: &Ground<'_>) -> Vec<Shape> {
    let (frame, practice) = (ground.frame, ground.practice);
    let base = |face: &Rect| frame.sections.iter().any(|section| section.base == face.y0);
    let lowest = [MemberKind::Mudsill, MemberKind::BottomPlate, MemberKind::Rim];
    let low = slack(frame, practice, &lowest, base);
    let highest = [MemberKind::TopPlate, MemberKind::RakedPlate];
    let mut high = slack(frame, practice, &highest, |_| true);
    let sections = frame.sections.iter().zip(&ground.wall.sections);
    let hold_up = sections.map(|(place, section)| match section.top {
        Top::EaveTrusses(_) | Top::Flat => place.sheathing_top - place.top,
        Top::GableTruss(truss) if !truss.sheathed => place.sheathing_top - place.top,
        Top::GableTruss(_) | Top::Rake(_) => Length::ZERO,
    });
    high += hold_up.min().unwrap_or_default().max(Length::ZERO);
    // Single panels keep their own gaps: what lies within a gap of one counts as covered.
    let singly = ground.layout.bands.is_empty();
    let pieces = ground.layout.pieces.iter().flat_map(|piece| {
        let gap = if singly {
            practice.rim_gap.max(ground.gap(piece))
        } else {
            Length::ZERO
        };
        piece
            .cell
            .columns()
            .iter()
            .map(move |column| around(column).grown(gap))
    });
    let holes = frame.holes().into_iter().chain(pieces).collect();
    Region {
        lower: frame.lower.shifted(low),
        upper: frame.upper.shifted(-high),
        holes,
    }
    .pieces()
}

/// How far sheathing may end short of the outer face of the thinnest of these members that lie outermost.
fn slack(
    frame: &Frame,
    practice: &Practice,
    kinds: &[MemberKind],
    outermost: impl Fn(&Rect) -> bool,
) -> Length {
    let plates = frame.members.iter().filter(|member| kinds.contains(&member.kind));
    let thinnest = plates
        .filter_map(|member| member.face.is_rect())
        .filter(|face| outermost(face))
        .map(|rect| rect.height())
        .min();
    (thinnest.unwrap_or_default() - practice.plate_cover_least).max(Length::ZERO)
}

fn around(column: &Trapezoid) -> Rect {
    let (bottom, top) = (
        column.bottom.0.min(column.bottom.1),
        column.top.0.max(column.top.1),
    );
    Rect::new(column.x0, bottom, column.x1, top)
}

fn describe(ground: &Ground<'_>, bare: &Shape) -> Finding {
    let bounds = bare.bounds();
    let over = ground.frame.storeys.iter().map(|storey| storey.studs_to).max();
    let under = ground.frame.storeys.iter().map(|storey| storey.studs_from).min();
    let in_segment = ground
        .frame
        .segments
        .iter()
        .any(|segment| segment.rect.overlaps(&bounds));
    let (code, name, severity) = if over.is_some_and(|y| bounds.y0 >= y) {
        let allowed = ground.practice.bare_top_plate && !in_segment;
        let severity = if allowed {
            Severity::Advise
        } else {
            Severity::Refuse
        };
        (FindingCode::TopPlateBare, "topmost plate", severity)
    } else if under.is_some_and(|y| bounds.y1 <= y) {
        (FindingCode::BottomPlateBare, "lowest plate", Severity::Refuse)
    } else {
        (FindingCode::NotCovered, "wall", Severity::Refuse)
    };
    let size = wording![bounds.width(), " by ", bounds.height()];
    ground
        .finding(code, severity)
        .at(bounds.x0, bounds.y0)
        .against(
            wording![size, " bare"],
            wording![
                ground.practice.plate_cover_least,
                " of the outermost plate covered"
            ],
        )
        .says(wording![
            "A strip of the ",
            name,
            ", ",
            size,
            ", is left bare from ",
            bounds.x0,
            " along and ",
            bounds.y0,
            " up."
        ])
}

/// Panels that lie over each other or closer than the gap.
fn neighbours(ground: &Ground<'_>, out: &mut Vec<Finding>) {
    let mut order: Vec<(Rect, &Piece)> = ground
        .layout
        .pieces
        .iter()
        .map(|piece| (piece.outline.bounds(), piece))
        .collect();
    order.sort_by_key(|(bounds, piece)| (bounds.x0, piece.id));
    for (index, (bounds, piece)) in order.iter().enumerate() {
        let reach = ground.gap(piece).max(ground.practice.gap);
        let later = order
            .iter()
            .skip(index + 1)
            .take_while(|(other, _)| other.x0 < bounds.x1 + reach);
        for (other_bounds, other) in later {
            let gap = ground.gap(piece).max(ground.gap(other));
            if !bounds.grown(gap).overlaps(other_bounds) {
                continue;
            }
            let at = Rect {
                x0: other_bounds.x0,
                y0: other_bounds.y0.max(bounds.y0),
                ..*other_bounds
            };
            let marks = wording![piece.mark, " and ", other.mark];
            if piece.outline.overlap_area2(&other.outline) > 0 {
                out.push(
                    ground
                        .finding(FindingCode::PanelsOverlap, Severity::Refuse)
                        .on(&piece.mark)
                        .at(at.x0, at.y0)
                        .against("panels over each other", wording!["a gap of ", gap])
                        .says(wording!["Pieces ", marks, " lie over each other."]),
                );
            } else if piece
                .outline
                .columns()
                .iter()
                .any(|part| other.outline.intersects_rect(&around(part).grown(gap)))
            {
                out.push(
                    ground
                        .finding(FindingCode::GapTooSmall, Severity::Refuse)
                        .on(&piece.mark)
                        .at(at.x0, at.y0)
                        .against("a smaller gap", gap)
                        .says(wording![
                            "Pieces ",
                            marks,
                            " stand closer than the gap of ",
                            gap,
                            "."
                        ]),
                );
            }
        }
    }
}
