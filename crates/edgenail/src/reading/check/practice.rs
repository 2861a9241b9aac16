//! Limits of practice and given layouts make sense together.

use super::{Place, height, span};
use crate::house::{GivenLayout, House, Wall};
use crate::issue::Code;
use crate::length::Length;
use crate::wording::wording;

pub(super) fn check(place: &Place<'_>, wall: &Wall) {
    given(place, wall);
    if !place.sound("/practice") || !house_practice(place).sound("/practice") {
        return;
    }
    let practice = &wall.practice;
    for (least, most, field) in [
        (
            practice.edge_distance_least,
            practice.edge_distance_most,
            "edge_distance_least",
        ),
        (
            practice.offcut_width_least,
            practice.offcut_length_least,
            "offcut_width_least",
        ),
        (practice.overhang, practice.overhang_most, "overhang"),
    ] {
        if least > most {
            place.fault(
                &format!("/practice/{field}"),
                Code::LimitsReversed,
                least,
                wording!["at most ", most],
            );
        }
    }
    let assembly = &practice.assembly;
    if assembly.field_spacing < assembly.edge_spacing {
        let allowed = wording!["at least ", assembly.edge_spacing];
        place.fault(
            "/practice/assembly/field_spacing",
            Code::FieldUnderEdge,
            assembly.field_spacing,
            allowed,
        );
    }
}

/// The place of the house, whose practice every wall takes over.
fn house_practice<'c>(place: &Place<'c>) -> Place<'c> {
    Place { path: "", ..*place }
}

/// Course breaks lie on the wall that they are for, or on another wall that has the same break: practice may be said
/// once for a house of high and low walls.
pub(super) fn check_breaks(place: &Place<'_>, house: &House) {
    if !place.sound("/practice") || !place.sound("/walls") {
        return;
    }
    let on = |y: Length, wall: &Wall| {
        wall.sections.iter().any(|section| {
            let top = height::reach(section).map(|reach| section.base + reach);
            section.base < y && top.is_none_or(|top| y < top)
        })
    };
    for (at, wall) in house.walls.iter().enumerate() {
        let place = Place {
            wall: &wall.name,
            ..*place
        };
        for (index, y) in wall.practice.breaks.iter().enumerate() {
            let mut having = house.walls.iter().filter(|wall| wall.practice.breaks.contains(y));
            if !having.any(|wall| on(*y, wall)) {
                let field = format!("/walls/{at}/practice/breaks/{index}");
                place.fault(&field, Code::BreakOffWall, y, "a height on the wall");
            }
        }
    }
}

fn given(place: &Place<'_>, wall: &Wall) {
    if !place.sound("/given_layout") || !place.sound("/length") {
        return;
    }
    match &wall.given_layout {
        None => {}
        Some(GivenLayout::Bands { bands }) => {
            let mut at: Option<Length> = None;
            for (index, band) in bands.iter().enumerate() {
                let field = format!("/given_layout/bands/{index}");
                if band.top <= band.bottom || at.is_some_and(|at| band.bottom < at) {
                    place.fault(
                        &field,
                        Code::GivenOutOfOrder,
                        span(band.bottom, band.top),
                        "courses from the lowest up, clear of each other",
                    );
                }
                at = Some(band.top);
                if band.seams.windows(2).any(|pair| pair.first() >= pair.get(1)) {
                    place.fault(
                        &format!("{field}/seams"),
                        Code::GivenOutOfOrder,
                        "seams",
                        "seams from left to right, each once",
                    );
                }
                if band
                    .seams
                    .iter()
                    .any(|seam| *seam <= Length::ZERO || *seam >= wall.length)
                {
                    place.fault(
                        &format!("{field}/seams"),
                        Code::GivenOffWall,
                        "a seam",
                        span(Length::ZERO, wall.length),
                    );
                }
            }
        }
        Some(GivenLayout::Pieces { pieces }) => {
            let lap = wall.practice.limits.corner_lap_most;
            for (index, piece) in pieces.iter().enumerate() {
                let right = piece.left + piece.width;
                if piece.left < -lap || right > wall.length + lap {
                    let field = format!("/given_layout/pieces/{index}");
                    place.fault(
                        &field,
                        Code::GivenOffWall,
                        span(piece.left, right),
                        span(-lap, wall.length + lap),
                    );
                }
            }
        }
    }
}
