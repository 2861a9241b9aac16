//! Where the seams of a course may stand.

use super::course::Slot;
use super::space::{Space, up_and_across};
use crate::frame::Axis;
use crate::geometry::Interval;
use crate::length::Length;

/// Seam positions from left to right, the ends of the wall included: the middle of upright faces, whole sheets counted
/// from either end, and whole sheets counted from any of these where an upright still carries the seam off its middle.
pub(super) fn positions(space: &Space<'_>, slot: &Slot) -> Vec<Length> {
    let mut stops = vec![space.x.lo, space.x.hi];
    let uprights = space
        .faces
        .iter()
        .filter(|(face, axis)| *axis == Axis::Vertical && face.y_span().overlaps(slot.y));
    let carrying: Vec<Interval> = uprights
        .filter(|(face, _)| face.width() >= space.seam_half())
        .map(|(face, _)| face.x_span())
        .collect();
    stops.extend(carrying.iter().map(|face| (face.lo + face.hi).half()));
    let sheets = space.sheets.iter().filter_map(|index| space.sheet(*index));
    let mut modules: Vec<Length> = sheets
        .map(|sheet| up_and_across(sheet, slot.running).1 + space.gap)
        .collect();
    modules.sort_unstable();
    modules.dedup();
    for module in modules.iter().copied() {
        let across = module - space.gap;
        let first = across + space.gap.half();
        // A sized sheet leaves half a gap at the end of the wall, so that its seam keeps to the module.
        for start in [first, module] {
            let mut at = start;
            while at < space.x.len() {
                stops.extend([space.x.lo + at, space.x.hi - at]);
                at += module;
            }
        }
    }
    stops.retain(|x| space.x.contains(*x));
    stops.sort_unstable();
    stops.dedup();
    let reach = space.seam_half() - space.practice.seam_off_wood_most;
    let carried = |x: &Length| {
        let held = |face: &&Interval| face.lo + reach <= *x && *x + reach <= face.hi;
        carrying.iter().any(|face| held(&face))
    };
    let chained: Vec<Length> = stops
        .iter()
        .flat_map(|x| {
            modules
                .iter()
                .flat_map(move |module| [*x - *module, *x + *module])
        })
        .filter(|x| space.x.contains(*x) && carried(x))
        .collect();
    stops.extend(chained);
    stops.sort_unstable();
    stops.dedup();
    stops
}
