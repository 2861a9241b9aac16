//! Nailed layouts that nobody chose, and what the rules ask of their nails.

use crate::ground::Ground;
use edgenail::Length;
use edgenail::blocking::blocking;
use edgenail::edges::{EdgeRun, Site, edges};
use edgenail::frame::{Frame, Member};
use edgenail::geometry::{Point, Rect};
use edgenail::house::Segment;
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

/// The segments that a line of nails crosses or runs along.
pub fn segments_on(ground: &Ground, a: Point, b: Point) -> Vec<(&Segment, Rect)> {
    let (x0, x1, y0, y1) = (a.x.min(b.x), a.x.max(b.x), a.y.min(b.y), a.y.max(b.y));
    let meets = |lo: Length, hi: Length, a: Length, b: Length| {
        if a == b {
            lo <= a && a <= hi
        } else {
            a < hi && lo < b
        }
    };
    let wall = &ground.house.walls[ground.frame.wall as usize];
    let places = ground.frame.segments.iter();
    let places = places.filter(|place| {
        meets(place.rect.x0, place.rect.x1, x0, x1) && meets(place.rect.y0, place.rect.y1, y0, y1)
    });
    places
        .map(|place| (&wall.segments[place.segment as usize], place.rect))
        .collect()
}

/// Where the nails of one piece stand along a plumb or level line, and a quarter space about those that had to move.
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

/// The closest spacing between the edges that holds anywhere in an area.
pub fn field_spacing(ground: &Ground, low: Point, high: Point) -> Length {
    let segments = segments_on(ground, low, high);
    let closest = segments.iter().map(|(segment, _)| segment.field_spacing).min();
    let outside = ground.practice().assembly.field_spacing;
    let inside = segments
        .iter()
        .any(|(_, rect)| rect.contains(low) && rect.contains(high));
    closest.map_or(
        outside,
        |closest| if inside { closest } else { closest.min(outside) },
    )
}
