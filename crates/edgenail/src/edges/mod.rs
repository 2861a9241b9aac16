//! What each panel edge lands on.
//!
//! [`edges`] divides the outline of every piece into runs with one support each. Their kernels are public: [`Site`]
//! brings a frame and its rules together, [`stretches`] tells what holds one edge, [`Site::wants_backing`] whether a
//! bare stretch has to be backed.

mod finding;
mod panel_edge;
mod partner;
mod rake;
mod run;
mod schedule;
mod site;
mod stagger;
mod support;
mod wood;

pub use crate::layout::Side;
pub use finding::{findings, unsupported};
pub use panel_edge::{Lie, PanelEdge};
pub use partner::Partners;
pub use rake::Steepness;
pub use run::{EdgeRun, Hold, Support, Unsupported};
pub use site::{SegmentSite, Site};
pub use support::{LineRule, Scratch, Stretch};
pub use wood::{Face, Wood};

use crate::frame::Frame;
use crate::geometry::{Interval, Rect, Shape};
use crate::house::House;
use crate::layout::{Joint, Layout, Piece};
use crate::length::Length;

/// What every panel edge of a layout lands on, piece by piece round the outlines.
///
/// The runs of a piece follow its outline without gaps: their lengths sum to its perimeter. A house that does not
/// have the frame's wall gives no runs.
pub fn edges(house: &House, frame: &Frame, layout: &Layout) -> Vec<EdgeRun> {
    Site::new(house, frame).map_or_else(Vec::new, |site| runs(&site, layout))
}

/// As [`edges`], for a frame that was brought together with its rules before.
pub fn runs(site: &Site<'_>, layout: &Layout) -> Vec<EdgeRun> {
    runs_with(site, layout, &[], 0)
}

/// As [`runs`], where `bare` are the layout's runs on the same frame without its members from the place `added` on:
/// edges that none of these members comes near keep their runs.
pub fn runs_with(site: &Site<'_>, layout: &Layout, bare: &[EdgeRun], added: usize) -> Vec<EdgeRun> {
    runs_of_first(site, layout, layout.pieces.len(), bare, added)
}

/// As [`runs_with`], of the first so many pieces alone: the others only stand beside them.
pub(crate) fn runs_of_first(
    site: &Site<'_>,
    layout: &Layout,
    count: usize,
    bare: &[EdgeRun],
    added: usize,
) -> Vec<EdgeRun> {
    let rule = LineRule::of(site.practice);
    let gaps = site.house.stock.sheets.iter().filter_map(|sheet| sheet.gap);
    let widest = gaps.fold(site.practice.gap.max(site.practice.rim_gap), Length::max);
    let partners = Partners::new(layout, (widest * 2).max(rule.most));
    let added: Vec<Rect> = site
        .frame
        .members
        .iter()
        .skip(added)
        .map(|member| member.face.bounds())
        .collect();
    let mut runs = Vec::with_capacity(bare.len().max(count * 16));
    let (mut scratch, mut held, mut facing) = (Scratch::default(), Vec::new(), Vec::new());
    let mut rest = bare;
    for piece in layout.pieces.iter().take(count) {
        for (index, edge) in (0u32..).zip(panel_edges(&piece.outline)) {
            let own = rest
                .iter()
                .take_while(|run| run.piece == piece.id && run.edge == index)
                .count();
            let (own, others) = rest.split_at(own);
            rest = others;
            if !own.is_empty() && !comes_near(&rule, &edge, &added) {
                runs.extend((runs.len()..).zip(own).map(|(id, run)| EdgeRun {
                    id: u32::try_from(id).unwrap_or(u32::MAX),
                    ..run.clone()
                }));
                continue;
            }
            partners.of(piece.id, &edge, &mut facing);
            stretches(site, &rule, &edge, !facing.is_empty(), &mut scratch, &mut held);
            for stretch in &held {
                split(site, piece, index, &edge, stretch, &facing, &mut runs);
            }
        }
    }
    runs
}

/// One of these faces lies where an edge may find wood, or bounds its bay.
fn comes_near(rule: &LineRule, edge: &PanelEdge, faces: &[Rect]) -> bool {
    let area = match edge.lie() {
        Lie::Sloped => rake::area(rule, edge),
        Lie::Level | Lie::Plumb => support::area(rule, edge),
    };
    faces.iter().any(|face| wood::meets(face, &area))
}

/// The edges of an outline, counter-clockwise round it and clockwise round its holes.
pub fn panel_edges(outline: &Shape) -> impl Iterator<Item = PanelEdge> + '_ {
    outline
        .boundary()
        .iter()
        .map(|edge| PanelEdge::new(edge.a, edge.b))
}

/// What holds each stretch of one panel edge, from its lower or left end, written over `out`.
///
/// `seam` says that another panel meets the edge: then no sheet may run past its member.
pub fn stretches(
    site: &Site<'_>,
    rule: &LineRule,
    edge: &PanelEdge,
    seam: bool,
    scratch: &mut Scratch,
    out: &mut Vec<Stretch>,
) {
    match edge.lie() {
        Lie::Sloped => rake::support(&site.wood, rule, edge, scratch, out),
        Lie::Level | Lie::Plumb => support::support(&site.wood, rule, edge, seam, scratch, out),
    }
}

/// Splits a stretch where its neighbour changes, and makes runs of the parts.
fn split(
    site: &Site<'_>,
    piece: &Piece,
    edge_index: u32,
    edge: &PanelEdge,
    stretch: &Stretch,
    facing: &[(Interval, u32)],
    runs: &mut Vec<EdgeRun>,
) {
    let mut lo = stretch.span.lo;
    while lo < stretch.span.hi {
        let partner = facing.iter().find(|(span, _)| span.lo <= lo && lo < span.hi);
        let ends = facing.iter().flat_map(|(span, _)| [span.lo, span.hi]);
        let hi = ends.filter(|end| *end > lo).fold(stretch.span.hi, Length::min);
        let part = Interval { lo, hi };
        runs.push(run(
            site,
            piece,
            edge_index,
            edge,
            stretch,
            part,
            partner.map(|(_, piece)| *piece),
            runs.len(),
        ));
        lo = hi;
    }
}

#[expect(
    clippy::too_many_arguments,
    reason = "a run brings together everything that is known of it"
)]
fn run(
    site: &Site<'_>,
    piece: &Piece,
    edge_index: u32,
    edge: &PanelEdge,
    stretch: &Stretch,
    part: Interval,
    partner: Option<u32>,
    id: usize,
) -> EdgeRun {
    let (from, to) = (
        edge.point(part.lo, Length::ZERO),
        edge.point(part.hi, Length::ZERO),
    );
    let hole = if partner.is_none() {
        hole_beside(site, edge, part)
    } else {
        None
    };
    let joint = match (partner, hole) {
        (Some(_), _) if piece.sides.at(edge.side) == Joint::RimSeam => Joint::RimSeam,
        (Some(_), _) => Joint::Seam,
        (None, Some(_)) => Joint::Opening,
        (None, None) => Joint::End,
    };
    let middle = edge.point((part.lo + part.hi).half(), Length::ZERO);
    let area = Rect {
        x0: from.x,
        y0: from.y.min(to.y),
        x1: to.x,
        y1: from.y.max(to.y),
    };
    let bare = stretch.support.is_err() && !(joint == Joint::End && site.hangs(middle));
    let hold = stretch.support.ok();
    let bay = clear_bay(site, edge, stretch);
    EdgeRun {
        id: u32::try_from(id).unwrap_or(u32::MAX),
        piece: piece.id,
        edge: edge_index,
        side: edge.side,
        joint,
        opening: match hole {
            Some(Hole::Opening(index)) => Some(index),
            Some(Hole::BareZone) | None => None,
        },
        from,
        to,
        length: edge.from.distance(to) - edge.from.distance(from),
        support: match stretch.support {
            Ok(hold) => Support::Member { member: hold.member },
            Err(reason) => Support::Nothing { reason },
        },
        inset: hold.map(|hold| hold.inset),
        wood: hold.map(|hold| hold.wood),
        bay: hold.is_none().then_some(bay),
        must_back: bare && site.wants_backing(edge.side.is_plumb(), joint == Joint::Opening, area, bay),
        partner,
    }
}

/// A hole in the sheathing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Hole {
    /// An opening, as a place in the frame's list.
    Opening(u32),
    /// A place that stays without sheathing.
    BareZone,
}

/// The clear bay that a bare stretch lies in. Past the last member of the wall there is none: what reaches from there to
/// the end of the sheathing hangs free.
fn clear_bay(site: &Site<'_>, edge: &PanelEdge, stretch: &Stretch) -> Length {
    let ends = site.frame.lower.span();
    let short = site.practice.end_short;
    let level = edge.lie() == Lie::Level;
    let at_end = stretch.span.lo <= ends.lo + short || ends.hi - short <= stretch.span.hi;
    if level && at_end {
        stretch.span.len()
    } else {
        stretch.bay.len()
    }
}

/// The opening or bare zone that a stretch runs along.
fn hole_beside(site: &Site<'_>, edge: &PanelEdge, part: Interval) -> Option<Hole> {
    if edge.lie() == Lie::Sloped {
        return None;
    }
    let back = site.practice.opening_cut_back.max(site.practice.gap);
    let beside = |hole: &Rect| {
        let (at, across) = match edge.side {
            Side::Left => (edge.at() - hole.x1, hole.y_span()),
            Side::Right => (hole.x0 - edge.at(), hole.y_span()),
            Side::Bottom => (edge.at() - hole.y1, hole.x_span()),
            Side::Top => (hole.y0 - edge.at(), hole.x_span()),
        };
        Length::ZERO <= at && at <= back && across.grown(back).is_some_and(|across| across.overlaps(part))
    };
    let mut openings = site.frame.openings.iter().zip(0u32..);
    if let Some((_, index)) = openings.find(|(place, _)| beside(&place.rect)) {
        return Some(Hole::Opening(index));
    }
    site.frame
        .bare_zones
        .iter()
        .any(|zone| beside(&zone.rect))
        .then_some(Hole::BareZone)
}

#[cfg(test)]
mod tests;
