//! What the rules ask at a place, told a second time from the house's own fields.

use crate::ground::Ground;
use edgenail::edges::EdgeRun;
use edgenail::frame::Frame;
use edgenail::geometry::{Point, Rect};
use edgenail::house::{Coating, Nail, Practice, Segment};
use edgenail::length::{Rounding, Style};
use edgenail::wording::Wording;
use edgenail::{Decimal, Length};

impl Ground {
    pub fn practice(&self) -> &Practice {
        &self.house.walls[self.frame.wall as usize].practice
    }

    /// The designer's segments, with their places, that a stretch or an area between two points shares more than its
    /// boundary with; along a stretch that is level or plumb the boundary counts.
    pub fn segments_on(&self, a: Point, b: Point) -> Vec<(&Segment, Rect)> {
        let (x0, x1, y0, y1) = (a.x.min(b.x), a.x.max(b.x), a.y.min(b.y), a.y.max(b.y));
        let meets = |lo: Length, hi: Length, a: Length, b: Length| {
            if a == b {
                lo <= a && a <= hi
            } else {
                a < hi && lo < b
            }
        };
        let segments = &self.house.walls[self.frame.wall as usize].segments;
        let places = self.frame.segments.iter();
        let places = places.filter(|place| {
            meets(place.rect.x0, place.rect.x1, x0, x1) && meets(place.rect.y0, place.rect.y1, y0, y1)
        });
        places
            .map(|place| (&segments[place.segment as usize], place.rect))
            .collect()
    }

    /// The segments of a stretch of edge.
    pub fn segments_of(&self, run: &EdgeRun) -> Vec<&Segment> {
        let segments = self.segments_on(run.from, run.to).into_iter();
        segments.map(|(segment, _)| segment).collect()
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

    /// The closest spacing at panel edges that holds anywhere along a run.
    pub fn edge_spacing(&self, run: &EdgeRun) -> Length {
        let outside = self.practice().assembly.edge_spacing;
        self.closest(run.from, run.to, outside, |segment| segment.edge_spacing)
    }

    /// The closest spacing between the edges that holds anywhere in an area.
    pub fn field_spacing(&self, low: Point, high: Point) -> Length {
        let outside = self.practice().assembly.field_spacing;
        self.closest(low, high, outside, |segment| segment.field_spacing)
    }

    /// Of the segments, and of practice where the place reaches out of them.
    fn closest(&self, a: Point, b: Point, outside: Length, spacing: impl Fn(&Segment) -> Length) -> Length {
        let segments = self.segments_on(a, b);
        let closest = segments.iter().map(|(segment, _)| spacing(segment)).min();
        let inside = segments
            .iter()
            .any(|(_, rect)| rect.contains(a) && rect.contains(b));
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

/// A sentence with its lengths in thousandths of an inch.
pub fn written(said: &Wording) -> String {
    said.written(Style::DecimalInches)
}

/// A length as sentences have it.
pub fn shown(length: Length) -> String {
    length.show(Style::DecimalInches, Rounding::Nearest).text
}
