//! What holds each stretch of a panel edge that follows a rake.
//!
//! Depths are measured plumb, so every distance that practice gives square to an edge is first lengthened by the
//! slope, rounded up. A face is judged at both ends of a part on which its sides are straight.

use super::panel_edge::PanelEdge;
use super::support::{Bearing, LineRule, Offer, Scratch, Stretch, divide};
use super::wood::Wood;
use super::{Hold, Unsupported};
use crate::geometry::{Interval, Rect};
use crate::length::Length;

/// How much longer a plumb distance is than the same distance square to a slope.
#[derive(Clone, Copy, Debug)]
pub struct Steepness {
    slant: Length,
    run: Length,
}

impl Steepness {
    /// Of a sloped edge; a level edge lengthens nothing.
    pub fn of(edge: &PanelEdge) -> Self {
        Self {
            slant: edge.from.distance(edge.to),
            run: (edge.to.x - edge.from.x).max(Length::from_units(1)),
        }
    }

    /// The plumb distance, rounded up.
    pub fn plumb(&self, square: Length) -> Length {
        scale(square, self.slant, self.run, true)
    }

    /// The distance square to the slope, rounded down.
    pub fn square(&self, plumb: Length) -> Length {
        scale(plumb, self.run, self.slant, false)
    }

    /// The level distance that a distance along the slope covers, rounded down.
    pub fn level(&self, along: Length) -> Length {
        scale(along, self.run, self.slant, false)
    }
}

/// `length · by / over`, rounded up or down.
fn scale(length: Length, by: Length, over: Length, up: bool) -> Length {
    let product = i128::from(length.units()) * i128::from(by.units());
    let over = i128::from(over.units());
    let quotient = if up {
        -(-product).div_euclid(over)
    } else {
        product.div_euclid(over)
    };
    Length::from_units(i64::try_from(quotient).unwrap_or(i64::MAX))
}

/// What holds each stretch of a sloped edge, from its left end, written over `out`.
pub(super) fn support(
    wood: &Wood<'_>,
    rule: &LineRule,
    edge: &PanelEdge,
    scratch: &mut Scratch,
    out: &mut Vec<Stretch>,
) {
    out.clear();
    scratch.bearings.clear();
    let span = edge.span();
    let steep = Steepness::of(edge);
    let plumb = plumb_rule(rule, &steep);
    let Scratch { bearings, places } = scratch;
    for face in wood.near(area(rule, edge)) {
        let Some(member) = wood.member(face.member) else {
            continue;
        };
        places.clear();
        places.extend([span.lo.max(face.bounds.x0), span.hi.min(face.bounds.x1)]);
        places.extend(
            member
                .face
                .points()
                .iter()
                .map(|p| p.x)
                .filter(|x| span.contains(*x)),
        );
        places.sort_unstable();
        places.dedup();
        for pair in places.windows(2) {
            let part = Interval {
                lo: pair[0],
                hi: pair[1],
            };
            let depths = [part.lo, part.hi].map(|x| {
                let y = edge.y_at(x);
                let face = member.face.span_at_x(x)?;
                // Only the top of a wall slopes.
                Some(Interval {
                    lo: y - face.hi,
                    hi: y - face.lo,
                })
            });
            let [Some(a), Some(b)] = depths else { continue };
            let depths = Interval {
                lo: a.lo.max(b.lo),
                hi: a.hi.min(b.hi),
            };
            bear(&plumb, &steep, face.member, face.nailable, part, depths, bearings);
        }
    }
    divide(span, span, scratch, out);
}

/// A rule's distances measured plumb.
fn plumb_rule(rule: &LineRule, steep: &Steepness) -> LineRule {
    LineRule {
        least: steep.plumb(rule.least),
        most: steep.plumb(rule.most),
        wood: steep.plumb(rule.wood),
        free: steep.plumb(rule.free),
        bay: rule.bay,
    }
}

/// Where a sloped edge looks for wood.
pub(super) fn area(rule: &LineRule, edge: &PanelEdge) -> Rect {
    let plumb = plumb_rule(rule, &Steepness::of(edge));
    let depths = Interval {
        lo: Length::ZERO,
        hi: plumb.reach(),
    };
    edge.area(edge.span(), depths)
}

/// What a face at these depths offers over a part of the edge.
fn bear(
    plumb: &LineRule,
    steep: &Steepness,
    member: crate::frame::MemberId,
    nailable: bool,
    part: Interval,
    depths: Interval,
    out: &mut Vec<Bearing>,
) {
    let mut offer = |offer: Offer| out.push(Bearing { span: part, offer });
    let hold = |inset: Length| Hold {
        member,
        inset: steep.square(inset),
        wood: steep.square((inset - depths.lo).min(depths.hi - inset)),
    };
    // A rake's own rounding moves a face by a unit; that does not lift it off the edge.
    if depths.lo <= Length::from_units(1) && depths.hi >= Length::ZERO {
        offer(Offer::Under);
    }
    if depths.hi <= Length::ZERO || depths.lo >= plumb.most.max(plumb.free) {
        return;
    }
    let (on, past) = (plumb.on(depths), plumb.past(depths));
    match (nailable, on, past) {
        (false, ..) => offer(Offer::Nothing(Unsupported::NotNailable)),
        (true, None, None) => offer(Offer::Nothing(Unsupported::TooLittleWood)),
        (true, on, past) => {
            if let Some(inset) = on {
                offer(Offer::On(hold(inset)));
            }
            if let Some(inset) = past {
                offer(Offer::Past(hold(inset)));
            }
        }
    }
}
