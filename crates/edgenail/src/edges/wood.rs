//! The faces of a frame, ordered so that those near a place are found at once.

use crate::frame::{Frame, Member, MemberId};
use crate::geometry::{Interval, Rect};
use crate::length::Length;

/// Faces up to this width are kept in the ordered list; plates and other long ones are few.
const NARROW: Length = Length::inches(32);

/// What is asked of a face again and again.
#[derive(Clone, Copy, Debug)]
pub struct Face {
    /// The member.
    pub member: MemberId,
    /// The rectangle around it.
    pub bounds: Rect,
    /// It fills that rectangle.
    pub square: bool,
    /// It holds nails.
    pub nailable: bool,
}

/// The faces of a frame. Looking up what is near a place takes no time that grows with the wall.
#[derive(Clone, Debug)]
pub struct Wood<'a> {
    members: &'a [Member],
    /// Narrow faces by their left side, each with its bounds.
    narrow: Vec<Face>,
    /// All others, by member.
    wide: Vec<Face>,
}

impl<'a> Wood<'a> {
    /// Orders the faces of a frame.
    pub fn new(frame: &'a Frame) -> Self {
        let (mut narrow, mut wide) = (Vec::with_capacity(frame.members.len()), Vec::new());
        for member in &frame.members {
            let bounds = member.face.bounds();
            let square = member.face.area2() == 2 * bounds.area();
            let face = Face {
                member: member.id,
                bounds,
                square,
                nailable: member.nailable,
            };
            if bounds.width() <= NARROW {
                narrow.push(face);
            } else {
                wide.push(face);
            }
        }
        narrow.sort_by_key(|face| (face.bounds.x0, face.member));
        Self {
            members: &frame.members,
            narrow,
            wide,
        }
    }

    /// Every face whose bounds meet an area, sides included: the narrow ones from the left, then the others.
    pub fn near(&self, area: Rect) -> impl Iterator<Item = &Face> {
        let from = self
            .narrow
            .partition_point(|face| face.bounds.x0 < area.x0 - NARROW);
        let narrow = self.narrow.get(from..).unwrap_or_default().iter();
        let narrow = narrow.take_while(move |face| face.bounds.x0 <= area.x1);
        narrow
            .chain(&self.wide)
            .filter(move |face| meets(&face.bounds, &area))
    }

    /// The member with this id.
    pub fn member(&self, id: MemberId) -> Option<&'a Member> {
        self.members.get(id.index())
    }

    /// The stretch of a face along a plumb line.
    pub fn plumb_span(&self, face: &Face, x: Length) -> Option<Interval> {
        if face.square {
            return face.bounds.x_span().contains(x).then(|| face.bounds.y_span());
        }
        self.member(face.member)?.face.span_at_x(x)
    }

    /// The stretch of a face along a level line.
    pub fn level_span(&self, face: &Face, y: Length) -> Option<Interval> {
        if face.square {
            return face.bounds.y_span().contains(y).then(|| face.bounds.x_span());
        }
        self.member(face.member)?.face.span_at_y(y)
    }
}

/// Two rectangles share a point.
pub(super) fn meets(a: &Rect, b: &Rect) -> bool {
    a.x0 <= b.x1 && b.x0 <= a.x1 && a.y0 <= b.y1 && b.y0 <= a.y1
}
