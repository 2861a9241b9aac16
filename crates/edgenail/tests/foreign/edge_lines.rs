//! The lines of nails that a panel wants along its edges, told from the rules of the trade: from corner to corner, where
//! one nail serves both edges; equal spaces no wider than asked; one nail where framing crosses an edge that is not held.

use crate::between::{across, divided, span};
use crate::ground::Ground;
use crate::nailed::Nailed;
use edgenail::Length;
use edgenail::edges::{EdgeRun, Side};
use edgenail::frame::Member;
use edgenail::geometry::{Interval, Point};
use edgenail::layout::{Joint, Piece};
use edgenail::nailing::Zone;

/// A stretch of an edge that one member holds on one line.
#[derive(Clone, Debug)]
pub struct Held {
    pub member: Member,
    pub zone: Zone,
    pub span: Interval,
    /// Where a nail on the line keeps its distance from the member's ends.
    pub good: Interval,
    /// The line, across the edge.
    pub across: Length,
}

/// The line along one edge.
#[derive(Clone, Debug)]
pub struct EdgeLine {
    pub plumb: bool,
    /// From the line of one neighbour to that of the other.
    pub along: Interval,
    pub spacing: Length,
    pub held: Vec<Held>,
    /// Where nails are wanted along it, and how far each may be moved.
    pub places: Vec<(Length, Length)>,
}

impl EdgeLine {
    pub fn point(&self, along: Length, across: Length) -> Point {
        if self.plumb {
            Point::new(across, along)
        } else {
            Point::new(along, across)
        }
    }
}

/// One edge of a panel: its runs in order.
type Edge<'r> = &'r [EdgeRun];

fn whole(edge: Edge<'_>) -> Interval {
    Interval::new(span(&edge[0]).lo, span(&edge[edge.len() - 1]).hi)
}

/// How far in the nail line is at a place on an edge.
fn inset_at(edge: Edge<'_>, along: Length) -> Option<Length> {
    let mut runs = edge.iter().filter(|run| span(run).contains(along));
    runs.find_map(|run| run.inset)
}

/// Where the line of an edge ends at a corner with another edge of its panel, and whether it is held there.
fn corner(edge: Edge<'_>, at_hi: bool, other: Edge<'_>, least: Length) -> (Length, bool) {
    let point = if at_hi {
        edge[edge.len() - 1].to
    } else {
        edge[0].from
    };
    let inward = |edge: Edge<'_>, by: Length| {
        let stretch = whole(edge);
        let corner = if edge[0].side.is_plumb() { point.y } else { point.x };
        if corner == stretch.hi {
            stretch.hi - by
        } else {
            stretch.lo + by
        }
    };
    // Each line is looked for where the other crosses it, twice, from the edge that comes first round the panel.
    let comes_first = at_hi == matches!(edge[0].side, Side::Right | Side::Bottom);
    let (before, after) = if comes_first { (edge, other) } else { (other, edge) };
    let (mut ours, mut next) = (least, least);
    for _ in 0..2 {
        ours = inset_at(before, inward(before, next)).unwrap_or(least);
        next = inset_at(after, inward(after, ours)).unwrap_or(least);
    }
    let theirs = if comes_first { next } else { ours };
    let place = across(&other[0], theirs);
    (place, inset_at(edge, place).is_some())
}

/// The lines along the edges of a panel without slopes; `None` for an edge that meets a sloped member.
pub fn edge_lines(ground: &Ground, nailed: &Nailed, piece: &Piece) -> Vec<Option<EdgeLine>> {
    let of_piece: Vec<EdgeRun> = nailed
        .runs
        .iter()
        .filter(|run| run.piece == piece.id)
        .cloned()
        .collect();
    let edges: Vec<Edge<'_>> = of_piece.chunk_by(|a, b| a.edge == b.edge).collect();
    edges
        .iter()
        .map(|edge| edge_line(ground, nailed, edge, &edges))
        .collect()
}

fn edge_line(ground: &Ground, nailed: &Nailed, edge: Edge<'_>, edges: &[Edge<'_>]) -> Option<EdgeLine> {
    let practice = ground.practice();
    let (least, free) = (practice.edge_distance_least, practice.free_edge_most);
    let plumb = edge[0].side.is_plumb();
    let (from, to) = (edge[0].from, edge[edge.len() - 1].to);
    let at = |point: Point| {
        let touches = |other: &&Edge<'_>| {
            let ends = [other[0].from, other[other.len() - 1].to];
            other[0].side.is_plumb() != plumb && ends.contains(&point)
        };
        edges.iter().find(touches).copied()
    };
    let (lo, held_lo) = corner(edge, false, at(from)?, least);
    let (hi, held_hi) = corner(edge, true, at(to)?, least);
    let mut line = EdgeLine {
        plumb,
        along: Interval { lo, hi },
        spacing: ground.edge_spacing(&EdgeRun {
            from,
            to,
            ..edge[0].clone()
        }),
        held: held(ground, nailed, edge)?,
        places: Vec::new(),
    };
    let near: Vec<&Held> = line
        .held
        .iter()
        .filter(|one| one.span.hi >= lo && one.span.lo <= hi)
        .collect();
    // A gap no longer than what may hang free does not end a row.
    for group in near.chunk_by(|a, b| b.span.lo - a.span.hi <= free) {
        let (first, last) = (group[0], group[group.len() - 1]);
        let (starts, ends) = (first.span.lo - free <= lo, last.span.hi + free >= hi);
        let along = Interval {
            lo: if starts { lo } else { first.good.lo },
            hi: if ends { hi } else { last.good.hi },
        };
        if along.hi < along.lo {
            continue;
        }
        let nails = (!starts || held_lo, !ends || held_hi);
        let even = divided(along, line.spacing, (true, true));
        let spaces = i64::try_from(even.len()).unwrap_or(1).saturating_sub(1).max(1);
        let quarter = Length::from_units(along.len().units() / spaces / 4);
        let alone = Length::from_units(line.spacing.units() / 4);
        if starts && ends && staggers(ground, edge) && along.len() >= line.spacing {
            let middles = even.windows(2).map(|pair| (pair[0] + pair[1]).half());
            line.places.extend(nails.0.then_some((along.lo, alone)));
            line.places.extend(middles.map(|place| (place, quarter)));
            line.places.extend(nails.1.then_some((along.hi, alone)));
        } else if (starts && ends) || last.span.hi - first.span.lo > line.spacing {
            let places = divided(along, line.spacing, nails);
            let reach = if along.is_empty() { alone } else { quarter };
            line.places.extend(places.into_iter().map(|place| (place, reach)));
        } else {
            line.places.extend(group.iter().filter_map(|one| {
                let (at_lo, at_hi) = (starts && one.span.contains(lo), ends && one.span.contains(hi));
                match (at_lo, at_hi) {
                    (true, _) => nails.0.then_some((lo, alone)),
                    (_, true) => nails.1.then_some((hi, alone)),
                    _ => Some(((one.good.lo + one.good.hi).half(), alone)),
                }
            }));
        }
    }
    Some(line)
}

/// The second of two rows on a shared member is offset where practice staggers rows, or the nailing needs a wider face.
fn staggers(ground: &Ground, edge: Edge<'_>) -> bool {
    let seam = edge.iter().find(|run| run.partner.is_some());
    matches!(edge[0].side, Side::Left | Side::Bottom)
        && seam
            .is_some_and(|run| ground.practice().staggered_rows || ground.face_to_share(run) > Length::ZERO)
}

fn held(ground: &Ground, nailed: &Nailed, edge: Edge<'_>) -> Option<Vec<Held>> {
    let wood = ground.practice().member_edge_least;
    let mut held: Vec<Held> = Vec::new();
    for run in edge {
        let (Some(inset), Some(member)) = (run.inset, run.member().and_then(|id| nailed.frame.member(id)))
        else {
            continue;
        };
        let bounds = member.face.is_rect()?;
        let ends = if run.side.is_plumb() {
            bounds.y_span()
        } else {
            bounds.x_span()
        };
        let one = Held {
            member: member.clone(),
            zone: if run.joint == Joint::Opening {
                Zone::Opening
            } else {
                Zone::Edge
            },
            span: span(run),
            good: Interval {
                lo: ends.lo + wood,
                hi: ends.hi - wood,
            },
            across: across(run, inset),
        };
        match held.last_mut() {
            Some(last)
                if last.member.id == one.member.id
                    && last.across == one.across
                    && last.zone == one.zone
                    && last.span.hi == one.span.lo =>
            {
                last.span.hi = one.span.hi;
            }
            _ => held.push(one),
        }
    }
    Some(held)
}
