//! Nailed layouts that nobody chose, and what the rules ask of their nails.

use crate::ground::Ground;
use edgenail::Length;
use edgenail::blocking::blocking;
use edgenail::edges::{EdgeRun, Site, edges};
use edgenail::frame::{Frame, Member};
use edgenail::geometry::Point;
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
