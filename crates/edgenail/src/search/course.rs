//! The seams of one course: the cheapest way from one end of the wall to the other.

use super::FORBIDDING;
use super::space::{Space, up_and_across};
use crate::amount::Amount;
use crate::frame::Axis;
use crate::geometry::{Interval, Rect, Shape};
use crate::house::End;
use crate::layout::{BandSpec, Joint, Running, Sides, on_sawn_rim};
use crate::length::Length;

/// What a course has to fit.
#[derive(Clone, Copy, Debug)]
pub(super) struct Slot<'a> {
    pub y: Interval,
    pub running: Running,
    /// The course is the lowest; it has no seam below.
    pub lowest: bool,
    /// The course is the uppermost; it has no seam above.
    pub uppermost: bool,
    /// Where its first sheet goes.
    pub start: End,
    /// Seams of the course below, if the edge between them stays unblocked.
    pub below: &'a [Length],
}

/// The cheapest seams of a course: a shortest path over seam positions whose arcs are single strips. `effort` counts
/// the arcs. `None` where no row of sheets fits.
///
/// Among equal prices the longer strip comes first at the starting end, so that what is cut ends at the far end. Where the
/// cheapest strips come from unlike sheets, the cheapest from sheets of one kind are weighed against them.
pub(super) fn course(space: &Space<'_>, slot: &Slot<'_>, effort: &mut u64) -> Option<BandSpec> {
    let mut best = strips(space, slot, &space.sheets, effort)?;
    let unlike = space.prices.unlike(&best.1.sheets).total();
    if unlike > Amount::default() {
        best.0 += unlike;
        for sheet in &space.sheets {
            let alike = strips(space, slot, std::slice::from_ref(sheet), effort);
            if let Some(alike) = alike.filter(|alike| alike.0 < best.0) {
                best = alike;
            }
        }
    }
    Some(best.1)
}

/// The cheapest strips from some of the sheets, and their price.
fn strips(space: &Space<'_>, slot: &Slot<'_>, of: &[u32], effort: &mut u64) -> Option<(Amount, BandSpec)> {
    let mut stops = positions(space, slot);
    if slot.start == End::Right {
        stops.reverse();
    }
    let seams: Vec<Amount> = stops.iter().map(|x| seam_price(space, slot, *x)).collect();
    let last = stops.len().checked_sub(1)?;
    // Best way from each stop to the far end: price, next stop, sheet.
    let mut ways: Vec<Option<(Amount, usize, u32)>> = vec![None; stops.len()];
    ways[last] = Some((Amount::default(), last, 0));
    for from in (0..last).rev() {
        let mut best: Option<(Amount, usize, u32)> = None;
        for to in from + 1..=last {
            let strip = Interval::new(stops[from], stops[to]);
            if strip.len() > space.widest(slot.running) {
                break;
            }
            let Some((onward, ..)) = ways[to] else { continue };
            *effort += 1;
            let Some((price, sheet)) = strip_price(space, slot, strip, of) else {
                continue;
            };
            let seam = if to == last { Amount::default() } else { seams[to] };
            let total = price + seam + onward;
            if best.is_none_or(|(least, ..)| total <= least) {
                best = Some((total, to, sheet));
            }
        }
        ways[from] = best;
    }
    let (price, ..) = ways.first().copied().flatten()?;
    let (mut at, mut xs, mut sheets) = (0, Vec::new(), Vec::new());
    while at != last {
        let (_, to, sheet) = ways.get(at).copied().flatten()?;
        sheets.push(sheet);
        if to != last {
            xs.push(stops[to]);
        }
        at = to;
    }
    if slot.start == End::Right {
        xs.reverse();
        sheets.reverse();
    }
    let course = BandSpec {
        y0: slot.y.lo,
        y1: slot.y.hi,
        running: slot.running,
        seams: xs,
        sheets,
    };
    Some((price, course))
}

/// Seam positions from left to right, the ends of the wall included: the middle of upright faces, joints of faces
/// that touch, and whole sheets counted from either end.
fn positions(space: &Space<'_>, slot: &Slot<'_>) -> Vec<Length> {
    let mut stops = vec![space.x.lo, space.x.hi];
    let uprights = space
        .faces
        .iter()
        .filter(|(face, axis)| *axis == Axis::Vertical && face.y_span().overlaps(slot.y));
    stops.extend(
        uprights
            .filter(|(face, _)| face.width() >= space.seam_half())
            .map(|(face, _)| (face.x0 + face.x1).half()),
    );
    for across in space
        .sheets
        .iter()
        .filter_map(|index| Some(up_and_across(space.sheet(*index)?, slot.running).1))
    {
        let module = across + space.gap;
        let first = across + space.gap.half();
        // A sized sheet leaves half a gap at the end of the wall, so that its seam keeps to the module.
        for start in [first, module] {
            let mut at = start;
            while at < space.x.len() {
                stops.extend([space.x.lo + at, space.x.hi - at]);
                at += module;
            }
        }
    }
    stops.retain(|x| space.x.contains(*x));
    stops.sort_unstable();
    stops.dedup();
    stops
}

/// What a seam at this place costs: judgement, the studs that have to be added, a seam of the course below too near.
fn seam_price(space: &Space<'_>, slot: &Slot<'_>, x: Length) -> Amount {
    let mut price = space.prices.seam(x, slot.y).total();
    if space.bare_length(x, slot.y) > space.practice.free_edge_most {
        price += space.prices.added_stud(slot.y.len());
    }
    let near = |other: &Length| (*other - x).abs() < space.practice.stagger_least;
    if slot.below.iter().any(near) {
        price += FORBIDDING;
    }
    price
}

/// The cheapest sheet for a strip, with its price.
fn strip_price(space: &Space<'_>, slot: &Slot<'_>, strip: Interval, sheets: &[u32]) -> Option<(Amount, u32)> {
    let (at_left, at_right) = (strip.lo == space.x.lo, strip.hi == space.x.hi);
    let end = |at_end: bool| if at_end { Joint::End } else { Joint::Seam };
    let level = |y: Length, at_end: bool| {
        if at_end || !on_sawn_rim(space.practice, space.frame, y) {
            end(at_end)
        } else {
            Joint::RimSeam
        }
    };
    let sides = Sides {
        left: end(at_left),
        right: end(at_right),
        bottom: level(slot.y.lo, slot.lowest),
        top: level(slot.y.hi, slot.uppermost),
    };
    let give = |joint: Joint, half: Length| if joint == Joint::End { Length::ZERO } else { half };
    let half = space.gap.half();
    let outer = Rect::from_spans(
        Interval::new(
            strip.lo + give(sides.left, half),
            strip.hi - give(sides.right, half),
        ),
        Interval::new(
            slot.y.lo + give(sides.bottom, space.half_gap(slot.y.lo)),
            slot.y.hi - give(sides.top, space.half_gap(slot.y.hi)),
        ),
    );
    let parts = parts(space, outer);
    let mut penalty = Amount::default();
    let narrow = strip.len() + space.practice.strip_allowance < space.practice.strip_least;
    if narrow
        && !parts
            .iter()
            .all(|part| part.height() <= space.practice.strip_least * 2)
    {
        penalty = FORBIDDING;
    }
    let mut best: Option<(Amount, u32)> = None;
    for index in sheets {
        let Some(sheet) = space.sheet(*index) else {
            continue;
        };
        let (up, across) = up_and_across(sheet, slot.running);
        let short = |near: Joint, far: Joint| {
            if near == Joint::End || far == Joint::End {
                space.practice.end_short
            } else {
                Length::ZERO
            }
        };
        let fits = |part: &Rect| {
            part.width() <= across + short(sides.left, sides.right)
                && part.height() <= up + short(sides.bottom, sides.top)
        };
        if !parts.iter().all(fits) {
            continue;
        }
        let mut price = penalty;
        for part in &parts {
            if let Some(shape) = Shape::from_rect(*part) {
                price += space.prices.piece(&shape, sides, sheet, slot.running).total();
            }
        }
        if best.is_none_or(|(least, _)| price < least) {
            best = Some((price, *index));
        }
    }
    best
}

/// What is left of a strip's rectangle where openings run across its whole width, under a rake up to its highest
/// point.
fn parts(space: &Space<'_>, outer: Rect) -> Vec<Rect> {
    let through: Vec<Interval> = space
        .holes
        .iter()
        .filter(|hole| hole.x0 <= outer.x0 && outer.x1 <= hole.x1 && hole.y_span().overlaps(outer.y_span()))
        .map(Rect::y_span)
        .collect();
    let through = Interval::union(through);
    let high = space
        .frame
        .upper
        .y_over(outer.x_span())
        .map_or(outer.y1, |span| span.hi.min(outer.y1));
    let low = space
        .frame
        .lower
        .y_over(outer.x_span())
        .map_or(outer.y0, |_| outer.y0);
    if low >= high {
        return Vec::new();
    }
    let spans = Interval::subtract(Interval::new(low, high), &through);
    spans
        .into_iter()
        .map(|span| Rect::from_spans(outer.x_span(), span))
        .collect()
}
