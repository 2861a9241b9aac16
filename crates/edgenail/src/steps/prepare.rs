//! What is set and checked before panels are hung.

use super::order::{List, marks};
use super::{Reach, Step, StepKind};
use crate::frame::{MemberId, PatchPlace};
use crate::geometry::Rect;
use crate::layout::{Piece, Turn};

impl List<'_, '_> {
    pub(super) fn anchors(&mut self, turn: Turn) -> Option<u32> {
        let work = self.work;
        let segments = work
            .frame
            .segments
            .iter()
            .filter(|segment| work.first_over(&segment.rect) == Some(turn));
        let (mut concerns, mut faces) = (Vec::new(), Vec::new());
        for segment in segments {
            concerns.push(segment.mark.clone());
            faces.push(segment.rect);
        }
        if concerns.is_empty() {
            return None;
        }
        let step = Step {
            panels: marks(&work.over(&faces)),
            concerns,
            after: self.stands.into_iter().collect(),
            ..self.blank(turn, StepKind::CheckAnchors)
        };
        Some(self.push(turn, step))
    }

    /// Blocks and studs that back a piece of this turn and none of an earlier one.
    pub(super) fn backing(&mut self, turn: Turn) -> Option<u32> {
        let work = self.work;
        let blocking = &work.built.blocking;
        let count = blocking.blocks.len() + blocking.studs.len() + blocking.widened.len();
        let members = &work.built.backed.members;
        let added = members.iter().skip(members.len().saturating_sub(count));
        let (mut blocks, mut studs, mut backed, mut reach) =
            (Vec::new(), Vec::new(), Vec::new(), Reach::Deck);
        for (index, member) in added.enumerate() {
            let face = member.face.bounds();
            let held = work.held_by(member.id, &face);
            if held.iter().filter_map(|piece| work.turn_of(piece.id)).min() != Some(turn) {
                continue;
            }
            let list: &mut Vec<MemberId> = if index < blocking.blocks.len() {
                &mut blocks
            } else {
                &mut studs
            };
            list.push(member.id);
            reach = reach.max(work.reach(turn, &face));
            backed.extend(held);
        }
        if blocks.is_empty() && studs.is_empty() {
            return None;
        }
        let named = |piece: &Piece| backed.iter().any(|other: &&Piece| other.id == piece.id);
        let pieces: Vec<&Piece> = work
            .pieces
            .iter()
            .map(|(_, piece)| *piece)
            .filter(|p| named(p))
            .collect();
        let step = Step {
            panels: marks(&pieces),
            blocks,
            studs,
            reach,
            after: self.stands.into_iter().collect(),
            ..self.blank(turn, StepKind::SetBlocks)
        };
        Some(self.push(turn, step))
    }

    pub(super) fn straps(&mut self, turn: Turn) -> Option<u32> {
        let work = self.work;
        let own = |strap: &&PatchPlace| work.first_over(&strap.rect) == Some(turn);
        let straps: Vec<&PatchPlace> = work.frame.straps.iter().filter(own).collect();
        if straps.is_empty() {
            return None;
        }
        let faces: Vec<Rect> = straps.iter().map(|strap| strap.rect).collect();
        let reach = faces.iter().map(|face| work.reach(turn, face)).max();
        let step = Step {
            panels: marks(&work.over(&faces)),
            concerns: straps.iter().map(|strap| strap.name.clone()).collect(),
            reach: reach.unwrap_or(Reach::Ground),
            after: self.stands.into_iter().collect(),
            ..self.blank(turn, StepKind::SetStraps)
        };
        Some(self.push(turn, step))
    }

    /// The line of the first course, before anything hangs.
    pub(super) fn line(&mut self, turn: Turn) -> Option<u32> {
        if self.steps.iter().any(|step| step.kind == StepKind::SnapLine) {
            return None;
        }
        let step = Step {
            after: self.stands.into_iter().collect(),
            ..self.blank(turn, StepKind::SnapLine)
        };
        Some(self.push(turn, step))
    }
}
