//! Puts the steps of a wall in order.

use super::left::{Left, Until, left_open};
use super::text;
use super::wall::Work;
use super::{Event, OpenEdge, Reach, Step, StepKind};
use crate::evaluate::Evaluated;
use crate::frame::Frame;
use crate::house::House;
use crate::layout::{Piece, Turn, When};
use crate::start::Start;

/// The steps of a wall, numbered from 1; none where nothing hangs on it.
///
/// A step waits only for earlier ones; what it waits for beyond the wall is listed with it.
///
/// ```
/// use edgenail::steps::StepKind;
/// let plan = edgenail::plan_json(edgenail::demo::HOUSE_JSON)?;
/// let steps = &plan.walls()[0].steps;
/// assert_eq!(steps[0].kind, StepKind::Check);
/// let hung: usize = steps
///     .iter()
///     .filter(|step| step.kind == StepKind::HangPanels)
///     .map(|step| step.panels.len())
///     .sum();
/// assert_eq!(hung, plan.walls()[0].built.layout.pieces.len());
/// # Ok::<(), edgenail::Error>(())
/// ```
pub fn steps(house: &House, frame: &Frame, built: &Evaluated, start: &Start) -> Vec<Step> {
    let Some(work) = Work::new(house, frame, built, start) else {
        return Vec::new();
    };
    let left = left_open(&work);
    let mut turns: Vec<Turn> = work.pieces.iter().map(|(turn, _)| *turn).collect();
    turns.extend(left.iter().filter_map(|left| match left.until {
        Until::Turn(turn) => Some(turn),
        Until::Neighbour(..) => None,
    }));
    let raised = |turn: &Turn| Turn {
        when: When::Raised,
        ..*turn
    };
    let lying: Vec<Turn> = turns
        .iter()
        .filter(|turn| turn.when == When::Deck)
        .map(raised)
        .collect();
    turns.extend(lying);
    turns.sort_unstable();
    turns.dedup();
    let mut list = List {
        work: &work,
        left: &left,
        steps: Vec::new(),
        stage: None,
        stands: None,
        told: Vec::new(),
    };
    for (index, turn) in turns.iter().enumerate() {
        list.turn(*turn);
        if turns.get(index + 1).is_none_or(|next| next.stage != turn.stage) {
            list.laps(turn.stage);
        }
    }
    list.close();
    list.steps
}

pub(super) struct List<'w, 'a> {
    pub(super) work: &'w Work<'a>,
    pub(super) left: &'w [Left],
    pub(super) steps: Vec<Step>,
    /// The stage that was begun last.
    stage: Option<u32>,
    /// The step that the stage's frame is ready by: its check, later its raising.
    pub(super) stands: Option<u32>,
    /// Stages whose floor or roof was waited for.
    told: Vec<Turn>,
}

impl<'a> List<'_, 'a> {
    /// Everything that is done at a turn.
    fn turn(&mut self, turn: Turn) {
        let work = self.work;
        if self.stage != Some(turn.stage) {
            self.begin(turn);
        }
        if turn.when == When::Raised && work.lies_first(turn.stage) {
            self.raise(turn);
        }
        self.left_before(turn);
        let pieces: Vec<&Piece> = work.of_turn(turn).collect();
        if pieces.is_empty() {
            return;
        }
        let mut ready: Vec<u32> = self.stands.into_iter().collect();
        self.add_to(&mut ready, |list| list.anchors(turn));
        self.add_to(&mut ready, |list| list.backing(turn));
        self.add_to(&mut ready, |list| list.straps(turn));
        self.add_to(&mut ready, |list| list.line(turn));
        let hung = self.hang(turn, &pieces, &ready);
        let nailed = self.nail(turn, &pieces, hung);
        self.cut_out(turn, nailed);
    }

    fn add_to(&mut self, ready: &mut Vec<u32>, step: impl FnOnce(&mut Self) -> Option<u32>) {
        ready.extend(step(self));
    }

    /// A step without what most steps lack.
    pub(super) fn blank(&self, turn: Turn, kind: StepKind) -> Step {
        Step {
            wall: self.work.wall.name.clone(),
            number: 0,
            storey: self.work.storey_names(turn.stage),
            kind,
            text: String::new(),
            panels: Vec::new(),
            blocks: Vec::new(),
            studs: Vec::new(),
            concerns: Vec::new(),
            leaves: Vec::new(),
            takes_up: Vec::new(),
            reach: if turn.when == When::Deck {
                Reach::Deck
            } else {
                Reach::Ground
            },
            people: 1,
            hold_point: kind.is_hold_point(),
            after: Vec::new(),
            waits_for: Vec::new(),
        }
    }

    /// Numbers a step, puts it into words, adds it.
    pub(super) fn push(&mut self, turn: Turn, mut step: Step) -> u32 {
        let number = u32::try_from(self.steps.len() + 1).unwrap_or(u32::MAX);
        step.number = number;
        step.after.sort_unstable();
        step.after.dedup();
        if let Some(event) = self.event(turn) {
            step.waits_for.push(event);
        }
        step.text = text::of(self.work, &step);
        self.steps.push(step);
        number
    }

    /// What the first step after the floor above is framed or the trusses are set waits for.
    fn event(&mut self, turn: Turn) -> Option<Event> {
        if self.told.contains(&turn) {
            return None;
        }
        let event = match turn.when {
            When::Deck | When::Raised => return None,
            When::FloorAbove => Event::FloorFramed {
                over: self.work.storey_names(turn.stage),
            },
            When::Roof => Event::TrussesSet,
        };
        self.told.push(turn);
        Some(event)
    }

    fn begin(&mut self, turn: Turn) {
        let lies = turn.when == When::Deck;
        let mut step = Step {
            after: self.stands.into_iter().collect(),
            ..self.blank(turn, StepKind::Check)
        };
        if let Some(below) = turn.stage.checked_sub(1) {
            step.waits_for.push(Event::FloorFramed {
                over: self.work.storey_names(below),
            });
        }
        if !lies {
            step.waits_for.push(Event::StoreyStands {
                storey: step.storey.clone(),
            });
        }
        self.stage = Some(turn.stage);
        self.stands = Some(self.push(turn, step));
    }

    /// Raising waits for everything that is done on the deck.
    fn raise(&mut self, turn: Turn) {
        let from = self.stands.unwrap_or(1);
        let step = Step {
            after: (from..).take(self.steps.len() + 1 - from as usize).collect(),
            people: 0,
            ..self.blank(turn, StepKind::Raise)
        };
        self.stands = Some(self.push(turn, step));
    }

    /// Hangs the pieces of a turn: a step for neighbours of one course that are hung alike.
    fn hang(&mut self, turn: Turn, pieces: &[&'a Piece], ready: &[u32]) -> Vec<u32> {
        let work = self.work;
        let most = work.wall.practice.limits.one_person_most;
        let alike = |piece: &Piece| {
            let blank = piece.blank();
            let long = blank.width().max(blank.height());
            let people = if most < long { 2 } else { 1 };
            (piece.band, piece.sheet, work.reach(turn, &blank), people)
        };
        let mut hung: Vec<u32> = Vec::new();
        for group in pieces.chunk_by(|a, b| alike(a) == alike(b)) {
            let Some((_, _, reach, people)) = group.first().map(|piece| alike(piece)) else {
                continue;
            };
            let panels = marks(group);
            let mut after: Vec<u32> = ready.iter().chain(hung.last()).copied().collect();
            // Wood, straps and anchors of an earlier turn may lie behind it too.
            let behind = self.steps.iter().filter(|step| {
                let sets = matches!(
                    step.kind,
                    StepKind::SetBlocks | StepKind::SetStraps | StepKind::CheckAnchors
                );
                sets && step.panels.iter().any(|mark| panels.contains(mark))
            });
            after.extend(behind.map(|step| step.number));
            let step = Step {
                panels,
                reach,
                people,
                after,
                ..self.blank(turn, StepKind::HangPanels)
            };
            hung.push(self.push(turn, step));
        }
        hung
    }

    fn nail(&mut self, turn: Turn, pieces: &[&Piece], hung: Vec<u32>) -> u32 {
        let own: Vec<&Left> = self.left.iter().filter(|left| left.at == turn).collect();
        let step = Step {
            panels: marks(pieces),
            leaves: edges(&own),
            reach: self.standing_reach(turn, pieces),
            after: hung,
            ..self.blank(turn, StepKind::Nail)
        };
        self.push(turn, step)
    }
}

pub(super) fn marks(pieces: &[&Piece]) -> Vec<String> {
    pieces.iter().map(|piece| piece.mark.clone()).collect()
}

pub(super) fn edges(left: &[&Left]) -> Vec<OpenEdge> {
    left.iter().map(|left| left.edge.clone()).collect()
}
