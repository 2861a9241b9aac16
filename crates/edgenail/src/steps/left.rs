//! Panel edges that stay open for now, and when they are nailed.

use super::wall::Work;
use super::{OpenEdge, OpenReason};
use crate::edges::EdgeRun;
use crate::frame::{Member, MemberKind};
use crate::house::End;
use crate::layout::{Piece, Turn, When};

/// When an edge that was left open is nailed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Until {
    /// At this turn, before anything is hung at it.
    Turn(Turn),
    /// Once the neighbour at this end stands beside this stage.
    Neighbour(u32, End),
}

/// An edge that is left open at one turn.
pub(super) struct Left {
    pub(super) edge: OpenEdge,
    pub(super) piece: u32,
    pub(super) at: Turn,
    pub(super) until: Until,
}

/// Every edge that is left open, piece by piece in order of hanging.
pub(super) fn left_open(work: &Work<'_>) -> Vec<Left> {
    let mut all: Vec<Left> = Vec::new();
    for (turn, piece) in &work.pieces {
        for run in work.runs_of(piece.id) {
            let Some((reason, until)) = left(work, *turn, run) else {
                continue;
            };
            let edge = OpenEdge {
                panel: piece.mark.clone(),
                side: run.side,
                reason,
            };
            if !all.iter().any(|other| other.edge == edge && other.until == until) {
                all.push(Left {
                    edge,
                    piece: piece.id,
                    at: *turn,
                    until,
                });
            }
        }
    }
    all
}

/// Why a run stays open when its piece is nailed, and until when (common practice, no source).
fn left(work: &Work<'_>, turn: Turn, run: &EdgeRun) -> Option<(OpenReason, Until)> {
    let member = work.holder(run)?;
    let raised = Until::Turn(Turn {
        when: When::Raised,
        ..turn
    });
    let on_deck = turn.when == When::Deck;
    if matches!(
        member.kind,
        MemberKind::NeighbourStud | MemberKind::NeighbourPlate
    ) {
        let until = Until::Neighbour(turn.stage, nearer_end(work, member));
        return Some((OpenReason::SharedSeam, until));
    }
    if work.stage_of(member).is_none() {
        if over_the_top(work, member) {
            let until = Until::Turn(Turn {
                when: When::Roof,
                ..turn
            });
            return (turn.when != When::Roof).then_some((OpenReason::Trusses, until));
        }
        return on_deck.then_some((OpenReason::BelowWall, raised));
    }
    if !on_deck {
        return None;
    }
    if work.frame.straps.iter().any(|strap| {
        let area = run.area();
        let within = |lo, hi, from, to| lo <= to && from <= hi;
        within(area.x0, area.x1, strap.rect.x0, strap.rect.x1)
            && within(area.y0, area.y1, strap.rect.y0, strap.rect.y1)
    }) {
        return Some((OpenReason::StrapLine, raised));
    }
    let plate = matches!(
        member.kind,
        MemberKind::Mudsill | MemberKind::BottomPlate | MemberKind::TopPlate | MemberKind::RakedPlate
    );
    (plate && !run.side.is_plumb()).then_some((OpenReason::PlateLine, raised))
}

/// The end of the wall that a neighbour's member stands at.
fn nearer_end(work: &Work<'_>, member: &Member) -> End {
    let first = work.frame.sections.first().map(|section| section.x.lo);
    if first.is_some_and(|end| member.face.bounds().x0 < end) {
        End::Left
    } else {
        End::Right
    }
}

/// A member that belongs to no storey lies over the uppermost plate, not on a floor band.
fn over_the_top(work: &Work<'_>, member: &Member) -> bool {
    let face = member.face.bounds();
    work.frame
        .sections
        .iter()
        .any(|section| section.top <= face.y0 && section.x.overlaps(face.x_span()))
}

/// The pieces among these whose mark is named by an edge.
pub(super) fn pieces_of<'a>(work: &Work<'a>, left: &[&Left]) -> Vec<&'a Piece> {
    let named = |piece: &Piece| left.iter().any(|left| left.piece == piece.id);
    let own = work.pieces.iter().filter(|(_, piece)| named(piece));
    own.map(|(_, piece)| *piece).collect()
}
