//! What a wall says of itself, as lines of text that do not depend on the order of lists: as it is, or in the mirror.

use super::{Mirror, mirror_side};
use edgenail::edges::{EdgeRun, Support};
use edgenail::evaluate::Evaluated;
use edgenail::frame::{EndCondition, Frame, Member, MemberId, PatchPlace};
use edgenail::geometry::{Point, Rect};
use edgenail::layout::Piece;
use std::collections::BTreeMap;

/// How a wall is looked at.
#[derive(Clone, Copy, Debug)]
pub enum View {
    /// As it is.
    Straight,
    /// In the mirror.
    Mirrored(Mirror),
}

impl View {
    fn point(self, point: Point) -> Point {
        match self {
            Self::Straight => point,
            Self::Mirrored(mirror) => mirror.point(point),
        }
    }

    fn rect(self, rect: Rect) -> Rect {
        match self {
            Self::Straight => rect,
            Self::Mirrored(mirror) => mirror.rect(rect),
        }
    }

    /// A polygon as its sides, each from its left or lower end.
    fn ring(self, points: &[Point]) -> String {
        let next = points.iter().cycle().skip(1);
        let sides = points.iter().zip(next);
        let mut sides: Vec<(Point, Point)> = sides.map(|(a, b)| self.side(*a, *b)).collect();
        sides.sort_unstable();
        let sides = sides
            .iter()
            .map(|(a, b)| format!("{},{} {},{}", a.x, a.y, b.x, b.y));
        sides.collect::<Vec<_>>().join("; ")
    }

    fn side(self, a: Point, b: Point) -> (Point, Point) {
        let (a, b) = (self.point(a), self.point(b));
        (a.min(b), a.max(b))
    }

    /// A line from left to right.
    fn line(self, points: &[Point]) -> Vec<Point> {
        match self {
            Self::Straight => points.to_vec(),
            Self::Mirrored(mirror) => mirror.line(points),
        }
    }

    fn piece(self, piece: &Piece) -> String {
        let mut rings: Vec<String> = piece.outline.rings().iter().map(|ring| self.ring(ring)).collect();
        rings.sort_unstable();
        rings.join(" | ")
    }
}

/// A member with everything that is said of it but its place in lists.
fn member(view: View, frame: &Frame, member: &Member) -> String {
    let opening = member
        .opening
        .and_then(|opening| frame.openings.get(opening as usize));
    let storey = member
        .storey
        .and_then(|storey| frame.storeys.get(storey as usize));
    format!(
        "{:?} {:?} {:?} of {:?} {:?} nailable {} set back {} deep {} treated {} {:?} {}",
        member.kind,
        member.axis,
        member.origin,
        opening.map(|opening| &opening.name),
        storey.map(|storey| &storey.name),
        member.nailable,
        member.setback,
        member.depth,
        member.treated,
        member.specific_gravity,
        view.ring(member.face.points()),
    )
}

/// A frame: its members and its places.
pub fn of_frame(view: View, frame: &Frame) -> Vec<String> {
    let mut lines: Vec<String> = frame.members.iter().map(|one| member(view, frame, one)).collect();
    lines.push(format!("lower {:?}", view.line(frame.lower.points())));
    lines.push(format!("upper {:?}", view.line(frame.upper.points())));
    let rect = |rect: Rect| view.rect(rect);
    lines.extend(frame.sections.iter().map(|place| {
        let x = rect(Rect::from_spans(place.x, place.x)).x_span();
        format!(
            "section {x:?} {} {} {} {:?} {:?} {}",
            place.base, place.top, place.sheathing_top, place.bears, place.reach, place.gable
        )
    }));
    lines.extend(
        frame
            .openings
            .iter()
            .map(|place| format!("opening {} {:?} {:?}", place.name, place.kind, rect(place.rect))),
    );
    let patches = |what: &'static str, places: &[PatchPlace]| -> Vec<String> {
        let places = places.iter();
        places
            .map(|place| format!("{what} {} {:?}", place.name, rect(place.rect)))
            .collect()
    };
    lines.extend(patches("penetration", &frame.penetrations));
    lines.extend(patches("bare zone", &frame.bare_zones));
    lines.extend(patches("strap", &frame.straps));
    lines.extend(frame.segments.iter().map(|place| {
        format!(
            "segment {} {:?} {:?} {}",
            place.mark,
            place.method,
            rect(place.rect),
            place.segment
        )
    }));
    let ends: [(&str, EndCondition); 2] = match view {
        View::Straight => [("left", frame.left), ("right", frame.right)],
        View::Mirrored(_) => [("left", frame.right), ("right", frame.left)],
    };
    lines.extend(ends.map(|end| format!("{end:?}")));
    lines.sort_unstable();
    lines
}

fn held(view: View, frame: &Frame, id: MemberId) -> String {
    frame
        .member(id)
        .map_or_else(String::new, |held| member(view, frame, held))
}

/// A stretch of panel edge with what holds it.
fn run(view: View, built: &Evaluated, run: &EdgeRun) -> String {
    let piece = |id: u32| {
        let piece = built.layout.pieces.get(id as usize);
        piece.map_or_else(String::new, |piece| view.piece(piece))
    };
    let side = match view {
        View::Straight => run.side,
        View::Mirrored(_) => mirror_side(run.side),
    };
    let (from, to) = view.side(run.from, run.to);
    // Along a slope lengths are differences of rounded distances from the left end.
    let length = (from.x == to.x || from.y == to.y).then_some(run.length);
    let support = match run.support {
        Support::Member { member } => held(view, &built.backed, member),
        Support::Nothing { reason } => format!("nothing: {reason:?}"),
    };
    let opening = run
        .opening
        .and_then(|opening| built.backed.openings.get(opening as usize));
    format!(
        "{side:?} {:?} {from:?} {to:?} {length:?} held by [{support}] {:?} {:?} {:?} {} {:?} of [{}] facing {:?}",
        run.joint,
        run.inset,
        run.wood,
        run.bay,
        run.must_back,
        opening.map(|opening| &opening.name),
        piece(run.piece),
        run.partner.map(piece),
    )
}

/// The panels, each with its turn in the order of hanging.
pub fn of_panels(view: View, built: &Evaluated) -> Vec<String> {
    let pieces = built.layout.pieces.iter();
    let mut lines: Vec<String> = pieces
        .map(|piece| {
            format!(
                "{} {:?} {} {}",
                piece.hang_order,
                piece.running,
                piece.sheet,
                view.piece(piece)
            )
        })
        .collect();
    lines.sort_unstable();
    lines
}

/// What every stretch of panel edge lands on.
pub fn of_edges(view: View, built: &Evaluated) -> Vec<String> {
    let mut lines: Vec<String> = built.runs.iter().map(|one| run(view, built, one)).collect();
    lines.sort_unstable();
    lines
}

/// What is added to the wood.
pub fn of_blocking(view: View, built: &Evaluated) -> Vec<String> {
    let added = &built.blocking;
    let mut lines: Vec<String> = Vec::new();
    lines.extend(added.blocks.iter().map(|block| {
        format!(
            "block {:?} {} {:?} {} {} {} serves {}",
            view.rect(block.rect),
            block.length,
            block.lie,
            block.depth,
            block.stick,
            block.fills_depth,
            block.serves.len()
        )
    }));
    lines.extend(added.studs.iter().map(|stud| {
        format!(
            "stud {:?} {} serves {}",
            view.rect(stud.rect),
            stud.stick,
            stud.serves.len()
        )
    }));
    lines.extend(added.widened.iter().map(|wide| {
        let member = held(view, &built.backed, wide.member);
        format!(
            "widened {member} {:?} {} serves {}",
            view.rect(wide.rect),
            wide.stick,
            wide.serves.len()
        )
    }));
    lines.push(format!("{} impossible", added.impossible.len()));
    lines.sort_unstable();
    lines
}

/// How many nails of each kind each panel has along its edges, boundaries and openings, and between.
///
/// Which of two members holds a nail that stands halfway between them, or at the ridge, goes by the left.
pub fn of_nails(view: View, built: &Evaluated) -> Vec<String> {
    let mut counts: BTreeMap<String, u32> = BTreeMap::new();
    for row in &built.nailing.rows {
        let piece = built.layout.pieces.get(row.piece as usize);
        let of = format!(
            "{:?} nails of kind {} in [{}]",
            row.zone,
            row.nail,
            piece.map_or_else(String::new, |piece| view.piece(piece)),
        );
        *counts.entry(of).or_default() += row.count();
    }
    counts.iter().map(|(of, count)| format!("{count} {of}")).collect()
}

/// How often each code was found, and how grave it is.
pub fn of_findings(built: &Evaluated) -> Vec<String> {
    let all = built.findings.iter().chain(&built.mended);
    let mut lines: Vec<String> = all
        .map(|finding| format!("{:?} {:?}", finding.code, finding.severity))
        .collect();
    lines.sort_unstable();
    lines
}
