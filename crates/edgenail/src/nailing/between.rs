//! The rows between a panel's edges: boundary rows of segments, the grid of a portal, field rows.

use super::clear::clear_stretch;
use super::edge::{NailedEdge, span_of};
use super::line::{Backing, Division, Hammer};
use super::{NailRow, Snag, Zone};
use crate::edges::{Face, Lie, PanelEdge, SegmentSite, Site, Steepness};
use crate::frame::{Axis, Member, MemberKind, Origin};
use crate::geometry::{Interval, Point, Rect, Toward};
use crate::house::Method;
use crate::layout::{Piece, Side};
use crate::length::Length;

/// A level row that was nailed between the edges.
struct LevelRow {
    x: Interval,
    y: Length,
}

/// Nails everything of a piece that lies between its edges: level members first, then plumb ones between them.
pub(super) fn nail_between(hammer: &mut Hammer<'_, '_>, piece: &Piece, edges: &[NailedEdge<'_>]) {
    let site = hammer.site;
    let bounds = piece.outline.bounds();
    let near = || site.wood.near(bounds).filter(|face| face.nailable);
    let mut rows = Vec::new();
    for face in near() {
        let Some(member) = site.frame.member(face.member) else {
            continue;
        };
        if member.axis == Axis::Horizontal {
            level_member(hammer, piece, edges, face, member, &mut rows);
        }
    }
    for face in near() {
        let Some(member) = site.frame.member(face.member) else {
            continue;
        };
        if member.axis == Axis::Vertical && !is_second(site, edges, face, member) {
            plumb_member(hammer, piece, edges, face, member, &rows);
        }
    }
}

/// A stud that was added beside one that carries an edge row of this piece: the two are nailed to each other.
fn is_second(site: &Site<'_>, edges: &[NailedEdge<'_>], face: &Face, member: &Member) -> bool {
    let touches = |other: &Rect| other.x0 == face.bounds.x1 || other.x1 == face.bounds.x0;
    let mut runs = edges
        .iter()
        .filter(|edge| edge.edge.side.is_plumb())
        .flat_map(|edge| edge.runs);
    member.origin == Origin::Added
        && runs.any(|run| {
            let held = run.member().and_then(|id| site.frame.member(id));
            held.is_some_and(|held| held.axis == Axis::Vertical && touches(&held.face.bounds()))
        })
}

/// How a level member is nailed where no edge of the piece lies on it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Demand {
    Boundary(Length),
    Grid(Length),
    Field(Length),
}

fn level_member(
    hammer: &mut Hammer<'_, '_>,
    piece: &Piece,
    edges: &[NailedEdge<'_>],
    face: &Face,
    member: &Member,
    rows: &mut Vec<LevelRow>,
) {
    let site = hammer.site;
    let Some(demand) = demand(site, face, member, &piece.outline.bounds()) else {
        return;
    };
    let (rule, wood) = (hammer.rule, hammer.rule.wood);
    let Some(covered) = face.bounds.intersect(&piece.outline.bounds()) else {
        return;
    };
    let lines = match demand {
        Demand::Boundary(_) | Demand::Field(_) => vec![(covered.y0 + covered.y1).half()],
        Demand::Grid(spacing) => {
            let (lo, hi) = (covered.y0 + wood, covered.y1 - wood);
            let spaces = (hi - lo).spaces(spacing).max(1);
            (0..=spaces)
                .map(|row| lo + Length::from_units((hi - lo).units() * row / spaces))
                .collect()
        }
    };
    let (spacing, zone) = match demand {
        Demand::Boundary(spacing) | Demand::Grid(spacing) => (spacing, Zone::Boundary),
        Demand::Field(spacing) => (spacing, Zone::Field),
    };
    for y in lines {
        // Rows along an edge that lies on the member serve it already, except in a grid further than half a space away.
        let clear = if matches!(demand, Demand::Grid(_)) {
            spacing.half()
        } else {
            Length::LIMIT
        };
        let taken: Vec<Interval> = edges
            .iter()
            .filter(|edge| edge.edge.lie() == Lie::Level)
            .flat_map(|edge| edge.runs.iter().map(move |run| (edge, run)))
            .filter(|(edge, run)| {
                let inset = run.inset.unwrap_or_default();
                run.member() == Some(face.member) && (edge.edge.across(inset) - y).abs() < clear
            })
            .map(|(_, run)| span_of(run))
            .collect();
        let taken = Interval::union(taken);
        for panel in level_spans(edges, y, rule.least) {
            let Some(on_face) = panel.intersect(face.bounds.x_span()) else {
                continue;
            };
            for free in Interval::subtract(on_face, &taken) {
                let line = level_line(hammer, edges, face, free, panel, y);
                if let Some((line, mut ends)) = line {
                    if let Demand::Boundary(spacing) = demand {
                        // A plumb edge row may pass the member between two of its nails.
                        let open = |at: Length| !nailed_at(hammer, face, Point::new(at, y), spacing);
                        ends = (ends.0 || open(line.lo), ends.1 || open(line.hi));
                    }
                    let row = Rect {
                        x0: line.lo,
                        y0: y,
                        x1: line.hi,
                        y1: y,
                    };
                    let nail = site
                        .nail(row, member.treated)
                        .or_else(|| site.nail(row, false))
                        .unwrap_or(0);
                    let good = clear_stretch(&member.face, false, y, wood);
                    let backing = Backing {
                        span: free,
                        good,
                        member: face.member,
                        inset: Length::ZERO,
                        zone,
                        nail,
                    };
                    let edge = PanelEdge {
                        side: Side::Bottom,
                        from: Point::new(line.lo, y),
                        to: Point::new(line.hi, y),
                    };
                    if let Some(division) = Division::new(line, spacing, ends) {
                        hammer.nail(&edge, &[backing], division, line);
                        rows.push(LevelRow { x: free, y });
                    }
                }
            }
        }
    }
}

/// An edge of the piece has a nail in the member above or below a place, less than half a space away.
fn nailed_at(hammer: &Hammer<'_, '_>, face: &Face, at: Point, spacing: Length) -> bool {
    let of_piece = hammer
        .rows
        .iter()
        .rev()
        .take_while(|row| row.piece == hammer.piece);
    of_piece
        .filter(|row| row.member == face.member && row.zone == Zone::Edge)
        .flat_map(NailRow::positions)
        .any(|nail| (nail.x - at.x).abs() <= hammer.rule.wood && (nail.y - at.y).abs() < spacing.half())
}

/// The stretch of a level row and whether a nail stands at each of its ends. A plumb edge row at an end has one there;
/// so have the studs that a block stands between.
fn level_line(
    hammer: &Hammer<'_, '_>,
    edges: &[NailedEdge<'_>],
    face: &Face,
    free: Interval,
    panel: Interval,
    y: Length,
) -> Option<(Interval, (bool, bool))> {
    let edge_line = |at: Length, side: Side| {
        let found = edges
            .iter()
            .find(|edge| edge.edge.side == side && edge.edge.at() == at && edge.edge.span().contains(y));
        found.map(|edge| {
            let held = edge
                .runs
                .iter()
                .find(|run| span_of(run).contains(y))
                .and_then(|run| run.inset);
            (
                edge.edge.across(held.unwrap_or(hammer.rule.least)),
                held.is_none(),
            )
        })
    };
    let block = hammer
        .site
        .frame
        .member(face.member)
        .is_some_and(|member| member.kind == MemberKind::Block);
    let (lo, starts) = match edge_line(panel.lo, Side::Left).filter(|_| free.lo == panel.lo) {
        Some(line) => line,
        None if free.lo == face.bounds.x0 && !block => (free.lo + hammer.rule.wood, true),
        None => (free.lo, false),
    };
    let (hi, ends) = match edge_line(panel.hi, Side::Right).filter(|_| free.hi == panel.hi) {
        Some(line) => line,
        None if free.hi == face.bounds.x1 && !block => (free.hi - hammer.rule.wood, true),
        None => (free.hi, false),
    };
    (lo < hi).then_some((Interval { lo, hi }, (starts, ends)))
}

/// What a level member asks for, if anything.
fn demand(site: &Site<'_>, face: &Face, member: &Member, piece: &Rect) -> Option<Demand> {
    let covered = face.bounds.intersect(piece)?;
    let storey = member
        .storey
        .and_then(|storey| site.frame.storeys.get(storey as usize));
    let own_row = match member.kind {
        MemberKind::BottomPlate => storey.is_some_and(|storey| face.bounds.y0 == storey.base),
        MemberKind::TopPlate => storey.is_some_and(|storey| face.bounds.y0 == storey.topmost_from),
        _ => true,
    };
    if !own_row {
        return None;
    }
    let in_segments = || {
        site.segments
            .iter()
            .filter(|place| place.rect.x_span().overlaps(covered.x_span()))
    };
    if member.kind == MemberKind::Header {
        let mut portals = in_segments().filter(|place| place.segment.method == Method::Portal);
        if let Some(portal) = portals.find(|place| place.rect.overlaps(&covered)) {
            return Some(Demand::Grid(portal.segment.edge_spacing));
        }
    }
    let crossed = |place: &&SegmentSite<'_>| match member.kind {
        MemberKind::BottomPlate | MemberKind::TopPlate => place.rect.overlaps(&covered),
        MemberKind::Rim | MemberKind::EdgeJoist | MemberKind::TrussChord | MemberKind::Mudsill => {
            next_to(site, place, face)
        }
        MemberKind::Block => member.storey.is_none() && next_to(site, place, face),
        _ => false,
    };
    if let Some(spacing) = in_segments()
        .filter(crossed)
        .map(|place| place.segment.edge_spacing)
        .min()
    {
        return Some(Demand::Boundary(spacing));
    }
    Some(Demand::Field(site.field_spacing(covered)))
}

/// The member is part of the floor band right above or below a segment.
fn next_to(site: &Site<'_>, place: &SegmentSite<'_>, face: &Face) -> bool {
    site.frame.bands.iter().any(|band| {
        let touches = band.y.hi == place.rect.y0 || band.y.lo == place.rect.y1;
        touches && band.y.covers(face.bounds.y_span())
    })
}

/// The stretches over which the panel covers a level line with at least this much on both sides of it.
fn level_spans(edges: &[NailedEdge<'_>], y: Length, beside: Length) -> Vec<Interval> {
    let at = |y: Length| {
        let mut sides: Vec<Length> = edges
            .iter()
            .filter(|edge| {
                let (a, b) = (
                    edge.edge.from.y.min(edge.edge.to.y),
                    edge.edge.from.y.max(edge.edge.to.y),
                );
                a <= y && y < b
            })
            .map(|edge| match edge.edge.lie() {
                Lie::Sloped => crate::geometry::Slope::through(edge.edge.from, edge.edge.to)
                    .and_then(|line| line.x_at(y))
                    .unwrap_or(edge.edge.from.x),
                _ => edge.edge.at(),
            })
            .collect();
        sides.sort_unstable();
        sides
    };
    let (below, above) = (at(y - beside), at(y + beside - Length::from_units(1)));
    let pairs = |sides: &[Length]| -> Vec<Interval> {
        sides
            .chunks_exact(2)
            .map(|pair| Interval {
                lo: pair[0],
                hi: pair[1],
            })
            .collect()
    };
    let (below, above) = (pairs(&below), pairs(&above));
    below
        .iter()
        .flat_map(|a| above.iter().filter_map(|b| a.intersect(*b)))
        .collect()
}

fn plumb_member(
    hammer: &mut Hammer<'_, '_>,
    piece: &Piece,
    edges: &[NailedEdge<'_>],
    face: &Face,
    member: &Member,
    level_rows: &[LevelRow],
) {
    let (site, rule) = (hammer.site, hammer.rule);
    let x = (face.bounds.x0 + face.bounds.x1).half();
    let Some(stud) = site.wood.plumb_span(face, x) else {
        return;
    };
    let good = clear_stretch(&member.face, true, x, rule.wood);
    let panels = panel_spans(piece, x, rule.least);
    if panels.is_empty() {
        return;
    }
    let taken: Vec<Interval> = edges
        .iter()
        .filter(|edge| edge.edge.side.is_plumb())
        .flat_map(|edge| edge.runs.iter())
        .filter(|run| run.member() == Some(face.member))
        .map(span_of)
        .collect();
    let taken = Interval::union(taken);
    for panel in panels {
        let Some(on_face) = panel.intersect(stud) else {
            continue;
        };
        for free in Interval::subtract(on_face, &taken) {
            if face.bounds.width() < rule.wood * 2 {
                let at = Point::new(x, (free.lo + free.hi).half());
                hammer.snags.push(Snag { piece: piece.id, at });
                continue;
            }
            let lines = row_heights(edges, level_rows, x, panel);
            plumb_row(hammer, face, member, x, good, panel, free, &lines);
        }
    }
}

#[expect(
    clippy::too_many_arguments,
    reason = "a row depends on the stud, on the panel and on the rows that cross it"
)]
fn plumb_row(
    hammer: &mut Hammer<'_, '_>,
    face: &Face,
    member: &Member,
    x: Length,
    good: Interval,
    panel: Interval,
    free: Interval,
    lines: &[Length],
) {
    let (site, rule) = (hammer.site, hammer.rule);
    let area = Rect {
        x0: x,
        y0: free.lo,
        x1: x,
        y1: free.hi,
    };
    let post = end_post(site, face);
    let (spacing, zone) = match post {
        Some(place) => (place.segment.edge_spacing, Zone::Boundary),
        None => (site.field_spacing(area), Zone::Field),
    };
    // The nearest rows that cross the stud at its ends or just beyond them.
    let below = lines
        .iter()
        .copied()
        .filter(|y| *y <= free.lo.max(panel.lo + rule.most))
        .max();
    let above = lines
        .iter()
        .copied()
        .filter(|y| *y >= free.hi.min(panel.hi - rule.most))
        .min();
    let (lo, starts) = match below.filter(|y| good.lo - *y <= spacing) {
        Some(y) => (y, false),
        None => (good.lo.max(free.lo), true),
    };
    let (hi, ends) = match above.filter(|y| *y - good.hi <= spacing) {
        Some(y) => (y, false),
        None => (good.hi.min(free.hi), true),
    };
    if hi <= lo {
        return;
    }
    let nail = site
        .nail(area, member.treated)
        .or_else(|| site.nail(area, false))
        .unwrap_or(0);
    let backing = Backing {
        span: free,
        good,
        member: face.member,
        inset: Length::ZERO,
        zone,
        nail,
    };
    let line = PanelEdge {
        side: Side::Left,
        from: Point::new(x, lo),
        to: Point::new(x, hi),
    };
    if let Some(division) = Division::new(Interval { lo, hi }, spacing, (starts, ends)) {
        hammer.nail(&line, &[backing], division, Interval { lo, hi });
    }
}

/// The stretches over which the panel covers a plumb line with at least this much on both sides of it.
fn panel_spans(piece: &Piece, x: Length, beside: Length) -> Vec<Interval> {
    if let Some(rect) = piece.outline.is_rect() {
        let covers = rect.x0 + beside <= x && x + beside <= rect.x1;
        return if covers { vec![rect.y_span()] } else { Vec::new() };
    }
    let left = piece.outline.span_at_x(x - beside, Toward::Right);
    let right = piece.outline.span_at_x(x + beside, Toward::Left);
    left.iter()
        .flat_map(|a| right.iter().filter_map(|b| a.intersect(*b)))
        .collect()
}

/// The heights at which rows of nails cross a plumb line inside a stretch of the panel.
fn row_heights(edges: &[NailedEdge<'_>], level_rows: &[LevelRow], x: Length, panel: Interval) -> Vec<Length> {
    let mut heights: Vec<Length> = level_rows
        .iter()
        .filter(|row| row.x.contains(x))
        .map(|row| row.y)
        .collect();
    for nailed in edges
        .iter()
        .filter(|edge| !edge.edge.side.is_plumb() && edge.edge.span().contains(x))
    {
        let run = nailed.runs.iter().find(|run| span_of(run).contains(x));
        if let Some(inset) = run.and_then(|run| run.inset) {
            let sloped = nailed.edge.lie() == Lie::Sloped;
            let depth = if sloped {
                Steepness::of(&nailed.edge).plumb(inset)
            } else {
                inset
            };
            heights.push(nailed.edge.point(x, depth).y);
        }
    }
    heights.retain(|y| panel.contains(*y));
    heights
}

/// The segment of which this member takes the end tension: it is the outermost at one of its ends.
fn end_post<'s, 'a>(site: &'s Site<'a>, face: &Face) -> Option<&'s SegmentSite<'a>> {
    site.segments.iter().find(|place| {
        let (x, y) = (face.bounds.x_span(), face.bounds.y_span());
        let at_left = x.lo <= place.rect.x0 && place.rect.x0 < x.hi;
        let at_right = x.lo < place.rect.x1 && place.rect.x1 <= x.hi;
        (at_left || at_right) && y.overlaps(place.rect.y_span())
    })
}
