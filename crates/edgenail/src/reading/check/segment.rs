//! Segments stay on their storey, clear of each other and of openings.

use super::{Place, span};
use crate::house::{Level, Method, Section, Segment, Storey, Wall};
use crate::issue::Code;
use crate::length::Length;
use crate::wording::wording;

pub(super) fn check(place: &Place<'_>, wall: &Wall) {
    let wall_place = place;
    let storeys: Vec<StoreyAt<'_>> = storeys(wall).collect();
    let named = wall_place.sound("/sections")
        || storeys
            .iter()
            .all(|at| wall_place.sound(&format!("{}/name", at.path)));
    for (index, segment) in wall.segments.iter().enumerate() {
        let path = format!("{}/segments/{index}", place.path);
        let place = Place {
            path: &path,
            ..*place
        };
        if !place.sound("") {
            continue;
        }
        if wall_place.sound("/length") && (segment.from >= segment.to || segment.to > wall.length) {
            place.fault(
                "/to",
                Code::SegmentOffWall,
                span(segment.from, segment.to),
                span(Length::ZERO, wall.length),
            );
        }
        if segment.field_spacing < segment.edge_spacing {
            let allowed = wording!["at least ", segment.edge_spacing];
            place.fault(
                "/field_spacing",
                Code::FieldUnderEdge,
                segment.field_spacing,
                allowed,
            );
        }
        let mut known = false;
        for at in storeys.iter().filter(|at| at.storey.name == segment.storey) {
            known = true;
            over_openings(&place, wall_place, segment, at);
        }
        if named && !known {
            place.fault(
                "/storey",
                Code::UnknownName,
                &segment.storey,
                "the name of a storey of this wall",
            );
        }
        for (other_index, other) in wall.segments.iter().enumerate().take(index) {
            let sound = wall_place.sound(&format!("/segments/{other_index}"));
            if sound && other.storey == segment.storey && other.from < segment.to && segment.from < other.to {
                place.fault(
                    "",
                    Code::SegmentsOverlap,
                    format!("`{}` over `{}`", segment.mark, other.mark),
                    "segments clear of each other",
                );
            }
        }
    }
}

/// A storey, its section, and where it stands in the wall's document.
struct StoreyAt<'w> {
    section: &'w Section,
    storey: &'w Storey,
    path: String,
}

fn storeys(wall: &Wall) -> impl Iterator<Item = StoreyAt<'_>> {
    wall.sections.iter().enumerate().flat_map(|(index, section)| {
        section
            .stack
            .iter()
            .enumerate()
            .filter_map(move |(level, storey)| match storey {
                Level::Storey(storey) => Some(StoreyAt {
                    section,
                    storey,
                    path: format!("/sections/{index}/stack/{level}"),
                }),
                Level::FloorBand(_) => None,
            })
    })
}

fn over_openings(place: &Place<'_>, wall: &Place<'_>, segment: &Segment, at: &StoreyAt<'_>) {
    let section = at.section;
    if segment.method == Method::ForceTransfer || segment.to <= section.from || segment.from >= section.to {
        return;
    }
    for (index, opening) in at.storey.openings.iter().enumerate() {
        let right = opening.left + opening.width;
        let lies = opening.left < segment.to && segment.from < right;
        if lies && wall.sound(&format!("{}/openings/{index}", at.path)) {
            place.fault(
                "",
                Code::SegmentOverOpening,
                wording!["`", opening.name, "`, ", span(opening.left, right)],
                "no opening, or force transfer",
            );
        }
    }
}
