//! A frame together with what the rules ask of it.

use super::schedule::{NailChoice, named};
use super::wood::Wood;
use crate::frame::Frame;
use crate::geometry::{Point, Rect};
use crate::house::{BlockedEdges, House, Practice, Segment, Top, Wall};
use crate::length::Length;

/// A shear segment or braced panel with its place.
#[derive(Clone, Copy, Debug)]
pub struct SegmentSite<'a> {
    /// What the designer asks for.
    pub segment: &'a Segment,
    /// Where it is.
    pub rect: Rect,
    /// The nail that it asks for, as a place in the stock's list.
    pub nail: Option<u32>,
}

/// A frame with its wall, its practice and its segments: what every kernel of the checks reads.
///
/// Made once for a frame, it serves any number of layouts.
#[derive(Clone, Debug)]
pub struct Site<'a> {
    /// The house.
    pub house: &'a House,
    /// The wall.
    pub wall: &'a Wall,
    /// How the wall is worked.
    pub practice: &'a Practice,
    /// Its frame, bare or backed.
    pub frame: &'a Frame,
    /// The frame's faces.
    pub wood: Wood<'a>,
    /// The designer's segments.
    pub segments: Vec<SegmentSite<'a>>,
    /// The nails for places that no segment asks anything of.
    pub(super) nails: NailChoice,
}

impl<'a> Site<'a> {
    /// Brings a frame and its wall together; `None` if the frame names a wall that the house does not have.
    pub fn new(house: &'a House, frame: &'a Frame) -> Option<Self> {
        let wall = house.walls.get(frame.wall as usize)?;
        let segments = frame.segments.iter().filter_map(|place| {
            let segment = wall.segments.get(place.segment as usize)?;
            Some(SegmentSite {
                segment,
                rect: place.rect,
                nail: named(house, segment.nail.as_ref()),
            })
        });
        Some(Self {
            house,
            wall,
            practice: &wall.practice,
            frame,
            wood: Wood::new(frame),
            segments: segments.collect(),
            nails: NailChoice::new(house, &wall.practice),
        })
    }

    /// The segments that an area shares more than an edge with. A line counts as an area.
    pub fn segments_at(&self, area: Rect) -> impl Iterator<Item = &SegmentSite<'a>> {
        self.segments.iter().filter(move |site| {
            let (x, y) = (site.rect.x_span(), site.rect.y_span());
            let along = |a: Length, b: Length, lo: Length, hi: Length| {
                if a == b {
                    lo <= a && a <= hi
                } else {
                    a < hi && lo < b
                }
            };
            along(area.x0, area.x1, x.lo, x.hi) && along(area.y0, area.y1, y.lo, y.hi)
        })
    }

    /// A place outside the frame's plates where sheathing hangs free on purpose: below the lowest plate, or
    /// past the uppermost one on its way to the heels of the roof.
    pub fn hangs(&self, at: Point) -> bool {
        self.frame
            .sections
            .iter()
            .zip(&self.wall.sections)
            .any(|(place, section)| {
                let past_plate = matches!(section.top, Top::EaveTrusses(_) | Top::Flat) && at.y >= place.top;
                place.x.contains(at.x) && (at.y <= place.base || past_plate)
            })
    }

    /// Whether an unsupported stretch of edge has to be backed.
    ///
    /// A plumb edge and the edge of an opening always; a level one in a blocked segment, where practice wants
    /// every edge backed, and where the clear bay is wider than practice accepts. A bay no wider than what may
    /// hang free beyond its nails needs nothing.
    pub fn wants_backing(&self, plumb: bool, opening: bool, area: Rect, bay: Length) -> bool {
        if bay <= self.practice.free_edge_most {
            return false;
        }
        plumb
            || opening
            || self.segments_at(area).any(|site| site.segment.blocked)
            || match self.practice.blocked_edges {
                BlockedEdges::All => true,
                BlockedEdges::WideBays => bay > self.practice.clear_bay_most,
                BlockedEdges::SegmentsOnly => false,
            }
    }
}
