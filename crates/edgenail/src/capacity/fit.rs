//! Which rows of the table accept a nail.

use super::assembly::DrivenNail;
use super::rule::{LISTED_NAILS, ListedNail, SHANK_UNDER};
use crate::decimal::Decimal;
use crate::house::Coating;
use crate::length::Length;
use crate::published::PanelRow;

/// How deep a nail goes into framing behind a panel.
pub fn penetration(nail: &DrivenNail, thickness: Length) -> Length {
    nail.length - thickness
}

/// The listed nail of a row.
pub(super) fn listed(row: &PanelRow) -> &'static ListedNail {
    // The array has every size, in their order.
    &LISTED_NAILS[row.nail as usize]
}

/// Whether the nail serves as the one that a row names: as thick, with as large a head, deep enough; a box nail only
/// if it is hot-dipped.
pub(super) fn fits(nail: &DrivenNail, row: &PanelRow) -> bool {
    let listed = listed(row);
    let shank = if nail.coating == Coating::HotDipped {
        listed.galvanized_box.value
    } else {
        listed.common.value
    };
    thick_enough(nail.shank, shank)
        && nail.head >= listed.head.value
        && penetration(nail, row.thickness) >= row.penetration
}

fn thick_enough(shank: Decimal, listed: Decimal) -> bool {
    shank.as_f64() + SHANK_UNDER.value.as_f64() >= listed.as_f64() - 1e-9
}
