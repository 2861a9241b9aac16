//! What the rules ask at a place, told a second time from the house's own fields.

use crate::ground::Ground;
use edgenail::edges::EdgeRun;
use edgenail::frame::Frame;
use edgenail::geometry::{Point, Rect};
use edgenail::house::{Coating, Nail, Practice, Segment};
use edgenail::{Decimal, Length};

impl Ground {
    pub fn practice(&self) -> &Practice {
        &self.house.walls[self.frame.wall as usize].practice
    }

    /// The designer's segments that a stretch of edge lies in or on the boundary of.
    pub fn segments_of(&self, run: &EdgeRun) -> Vec<&Segment> {
        let (low, high) = (run.from.y.min(run.to.y), run.from.y.max(run.to.y));
        let plumb = run.side.is_plumb();
        let inside = |lo: Length, hi: Length, a: Length, b: Length| a < hi && lo < b;
        let on = |lo: Length, hi: Length, at: Length| lo <= at && at <= hi;
        let sloped = run.from.y != run.to.y && run.from.x != run.to.x;
        let touches = |rect: &Rect| {
            if sloped {
                inside(rect.x0, rect.x1, run.from.x, run.to.x) && inside(rect.y0, rect.y1, low, high)
            } else if plumb {
                on(rect.x0, rect.x1, run.from.x) && inside(rect.y0, rect.y1, low, high)
            } else {
                inside(rect.x0, rect.x1, run.from.x, run.to.x) && on(rect.y0, rect.y1, low)
            }
        };
        let segments = &self.house.walls[self.frame.wall as usize].segments;
        let places = self.frame.segments.iter().filter(|place| touches(&place.rect));
        places.map(|place| &segments[place.segment as usize]).collect()
    }

    /// The nail that a stretch of edge in untreated wood is nailed with.
    pub fn plain_nail(&self, run: &EdgeRun) -> &Nail {
        let nails = &self.house.stock.nails;
        let named = |name: &String| nails.iter().find(|nail| nail.name == *name);
        let segments = self.segments_of(run);
        let of_segment = segments
            .iter()
            .find_map(|segment| segment.nail.as_ref().and_then(named));
        let asked = of_segment.or_else(|| self.practice().assembly.nail.as_ref().and_then(named));
        let bright = nails.iter().find(|nail| nail.coating == Coating::Bright);
        asked.or(bright).unwrap_or(&nails[0])
    }

    /// The closest spacing that holds anywhere along a run: of its segments, and of practice where it leaves them.
    pub fn edge_spacing(&self, run: &EdgeRun) -> Length {
        let closest = self
            .segments_of(run)
            .iter()
            .map(|segment| segment.edge_spacing)
            .min();
        let outside = self.practice().assembly.edge_spacing;
        let within = |rect: &Rect| rect.contains(run.from) && rect.contains(run.to);
        let inside = self.frame.segments.iter().any(|place| within(&place.rect));
        closest.map_or(
            outside,
            |closest| if inside { closest } else { closest.min(outside) },
        )
    }

    /// The least face that two panels may share at a seam: 3 in. nominal where nails stand 2 in. apart, or 3 in. apart
    /// with a 10d nail more than 1 1/2 in. deep (SDPWS 2008, section 4.3.7.1), and what the designer asks for.
    pub fn face_to_share(&self, run: &EdgeRun) -> Length {
        let (spacing, nail) = (self.edge_spacing(run), self.plain_nail(run));
        // Generated houses are sheathed with 7/16.
        let thick = nail.shank >= Decimal::thousandths(148) && nail.length > Length::sixteenths(7 + 24);
        let close = spacing <= Length::inches(2) || (spacing <= Length::inches(3) && thick);
        let asked = self
            .segments_of(run)
            .iter()
            .filter_map(|segment| segment.seam_member_width)
            .max();
        asked.unwrap_or_default().max(if close {
            Length::sixteenths(40)
        } else {
            Length::ZERO
        })
    }

    /// How deep the studs are at a height.
    pub fn stud_depth(&self, y: Length) -> Length {
        let storeys = &self.frame.storeys;
        let mut here = storeys
            .iter()
            .filter(|storey| storey.base <= y && y <= storey.top);
        here.next().unwrap_or(&storeys[0]).stud_depth
    }
}

/// A member stands at a point.
pub fn stands_at(frame: &Frame, at: Point) -> bool {
    frame.members.iter().any(|member| member.face.contains(at))
}
