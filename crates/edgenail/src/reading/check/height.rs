//! How high the levels of a section stand, and how high its sheathing may reach.

use crate::house::{Level, Pitch, Plate, Rake, RakeBuild, Section, Storey, Top};
use crate::length::Length;

/// Height of the plates that lie on each other.
pub(super) fn plates(plates: &[Plate]) -> Length {
    plates.iter().map(|plate| plate.thickness).sum()
}

/// Height of a level's underside above the section's base.
pub(super) fn underside(section: &Section, level: usize) -> Length {
    section.stack.iter().take(level).map(Level::height).sum()
}

/// Height above the section's base that its sheathing may reach; `None` where a roof stands on it.
pub(super) fn reach(section: &Section) -> Option<Length> {
    let stack = underside(section, section.stack.len());
    match &section.top {
        Top::Flat => Some(stack),
        Top::Rake(rake) => Some(stack + rake.peak.max(Length::ZERO)),
        Top::GableTruss(_) | Top::EaveTrusses(_) => None,
    }
}

/// How far a slope falls over a distance, rounded up.
pub(super) fn fall(pitch: Pitch, over: Length) -> Length {
    let product = i128::from(pitch.rise.units()) * i128::from(over.units());
    let units = product / i128::from(pitch.run.units().max(1)) + 1;
    Length::from_units(i64::try_from(units).unwrap_or(i64::MAX))
}

/// Height above the storey's base up to which there are studs over this stretch. Under raked plates the lower end of the
/// stretch tells; what the plates' own slope takes off is left to the frame.
pub(super) fn studs(section: &Section, level: usize, storey: &Storey, from: Length, to: Length) -> Length {
    let flat = plates(&storey.bottom_plates) + storey.stud.length;
    match &section.top {
        Top::Rake(rake) if rake.build == RakeBuild::RakedPlates && level + 1 == section.stack.len() => {
            flat + rake.peak - below_peak(rake, from).max(below_peak(rake, to))
        }
        _ => flat,
    }
}

fn below_peak(rake: &Rake, x: Length) -> Length {
    let pitch = if x < rake.ridge_x { rake.left } else { rake.right };
    fall(pitch, (x - rake.ridge_x).abs()) - Length::from_units(1)
}
