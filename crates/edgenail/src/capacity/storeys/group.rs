//! The storeys of a wall by name, and the segments that stand in each.

use crate::frame::{Frame, SegmentPlace};
use crate::geometry::Interval;
use crate::length::Length;

/// One storey of a wall: all its stretches of one name.
#[derive(Clone, Debug)]
pub(super) struct StoreyGroup<'f> {
    /// Its name.
    pub name: &'f str,
    /// Places in the frame's list of storeys.
    pub places: Vec<u32>,
    /// Underside of the lowest bottom plate to the top of the highest top plate.
    pub y: Interval,
    /// Its segments from left to right.
    pub segments: Vec<&'f SegmentPlace>,
}

/// The storeys of a frame from the highest down.
pub(super) fn storeys(frame: &Frame) -> Vec<StoreyGroup<'_>> {
    let mut groups: Vec<StoreyGroup<'_>> = Vec::new();
    for (place, storey) in (0..).zip(&frame.storeys) {
        match groups.iter_mut().find(|group| group.name == storey.name) {
            Some(group) => {
                group.places.push(place);
                group.y = Interval::new(group.y.lo.min(storey.base), group.y.hi.max(storey.top));
            }
            None => groups.push(StoreyGroup {
                name: &storey.name,
                places: vec![place],
                y: Interval::new(storey.base, storey.top),
                segments: Vec::new(),
            }),
        }
    }
    for group in &mut groups {
        group.segments = frame
            .segments
            .iter()
            .filter(|segment| group.places.contains(&segment.storey))
            .collect();
        group.segments.sort_by_key(|segment| segment.rect.x0);
    }
    groups.sort_by_key(|group| std::cmp::Reverse(group.y.lo));
    groups
}

/// Depth of the floor between a storey and the one above it: the deepest of all sections.
pub(super) fn floor_between(frame: &Frame, below: &StoreyGroup<'_>, above: &StoreyGroup<'_>) -> Length {
    let of = |group: &StoreyGroup<'_>| {
        let places = group.places.clone();
        places
            .into_iter()
            .filter_map(|place| frame.storeys.get(place as usize))
            .collect::<Vec<_>>()
    };
    let uppers = of(above);
    of(below)
        .into_iter()
        .filter_map(|lower| {
            let upper = uppers
                .iter()
                .find(|upper| upper.section == lower.section && upper.stage == lower.stage + 1)?;
            Some(upper.base - lower.top)
        })
        .max()
        .unwrap_or_default()
        .max(Length::ZERO)
}
