//! Openings stay in their section, under the plates and clear of each other.

use super::{Place, height, span};
use crate::house::{Header, Opening, Patch, Section, Storey};
use crate::issue::Code;
use crate::length::Length;
use crate::wording::wording;

/// `level` is the storey's place in the section's stack.
pub(super) fn check(place: &Place<'_>, section: &Section, level: usize, storey: &Storey, ends: bool) {
    let studs = place.sound("/stud") && place.sound("/bottom_plates");
    let roof = studs && ends;
    let mut sound = Vec::with_capacity(storey.openings.len());
    for (index, opening) in storey.openings.iter().enumerate() {
        let path = format!("{}/openings/{index}", place.path);
        let place = Place {
            path: &path,
            ..*place
        };
        sound.push(place.sound(""));
        if !place.sound("") {
            continue;
        }
        let right = opening.left + opening.width;
        if ends && (opening.left < section.from || right > section.to) {
            place.fault(
                "/left",
                Code::OpeningOffWall,
                span(opening.left, right),
                span(section.from, section.to),
            );
        }
        let head = opening.sill + opening.height;
        let top = roof.then(|| height::studs(section, level, storey, opening.left, right));
        if let Some(top) = top.filter(|top| head > *top) {
            place.fault(
                "/height",
                Code::OpeningAbovePlate,
                head,
                wording!["at most ", top],
            );
        }
        if let Some(said) = &opening.header {
            let top = roof.then(|| height::studs(section, level, storey, said.from, said.to));
            header(&place, ends.then_some(section), opening, said, top);
        }
    }
    if place.sound("/stud") {
        pairs(place, storey, &sound);
    }
    patches(place, section, level, storey, ends);
}

fn patches(place: &Place<'_>, section: &Section, level: usize, storey: &Storey, ends: bool) {
    let stack = place
        .path
        .rsplit_once("/stack/")
        .map_or("", |(section, _)| section);
    let whole = Place {
        path: stack,
        ..*place
    };
    let base = whole.sound("/stack").then(|| height::underside(section, level));
    for (list, patches) in [
        ("penetrations", &storey.penetrations),
        ("bare_zones", &storey.bare_zones),
        ("straps", &storey.straps),
    ] {
        for (index, patch) in patches.iter().enumerate() {
            let field = format!("/{list}/{index}");
            if !place.sound(&field) {
                continue;
            }
            if ends {
                off_side(place, &field, section, patch);
            }
            if let Some(base) = base.filter(|_| whole.sound("/top")) {
                off_height(place, &field, section, base, patch);
            }
        }
    }
}

fn off_side(place: &Place<'_>, field: &str, section: &Section, patch: &Patch) {
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

/// A strap may reach past the wall to what is below or above it, but something of it is on the wall.
fn off_height(place: &Place<'_>, field: &str, section: &Section, base: Length, patch: &Patch) {
    let (bottom, top) = (base + patch.bottom, base + patch.bottom + patch.height);
    let reach = height::reach(section);
    if top <= Length::ZERO || reach.is_some_and(|reach| bottom >= reach) {
        let allowed = reach.map_or_else(
            || wording!["above ", -base],
            |reach| wording!["within ", span(-base, reach - base)],
        );
        place.fault(field, Code::PatchOffWall, span(patch.bottom, top - base), allowed);
    }
}

fn header(
    place: &Place<'_>,
    section: Option<&Section>,
    opening: &Opening,
    header: &Header,
    top: Option<Length>,
) {
    let right = opening.left + opening.width;
    if let Some(section) = section.filter(|section| header.from < section.from || header.to > section.to) {
        place.fault(
            "/header",
            Code::HeaderOffWall,
            span(header.from, header.to),
            span(section.from, section.to),
        );
    }
    let hangs = header.y < opening.sill + opening.height;
    if header.from > opening.left || header.to < right || hangs {
        let head = opening.sill + opening.height;
        let allowed = wording![
            span(opening.left, right),
            " or more, underside at ",
            head,
            " or above"
        ];
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
            upper,
            wording!["at most ", top],
        );
    }
}

/// Openings side by side share king studs at most, never trimmers.
fn pairs(place: &Place<'_>, storey: &Storey, sound: &[bool]) {
    let openings: Vec<(usize, &Opening)> = storey
        .openings
        .iter()
        .enumerate()
        .filter(|(index, _)| sound.get(*index) == Some(&true))
        .collect();
    for (at, (index, second)) in openings.iter().enumerate() {
        for (_, first) in openings.iter().take(at) {
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
                    between,
                    wording!["at least ", least],
                );
            }
        }
    }
}
