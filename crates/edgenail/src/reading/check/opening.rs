//! Openings stay in their section, under the plates and clear of each other.

use super::{Place, span};
use crate::house::{Opening, Patch, Section, Storey};
use crate::issue::Code;
use crate::length::Length;
use crate::reading::value::ShowPlain as _;

pub(super) fn check(place: &Place<'_>, section: &Section, storey: &Storey) {
    let plates: Length = storey.bottom_plates.iter().map(|plate| plate.thickness).sum();
    // Under a roof the studs are of many lengths: the frame says what there is room for.
    let flat = !matches!(section.top, crate::house::Top::Rake(_));
    let top = plates + storey.stud.length;
    for (index, opening) in storey.openings.iter().enumerate() {
        let path = format!("{}/openings/{index}", place.path);
        let place = Place {
            path: &path,
            ..*place
        };
        let right = opening.left + opening.width;
        if opening.left < section.from || right > section.to {
            place.fault(
                "/left",
                Code::OpeningOffWall,
                span(opening.left, right),
                span(section.from, section.to),
            );
        }
        let head = opening.sill + opening.height;
        if flat && head > top {
            place.fault(
                "/height",
                Code::OpeningAbovePlate,
                head.show_plain(),
                format!("at most {}", top.show_plain()),
            );
        }
        header(&place, section, opening, flat.then_some(top));
    }
    pairs(place, storey);
    for (list, patches) in [
        ("penetrations", &storey.penetrations),
        ("bare_zones", &storey.bare_zones),
        ("straps", &storey.straps),
    ] {
        for (index, patch) in patches.iter().enumerate() {
            off_wall(place, &format!("/{list}/{index}"), section, patch);
        }
    }
}

fn off_wall(place: &Place<'_>, field: &str, section: &Section, patch: &Patch) {
    let right = patch.left + patch.width;
    if patch.left < section.from || right > section.to {
        place.fault(
            field,
            Code::PatchOffWall,
            span(patch.left, right),
            span(section.from, section.to),
        );
    }
}

fn header(place: &Place<'_>, section: &Section, opening: &Opening, top: Option<Length>) {
    let Some(header) = &opening.header else { return };
    let right = opening.left + opening.width;
    if header.from < section.from || header.to > section.to {
        place.fault(
            "/header",
            Code::HeaderOffWall,
            span(header.from, header.to),
            span(section.from, section.to),
        );
    }
    let hangs = header.y < opening.sill + opening.height;
    if header.from > opening.left || header.to < right || hangs {
        let head = (opening.sill + opening.height).show_plain();
        let allowed = format!(
            "{} or more, underside at {head} or above",
            span(opening.left, right)
        );
        place.fault(
            "/header",
            Code::HeaderOffOpening,
            span(header.from, header.to),
            allowed,
        );
    }
    let upper = header.y + header.depth;
    if let Some(top) = top.filter(|top| upper > *top) {
        place.fault(
            "/header",
            Code::HeaderAbovePlate,
            upper.show_plain(),
            format!("at most {}", top.show_plain()),
        );
    }
}

/// Openings side by side share king studs at most, never trimmers.
fn pairs(place: &Place<'_>, storey: &Storey) {
    let openings = &storey.openings;
    for (index, second) in openings.iter().enumerate() {
        for first in openings.iter().take(index) {
            let above = second.sill >= first.sill + first.height || first.sill >= second.sill + second.height;
            if above {
                continue;
            }
            let (left, right) = if first.left <= second.left {
                (first, second)
            } else {
                (second, first)
            };
            let between = right.left - (left.left + left.width);
            let field = format!("/openings/{index}");
            if between < Length::ZERO {
                place.fault(
                    &field,
                    Code::OpeningsOverlap,
                    format!("`{}` over `{}`", second.name, first.name),
                    "openings clear of each other",
                );
                continue;
            }
            let studs = left.trimmers + right.trimmers + left.kings.max(right.kings);
            let least = storey.stud.width * i64::from(studs);
            if between < least {
                place.fault(
                    &field,
                    Code::OpeningsTooClose,
                    between.show_plain(),
                    format!("at least {}", least.show_plain()),
                );
            }
        }
    }
}
