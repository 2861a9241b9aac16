//! Every nail: its place, its member, its zone, its kind.
//!
//! [`nailing`] nails a layout on a backed frame; [`nail_piece`] is its kernel for one piece.

mod between;
mod clear;
mod edge;
mod finding;
mod line;
mod once;
mod row;

pub use finding::findings;
pub use row::{Nail, NailRow, Nailing, Zone};

use crate::edges::{EdgeRun, LineRule, PanelEdge, Site, panel_edges};
use crate::frame::Frame;
use crate::geometry::Point;
use crate::house::{House, Sheet};
use crate::layout::{Layout, Piece};
use line::Hammer;
use once::drive_once;

/// A nail that has no place on its row.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Snag {
    /// The piece.
    pub piece: u32,
    /// Where the nail would stand.
    pub at: Point,
}

/// Every nail of a layout. `frame` is the backed frame and `runs` are the layout's edges on it.
pub fn nailing(house: &House, frame: &Frame, layout: &Layout, runs: &[EdgeRun]) -> Nailing {
    Site::new(house, frame).map_or_else(Nailing::default, |site| nail_all(&site, layout, runs).0)
}

/// As [`nailing`], for a frame that was brought together with its rules before; with the nails that have no place.
pub fn nail_all(site: &Site<'_>, layout: &Layout, runs: &[EdgeRun]) -> (Nailing, Vec<Snag>) {
    let (mut rows, mut snags) = (Vec::with_capacity(layout.pieces.len() * 20), Vec::new());
    let mut rest = runs;
    for piece in &layout.pieces {
        let own = rest.iter().take_while(|run| run.piece == piece.id).count();
        let (own, others) = rest.split_at(own);
        rest = others;
        nail_piece(site, piece, own, &mut rows, &mut snags);
    }
    (Nailing { rows }, snags)
}

/// Adds the rows of one piece, whose runs these are: along its edges, along the boundaries of segments, on the
/// members between.
pub fn nail_piece(
    site: &Site<'_>,
    piece: &Piece,
    runs: &[EdgeRun],
    rows: &mut Vec<NailRow>,
    snags: &mut Vec<Snag>,
) {
    let before = rows.len();
    let rule = LineRule::of(site.practice);
    let edges = edge::nailed_edges(piece, &rule, runs);
    let slopes: Vec<PanelEdge> = panel_edges(&piece.outline).filter(PanelEdge::is_sloped).collect();
    let mut hammer = Hammer {
        site,
        rule,
        piece: piece.id,
        outline: &piece.outline,
        slopes: &slopes,
        rows,
        snags,
    };
    for nailed in &edges {
        hammer.edge(piece, nailed);
    }
    between::nail_between(&mut hammer, piece, &edges);
    drive_once(rows, before);
}

fn sheet_at<'a>(site: &Site<'a>, piece: &Piece) -> Option<&'a Sheet> {
    site.house.stock.sheets.get(piece.sheet as usize)
}

#[cfg(test)]
mod tests;
