//! What the segments of a line are made of, as they were built, and the weakest that stands for the line.

use crate::capacity::assembly::Assembly;
use crate::capacity::built::{EndPosts, built_part};
use crate::capacity::unit_shear::{UnitShear, UnitShearQuery, unit_shear};
use crate::capacity::{BuiltSegment, within};
use crate::evaluate::Evaluated;
use crate::frame::SegmentPlace;
use crate::house::{House, LateralDemand, LoadKind};
use crate::issue::Issue;

/// A segment with what the tables make of it.
#[derive(Clone, Debug)]
pub struct SegmentBuilt {
    /// Where it stands.
    pub place: SegmentPlace,
    /// What was read off it.
    pub built: BuiltSegment,
    /// What a foot of it resists.
    pub unit: UnitShear,
}

/// Reads a segment off the plan and looks it up.
pub(super) fn segment(
    house: &House,
    wall: &Evaluated,
    (place, posts): (&SegmentPlace, EndPosts),
    demand: &LateralDemand,
    load: LoadKind,
) -> Result<SegmentBuilt, Vec<Issue>> {
    let of_wall = format!("walls/{}", wall.backed.wall);
    let of_segment = format!("{of_wall}/segments/{}", place.segment);
    let built = built_part(house, wall, place, posts).map_err(|issues| within(&of_wall, issues))?;
    let query = UnitShearQuery {
        edition: demand.edition,
        load,
        method: demand.method,
        assembly: Assembly {
            wet_framing: demand.wet_framing,
            ..built.assembly
        },
        high_seismic: demand.high_seismic,
        accept_unverified: demand.accept_unverified,
        estimate: demand.estimate,
    };
    let name = house
        .walls
        .get(wall.backed.wall as usize)
        .map_or("", |wall| &wall.name);
    let unit = unit_shear(&query).map_err(|issues| {
        let named = issues.into_iter().map(|issue| Issue {
            wall: name.to_owned(),
            // A gap between nails is mended where it is.
            found: if issue.path.ends_with("/edge_spacing") {
                format!("{}, {}", issue.found, built.widest_at)
            } else {
                issue.found.clone()
            },
            ..issue
        });
        within(&of_segment, named.collect())
    })?;
    Ok(SegmentBuilt {
        place: place.clone(),
        built,
        unit,
    })
}

/// The weakest of a line's segments, by strength, then by stiffness; it stands for all, since a line has one construction.
pub(super) fn weakest(segments: &[SegmentBuilt]) -> Option<&SegmentBuilt> {
    segments.iter().min_by(|one, other| {
        let of = |segment: &SegmentBuilt| (segment.unit.design, segment.unit.stiffness.unwrap_or(0.0));
        let ((strength, stiffness), (others, other_stiffness)) = (of(one), of(other));
        strength
            .total_cmp(&others)
            .then(stiffness.total_cmp(&other_stiffness))
    })
}

/// Segments of one line are not built alike.
pub(super) fn unlike(segments: &[SegmentBuilt]) -> bool {
    segments
        .windows(2)
        .any(|pair| pair[0].built.assembly != pair[1].built.assembly)
}
