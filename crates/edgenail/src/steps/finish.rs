//! What is done once panels are nailed.

use super::left::{Left, Until, pieces_of};
use super::order::{List, edges, marks};
use super::{Event, Reach, Step, StepKind};
use crate::house::End;
use crate::layout::{Piece, Turn, When};

impl List<'_, '_> {
    /// Nails what was left open until this turn.
    pub(super) fn left_before(&mut self, turn: Turn) {
        let until = |left: &&Left| left.until == Until::Turn(turn);
        let left: Vec<&Left> = self.left.iter().filter(until).collect();
        if left.is_empty() {
            return;
        }
        let step = self.taking_up(turn, StepKind::NailLeftEdges, &left);
        self.push(turn, step);
    }

    fn taking_up(&self, turn: Turn, kind: StepKind, left: &[&Left]) -> Step {
        let pieces = pieces_of(self.work, left);
        let mut after: Vec<u32> = self.stands.into_iter().collect();
        after.extend(self.nailing(&pieces));
        Step {
            reach: self.standing_reach(turn, &pieces),
            panels: marks(&pieces),
            takes_up: edges(left),
            after,
            ..self.blank(turn, kind)
        }
    }

    /// From where pieces are reached once the wall stands.
    pub(super) fn standing_reach(&self, turn: Turn, pieces: &[&Piece]) -> Reach {
        let reach = pieces.iter().map(|piece| self.work.reach(turn, &piece.blank()));
        reach.max().unwrap_or(Reach::Ground)
    }

    /// Numbers of the steps that nail these pieces.
    pub(super) fn nailing(&self, pieces: &[&Piece]) -> Vec<u32> {
        let named = |step: &&Step| pieces.iter().any(|piece| step.panels.contains(&piece.mark));
        let own = self.steps.iter().filter(|step| step.kind == StepKind::Nail);
        own.filter(named).map(|step| step.number).collect()
    }

    /// Openings and holes around which everything hangs by this turn.
    pub(super) fn cut_out(&mut self, turn: Turn, nailed: u32) {
        let work = self.work;
        let mut concerns = Vec::new();
        let mut pieces: Vec<&Piece> = Vec::new();
        for (index, opening) in (0u32..).zip(&work.frame.openings) {
            let cut = work.cut_in_place(index);
            if work.last_of(&cut) == Some(turn) {
                concerns.push(opening.name.clone());
                pieces.extend(cut);
            }
        }
        for hole in &work.frame.penetrations {
            let cut = work.over(&[hole.rect]);
            if work.last_of(&cut) == Some(turn) {
                concerns.push(hole.name.clone());
                pieces.extend(cut);
            }
        }
        if concerns.is_empty() {
            return;
        }
        let pieces: Vec<&Piece> = work
            .pieces
            .iter()
            .map(|(_, piece)| *piece)
            .filter(|piece| pieces.iter().any(|other| other.id == piece.id))
            .collect();
        let mut after = self.nailing(&pieces);
        after.push(nailed);
        let step = Step {
            panels: marks(&pieces),
            concerns,
            reach: self.standing_reach(turn, &pieces),
            after,
            ..self.blank(turn, StepKind::CutOut)
        };
        self.push(turn, step);
    }

    /// What laps a neighbour beside this stage.
    pub(super) fn laps(&mut self, stage: u32) {
        let turn = Turn {
            stage,
            when: When::Raised,
        };
        for end in [End::Left, End::Right] {
            let until = |left: &&Left| left.until == Until::Neighbour(stage, end);
            let left: Vec<&Left> = self.left.iter().filter(until).collect();
            let Some(neighbour) = self.work.neighbour(end).filter(|_| !left.is_empty()) else {
                continue;
            };
            let mut step = self.taking_up(turn, StepKind::Lap, &left);
            step.concerns.push(neighbour.to_owned());
            step.waits_for.push(Event::WallStands {
                wall: neighbour.to_owned(),
                storey: step.storey.clone(),
            });
            self.push(turn, step);
        }
    }

    /// The hold points before the wall is covered.
    pub(super) fn close(&mut self) {
        let Some((turn, _)) = self.work.pieces.last() else {
            return;
        };
        let done = |step: &&Step| {
            matches!(
                step.kind,
                StepKind::Nail | StepKind::NailLeftEdges | StepKind::CutOut | StepKind::Lap
            )
        };
        let after: Vec<u32> = self.steps.iter().filter(done).map(|step| step.number).collect();
        let pieces: Vec<&Piece> = self.work.pieces.iter().map(|(_, piece)| *piece).collect();
        let all = self.whole();
        let up = Turn {
            when: When::Raised,
            ..*turn
        };
        let step = Step {
            storey: all.clone(),
            panels: marks(&pieces),
            reach: self.standing_reach(up, &pieces),
            after,
            ..self.blank(*turn, StepKind::ShowNailing)
        };
        let shown = self.push(*turn, step);
        let segments: Vec<String> = self
            .work
            .frame
            .segments
            .iter()
            .map(|segment| segment.mark.clone())
            .collect();
        if !segments.is_empty() {
            let step = Step {
                storey: all,
                concerns: segments,
                reach: Reach::Ground,
                after: vec![shown],
                ..self.blank(*turn, StepKind::TightenNuts)
            };
            self.push(*turn, step);
        }
    }

    /// Names of all storeys that were worked on.
    fn whole(&self) -> String {
        let mut names: Vec<&str> = self.steps.iter().map(|step| step.storey.as_str()).collect();
        names.dedup();
        names.join(" and ")
    }
}
