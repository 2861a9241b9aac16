//! Nails and blocks along a course, read off the course as if it were one piece.
//!
//! A strip has the rows that stand well within it; along its own edges it has about what a sample has there.

use super::exact::Exact;
use super::space::Space;
use crate::amount::Amount;
use crate::frame::Axis;
use crate::geometry::{Interval, Rect};
use crate::layout::Side;
use crate::length::Length;
use crate::nailing::{NailRow, Zone};
use std::collections::BTreeMap;

/// What the nails and the blocks of strips cost at least.
#[derive(Debug)]
pub(super) struct Rows {
    /// Rows up the course by place, with what all up to each cost.
    plumb: Vec<(Length, Amount)>,
    level: Vec<LevelRow>,
    /// Blocks behind level edges: where, and what they cost.
    blocks: Vec<(Interval, Amount)>,
    /// Strips up to this width end where their sheets do.
    sized: Length,
    /// The ends of the wall: a strip at one may be as much short as a sheet may.
    ends: Interval,
    /// What the edges of a strip may change of rows beside them.
    margin: Length,
    /// For each stop, what a strip's edge there costs: of one that ends at it and of one that begins at it.
    sides: Vec<(Amount, Amount)>,
}

/// Nails in a level row.
#[derive(Debug)]
struct LevelRow {
    x: Interval,
    each: Amount,
    /// From nail to nail.
    pitch: Length,
}

impl LevelRow {
    /// What is left of the row between two edges of a strip: corners may take a nail at either end.
    fn within(&self, x: Interval) -> Amount {
        let Some(shared) = self.x.intersect(x) else {
            return Amount::ZERO;
        };
        let nails = shared.len().units() / self.pitch.units().max(1) - 2;
        self.each.times(nails.max(0)).unwrap_or_default()
    }
}

impl Rows {
    /// Reads a course; `stops` are the places of its seams.
    pub fn new(space: &Space<'_>, exact: &Exact<'_, '_>, stops: &[Length]) -> Self {
        let margin = space.inset() * 2;
        let none = Self {
            plumb: Vec::new(),
            level: Vec::new(),
            blocks: Vec::new(),
            sides: Vec::new(),
            sized: exact.sized(),
            ends: space.x,
            margin,
        };
        let Some((runs, rows)) = exact.whole() else {
            return none;
        };
        let mut found = none;
        let mut driven: Vec<&NailRow> = rows.iter().collect();
        for edge in runs.chunk_by(|a, b| (a.piece, a.edge) == (b.piece, b.edge)) {
            for run in edge
                .iter()
                .filter(|run| run.lacks_backing() && !run.side.is_plumb())
            {
                let cost = exact.backing_of(run);
                found.blocks.push((Interval::new(run.from.x, run.to.x), cost));
            }
            if let Some((y, x, pitch)) = exact.blocked_edge(edge) {
                let inset = space.inset();
                driven.retain(|row| row.from.y != row.to.y || (row.from.y - y).abs() > inset);
                found.level.push(LevelRow {
                    x,
                    each: space.nail,
                    pitch: space
                        .widest_pitch(Zone::Edge)
                        .map_or(pitch, |widest| widest.max(pitch)),
                });
            }
        }
        let mut plumb: BTreeMap<Length, Amount> = BTreeMap::new();
        for row in driven {
            let mut cost = Amount::ZERO;
            space.prices.nail_row(row, &mut cost);
            let (right, up) = ((row.to.x - row.from.x).abs(), (row.to.y - row.from.y).abs());
            if right == Length::ZERO {
                *plumb.entry(row.from.x).or_default() += cost;
            } else if up == Length::ZERO && row.count() > 1 && !space.is_of_portal(row) {
                let (first, last) = (row.position(row.first).x, row.position(row.last).x);
                let x = Interval::new(first.min(last), first.max(last));
                let spaces = i64::from(row.count() - 1);
                let least = space.widest_pitch(row.zone).unwrap_or(Length::ZERO);
                found.level.push(LevelRow {
                    x,
                    each: cost.scaled(1, i128::from(row.count())).unwrap_or_default()
                        - Amount::from_ten_thousandths(1),
                    pitch: Length::from_units((x.len().units() + spaces - 1) / spaces).max(least),
                });
            }
        }
        let mut sum = Amount::ZERO;
        found.plumb = plumb
            .into_iter()
            .map(|(x, cost)| {
                sum += cost;
                (x, sum)
            })
            .collect();
        found.sides = found.sides_at(space, exact, stops);
        found
    }

    /// What the edges of strips at each stop cost.
    fn sides_at(&self, space: &Space<'_>, exact: &Exact<'_, '_>, stops: &[Length]) -> Vec<(Amount, Amount)> {
        let mut alike: BTreeMap<(Length, Vec<Rect>), (Amount, Amount)> = BTreeMap::new();
        let y = exact.height();
        let holes: Vec<Rect> = space.patches().filter(|rect| rect.y_span().overlaps(y)).collect();
        let side = |x: Length| {
            let beside = |rect: &Rect| rect.x0 - self.margin * 4 <= x && x <= rect.x1 + self.margin * 4;
            if holes.iter().any(beside) {
                let jamb = |rect: &Rect| {
                    [rect.x0, rect.x1]
                        .iter()
                        .any(|at| (*at - x).abs() <= self.margin * 4)
                };
                if holes.iter().any(jamb) {
                    return (Amount::ZERO, Amount::ZERO);
                }
                // Over and under an opening each edge has at least the nails that the stud would have between edges.
                let field = self.between(Interval::new(x - space.inset(), x + space.inset()));
                return (field, field);
            }
            let at_end = x == space.x.lo || x == space.x.hi;
            let sample = || (exact.side(x, Side::Right), exact.side(x, Side::Left));
            if exact.is_sloped() || at_end {
                return sample();
            }
            let seam = Rect::new(x, y.lo, x, y.hi);
            // Seams are alike where the same uprights stand at the same places beside them.
            let near = self.margin;
            let uprights = space.faces.iter().filter(|(face, axis)| {
                *axis == Axis::Vertical
                    && face.x0 <= x + near
                    && x - near <= face.x1
                    && face.y_span().overlaps(y)
            });
            let beside = uprights.map(|(face, _)| Rect::new(face.x0 - x, face.y0, face.x1 - x, face.y1));
            let key = (space.site.edge_spacing(seam), beside.collect());
            *alike.entry(key).or_insert_with(sample)
        };
        stops.iter().copied().map(side).collect()
    }

    /// What rows up the course cost whose place is well within these limits.
    fn between(&self, x: Interval) -> Amount {
        let sum = |until: usize| {
            let last = until.checked_sub(1).and_then(|last| self.plumb.get(last));
            last.map_or(Amount::ZERO, |(_, sum)| *sum)
        };
        let from = self.plumb.partition_point(|(place, _)| *place < x.lo);
        let until = self.plumb.partition_point(|(place, _)| *place <= x.hi).max(from);
        sum(until) - sum(from)
    }

    /// What the nails and blocks of a strip between these stops cost at least: the left one, the right one.
    pub fn of(&self, strip: Interval, (left, right): (usize, usize)) -> Amount {
        if strip.len() <= self.margin * 2 {
            return Amount::ZERO;
        }
        let x = Interval::new(strip.lo + self.margin, strip.hi - self.margin);
        let mut cost = self.between(x);
        for row in &self.level {
            cost += row.within(x);
        }
        for (span, whole) in &self.blocks {
            if let Some(shared) = span.intersect(x) {
                let share = whole.scaled(
                    i128::from(shared.len().units()),
                    i128::from(span.len().units().max(1)),
                );
                cost += share.unwrap_or_default();
            }
        }
        // A sheet that is a little short of its strip ends elsewhere than the strip.
        let touches = (strip.lo == self.ends.lo, strip.hi == self.ends.hi);
        if strip.len() > self.sized {
            return cost;
        }
        let ends = self.sides.get(right).filter(|_| !touches.0).map(|side| side.0);
        let begins = self.sides.get(left).filter(|_| !touches.1).map(|side| side.1);
        cost + ends.unwrap_or_default() + begins.unwrap_or_default()
    }
}
