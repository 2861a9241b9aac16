//! What the steps of a wall are read off.

use super::Reach;
use crate::cutting::{NotchCut, notches};
use crate::edges::EdgeRun;
use crate::evaluate::Evaluated;
use crate::frame::{EndCondition, Frame, Member, MemberId};
use crate::geometry::Rect;
use crate::house::{End, House, Wall};
use crate::layout::{Piece, Turn, When};
use crate::start::Start;
use crate::takeoff::Place;

/// A wall that was laid out, with each piece's turn.
pub(super) struct Work<'a> {
    pub(super) house: &'a House,
    pub(super) wall: &'a Wall,
    pub(super) frame: &'a Frame,
    pub(super) built: &'a Evaluated,
    pub(super) start: &'a Start,
    /// The pieces in order of hanging, each with its turn.
    pub(super) pieces: Vec<(Turn, &'a Piece)>,
}

impl<'a> Work<'a> {
    pub(super) fn new(
        house: &'a House,
        frame: &'a Frame,
        built: &'a Evaluated,
        start: &'a Start,
    ) -> Option<Self> {
        let wall = house.walls.get(frame.wall as usize)?;
        let turn = |piece: &'a Piece| (Turn::of(frame, &wall.practice, &piece.blank()), piece);
        let mut pieces: Vec<_> = built.layout.pieces.iter().map(turn).collect();
        pieces.sort_by_key(|(turn, piece)| (*turn, piece.hang_order));
        Some(Self {
            house,
            wall,
            frame,
            built,
            start,
            pieces,
        })
    }

    /// The pieces of a turn, in order of hanging.
    pub(super) fn of_turn(&self, turn: Turn) -> impl Iterator<Item = &'a Piece> + '_ {
        let own = self.pieces.iter().filter(move |(of, _)| *of == turn);
        own.map(|(_, piece)| *piece)
    }

    /// The turn of a piece by its id.
    pub(super) fn turn_of(&self, piece: u32) -> Option<Turn> {
        let found = self.pieces.iter().find(|(_, other)| other.id == piece);
        found.map(|(turn, _)| *turn)
    }

    /// The runs of a piece.
    pub(super) fn runs_of(&self, piece: u32) -> impl Iterator<Item = &'a EdgeRun> {
        self.built.runs.iter().filter(move |run| run.piece == piece)
    }

    /// The member that holds a run.
    pub(super) fn holder(&self, run: &EdgeRun) -> Option<&'a Member> {
        self.built.backed.member(run.member()?)
    }

    /// The stage of a member; none of what belongs to a floor band or a roof.
    pub(super) fn stage_of(&self, member: &Member) -> Option<u32> {
        let storey = self.frame.storeys.get(member.storey? as usize)?;
        Some(storey.stage)
    }

    /// Names of the storeys of a stage.
    pub(super) fn storey_names(&self, stage: u32) -> String {
        let own = self.frame.storeys.iter();
        let own = own.filter(|storey| storey.stage == stage);
        let mut names: Vec<&str> = own.map(|storey| storey.name.as_str()).collect();
        names.dedup();
        names.join(" and ")
    }

    /// Something of this stage is sheathed on the deck, so the wall is raised afterwards.
    pub(super) fn lies_first(&self, stage: u32) -> bool {
        let when = When::Deck;
        self.of_turn(Turn { stage, when }).next().is_some()
    }

    /// From where something with this face is reached at a turn.
    pub(super) fn reach(&self, turn: Turn, face: &Rect) -> Reach {
        if turn.when == When::Deck {
            return Reach::Deck;
        }
        match Place::standing(self.frame, &self.house.rates, face) {
            Place::Deck | Place::Standing => Reach::Ground,
            Place::Ladder => Reach::Ladder,
            Place::UpperStorey | Place::High => Reach::Lift,
        }
    }

    /// The name of the wall that this one's sheathing laps at an end.
    pub(super) fn neighbour(&self, end: End) -> Option<&'a str> {
        let condition = match end {
            End::Left => self.frame.left,
            End::Right => self.frame.right,
        };
        let own = |corner: &&crate::house::Corner| {
            corner.butting.wall == self.wall.name && corner.butting.end == end
        };
        matches!(condition, EndCondition::Laps { .. })
            .then(|| self.house.corners.iter().find(own))
            .flatten()
            .map(|corner| corner.through.wall.as_str())
    }

    /// The pieces that cover some of these faces, in order of hanging.
    pub(super) fn over(&self, faces: &[Rect]) -> Vec<&'a Piece> {
        let covers = |piece: &Piece| faces.iter().any(|face| face.overlaps(&piece.blank()));
        let own = self.pieces.iter().filter(|(_, piece)| covers(piece));
        own.map(|(_, piece)| *piece).collect()
    }

    /// The turn at which a face is first covered.
    pub(super) fn first_over(&self, face: &Rect) -> Option<Turn> {
        let over = self.over(&[*face]);
        over.first().and_then(|piece| self.turn_of(piece.id))
    }

    pub(super) fn last_of(&self, pieces: &[&Piece]) -> Option<Turn> {
        pieces.iter().filter_map(|piece| self.turn_of(piece.id)).max()
    }

    /// The pieces whose edges a member holds; of one that holds none, such as the second of a pair, those over it.
    pub(super) fn held_by(&self, member: MemberId, face: &Rect) -> Vec<&'a Piece> {
        let holds = |piece: &Piece| self.runs_of(piece.id).any(|run| run.member() == Some(member));
        let own = self.pieces.iter().map(|(_, piece)| *piece);
        let held: Vec<&Piece> = own.filter(|piece| holds(piece)).collect();
        if held.is_empty() {
            self.over(&[*face])
        } else {
            held
        }
    }

    /// The pieces out of which an opening is cut once they hang.
    pub(super) fn cut_in_place(&self, opening: u32) -> Vec<&'a Piece> {
        let beside = |piece: &Piece| self.runs_of(piece.id).any(|run| run.opening == Some(opening));
        let in_place = |piece: &Piece| {
            let rect = self.frame.openings.get(opening as usize).map(|place| place.rect);
            notches(&piece.outline).iter().any(|notch| {
                notch.cut == NotchCut::InPlace && rect.is_some_and(|rect| rect.overlaps(&notch.rect))
            })
        };
        let own = self.pieces.iter().map(|(_, piece)| *piece);
        own.filter(|piece| beside(piece) && in_place(piece)).collect()
    }
}
