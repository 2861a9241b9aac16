//! The rows along a panel's own edges.

use super::clear::clear_stretch;
use super::line::{Backing, Division, Hammer};
use super::{Zone, sheet_at};
use crate::blocking::shared_width;
use crate::edges::{EdgeRun, Lie, LineRule, PanelEdge, Site, Steepness};
use crate::frame::MemberId;
use crate::geometry::{Interval, Slope};
use crate::layout::{Joint, Piece, Side};
use crate::length::Length;

/// One edge of a piece with its runs.
#[derive(Clone, Debug)]
pub(super) struct NailedEdge<'r> {
    pub(super) edge: PanelEdge,
    pub(super) runs: &'r [EdgeRun],
    /// The edge that comes before it and the one that comes after it round the panel.
    before: usize,
    after: usize,
    /// Where its line starts and ends, in its own coordinate: at the lines of its neighbours.
    pub(super) line: Interval,
    /// The nail at the line's start or end is its own.
    owns: (bool, bool),
}

/// The edges of a piece, round its rings, with their runs and their corners.
pub(super) fn nailed_edges<'r>(piece: &Piece, rule: &LineRule, runs: &'r [EdgeRun]) -> Vec<NailedEdge<'r>> {
    let boundary = piece.outline.boundary();
    let mut edges = Vec::with_capacity(boundary.len());
    let (mut ring, mut rest) = (0, runs);
    for (index, side) in boundary.iter().enumerate() {
        let edge = PanelEdge::new(side.a, side.b);
        let own = rest.iter().take_while(|run| run.edge as usize == index).count();
        let (own, others) = rest.split_at(own);
        rest = others;
        let closes = boundary.get(ring).is_some_and(|first| first.a == side.b);
        let after = if closes { ring } else { index + 1 };
        edges.push(NailedEdge {
            edge,
            runs: own,
            before: 0,
            after,
            line: edge.span(),
            owns: (false, false),
        });
        if closes {
            ring = index + 1;
        }
    }
    let afters: Vec<usize> = edges.iter().map(|edge| edge.after).collect();
    for (index, after) in afters.into_iter().enumerate() {
        if let Some(next) = edges.get_mut(after) {
            next.before = index;
        }
    }
    let corners: Vec<(Corner, Corner)> = edges.iter().map(|edge| corner(edge, &edges, rule)).collect();
    for (index, (end, start)) in corners.into_iter().enumerate() {
        let after = edges.get(index).map_or(0, |edge| edge.after);
        if let Some(edge) = edges.get_mut(index) {
            edge.set(end, true);
        }
        if let Some(edge) = edges.get_mut(after) {
            edge.set(start, false);
        }
    }
    edges
}

/// Where the line of one edge ends at a corner, and whether the nail there is its own.
#[derive(Clone, Copy, Debug)]
struct Corner {
    place: Length,
    owns: bool,
}

impl NailedEdge<'_> {
    /// Round the panel, the edge runs from its `from` to its `to`.
    fn forward(&self) -> bool {
        matches!(self.edge.side, Side::Right | Side::Bottom)
    }

    fn set(&mut self, corner: Corner, at_end: bool) {
        if at_end == self.forward() {
            self.line.hi = corner.place;
            self.owns.1 = corner.owns;
        } else {
            self.line.lo = corner.place;
            self.owns.0 = corner.owns;
        }
    }

    /// What holds the edge at a place on it.
    fn held(&self, place: Length) -> Option<Length> {
        let within = |run: &&EdgeRun| span_of(run).contains(place) && run.inset.is_some();
        self.runs.iter().find(within).and_then(|run| run.inset)
    }

    /// A place so far from the end where the next edge begins, or from the other end.
    fn off_corner(&self, at_end: bool, by: Length) -> Length {
        let span = self.edge.span();
        if at_end == self.forward() {
            span.hi - by
        } else {
            span.lo + by
        }
    }
}

/// The stretch of a run in the coordinate of its edge.
pub(super) fn span_of(run: &EdgeRun) -> Interval {
    if run.side.is_plumb() {
        Interval::new(run.from.y, run.to.y)
    } else {
        Interval::new(run.from.x, run.to.x)
    }
}

/// The corner where an edge meets the next one round the panel: where the line of each ends.
fn corner(edge: &NailedEdge<'_>, edges: &[NailedEdge<'_>], rule: &LineRule) -> (Corner, Corner) {
    let Some(next) = edges.get(edge.after) else {
        let place = edge.off_corner(true, rule.least);
        return (Corner { place, owns: true }, Corner { place, owns: false });
    };
    // The line of each edge where the other's crosses it: first where that usually is, then where it was found.
    let look = |one: &NailedEdge<'_>, at_end: bool, by: Length| one.held(one.off_corner(at_end, by));
    let first = look(edge, true, rule.least);
    let b = look(next, false, first.unwrap_or(rule.least));
    let a = look(edge, true, b.unwrap_or(rule.least));
    let b = look(next, false, a.unwrap_or(rule.least));
    let (place, next_place) = crossing(
        &edge.edge,
        a.unwrap_or(rule.least),
        &next.edge,
        b.unwrap_or(rule.least),
    );
    let (held, next_held) = (edge.held(place).is_some(), next.held(next_place).is_some());
    // The plumb edge has the nail that serves both, if it is held there.
    let first = match (held, next_held) {
        (true, true) => edge.edge.side.is_plumb() || !next.edge.side.is_plumb(),
        (held, _) => held,
    };
    (
        Corner { place, owns: first },
        Corner {
            place: next_place,
            owns: !first && next_held,
        },
    )
}

/// Where the lines of two edges cross, in the coordinate of each.
fn crossing(a: &PanelEdge, a_inset: Length, b: &PanelEdge, b_inset: Length) -> (Length, Length) {
    let depth = |edge: &PanelEdge, inset: Length| {
        if edge.lie() == Lie::Sloped {
            Steepness::of(edge).plumb(inset)
        } else {
            inset
        }
    };
    let (a_depth, b_depth) = (depth(a, a_inset), depth(b, b_inset));
    let y_of = |edge: &PanelEdge, depth: Length, x: Length| edge.point(x, depth).y;
    match (a.side.is_plumb(), b.side.is_plumb()) {
        (true, false) => (y_of(b, b_depth, a.across(a_depth)), a.across(a_depth)),
        (false, true) => (b.across(b_depth), y_of(a, a_depth, b.across(b_depth))),
        _ => {
            // Two edges along the top: where their lines have the same height.
            let line = |edge: &PanelEdge, depth: Length| {
                Slope::through(edge.point(edge.from.x, depth), edge.point(edge.to.x, depth))
            };
            let shared = match (a.lie(), b.lie()) {
                (Lie::Sloped, Lie::Level) => line(a, a_depth).and_then(|slope| slope.x_at(b.across(b_depth))),
                (Lie::Level, Lie::Sloped) => line(b, b_depth).and_then(|slope| slope.x_at(a.across(a_depth))),
                _ => None,
            };
            let x = shared.unwrap_or(if a.to.x == b.from.x { a.to.x } else { a.from.x });
            (x, x)
        }
    }
}

impl Hammer<'_, '_> {
    /// Nails along one edge of a piece.
    pub(super) fn edge(&mut self, piece: &Piece, nailed: &NailedEdge<'_>) {
        let mut spacing = self
            .site
            .edge_spacing(nailed.edge.area(nailed.edge.span(), Interval::default()));
        if nailed.edge.is_sloped() {
            // A sloped line is divided by its level coordinate; spacing counts along the slope.
            spacing = Steepness::of(&nailed.edge).level(spacing);
        }
        let staggers = self.staggers(piece, nailed);
        let wood = backings(self.site, &self.rule, nailed);
        let line = nailed.line;
        // Stretches that are held, over gaps no longer than what may hang free.
        let held: Vec<&Backing> = wood
            .iter()
            .filter(|backing| backing.span.hi >= line.lo && backing.span.lo <= line.hi)
            .collect();
        let free = self.rule.free;
        for group in held.chunk_by(|a, b| b.span.lo - a.span.hi <= free) {
            let (Some(first), Some(last)) = (group.first(), group.last()) else {
                continue;
            };
            let starts = first.span.lo - free <= line.lo;
            let ends = last.span.hi + free >= line.hi;
            let lo = if starts { line.lo } else { first.good.lo };
            let hi = if ends { line.hi } else { last.good.hi };
            if hi < lo {
                continue;
            }
            let along = Interval { lo, hi };
            let own = (starts && nailed.owns.0, ends && nailed.owns.1);
            // From where its wood begins to where it ends, not only between its outermost nails.
            let short = last.span.hi - first.span.lo <= spacing;
            match (starts, ends) {
                (true, true) if staggers && along.len() >= spacing => {
                    self.staggered(nailed, &wood, along, spacing, own);
                }
                (true, true) => self.divided(nailed, &wood, along, spacing, own),
                _ if !short => {
                    self.divided(nailed, &wood, along, spacing, (own.0 || !starts, own.1 || !ends));
                }
                // Framing that crosses an unblocked edge: one nail each, the corner's where one stands at a corner.
                _ => {
                    let corners = (starts.then_some(line.lo), ends.then_some(line.hi));
                    for backing in group {
                        let at = |corner: &Length| backing.span.contains(*corner);
                        if corners.0.as_ref().is_some_and(at) {
                            self.single(nailed, &wood, line.lo, spacing, own.0);
                        } else if corners.1.as_ref().is_some_and(at) {
                            self.single(nailed, &wood, line.hi, spacing, own.1);
                        } else {
                            let middle = (backing.good.lo + backing.good.hi).half();
                            self.single(nailed, &wood, middle, spacing, true);
                        }
                    }
                }
            }
        }
    }

    fn divided(
        &mut self,
        nailed: &NailedEdge<'_>,
        wood: &[Backing],
        along: Interval,
        spacing: Length,
        ends: (bool, bool),
    ) {
        if let Some(division) = Division::new(along, spacing, ends) {
            self.nail(&nailed.edge, wood, division, nailed.line);
        }
    }

    /// One nail that stands alone, where asked.
    fn single(
        &mut self,
        nailed: &NailedEdge<'_>,
        wood: &[Backing],
        at: Length,
        spacing: Length,
        wanted: bool,
    ) {
        if wanted {
            self.divided(nailed, wood, Interval { lo: at, hi: at }, spacing, (true, true));
        }
    }

    /// A row offset by half a space from its neighbour's: its end nails, and nails in the middle of each space.
    fn staggered(
        &mut self,
        nailed: &NailedEdge<'_>,
        wood: &[Backing],
        along: Interval,
        spacing: Length,
        ends: (bool, bool),
    ) {
        let Some(even) = Division::new(along, spacing, (true, true)) else {
            return;
        };
        let half = Length::from_units(along.len().units() / (2 * i64::from(even.spaces)));
        self.single(nailed, wood, along.lo, spacing, ends.0);
        let between = Division {
            from: along.lo + half,
            to: along.hi - half,
            spaces: (even.spaces - 1).max(1),
            first: 0,
            last: even.spaces - 1,
            quarter: half.half(),
        };
        self.nail(&nailed.edge, wood, between, nailed.line);
        self.single(nailed, wood, along.hi, spacing, ends.1);
    }

    /// Its row is the second of two on a shared member, and practice or the nailing wants them staggered.
    fn staggers(&self, piece: &Piece, nailed: &NailedEdge<'_>) -> bool {
        let second = matches!(nailed.edge.side, Side::Left | Side::Bottom);
        let seam = nailed.runs.iter().find(|run| run.partner.is_some());
        second
            && seam.is_some_and(|run| {
                self.site.practice.staggered_rows
                    || sheet_at(self.site, piece)
                        .is_some_and(|sheet| shared_width(self.site, run.area(), sheet).is_some())
            })
    }
}

/// The wood along the line of an edge.
fn backings(site: &Site<'_>, rule: &LineRule, nailed: &NailedEdge<'_>) -> Vec<Backing> {
    let mut wood: Vec<Backing> = Vec::with_capacity(nailed.runs.len());
    for run in nailed.runs {
        let (Some(id), Some(inset)) = (run.member(), run.inset) else {
            continue;
        };
        let Some(member) = site.frame.member(id) else {
            continue;
        };
        let span = span_of(run);
        let zone = if run.joint == Joint::Opening {
            Zone::Opening
        } else {
            Zone::Edge
        };
        let nail = site
            .nail(run.area(), member.treated)
            .or_else(|| site.nail(run.area(), false))
            .unwrap_or(0);
        let good = clear_of_ends(site, rule, &nailed.edge, id, inset, span);
        match wood.last_mut() {
            Some(last)
                if (last.member, last.inset, last.zone, last.nail) == (id, inset, zone, nail)
                    && last.span.hi == span.lo =>
            {
                last.span.hi = span.hi;
            }
            _ => wood.push(Backing {
                span,
                good,
                member: id,
                inset,
                zone,
                nail,
            }),
        }
    }
    wood
}

/// Where nails on a member's stretch of a line keep their distance from the member's own ends.
fn clear_of_ends(
    site: &Site<'_>,
    rule: &LineRule,
    edge: &PanelEdge,
    member: MemberId,
    inset: Length,
    span: Interval,
) -> Interval {
    let Some(face) = site.frame.member(member).map(|member| &member.face) else {
        return span;
    };
    match edge.lie() {
        Lie::Plumb | Lie::Level => clear_stretch(face, edge.side.is_plumb(), edge.across(inset), rule.wood),
        Lie::Sloped => {
            let whole = face.bounds().x_span();
            Interval {
                lo: whole.lo + rule.wood,
                hi: whole.hi - rule.wood,
            }
        }
    }
}
