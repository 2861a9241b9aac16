//! Nails along one line, each on wood that can hold it.

use super::row::part_of;
use super::{NailRow, Snag, Zone};
use crate::edges::{LineRule, PanelEdge, Site, Steepness};
use crate::frame::MemberId;
use crate::geometry::{Interval, Point, Rect, Shape, Trapezoid};
use crate::length::Length;

/// A stretch of wood behind a line of nails, in the coordinate of the line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Backing {
    /// The stretch that it answers for.
    pub(super) span: Interval,
    /// Where a nail has wood on both sides of it along the line.
    pub(super) good: Interval,
    pub(super) member: MemberId,
    /// Distance of the line from the panel's edge here.
    pub(super) inset: Length,
    pub(super) zone: Zone,
    pub(super) nail: u32,
}

/// A line and how it is divided.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Division {
    pub(super) from: Length,
    pub(super) to: Length,
    pub(super) spaces: u32,
    pub(super) first: u32,
    pub(super) last: u32,
    /// How far a nail may be moved along it: a quarter of a space, of the space asked for where a nail stands alone.
    pub(super) quarter: Length,
}

impl Division {
    /// The line divided into spaces no wider than `spacing`, with or without a nail at each end; `None` if nothing is
    /// left to nail.
    pub(super) fn new(along: Interval, spacing: Length, ends: (bool, bool)) -> Option<Self> {
        let spaces = u32::try_from(along.len().spaces(spacing.max(Length::from_units(1))).max(1)).ok()?;
        let (first, end) = (u32::from(!ends.0), if ends.1 { spaces } else { spaces - 1 });
        let point = along.len() <= Length::ZERO && ends.0;
        let last = if point { 0 } else { end };
        let space = if point {
            spacing.units()
        } else {
            along.len().units() / i64::from(spaces)
        };
        (first <= last).then_some(Self {
            from: along.lo,
            to: along.hi,
            spaces,
            first,
            last,
            quarter: Length::from_units(space / 4),
        })
    }

    fn place(&self, index: u32) -> Length {
        part_of(self.from, self.to, index, self.spaces)
    }
}

/// Puts the nails of a piece on lines, and keeps what could not be nailed.
pub(super) struct Hammer<'s, 'a> {
    pub(super) site: &'s Site<'a>,
    pub(super) rule: LineRule,
    pub(super) piece: u32,
    pub(super) outline: &'s Shape,
    /// The outline's sloped edges.
    pub(super) slopes: &'s [PanelEdge],
    pub(super) rows: &'s mut Vec<NailRow>,
    pub(super) snags: &'s mut Vec<Snag>,
}

/// The point of a slope that is nearest to a place beside it is not one of its ends.
fn stands_before(slope: &PanelEdge, at: Point) -> bool {
    let (right, up) = (slope.to.x - slope.from.x, slope.to.y - slope.from.y);
    let product = |x: Length, y: Length| {
        i128::from(right.units()) * i128::from(x.units()) + i128::from(up.units()) * i128::from(y.units())
    };
    let along = product(at.x - slope.from.x, at.y - slope.from.y);
    0 <= along && along <= product(right, up)
}

impl Hammer<'_, '_> {
    /// Nails a divided line. `wood` lies along it, rising and apart; a place without wood gets no nail. A nail that has
    /// to move stays within the `limits`.
    pub(super) fn nail(&mut self, line: &PanelEdge, wood: &[Backing], division: Division, limits: Interval) {
        let steep = Steepness::of(line);
        let depth = |inset: Length| {
            if line.is_sloped() {
                steep.plumb(inset)
            } else {
                inset
            }
        };
        // What the last nail was driven into, and whether any nail at that depth is free.
        let (mut open, mut free) = (None, None);
        let mut from = 0;
        for index in division.first..=division.last {
            let place = division.place(index);
            while wood.get(from).is_some_and(|backing| backing.span.hi < place) {
                from += 1;
            }
            let near = (from.saturating_sub(1)..).zip(wood.get(from.saturating_sub(1)..).unwrap_or_default());
            let here = near
                .into_iter()
                .find(|(_, backing)| backing.span.contains(place) && backing.good.contains(place));
            if let Some((at, backing)) = here {
                let all_free = match free {
                    Some((inset, free)) if inset == backing.inset => free,
                    _ => self.all_free(line, division, depth(backing.inset)),
                };
                free = Some((backing.inset, all_free));
                if all_free || self.is_free(line, place, depth(backing.inset)) {
                    match self.rows.last_mut().filter(|_| open == Some(at)) {
                        Some(row) => row.last = index,
                        None => self.drive(line, &depth, backing, division, index),
                    }
                    open = Some(at);
                    continue;
                }
            }
            open = None;
            let reach = Interval {
                lo: (place - division.quarter).max(limits.lo),
                hi: (place + division.quarter).min(limits.hi),
            };
            let bearing = wood.iter().find(|backing| backing.span.contains(place));
            match self.moved(line, &depth, wood, place, reach) {
                Some((place, backing)) => {
                    let at = Division {
                        from: place,
                        to: place,
                        spaces: 1,
                        first: 0,
                        last: 0,
                        quarter: Length::ZERO,
                    };
                    self.drive(line, &depth, &backing, at, 0);
                    if let Some(row) = self.rows.last_mut() {
                        row.moved = true;
                    }
                }
                None => self.snags.extend(bearing.map(|backing| Snag {
                    piece: self.piece,
                    at: line.point(place, depth(backing.inset)),
                })),
            }
        }
    }

    /// The place within reach that is nearest to one that cannot be nailed.
    fn moved(
        &self,
        line: &PanelEdge,
        depth: &dyn Fn(Length) -> Length,
        wood: &[Backing],
        place: Length,
        reach: Interval,
    ) -> Option<(Length, Backing)> {
        let mut best: Option<(Length, Length, Backing)> = None;
        let corners = self
            .outline
            .boundary()
            .iter()
            .map(|edge| if line.side.is_plumb() { edge.a.y } else { edge.a.x });
        let off_corners: Vec<Length> = corners
            .flat_map(|corner| [corner - self.rule.least, corner + self.rule.least])
            .collect();
        for backing in wood {
            let lo = backing.good.lo.max(backing.span.lo).max(reach.lo);
            let hi = backing.good.hi.min(backing.span.hi).min(reach.hi);
            let blocked = self.patches(line, lo, hi, depth(backing.inset));
            // As near to its place as the wood allows, just clear of a patch, or of an edge that crosses the line.
            let beside = blocked
                .iter()
                .flat_map(|patch| [patch.lo - Length::from_units(1), patch.hi + Length::from_units(1)]);
            let tries = std::iter::once(place.max(lo).min(hi))
                .chain(beside)
                .chain(off_corners.iter().copied());
            for at in tries.filter(|at| lo <= *at && *at <= hi) {
                let free = blocked.iter().all(|patch| !patch.contains(at))
                    && self.on_panel(line.point(at, depth(backing.inset)));
                let key = ((at - place).abs(), at);
                if free && best.is_none_or(|(away, at, _)| key < (away, at)) {
                    best = Some((key.0, key.1, *backing));
                }
            }
        }
        best.map(|(_, at, backing)| (at, backing))
    }

    /// The panel reaches far enough on all sides of a place: to level and plumb edges along them, to sloped ones square
    /// to the slope.
    fn on_panel(&self, at: Point) -> bool {
        let round = Rect {
            x0: at.x,
            y0: at.y,
            x1: at.x,
            y1: at.y,
        }
        .grown(self.rule.least);
        if let Some(rect) = self.outline.is_rect() {
            return rect.covers(&round);
        }
        // Lengthening a distance by the slope and reading a height on it each round by less than a unit.
        let rounding = Length::from_units(2);
        let clear = self
            .slopes
            .iter()
            .filter(|slope| slope.span().contains(at.x) || stands_before(slope, at))
            .all(|slope| at.y + Steepness::of(slope).plumb(self.rule.least) <= slope.y_at(at.x) + rounding);
        clear
            && round.corners().into_iter().all(|corner| {
                let over = self.slopes.iter().find(|slope| slope.span().contains(corner.x));
                let y = over.map_or(corner.y, |slope| corner.y.min(slope.y_at(corner.x)));
                self.outline.contains(Point::new(corner.x, y))
            })
    }

    /// A place on the line has panel round it, and no strap, bolt or penetration lies there.
    fn is_free(&self, line: &PanelEdge, place: Length, depth: Length) -> bool {
        if !self.on_panel(line.point(place, depth)) {
            return false;
        }
        let frame = self.site.frame;
        if frame.straps.is_empty() && frame.penetrations.is_empty() {
            return true;
        }
        self.patches(line, place, place, depth).is_empty()
    }

    /// Every place on a divided line is free, seen without a look at each.
    fn all_free(&self, line: &PanelEdge, division: Division, depth: Length) -> bool {
        let (a, b) = (line.point(division.from, depth), line.point(division.to, depth));
        let round = Rect {
            x0: a.x,
            y0: a.y.min(b.y),
            x1: b.x,
            y1: a.y.max(b.y),
        }
        .grown(self.rule.least);
        let mut columns = self.outline.columns().iter().filter_map(Trapezoid::is_rect);
        self.slopes.is_empty()
            && columns.any(|column| column.covers(&round))
            && self.patches(line, division.from, division.to, depth).is_empty()
    }

    /// The stretches of a line that straps, bolts and penetrations take, between two places.
    fn patches(&self, line: &PanelEdge, lo: Length, hi: Length, depth: Length) -> Vec<Interval> {
        let frame = self.site.frame;
        let straps = frame.straps.iter().map(|patch| patch.rect);
        // A penetration has panel edges of its own.
        let holes = frame
            .penetrations
            .iter()
            .map(|patch| patch.rect.grown(self.rule.least - Length::from_units(1)));
        let (a, b) = (line.point(lo, depth), line.point(hi, depth));
        let y = Interval::new(a.y, b.y);
        let meets = |rect: &Rect| rect.x0 <= b.x && a.x <= rect.x1 && rect.y0 <= y.hi && y.lo <= rect.y1;
        let along = |rect: Rect| {
            if line.side.is_plumb() {
                rect.y_span()
            } else {
                rect.x_span()
            }
        };
        straps.chain(holes).filter(meets).map(along).collect()
    }

    /// Adds a nail to the row that it continues, or begins a row.
    fn drive(
        &mut self,
        line: &PanelEdge,
        depth: &dyn Fn(Length) -> Length,
        backing: &Backing,
        division: Division,
        index: u32,
    ) {
        let depth = depth(backing.inset);
        let (from, to) = (line.point(division.from, depth), line.point(division.to, depth));
        if let Some(row) = self.rows.last_mut() {
            let continues = row.member == backing.member
                && row.zone == backing.zone
                && row.nail == backing.nail
                && (row.from, row.to, row.spaces, row.last + 1) == (from, to, division.spaces, index);
            if continues {
                row.last = index;
                return;
            }
        }
        self.rows.push(NailRow {
            piece: self.piece,
            member: backing.member,
            zone: backing.zone,
            nail: backing.nail,
            from,
            to,
            spaces: division.spaces,
            first: index,
            last: index,
            moved: false,
        });
    }
}
