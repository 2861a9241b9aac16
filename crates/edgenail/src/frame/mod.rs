//! Every member of a wall, as its sheathed face shows it.

mod backed;
mod band;
mod build;
mod builder;
mod corner;
mod grid;
mod member;
mod neighbour;
mod place;
mod plates;
mod rake;
mod roof;
mod storey;
mod upright;

pub use build::frame_wall;

pub use member::{Axis, Member, MemberId, MemberKind, Origin};
pub use place::{BandPlace, EndCondition, OpeningPlace, PatchPlace, SectionPlace, SegmentPlace, StoreyPlace};

use crate::geometry::{Interval, Profile, Rect};
use crate::house::Bearing;
use crate::length::Length;
use serde::Serialize;

/// The members of a wall with the places that later stages ask for.
///
/// Coordinates are the wall's: x to the right from the frame's left end, y up from the wall's zero line.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Frame {
    /// Index of the wall in the house.
    pub wall: u32,
    /// Underside of the lowest plate, from the left end of the sheathing to its right end.
    pub lower: Profile,
    /// Where sheathing ends at the top, over the same stretch.
    pub upper: Profile,
    /// Each section's place.
    pub sections: Vec<SectionPlace>,
    /// Each storey's place.
    pub storeys: Vec<StoreyPlace>,
    /// Each floor band's place.
    pub bands: Vec<BandPlace>,
    /// The rough openings.
    pub openings: Vec<OpeningPlace>,
    /// Holes cut in place.
    pub penetrations: Vec<PatchPlace>,
    /// Places that stay without sheathing.
    pub bare_zones: Vec<PatchPlace>,
    /// Straps and bolts.
    pub straps: Vec<PatchPlace>,
    /// Shear segments and braced panels.
    pub segments: Vec<SegmentPlace>,
    /// How the wall's left end meets its neighbour.
    pub left: EndCondition,
    /// How the wall's right end meets its neighbour.
    pub right: EndCondition,
    /// All members; a member's id is its place in this list.
    pub members: Vec<Member>,
}

impl Frame {
    /// Everything that sheathing leaves out: openings, then bare zones.
    ///
    /// A doorway on a foundation is open below its sill too: no strip of an overhanging sheet runs on under it.
    pub fn holes(&self) -> Vec<Rect> {
        let lowest = |opening: &OpeningPlace| {
            let storey = self.storeys.get(opening.storey as usize)?;
            let section = self.sections.get(storey.section as usize)?;
            let doorway = section.bears == Bearing::Concrete && opening.rect.y0 <= section.base;
            doorway.then(|| {
                self.lower
                    .points()
                    .iter()
                    .map(|point| point.y)
                    .min()
                    .unwrap_or_default()
                    - Length::feet(1)
            })
        };
        let openings = self.openings.iter().map(|opening| Rect {
            y0: lowest(opening).map_or(opening.rect.y0, |low| low.min(opening.rect.y0)),
            ..opening.rect
        });
        openings
            .chain(self.bare_zones.iter().map(|zone| zone.rect))
            .collect()
    }

    /// A plumb seam over these heights crosses a topmost plate nearer than `clear` to one of its butt joints.
    pub fn near_plate_joint(&self, x: Length, y: Interval, clear: Length) -> bool {
        let crossed = self
            .storeys
            .iter()
            .filter(|storey| storey.topmost_plate().overlaps(y));
        let mut joints = crossed.flat_map(|storey| &storey.plate_joints);
        joints.any(|joint| (*joint - x).abs() < clear)
    }

    /// Whether sheathing from so low to so high ties a floor band: it runs past the rim on both sides, or past its
    /// upper side where the wall stands on the rim; without a rim, it lies on the band.
    pub fn ties_band(&self, y: Interval) -> bool {
        self.bands.iter().any(|band| {
            let Some((rim, _)) = band.rim else {
                return band.y.overlaps(y);
            };
            let section = self.sections.get(band.section as usize);
            let stands_on = section.is_some_and(|section| section.base == rim.lo) && y.lo < rim.hi;
            rim.hi <= y.hi && (y.lo <= rim.lo || stands_on)
        })
    }

    /// The member with this id.
    pub fn member(&self, id: MemberId) -> Option<&Member> {
        self.members.get(id.index())
    }
}
