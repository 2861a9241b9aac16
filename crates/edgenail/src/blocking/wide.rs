//! Where two panels may not share a member of 2 in. lumber.

use crate::decimal::Decimal;
use crate::edges::Site;
use crate::geometry::Rect;
use crate::house::{Nail, Sheet};
use crate::layout::category_thickness;
use crate::length::Length;

/// Face width of 3 in. lumber.
pub const THREE_INCH_LUMBER: Length = Length::sixteenths(40);
/// At this edge spacing or closer, adjoining panels need the wider member (SDPWS 2015 4.3.7.1; from memory, not
/// checked against print).
pub const CLOSE_SPACING: Length = Length::inches(2);
/// At this edge spacing or closer they need it where the nail is thick and goes deep (the same clause).
pub const DEEP_NAIL_SPACING: Length = Length::inches(3);
/// Penetration into the member beyond which a nail goes deep (the same clause).
pub const DEEP_PENETRATION: Length = Length::sixteenths(24);

/// Shank of a 10d common nail, in thousandths of an inch (ASTM F1667).
const TEN_PENNY_SHANK: i32 = 148;

/// The least face width of a member that two panels share in an area; `None` where 2 in. lumber serves.
///
/// 3 in. lumber, or two of 2 in. nailed together, where nails stand 2 in. apart or closer, or 3 in. and a 10d nail
/// goes in deeper than 1 1/2 in.; and what the designer asks for.
pub fn shared_width(site: &Site<'_>, area: Rect, sheet: &Sheet) -> Option<Length> {
    let asked = site
        .segments_at(area)
        .filter_map(|place| place.segment.seam_member_width)
        .max();
    let spacing = site.edge_spacing(area);
    let nail = site
        .nail(area, false)
        .and_then(|at| site.house.stock.nails.get(at as usize));
    let deep = spacing <= DEEP_NAIL_SPACING && nail.is_some_and(|nail| goes_deep(nail, sheet));
    let close = (spacing <= CLOSE_SPACING || deep).then_some(THREE_INCH_LUMBER);
    asked.max(close)
}

/// A nail of 10d shank or thicker that goes deeper into the member than `DEEP_PENETRATION`.
fn goes_deep(nail: &Nail, sheet: &Sheet) -> bool {
    let thick = nail.shank >= Decimal::thousandths(TEN_PENNY_SHANK);
    let sheet = category_thickness(&sheet.category).unwrap_or_default();
    thick && nail.length - sheet > DEEP_PENETRATION
}
