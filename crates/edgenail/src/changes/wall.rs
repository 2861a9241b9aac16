//! What changed on a wall: its pieces, its seams, the wood that is added.

use super::count::{apart, paired};
use crate::edges::{Support, Unsupported};
use crate::frame::{Member, MemberKind, Origin};
use crate::geometry::{Convex, Point, Rect, Shape};
use crate::house::House;
use crate::layout::{Piece, Running, Side};
use crate::length::Length;
use crate::nailing::Zone;
use crate::plan::{Plan, WallPlan};
use crate::price::Cost;
use serde::Serialize;

/// Whether a wall is the same.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum WallState {
    /// Its members, its pieces with their edges and nails, the wood that is added and its cost are the same.
    Unchanged,
    /// Something is not.
    Changed,
    /// It was not there before.
    Came,
    /// It is not there any more.
    Went,
}

/// What changed on a wall.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct WallChange {
    /// Its name.
    pub wall: String,
    /// Whether it is the same.
    pub state: WallState,
    /// Members of its frame that came, those that the plan adds aside.
    pub members_came: u64,
    /// Members of its frame that went.
    pub members_went: u64,
    /// Pieces that are not the same.
    pub pieces: Vec<PieceChange>,
    /// Seams that came.
    pub seams_came: Vec<Seam>,
    /// Seams that went.
    pub seams_went: Vec<Seam>,
    /// Added wood that came.
    pub wood_came: Vec<AddedWood>,
    /// Added wood that went.
    pub wood_went: Vec<AddedWood>,
    /// Nails before.
    pub nails_before: u64,
    /// Nails after.
    pub nails_after: u64,
    /// What its layout cost before; nothing where it came.
    pub cost_before: Cost,
    /// What its layout costs after; nothing where it went.
    pub cost_after: Cost,
}

/// A piece that is not the same.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct PieceChange {
    /// Its mark.
    pub mark: String,
    /// Before; none where it came.
    pub before: Option<PieceFigures>,
    /// After; none where it went.
    pub after: Option<PieceFigures>,
    /// What is not the same.
    pub what: Vec<PieceWhat>,
}

/// What may change on a piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum PieceWhat {
    /// Where it is, or its shape.
    Outline,
    /// The sheet that it is cut from, or how that runs.
    Sheet,
    /// What its edges land on.
    Edges,
    /// Its nails: how many, which, where.
    Nails,
}

/// A piece in short.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct PieceFigures {
    /// The rectangle around it, in wall coordinates.
    pub rect: Rect,
    /// The sheet's name.
    pub sheet: String,
    /// How the sheet runs.
    pub running: Running,
    /// Its nails.
    pub nails: u64,
}

/// A seam of a course.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Seam {
    /// Between two pieces of a course.
    Upright {
        /// Its centre line.
        x: Length,
        /// From the course's lower level.
        y0: Length,
        /// To its upper level.
        y1: Length,
    },
    /// Between two courses.
    Level {
        /// Its centre line.
        y: Length,
    },
}

/// Wood that the plan adds.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct AddedWood {
    /// What it is.
    pub kind: WoodKind,
    /// The face that shows.
    pub rect: Rect,
    /// The stick that it is cut from.
    pub stick: String,
}

/// What added wood is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum WoodKind {
    /// A block.
    Block,
    /// A stud.
    Stud,
    /// What widens a member.
    Widening,
}

/// A wall of a plan, with its house's stock.
#[derive(Clone, Copy)]
struct Of<'p> {
    house: &'p House,
    wall: &'p WallPlan,
}

fn walls(plan: &Plan) -> Vec<Of<'_>> {
    let house = plan.house();
    plan.walls().iter().map(|wall| Of { house, wall }).collect()
}

pub(super) fn changes(before: &Plan, after: &Plan) -> Vec<WallChange> {
    let (before, after) = (walls(before), walls(after));
    let pairs = paired(&before, &after, |of| of.wall.name.as_str());
    pairs
        .into_iter()
        .map(|(before, after)| change(before, after))
        .collect()
}

fn change(before: Option<&Of<'_>>, after: Option<&Of<'_>>) -> WallChange {
    fn each<'p, T>(of: Option<&Of<'p>>, list: impl FnOnce(&Of<'p>) -> Vec<T>) -> Vec<T> {
        of.map_or_else(Vec::new, list)
    }
    let nails = |of: Option<&Of<'_>>| of.map_or(0, |of| of.wall.built.nailing.count());
    let cost = |of: Option<&Of<'_>>| of.map_or_else(Cost::default, |of| of.wall.built.cost.clone());
    let count = |list: Vec<_>| u64::try_from(list.len()).unwrap_or(u64::MAX);
    let (seams_came, seams_went) = apart(&each(before, Of::seams), &each(after, Of::seams));
    let (wood_came, wood_went) = apart(&each(before, Of::wood), &each(after, Of::wood));
    let (members_came, members_went) = apart(&each(before, Of::members), &each(after, Of::members));
    let (old, new) = (each(before, Of::pieces), each(after, Of::pieces));
    let pieces = paired(&old, &new, |piece| piece.mark)
        .into_iter()
        .filter_map(|(before, after)| piece(before, after));
    let mut change = WallChange {
        wall: after
            .or(before)
            .map_or_else(String::new, |of| of.wall.name.clone()),
        state: WallState::Unchanged,
        members_came: count(members_came),
        members_went: count(members_went),
        pieces: pieces.collect(),
        seams_came,
        seams_went,
        wood_came,
        wood_went,
        nails_before: nails(before),
        nails_after: nails(after),
        cost_before: cost(before),
        cost_after: cost(after),
    };
    change.state = match (before, after) {
        (None, _) => WallState::Came,
        (_, None) => WallState::Went,
        _ if change.is_empty() => WallState::Unchanged,
        _ => WallState::Changed,
    };
    change
}

impl WallChange {
    fn is_empty(&self) -> bool {
        let members = self.members_came + self.members_went == 0;
        let seams = self.seams_came.is_empty() && self.seams_went.is_empty();
        let wood = self.wood_came.is_empty() && self.wood_went.is_empty();
        members && seams && wood && self.pieces.is_empty() && self.cost_before == self.cost_after
    }
}

/// A member as far as it can be seen and nailed: members are counted anew on every frame.
#[derive(Clone, PartialEq)]
struct Seen<'p> {
    kind: MemberKind,
    face: &'p Convex,
    nailable: bool,
    setback: Length,
    depth: Length,
    treated: bool,
}

impl<'p> Seen<'p> {
    fn of(member: &'p Member) -> Self {
        let Member {
            kind,
            ref face,
            nailable,
            setback,
            depth,
            treated,
            ..
        } = *member;
        Self {
            kind,
            face,
            nailable,
            setback,
            depth,
            treated,
        }
    }
}

/// A stretch of a piece's edge: its side, where it runs, what holds it.
type EdgeSays = (Side, Point, Point, Held);

/// What a member is and why it is there.
type Role = Option<(MemberKind, Origin)>;

/// What holds a stretch of edge.
#[derive(PartialEq)]
enum Held {
    /// A member, with the distance of the nails from the edge.
    By(Role, Option<Length>),
    /// Nothing; whether something should.
    Nothing(Unsupported, bool),
}

/// A row of nails: which nails, why, into what, where.
type RowSays<'p> = (&'p str, Zone, Role, Vec<Point>);

/// All that is said of a piece.
struct Says<'p> {
    mark: &'p str,
    outline: &'p Shape,
    figures: PieceFigures,
    edges: Vec<EdgeSays>,
    rows: Vec<RowSays<'p>>,
}

fn piece(before: Option<&Says<'_>>, after: Option<&Says<'_>>) -> Option<PieceChange> {
    let mut what = Vec::new();
    if let (Some(before), Some(after)) = (before, after) {
        let mut differs = |differs: bool, of: PieceWhat| what.extend(differs.then_some(of));
        let (old, new) = (&before.figures, &after.figures);
        differs(before.outline != after.outline, PieceWhat::Outline);
        differs(
            old.sheet != new.sheet || old.running != new.running,
            PieceWhat::Sheet,
        );
        differs(before.edges != after.edges, PieceWhat::Edges);
        differs(before.rows != after.rows, PieceWhat::Nails);
        if what.is_empty() {
            return None;
        }
    }
    Some(PieceChange {
        mark: after.or(before)?.mark.to_owned(),
        before: before.map(|says| says.figures.clone()),
        after: after.map(|says| says.figures.clone()),
        what,
    })
}

fn name<T>(list: &[T], place: u32, name: impl Fn(&T) -> &String) -> &str {
    list.get(place as usize).map_or("", |thing| name(thing).as_str())
}

impl<'p> Of<'p> {
    fn members(&self) -> Vec<Seen<'p>> {
        self.wall.frame.members.iter().map(Seen::of).collect()
    }

    fn seams(&self) -> Vec<Seam> {
        let bands = &self.wall.built.layout.bands;
        let upright = bands.iter().flat_map(|band| {
            let seam = |x: &Length| Seam::Upright {
                x: *x,
                y0: band.y0,
                y1: band.y1,
            };
            band.seams.iter().map(seam)
        });
        let levels = bands.iter().skip(1).map(|band| Seam::Level { y: band.y0 });
        upright.chain(levels).collect()
    }

    fn wood(&self) -> Vec<AddedWood> {
        let added = |kind: WoodKind, rect: Rect, stick: u32| AddedWood {
            kind,
            rect,
            stick: name(&self.house.stock.sticks, stick, |stick| &stick.name).to_owned(),
        };
        let blocking = &self.wall.built.blocking;
        let blocks = blocking.blocks.iter();
        let studs = blocking.studs.iter();
        let widened = blocking.widened.iter();
        blocks
            .map(|block| added(WoodKind::Block, block.rect, block.stick))
            .chain(studs.map(|stud| added(WoodKind::Stud, stud.rect, stud.stick)))
            .chain(widened.map(|wide| added(WoodKind::Widening, wide.rect, wide.stick)))
            .collect()
    }

    fn pieces(&self) -> Vec<Says<'p>> {
        let built = &self.wall.built;
        built.layout.pieces.iter().map(|piece| self.says(piece)).collect()
    }

    fn says(&self, piece: &'p Piece) -> Says<'p> {
        let (house, built) = (self.house, &self.wall.built);
        let role = |id| built.backed.member(id).map(|member| (member.kind, member.origin));
        let runs = built.runs.iter().filter(|run| run.piece == piece.id);
        let edges = runs.map(|run| {
            let held = match run.support {
                Support::Member { member } => Held::By(role(member), run.inset),
                Support::Nothing { reason } => Held::Nothing(reason, run.must_back),
            };
            (run.side, run.from, run.to, held)
        });
        let rows = built.nailing.rows.iter().filter(|row| row.piece == piece.id);
        let rows = rows.map(|row| {
            let nail = name(&house.stock.nails, row.nail, |nail| &nail.name);
            (nail, row.zone, role(row.member), row.positions().collect())
        });
        let rows: Vec<RowSays<'p>> = rows.collect();
        Says {
            mark: &piece.mark,
            outline: &piece.outline,
            figures: PieceFigures {
                rect: piece.blank(),
                sheet: name(&house.stock.sheets, piece.sheet, |sheet| &sheet.name).to_owned(),
                running: piece.running,
                nails: rows
                    .iter()
                    .map(|(.., at)| u64::try_from(at.len()).unwrap_or(u64::MAX))
                    .sum(),
            },
            edges: edges.collect(),
            rows,
        }
    }
}
