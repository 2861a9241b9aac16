//! Nailed layouts that nobody chose, and what the rules ask of their nails.

use crate::ground::Ground;
use edgenail::Length;
use edgenail::blocking::blocking;
use edgenail::edges::{EdgeRun, Site, edges};
use edgenail::frame::{Frame, Member, PatchPlace};
use edgenail::geometry::{Point, Rect};
use edgenail::layout::Piece;
use edgenail::nailing::{NailRow, Nailing, Snag, nail_all};

pub struct Nailed {
    pub frame: Frame,
    pub runs: Vec<EdgeRun>,
    pub nailing: Nailing,
    pub snags: Vec<Snag>,
}

pub fn nailed(ground: &Ground) -> Nailed {
    let added = blocking(&ground.house, &ground.frame, &ground.layout, &ground.runs);
    let frame = ground.frame.with(&added);
    let runs = edges(&ground.house, &frame, &ground.layout);
    let (nailing, snags) = match Site::new(&ground.house, &frame) {
        Some(site) => nail_all(&site, &ground.layout, &runs),
        None => (Nailing::default(), Vec::new()),
    };
    Nailed {
        frame,
        runs,
        nailing,
        snags,
    }
}

pub fn member<'n>(nailed: &'n Nailed, row: &NailRow) -> Result<&'n Member, String> {
    nailed
        .frame
        .member(row.member)
        .ok_or_else(|| format!("{row:?} is in no member"))
}

/// Where the nails of one piece stand on a line, and whether each may stand off its even place; with the places that
/// had no wood.
pub fn along_line(
    nailed: &Nailed,
    piece: u32,
    on: impl Fn(Point) -> bool,
    place: impl Fn(Point) -> Length,
) -> Vec<(Length, bool)> {
    let rows = nailed.nailing.rows.iter().filter(|row| row.piece == piece);
    let nails = rows.flat_map(|row| row.positions().map(move |at| (at, row.moved)));
    let mut found: Vec<(Length, bool)> = nails
        .filter(|(at, _)| on(*at))
        .map(|(at, moved)| (place(at), moved))
        .collect();
    let snags = nailed.snags.iter().filter(|snag| snag.piece == piece);
    found.extend(snags.map(|snag| (place(snag.at), true)));
    found.sort_unstable();
    found
}

/// A nail at a place has its distances in the wood and in the panel, and no strap or hole is in its way.
pub fn may_stand(ground: &Ground, nailed: &Nailed, piece: &Piece, member: &Member, at: Point) -> bool {
    let practice = ground.practice();
    let least = practice.edge_distance_least;
    let wood = member.face.inset(practice.member_edge_least);
    let round = Rect::new(at.x, at.y, at.x, at.y).grown(least);
    let in_strap = |place: &PatchPlace| place.rect.contains(at);
    let near_hole = |place: &PatchPlace| place.rect.grown(least - Length::from_units(1)).contains(at);
    wood.is_some_and(|wood| wood.contains(at))
        && round
            .corners()
            .into_iter()
            .all(|corner| piece.outline.contains(corner))
        && !nailed.frame.straps.iter().any(in_strap)
        && !nailed.frame.penetrations.iter().any(near_hole)
}

/// Two places are one, but for rounding along a line.
pub fn is_same(a: Point, b: Point) -> bool {
    let hair = Length::from_units(2);
    (a.x - b.x).abs() <= hair && (a.y - b.y).abs() <= hair
}

/// Some edge of the piece follows a slope.
pub fn is_sloped(piece: &Piece) -> bool {
    let mut boundary = piece.outline.boundary().iter();
    boundary.any(|edge| edge.a.x != edge.b.x && edge.a.y != edge.b.y)
}

/// Consecutive nails of a line into one member, of one kind, are one row.
pub fn is_continued(nailed: &Nailed, piece: &Piece) -> Option<NailRow> {
    let rows: Vec<&NailRow> = nailed
        .nailing
        .rows
        .iter()
        .filter(|row| row.piece == piece.id)
        .collect();
    let found = rows.windows(2).find(|pair| {
        let (a, b) = (pair[0], pair[1]);
        let same = (a.member, a.zone, a.nail) == (b.member, b.zone, b.nail);
        same && (a.from, a.to, a.spaces, a.last + 1) == (b.from, b.to, b.spaces, b.first)
    });
    found.map(|pair| pair[1].clone())
}
