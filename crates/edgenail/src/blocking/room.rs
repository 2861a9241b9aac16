//! Where a block or stud fits between what stands there, and which edges it holds.

use super::lie::Lumber;
use crate::edges::{LineRule, PanelEdge, Site};
use crate::geometry::{Interval, Rect};
use crate::length::Length;

/// A stretch of panel edge that wants wood behind it. `along` is its own coordinate.
#[derive(Clone, Copy, Debug)]
pub(super) struct Want {
    pub(super) run: u32,
    pub(super) edge: PanelEdge,
    pub(super) along: Interval,
    /// The edge of the panel across the seam.
    pub(super) facing: Option<PanelEdge>,
}

/// Why nothing fits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum NoRoom {
    /// What stands there leaves no place from which the nail line is served.
    Across,
    /// Nothing to nail its lower or left end to.
    Near,
    /// Nothing to nail its upper or right end to.
    Far,
}

/// The wood that stands: the frame's and what has been added so far.
pub(super) struct Standing<'s, 'a> {
    pub(super) site: &'s Site<'a>,
    pub(super) added: Vec<Rect>,
}

impl Standing<'_, '_> {
    /// What stands in an area, each face cut down to the rectangle around what it takes of it, and whether it fills
    /// that rectangle.
    fn obstacles(&self, area: Rect) -> Vec<(Rect, bool)> {
        let faces = self.site.wood.near(area).filter_map(|face| {
            if face.square {
                return Some((face.bounds.intersect(&area)?, true));
            }
            let x = face.bounds.x_span().intersect(area.x_span())?;
            let member = self.site.wood.member(face.member)?;
            let corners = member
                .face
                .points()
                .iter()
                .filter(|p| x.contains(p.x))
                .map(|p| Interval::new(p.y, p.y));
            let ends = [x.lo, x.hi].into_iter().filter_map(|x| member.face.span_at_x(x));
            let y = corners.chain(ends).reduce(|a, b| Interval {
                lo: a.lo.min(b.lo),
                hi: a.hi.max(b.hi),
            })?;
            Some((Rect::from_spans(x, y).intersect(&area)?, false))
        });
        let added = self
            .added
            .iter()
            .filter_map(|rect| Some((rect.intersect(&area)?, true)));
        faces.chain(added).collect()
    }

    /// The face of a piece of lumber that holds a wanted stretch: as near as it can stand to the middle of the seam,
    /// over the whole clear bay.
    pub(super) fn fit(&self, rule: &LineRule, want: &Want, lumber: &Lumber) -> Result<Rect, NoRoom> {
        let plumb = want.edge.side.is_plumb();
        let turn = |along: Interval, across: Interval| {
            if plumb {
                Rect::from_spans(across, along)
            } else {
                Rect::from_spans(along, across)
            }
        };
        let across_of = |rect: &Rect| if plumb { rect.x_span() } else { rect.y_span() };
        let along_of = |rect: &Rect| if plumb { rect.y_span() } else { rect.x_span() };

        let width = lumber.face;
        let home = want.home(width);
        let window = Interval {
            lo: home - width,
            hi: home + width * 2,
        };
        let middle = (want.along.lo + want.along.hi).half();
        // A sloped face that only cuts off an end of the stretch shortens the bay; it does not take the place.
        let taken: Vec<Interval> = self
            .obstacles(turn(want.along, window))
            .iter()
            .filter(|(rect, square)| *square || along_of(rect).contains(middle))
            .map(|(rect, _)| across_of(rect))
            .collect();
        let clear = |lo: Length| {
            let face = Interval { lo, hi: lo + width };
            taken.iter().all(|other| !other.overlaps(face))
        };
        let served = |lo: Length| {
            let face = turn(want.along, Interval { lo, hi: lo + width });
            let holds = |edge: &PanelEdge| rule.on(edge.depths(&face)).is_some();
            (holds(&want.edge), want.facing.as_ref().is_none_or(holds))
        };
        let beside = taken.iter().flat_map(|other| [other.hi, other.lo - width]);
        let best = std::iter::once(home)
            .chain(beside)
            .filter(|lo| clear(*lo) && served(*lo).0)
            .min_by_key(|lo| (!served(*lo).1, (*lo - home).abs(), *lo))
            .ok_or(NoRoom::Across)?;
        let across = Interval {
            lo: best,
            hi: best + width,
        };

        let reach = Interval {
            lo: middle - Length::LIMIT.half(),
            hi: middle + Length::LIMIT.half(),
        };
        let mut bay = (None, None);
        let across_bay = self.obstacles(turn(reach, across));
        for other in across_bay.iter().map(|(rect, _)| along_of(rect)) {
            if other.hi <= middle {
                bay.0 = bay.0.max(Some(other.hi));
            } else {
                bay.1 = Some(bay.1.map_or(other.lo, |lo: Length| lo.min(other.lo)));
            }
        }
        match bay {
            (None, _) => Err(NoRoom::Near),
            (_, None) => Err(NoRoom::Far),
            (Some(lo), Some(hi)) => Ok(turn(Interval { lo, hi }, across)),
        }
    }

    /// A place beside a stud with wood under all of it, on its right if that is free, else on its left, as high as the
    /// stud.
    pub(super) fn beside(&self, stud: Rect, width: Length) -> Option<Rect> {
        let right = Rect {
            x0: stud.x1,
            x1: stud.x1 + width,
            ..stud
        };
        let left = Rect {
            x0: stud.x0 - width,
            x1: stud.x0,
            ..stud
        };
        [right, left]
            .into_iter()
            .find(|place| self.obstacles(*place).is_empty() && self.stands_on_wood(place))
    }

    /// There is wood right under the whole foot of a stud, in whose own place nothing stands: none beyond the wall's end,
    /// none in a doorway.
    fn stands_on_wood(&self, stud: &Rect) -> bool {
        let under = Rect {
            y0: stud.y0 - Length::from_units(1),
            ..*stud
        };
        let faces = self.obstacles(under);
        let spans = faces.iter().map(|(rect, _)| rect.x_span()).collect();
        Interval::union(spans)
            .iter()
            .any(|span| span.covers(stud.x_span()))
    }
}

impl Want {
    /// The lower or left side of a face of this width that stands where it should: centred on the seam, or behind
    /// the panel at an edge without a neighbour.
    fn home(&self, width: Length) -> Length {
        match self.facing {
            Some(facing) => (self.edge.at() + facing.at() - width).half(),
            None => self.edge.across(Length::ZERO).min(self.edge.across(width)),
        }
    }

    /// What is left of the stretch without what these faces hold.
    pub(super) fn without(&self, rule: &LineRule, faces: &[Rect]) -> Vec<Interval> {
        let held = faces
            .iter()
            .filter(|face| rule.on(self.edge.depths(face)).is_some());
        let along = held.map(|face| {
            if self.edge.side.is_plumb() {
                face.y_span()
            } else {
                face.x_span()
            }
        });
        let near = along.filter(|span| span.overlaps(self.along)).collect();
        Interval::subtract(self.along, &Interval::union(near))
    }
}
