//! What a vertical seam of a course weighs wherever the others are.

use super::course::Slot;
use super::space::Space;
use super::weight::Weight;
use crate::finding::Severity;
use crate::layout::{Layout, LayoutBand, rules_of_seams};
use crate::length::Length;

/// What a seam at this place weighs: judgement, and what the rules say of it wherever the others are.
pub(super) fn seam_weight(space: &Space<'_>, slot: &Slot, x: Length) -> Weight {
    let mut weight = Weight::default();
    space.prices.seam(x, slot.y, &mut weight.cost);
    if space
        .frame
        .near_plate_joint(x, slot.y, space.practice.limits.plate_joint_clear)
    {
        weight.near_joints = 1;
    }
    if space.has_portals {
        let band = LayoutBand {
            y0: slot.y.lo,
            y1: slot.y.hi,
            running: slot.running,
            seams: vec![x],
        };
        let layout = Layout {
            reach: slot.reach,
            bands: vec![band],
            pieces: Vec::new(),
        };
        let found = rules_of_seams(space.house, space.frame, &layout);
        let refused = found
            .iter()
            .filter(|finding| finding.severity == Severity::Refuse)
            .count();
        weight.refused = u32::try_from(refused)
            .unwrap_or(u32::MAX)
            .saturating_sub(space.refused);
    }
    weight
}
