//! What holds each stretch of a level or plumb panel edge.
//!
//! The nail line of an edge lies in from the panel's edge by the least distance at which a member has wood on both
//! sides of it. At a seam, or where the edge ends on a member, it stays within the least and the most edge distance.
//! Where the sheet runs past a member it lies on the middle of the covered face, and nearer to the edge if more
//! would hang free than practice accepts.

use super::panel_edge::PanelEdge;
use super::wood::{Face, Wood};
use super::{Hold, Unsupported};
use crate::geometry::{Interval, Rect};
use crate::house::Practice;
use crate::length::Length;

/// The distances that the nail line of an edge keeps.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LineRule {
    /// Least distance from the panel's edge.
    pub least: Length,
    /// Most distance from the panel's edge at a seam or where the edge ends on a member.
    pub most: Length,
    /// Least distance from the member's edges.
    pub wood: Length,
    /// The most that may hang free where the sheet runs past the member.
    pub free: Length,
    /// How far to look along a level edge for the members that bound its bay.
    pub bay: Length,
}

impl LineRule {
    /// The distances that practice asks for.
    pub fn of(practice: &Practice) -> Self {
        Self {
            least: practice.edge_distance_least,
            most: practice.edge_distance_most,
            wood: practice.member_edge_least,
            free: practice.free_edge_most,
            bay: practice.clear_bay_most,
        }
    }

    /// How deep into the panel a member may hold its edge.
    pub(super) fn reach(&self) -> Length {
        self.most.max(self.free)
    }

    /// The least inset of a line on a face that lies at these depths, where the edge ends on it or at a seam.
    pub fn on(&self, depths: Interval) -> Option<Length> {
        let inset = self.least.max(depths.lo + self.wood);
        (inset <= self.most && inset + self.wood <= depths.hi).then_some(inset)
    }

    /// The inset of a line on a face that the sheet runs past.
    pub fn past(&self, depths: Interval) -> Option<Length> {
        let middle = (depths.lo + depths.hi).half().min(self.free);
        let inset = middle.max(self.least).max(depths.lo + self.wood);
        (depths.lo > Length::ZERO && inset <= self.free && inset + self.wood <= depths.hi).then_some(inset)
    }
}

/// A stretch of a panel edge with one support.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stretch {
    /// From where to where, in the edge's own coordinate.
    pub span: Interval,
    /// What holds it, or why nothing does.
    pub support: Result<Hold, Unsupported>,
    /// The clear bay that an unsupported stretch lies in, face to face; it may reach beyond the panel.
    pub bay: Interval,
}

/// How one face bears on an edge.
#[derive(Clone, Copy, Debug)]
pub(super) struct Bearing {
    pub(super) span: Interval,
    pub(super) offer: Offer,
}

/// What a face offers to an edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Offer {
    /// A line within the edge distances.
    On(Hold),
    /// A line on a face that the sheet runs past.
    Past(Hold),
    /// Nothing, and why.
    Nothing(Unsupported),
    /// The edge lies on the face.
    Under,
}

/// Room that is used again from edge to edge.
#[derive(Clone, Debug, Default)]
pub struct Scratch {
    pub(super) bearings: Vec<Bearing>,
    pub(super) places: Vec<Length>,
}

/// What holds each stretch of an edge, from its lower or left end, written over `out`.
///
/// `seam` says that another panel meets the edge: then no sheet may run past its member.
pub(super) fn support(
    wood: &Wood<'_>,
    rule: &LineRule,
    edge: &PanelEdge,
    seam: bool,
    scratch: &mut Scratch,
    out: &mut Vec<Stretch>,
) {
    out.clear();
    scratch.bearings.clear();
    let span = edge.span();
    let wide = reach_along(rule, edge);
    for face in wood.near(area(rule, edge)) {
        bear(wood, rule, edge, seam, face, &mut scratch.bearings);
    }
    divide(span, wide, scratch, out);
}

/// Where an edge looks for wood.
pub(super) fn area(rule: &LineRule, edge: &PanelEdge) -> Rect {
    let depths = Interval {
        lo: Length::ZERO,
        hi: rule.reach(),
    };
    edge.area(reach_along(rule, edge), depths)
}

/// How far an edge looks along itself: a level one as far as the members that bound its bays.
fn reach_along(rule: &LineRule, edge: &PanelEdge) -> Interval {
    let span = edge.span();
    let beyond = if edge.side.is_plumb() {
        Length::ZERO
    } else {
        rule.bay
    };
    Interval {
        lo: span.lo - beyond,
        hi: span.hi + beyond,
    }
}

/// What a face offers to the edge.
fn bear(wood: &Wood<'_>, rule: &LineRule, edge: &PanelEdge, seam: bool, face: &Face, out: &mut Vec<Bearing>) {
    let depths = edge.depths(&face.bounds);
    let along = |depth: Length| {
        let at = edge.across(depth);
        if edge.side.is_plumb() {
            wood.plumb_span(face, at)
        } else {
            wood.level_span(face, at)
        }
    };
    // The stretch on which a line at this depth has wood on both sides.
    let line = |inset: Length| along(inset - rule.wood)?.intersect(along(inset + rule.wood)?);
    let hold = |inset: Length| Hold {
        member: face.member,
        inset,
        wood: (inset - depths.lo).min(depths.hi - inset),
    };
    let mut offer =
        |span: Option<Interval>, offer: Offer| out.extend(span.map(|span| Bearing { span, offer }));

    if depths.lo <= Length::ZERO && depths.hi >= Length::ZERO {
        offer(along(Length::ZERO), Offer::Under);
    }
    let full = if edge.side.is_plumb() {
        face.bounds.y_span()
    } else {
        face.bounds.x_span()
    };
    if depths.hi <= Length::ZERO || (depths.lo >= rule.most && (seam || depths.lo >= rule.free)) {
        return;
    }
    if !face.nailable {
        offer(Some(full), Offer::Nothing(Unsupported::NotNailable));
        return;
    }
    let (on, past) = (rule.on(depths), if seam { None } else { rule.past(depths) });
    if let Some(inset) = on {
        offer(line(inset), Offer::On(hold(inset)));
    }
    if let Some(inset) = past {
        offer(line(inset), Offer::Past(hold(inset)));
    }
    if on.is_none() && past.is_none() {
        let hangs = !seam && depths.lo > Length::ZERO;
        let reason = if hangs {
            Unsupported::HangsFree
        } else {
            Unsupported::TooLittleWood
        };
        offer(Some(full), Offer::Nothing(reason));
    }
}

/// Divides an edge where what bears on it changes, and picks the best for each part.
pub(super) fn divide(span: Interval, wide: Interval, scratch: &mut Scratch, out: &mut Vec<Stretch>) {
    let Scratch { bearings, places } = scratch;
    places.clear();
    places.extend([wide.lo, span.lo, span.hi, wide.hi]);
    for bearing in bearings.iter() {
        places.extend(
            [bearing.span.lo, bearing.span.hi]
                .into_iter()
                .filter(|place| wide.contains(*place)),
        );
    }
    places.sort_unstable();
    places.dedup();
    for pair in places.windows(2) {
        let part = Interval {
            lo: pair[0],
            hi: pair[1],
        };
        let support = best(bearings, part);
        match out.last_mut() {
            Some(last) if last.support == support && part.lo != span.lo && part.lo != span.hi => {
                last.span.hi = part.hi;
            }
            _ => out.push(Stretch {
                span: part,
                support,
                bay: part,
            }),
        }
    }
    join_bays(out);
    out.retain(|stretch| span.covers(stretch.span));
}

/// The best that bears on a part: the line nearest to the edge, then the earliest member.
fn best(bearings: &[Bearing], part: Interval) -> Result<Hold, Unsupported> {
    let (mut on, mut past, mut reason, mut on_wood) = (None, None, None, false);
    let nearer = |best: &mut Option<Hold>, hold: Hold| {
        if best.is_none_or(|best| (hold.inset, hold.member) < (best.inset, best.member)) {
            *best = Some(hold);
        }
    };
    for bearing in bearings.iter().filter(|bearing| bearing.span.covers(part)) {
        match bearing.offer {
            Offer::On(hold) => nearer(&mut on, hold),
            Offer::Past(hold) => nearer(&mut past, hold),
            Offer::Nothing(why) => reason = reason.max(Some(why)),
            Offer::Under => on_wood = true,
        }
    }
    let hold = if on_wood { on.or(past) } else { past.or(on) };
    hold.ok_or(reason.unwrap_or(Unsupported::NoMember))
}

/// Neighbouring parts without support share one clear bay.
fn join_bays(stretches: &mut [Stretch]) {
    for group in stretches.chunk_by_mut(|a, b| a.support.is_err() && b.support.is_err()) {
        let (Some(first), Some(last)) = (group.first(), group.last()) else {
            continue;
        };
        let bay = Interval {
            lo: first.span.lo,
            hi: last.span.hi,
        };
        for stretch in group {
            stretch.bay = bay;
        }
    }
}
