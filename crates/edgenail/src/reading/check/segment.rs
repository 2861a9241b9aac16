//! Segments stay on their storey, clear of each other and of openings.

use super::{Place, span};
use crate::house::{Level, Method, Section, Segment, Storey, Wall};
use crate::issue::Code;
use crate::length::Length;
use crate::reading::value::ShowPlain as _;

pub(super) fn check(place: &Place<'_>, wall: &Wall) {
    for (index, segment) in wall.segments.iter().enumerate() {
        let path = format!("{}/segments/{index}", place.path);
        let place = Place {
            path: &path,
            ..*place
        };
        if segment.from >= segment.to || segment.to > wall.length {
            place.fault(
                "/to",
                Code::SegmentOffWall,
                span(segment.from, segment.to),
                span(Length::ZERO, wall.length),
            );
        }
        if segment.field_spacing < segment.edge_spacing {
            let allowed = format!("at least {}", segment.edge_spacing.show_plain());
            place.fault(
                "/field_spacing",
                Code::FieldUnderEdge,
                segment.field_spacing.show_plain(),
                allowed,
            );
        }
        let mut known = false;
        for (section, storey) in storeys(wall).filter(|(_, storey)| storey.name == segment.storey) {
            known = true;
            over_openings(&place, segment, section, storey);
        }
        if !known {
            place.fault(
                "/storey",
                Code::UnknownName,
                &segment.storey,
                "the name of a storey of this wall",
            );
        }
        for other in wall.segments.iter().take(index) {
            if other.storey == segment.storey && other.from < segment.to && segment.from < other.to {
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

fn storeys(wall: &Wall) -> impl Iterator<Item = (&Section, &Storey)> {
    wall.sections.iter().flat_map(|section| {
        section.stack.iter().filter_map(move |level| match level {
            Level::Storey(storey) => Some((section, storey)),
            Level::FloorBand(_) => None,
        })
    })
}

fn over_openings(place: &Place<'_>, segment: &Segment, section: &Section, storey: &Storey) {
    if segment.method == Method::ForceTransfer || segment.to <= section.from || segment.from >= section.to {
        return;
    }
    for opening in &storey.openings {
        if opening.left < segment.to && segment.from < opening.left + opening.width {
            let right = opening.left + opening.width;
            place.fault(
                "",
                Code::SegmentOverOpening,
                format!("`{}`, {}", opening.name, span(opening.left, right)),
                "no opening, or force transfer",
            );
        }
    }
}
