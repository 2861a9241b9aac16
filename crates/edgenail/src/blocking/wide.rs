//! Where two panels may not share a member of 2 in. lumber.

use crate::edges::Site;
use crate::geometry::Rect;
use crate::house::{Limits, Nail, Sheet};
use crate::layout::category_thickness;
use crate::length::Length;

/// The least face width of a member that two panels share in an area; `None` where 2 in. lumber serves.
///
/// A wide member where nails stand close, or less close and a thick nail goes in deep, as the limits of practice say;
/// and what the designer asks for.
pub fn shared_width(site: &Site<'_>, area: Rect, sheet: &Sheet) -> Option<Length> {
    let asked = site
        .segments_at(area)
        .filter_map(|place| place.segment.seam_member_width)
        .max();
    let limits = &site.practice.limits;
    let spacing = site.edge_spacing(area);
    let nail = site
        .nail(area, false)
        .and_then(|at| site.house.stock.nails.get(at as usize));
    let deep =
        spacing <= limits.wide_member_deep_spacing && nail.is_some_and(|nail| goes_deep(limits, nail, sheet));
    let close = (spacing <= limits.wide_member_spacing || deep).then_some(limits.wide_member);
    asked.max(close)
}

/// A thick nail that goes deep into the member.
fn goes_deep(limits: &Limits, nail: &Nail, sheet: &Sheet) -> bool {
    let sheet = category_thickness(&sheet.category).unwrap_or_default();
    nail.shank >= limits.wide_member_shank && nail.length - sheet > limits.wide_member_penetration
}
