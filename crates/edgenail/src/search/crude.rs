//! What a course between two levels weighs at least, before its seams are known.

use super::columns::Columns;
use super::course::Slot;
use super::exact::Exact;
use super::positions::positions;
use super::space::{Space, up_and_across};
use crate::amount::Amount;
use crate::edges::EdgeRun;
use crate::geometry::{Interval, Rect};
use crate::house::Sheet;
use crate::layout::Side;
use crate::length::Length;
use crate::nailing::{NailRow, Zone};
use std::collections::{BTreeMap, HashMap};

/// How far the courses reach that stand in for those at a level.
const BESIDE: Length = Length::feet(1);

/// Prices courses by their height alone.
///
/// Every strip is at most as wide as a sheet, takes at least its share of one by width, and is cut and set for at least
/// what the cheapest is. Strips that have seams over an opening on either side take what it leaves; beside it they are
/// bought over their whole height. Nails are those of the wall as if it were one piece, and more along seams and levels.
#[derive(Debug)]
pub(super) struct Crude<'s, 'a> {
    space: &'s Space<'a>,
    /// Rows up the wall, as if it were one piece, and how many of each there are.
    plumb: BTreeMap<PlumbRow, i64>,
    /// Level rows: how high, and what they cost.
    level: Vec<(Length, Amount)>,
    /// The wall as one course for each direction of sheets, and for each opening the outermost seams over or under it.
    whole: Vec<(Slot, Vec<Interval>)>,
    /// What the edges at each level cost: of the course below it, of the course above it.
    edges: HashMap<Length, (Edge, Edge)>,
    /// The same by what stands there.
    alike: BTreeMap<(Vec<Rect>, Length, Length), (Edge, Edge)>,
    /// Courses above the lowest, which cost the same wherever that begins.
    known: HashMap<Slot, Option<Least>>,
    inset: Length,
}

/// The least that a course costs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Least {
    /// With the shares of sheets that its pieces are charged with.
    pub cost: Amount,
    /// With no more of a sheet than the area that is sheathed, at the lowest price by area: whatever a piece shares its
    /// sheet with, and even if all that falls out of openings is used.
    pub by_area: Amount,
}

/// A row of nails up the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct PlumbRow {
    y: Interval,
    /// No nail is further from the next.
    pitch: Length,
    cost: Amount,
}

/// What a level edge costs.
#[derive(Clone, Copy, Debug, Default)]
struct Edge {
    cost: Amount,
    rows: i64,
}

impl<'s, 'a> Crude<'s, 'a> {
    pub fn new(space: &'s Space<'a>) -> Self {
        Self {
            space,
            plumb: BTreeMap::new(),
            level: Vec::new(),
            whole: Vec::new(),
            edges: HashMap::new(),
            alike: BTreeMap::new(),
            known: HashMap::new(),
            inset: space.inset(),
        }
    }

    /// Begins with courses of another bottom line; `whole` is the wall as if it were one course, for each direction of
    /// sheets.
    pub fn begin(&mut self, whole: &[Slot]) {
        let space = self.space;
        self.plumb.clear();
        self.level.clear();
        self.whole = whole
            .iter()
            .map(|slot| (*slot, seams_over(space, slot)))
            .collect();
        let one = whole.first().map(|slot| Exact::new(space, *slot));
        let Some((_, rows)) = one.and_then(|exact| exact.whole()) else {
            return;
        };
        for row in rows {
            if row.from.x == row.to.x {
                let mut cost = Amount::ZERO;
                space.prices.nail_row(&row, &mut cost);
                let (first, last) = (row.position(row.first).y, row.position(row.last).y);
                let y = Interval::new(first.min(last), first.max(last));
                let spaces = i64::from(row.count() - 1).max(1);
                let pitch = Length::from_units(y.len().units() / spaces + 1);
                *self.plumb.entry(PlumbRow { y, pitch, cost }).or_default() += 1;
            } else if row.from.y == row.to.y && !space.is_of_portal(&row) {
                self.level.push((row.from.y, level_cost(space, &row)));
            }
        }
    }

    /// The least that a course costs. Nothing where no sheet is as high.
    pub fn of(&mut self, slot: &Slot) -> Option<Least> {
        // Where the base is not level, how far sheathing reaches below it matters to every course.
        if slot.lowest || slot.reach != Length::ZERO {
            return self.priced(slot);
        }
        if let Some(known) = self.known.get(slot) {
            return *known;
        }
        let found = self.priced(slot);
        self.known.insert(*slot, found);
        found
    }

    fn priced(&mut self, slot: &Slot) -> Option<Least> {
        let space = self.space;
        let give = |y: Length, at_end: bool| if at_end { Length::ZERO } else { space.half_gap(y) };
        let y = Interval::new(
            slot.y.lo + give(slot.y.lo, slot.lowest),
            slot.y.hi - give(slot.y.hi, slot.uppermost),
        );
        let ends = slot.lowest || slot.uppermost;
        let short = if ends {
            space.practice.end_short
        } else {
            Length::ZERO
        };
        let mut sheets = space.sheets.iter().filter_map(|index| space.sheet(*index));
        if sheets.all(|sheet| y.len() > up_and_across(sheet, slot.running).0 + short) {
            return None;
        }
        let base = space.frame.lower.points();
        let stepped = base
            .iter()
            .any(|point| base.first().is_some_and(|first| first.y != point.y));
        let uneven =
            (slot.lowest && stepped) || space.frame.upper.points().iter().any(|point| point.y < y.hi);
        let columns = if uneven {
            Columns::default()
        } else {
            let whole = self.whole.iter().find(|(whole, _)| whole.running == slot.running);
            let over = whole.map_or(&[][..], |(_, over)| over);
            Columns::new(space, y, space.widest(slot.running), over)
        };
        let nails = self.nails(slot, y);
        let sheets = space.sheets.iter().filter_map(|index| space.sheet(*index));
        let least = sheets
            .filter_map(|sheet| of_sheet(space, slot, y, short, &columns, &nails, sheet))
            .reduce(|a, b| Least {
                cost: a.cost.min(b.cost),
                by_area: a.by_area.min(b.by_area),
            })?;
        let mut more = nails.field;
        space.prices.line(space.x, &mut more);
        Some(Least {
            cost: least.cost + more,
            by_area: least.by_area + more,
        })
    }

    /// What the nails of a course cost, and what a strip more changes of them.
    fn nails(&mut self, slot: &Slot, y: Interval) -> Nails {
        let space = self.space;
        let inset = self.inset;
        let (mut sum, mut most, mut rows) = (Amount::ZERO, Amount::ZERO, 0);
        for (row, count) in &self.plumb {
            let found = if y.lo + inset <= row.y.lo && row.y.hi + inset <= y.hi {
                row.cost
            } else {
                let clear = row.y.hi.min(y.hi) - row.y.lo.max(y.lo) - inset * 2;
                let nails = clear.units() / row.pitch.units() - 1;
                space.nail.times(nails.max(0)).unwrap_or_default()
            };
            sum += found.times(*count).unwrap_or_default();
            most = most.max(found);
        }
        for (at, cost) in &self.level {
            if y.lo + inset * i64::from(!slot.lowest) < *at && *at < y.hi - inset * i64::from(!slot.uppermost)
            {
                sum += *cost;
                rows += 1;
            }
        }
        if !slot.uppermost {
            let (below, _) = self.edges(slot, slot.y.hi);
            sum += below.cost;
            rows += below.rows;
        }
        if !slot.lowest {
            let (_, above) = self.edges(slot, slot.y.lo);
            sum += above.cost;
            rows += above.rows;
        }
        let edge = space
            .widest_pitch(Zone::Edge)
            .unwrap_or(space.practice.assembly.edge_spacing);
        let plumb = ((y.len() - inset * 2).spaces(edge.max(Length::from_units(1))) - 2).max(0);
        let frame = space.frame;
        let doubtful =
            !(frame.bare_zones.is_empty() && frame.penetrations.is_empty() && frame.straps.is_empty());
        let sides = space.nail.times(2 * plumb).unwrap_or_default() - most;
        Nails {
            field: sum,
            sides: if doubtful {
                Amount::ZERO
            } else {
                sides.max(Amount::ZERO)
            },
            less: space.nail.times(2 * rows).unwrap_or_default(),
        }
    }

    /// What the edges at a level cost over the whole wall, whatever the seams are.
    fn edges(&mut self, slot: &Slot, level: Length) -> (Edge, Edge) {
        if let Some(known) = self.edges.get(&level) {
            return *known;
        }
        let space = self.space;
        let bottom = self.whole.first().map_or(level, |(whole, _)| whole.y.lo);
        let top = self.whole.first().map_or(level, |(whole, _)| whole.y.hi);
        let low = (level - BESIDE).max(bottom);
        let high = (level + BESIDE).min(top);
        let key = (self.beside(level), level - low, high - level);
        if let Some(known) = self.alike.get(&key) {
            self.edges.insert(level, *known);
            return *known;
        }
        let part = |y: Interval| Slot {
            y,
            lowest: y.lo == bottom,
            uppermost: y.hi == top,
            ..*slot
        };
        let of = |y: Interval, side: Side| {
            if y.len() < self.inset * 3 {
                return Edge::default();
            }
            let exact = Exact::new(space, part(y));
            let Some((runs, rows)) = exact.whole() else {
                return Edge::default();
            };
            edge(space, &exact, &runs, &rows, level, side)
        };
        let found = (
            of(Interval::new(low, level), Side::Top),
            of(Interval::new(level, high), Side::Bottom),
        );
        self.edges.insert(level, found);
        self.alike.insert(key, found);
        found
    }

    /// Wood, openings and segments beside a level, by their place from it.
    fn beside(&self, level: Length) -> Vec<Rect> {
        let (space, near) = (self.space, self.inset * 2);
        let faces = space.faces.iter().map(|(face, _)| *face);
        let segments = space.site.segments.iter().map(|site| site.rect);
        let all = faces.chain(space.patches()).chain(segments);
        all.filter(|rect| rect.y0 <= level + near && level - near <= rect.y1)
            .map(|rect| {
                let low = (rect.y0 - level).max(-near);
                let high = (rect.y1 - level).min(near);
                Rect::new(rect.x0, low, rect.x1, high)
            })
            .collect()
    }
}

/// What a level row costs wherever it is.
fn level_cost(space: &Space<'_>, row: &NailRow) -> Amount {
    let mut cost = Amount::ZERO;
    space.prices.nail_row(row, &mut cost);
    let Some(pitch) = space.widest_pitch(row.zone) else {
        return cost;
    };
    let length = row.position(row.last).x - row.position(row.first).x;
    let nails = length.abs().units() / pitch.units().max(1) - 1;
    cost.min(space.nail.times(nails.max(0)).unwrap_or_default())
}

/// What the edge at a level costs.
fn edge(
    space: &Space<'_>,
    exact: &Exact<'_, '_>,
    runs: &[EdgeRun],
    rows: &[NailRow],
    level: Length,
    side: Side,
) -> Edge {
    let mut found = Edge::default();
    for run in runs.iter().filter(|run| run.side == side && run.lacks_backing()) {
        if (run.from.y - level).abs() <= space.inset() {
            found.cost += exact.backing_of(run);
        }
    }
    let level_rows = rows
        .iter()
        .filter(|row| row.from.y == row.to.y && !space.is_of_portal(row));
    for row in level_rows {
        if (row.from.y - level).abs() <= space.inset() {
            found.cost += level_cost(space, row);
            found.rows += i64::from(row.count() > 1);
        }
    }
    found
}

/// Nails of a course.
#[derive(Clone, Copy, Debug)]
struct Nails {
    /// As if it were one piece.
    field: Amount,
    /// What the rows at both sides of a seam cost more than the nails of one stud.
    sides: Amount,
    /// What corners may take from level rows, strip by strip.
    less: Amount,
}

/// As if the whole course were laid with one kind of sheet.
fn of_sheet(
    space: &Space<'_>,
    slot: &Slot,
    y: Interval,
    short: Length,
    columns: &Columns,
    nails: &Nails,
    sheet: &Sheet,
) -> Option<Least> {
    let (practice, prices) = (space.practice, &space.prices);
    let (up, across) = up_and_across(sheet, slot.running);
    if y.len() > up + short {
        return None;
    }
    let middle = space.x.lo + space.x.len().half();
    let blank = Rect::from_size(middle, y.lo, across, y.len().min(up));
    if blank.is_empty() {
        return None;
    }
    let part = |amount: Amount, along: Length, of: Length| {
        amount.scaled(
            i128::from(along.max(Length::ZERO).units()),
            i128::from(of.units().max(1)),
        )
    };
    let ends = practice.end_short * 2;
    // A sheet of its own for every strip, or a share of one by width: narrow strips give more of their width to gaps than
    // to cuts.
    let narrow = practice.filler_least;
    let clear = columns.clear - ends;
    let without_gaps = |each: Amount| {
        if practice.kerf < space.gap {
            part(each, narrow + practice.kerf, narrow + space.gap)
        } else {
            Some(each)
        }
    };
    let share_each = without_gaps(prices.share(&blank, sheet, slot.running))?;
    let share = part(share_each, clear, across + practice.kerf)?;
    let area_each = without_gaps(space.by_area(across, blank.height()))?;
    let area_share = part(area_each, columns.solid - ends, across + practice.kerf)?;
    let pitch = across + space.gap + ends;
    let saw = part(prices.sawn(&blank, sheet, slot.running), columns.clear, pitch)?;
    let (whole, small) = match space.frame.sections.len() {
        1 => prices.setting(&blank),
        _ => (prices.least_setting(), prices.least_setting()),
    };
    // A piece is small below some width.
    let small_pitch = prices.small_width(y.len()) + space.gap;
    let far = part(whole, columns.far, pitch)?.min(part(small, columns.far, small_pitch.min(pitch))?);
    let each = small.min(whole);
    let near = part(each, columns.clear - columns.far, pitch)?;
    // Over and under an opening either sheets are bought over the whole height, or pieces for what it leaves, each of at
    // least its own area.
    let area = ((across + practice.kerf) * (up + practice.kerf)).square_units();
    let (mut beside, mut area_beside) = (Amount::ZERO, Amount::ZERO);
    for opening in &columns.beside {
        let set = part(each, opening.width, pitch)?;
        let over = part(share_each, opening.width, across + practice.kerf)? + set;
        let own = prices.bought(sheet.price.scaled(opening.area, area)?) + each.times(opening.parts)?;
        beside += over.min(own);
        area_beside += without_gaps(space.by_square(opening.left))? + set.min(each.times(opening.parts)?);
    }
    let rows = part(nails.sides, columns.seamed, pitch)?;
    let less = part(nails.less, space.x.len() + pitch, pitch)?;
    let work = saw + far + near + rows - less;
    Some(Least {
        cost: share + beside + work,
        by_area: area_share + area_beside + work,
    })
}

/// For each opening the outermost seams that may stand over or under it.
fn seams_over(space: &Space<'_>, whole: &Slot) -> Vec<Interval> {
    let half = space.gap.half();
    let stops = positions(space, whole);
    let over = |hole: &Rect| {
        let from = stops.partition_point(|x| *x < hole.x0 - half);
        let until = stops.partition_point(|x| *x <= hole.x1 + half);
        let inside = stops.get(from..until).unwrap_or_default();
        match (inside.first(), inside.last()) {
            (Some(first), Some(last)) => Interval::new(*first, *last),
            _ => Interval::new(hole.x0, hole.x0),
        }
    };
    space.holes.iter().map(over).collect()
}
