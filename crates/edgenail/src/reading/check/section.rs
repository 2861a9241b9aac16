//! Sections fill their wall; what stands in them stays in them.

use super::height::{fall, plates};
use super::{Place, names, opening, span};
use crate::house::{BandLayer, Level, Section, Storey, Top, Wall};
use crate::issue::Code;
use crate::length::Length;
use crate::wording::{Wording, wording};

pub(super) fn check(place: &Place<'_>, wall: &Wall) {
    let sections = 0..wall.sections.len();
    let ends = place.sound("/length")
        && sections.into_iter().all(|index| {
            let of = |field: &str| place.sound(&format!("/sections/{index}/{field}"));
            of("from") && of("to")
        });
    let mut at = Length::ZERO;
    for (index, section) in wall.sections.iter().enumerate() {
        if ends && section.from != at {
            place.fault(
                &format!("/sections/{index}/from"),
                Code::SectionsLeaveGap,
                section.from,
                at,
            );
        }
        let last = index + 1 == wall.sections.len();
        if ends && (section.to <= section.from || (last && section.to != wall.length)) {
            let allowed = if last {
                Wording::of(&wall.length)
            } else {
                wording!["more than ", section.from]
            };
            place.fault(
                &format!("/sections/{index}/to"),
                Code::SectionsLeaveGap,
                section.to,
                allowed,
            );
        }
        at = section.to;
        let path = format!("{}/sections/{index}", place.path);
        let place = Place {
            path: &path,
            ..*place
        };
        levels(&place, section, ends);
        if ends {
            roof(&place, section);
        }
    }
    let openings = wall
        .sections
        .iter()
        .flat_map(|section| &section.stack)
        .filter_map(|level| match level {
            Level::Storey(storey) => Some(&storey.openings),
            Level::FloorBand(_) => None,
        });
    let mut seen: Vec<&str> = openings.flatten().map(|opening| opening.name.as_str()).collect();
    seen.sort_unstable();
    if let Some([name, _]) = seen.windows(2).find(|pair| pair.first() == pair.get(1)) {
        place.fault(
            "/sections",
            Code::DuplicateName,
            *name,
            "each opening of a wall with a name of its own",
        );
    }
    let sections = place.sound("/sections");
    measured(place, wall, sections.then_some(seen.as_slice()));
}

/// Joints of the topmost plate lie between the ends of its section.
fn plate_joints(place: &Place<'_>, section: &Section, storey: &Storey, ends: bool) {
    for (index, x) in storey.plate_joints.iter().enumerate() {
        let field = format!("/plate_joints/{index}");
        if ends && place.sound(&field) && (*x <= section.from || *x >= section.to) {
            let allowed = span(section.from, section.to);
            place.fault(&field, Code::PlateJointOffSection, x, allowed);
        }
    }
}

fn levels(place: &Place<'_>, section: &Section, ends: bool) {
    let storey = section
        .stack
        .iter()
        .any(|level| matches!(level, Level::Storey(_)));
    if !storey && place.sound("/stack") {
        place.fault(
            "/stack",
            Code::SectionWithoutStorey,
            "no storey",
            "at least one storey",
        );
    }
    let storeys = section.stack.iter().filter_map(|level| match level {
        Level::Storey(storey) => Some(storey.name.as_str()),
        Level::FloorBand(_) => None,
    });
    names(place, storeys, "/stack", "/name");
    for (index, level) in section.stack.iter().enumerate() {
        let path = format!("{}/stack/{index}", place.path);
        let place = Place {
            path: &path,
            ..*place
        };
        match level {
            Level::Storey(storey) => {
                opening::check(&place, section, index, storey, ends);
                plate_joints(&place, section, storey, ends);
                let base = plates(&storey.bottom_plates);
                let studs = place.sound("/stud") && place.sound("/bottom_plates");
                for (row, y) in storey.block_rows.iter().enumerate() {
                    if !studs || !place.sound(&format!("/block_rows/{row}")) {
                        continue;
                    }
                    if *y <= base || *y >= base + storey.stud.length {
                        let allowed = span(base, base + storey.stud.length);
                        place.fault(&format!("/block_rows/{row}"), Code::BlockRowOffStuds, y, allowed);
                    }
                }
            }
            Level::FloorBand(band) => {
                let members = band
                    .layers
                    .iter()
                    .any(|layer| matches!(layer, BandLayer::Members(_)));
                if !members && place.sound("/layers") {
                    place.fault(
                        "/layers",
                        Code::BandTooThin,
                        "no members",
                        "a layer of kind `members`",
                    );
                }
            }
        }
    }
}

fn roof(place: &Place<'_>, section: &Section) {
    if !place.sound("/top") {
        return;
    }
    let ridge = match &section.top {
        Top::Rake(rake) => rake.ridge_x,
        Top::GableTruss(truss) => truss.ridge_x,
        Top::Flat | Top::EaveTrusses(_) => return,
    };
    if ridge < section.from || ridge > section.to {
        place.fault(
            "/top/ridge_x",
            Code::RidgeOffSection,
            ridge,
            span(section.from, section.to),
        );
        return;
    }
    let (Top::Rake(rake), Some(Level::Storey(storey))) = (&section.top, section.stack.last()) else {
        return;
    };
    let uppermost = section.stack.len().saturating_sub(1);
    if !place.sound(&format!("/stack/{uppermost}/stud")) {
        return;
    }
    let sides = [
        (rake.left, ridge - section.from),
        (rake.right, section.to - ridge),
    ];
    for (pitch, over) in sides {
        let left_over = storey.stud.length.units() + rake.peak.units();
        if fall(pitch, over).units() >= left_over {
            let allowed = wording!["at most ", Length::from_units(left_over), " of fall"];
            place.fault("/top/peak", Code::RoofTooLow, rake.peak, allowed);
        }
    }
}

fn measured(place: &Place<'_>, wall: &Wall, openings: Option<&[&str]>) {
    let Some(measured) = &wall.measured else { return };
    for (index, found) in measured.openings.iter().enumerate() {
        let unknown = openings.is_some_and(|names| names.binary_search(&found.opening.as_str()).is_err());
        if unknown && place.sound(&format!("/measured/openings/{index}/opening")) {
            let field = format!("/measured/openings/{index}/opening");
            place.fault(
                &field,
                Code::UnknownName,
                &found.opening,
                "the name of an opening of this wall",
            );
        }
    }
    let plumb = place.sound("/measured/out_of_plumb") && place.sound("/measured/plumb_height");
    if plumb && measured.out_of_plumb.is_some() && measured.plumb_height.is_none() {
        place.fault(
            "/measured/plumb_height",
            Code::MeasuredAlone,
            "",
            "the height over which `out_of_plumb` was read",
        );
    }
}
