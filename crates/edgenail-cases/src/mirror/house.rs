//! The words of a mirrored house.

use super::Mirror;
use edgenail::house::{
    BandLayer, Corner, End, EndStuds, GivenLayout, House, LayoutOrigin, Level, Measured, Opening, Patch,
    Rake, Section, Segment, StartChoice, Storey, Top, Wall,
};

/// The house in which every wall is mirrored left to right, seen from its sheathed face.
#[must_use]
pub fn mirror_house(house: &House) -> House {
    let mut mirrored = house.clone();
    for wall in &mut mirrored.walls {
        mirror_wall(wall);
    }
    for Corner { through, butting, .. } in &mut mirrored.corners {
        through.end = other(through.end);
        butting.end = other(butting.end);
    }
    mirrored
}

const fn other(end: End) -> End {
    match end {
        End::Left => End::Right,
        End::Right => End::Left,
    }
}

fn mirror_wall(wall: &mut Wall) {
    let mirror = Mirror { length: wall.length };
    wall.sections.reverse();
    for section in &mut wall.sections {
        mirror_section(mirror, section);
    }
    for Segment { from, to, .. } in &mut wall.segments {
        (*from, *to) = (mirror.x(*to), mirror.x(*from));
    }
    if let Some(measured) = &mut wall.measured {
        mirror_measured(mirror, measured, &wall.sections);
    }
    if let Some(given) = &mut wall.given_layout {
        mirror_given(mirror, given);
    }
    wall.practice.starting_end = match wall.practice.starting_end {
        StartChoice::Left => StartChoice::Right,
        StartChoice::Right => StartChoice::Left,
        StartChoice::Either => StartChoice::Either,
    };
}

fn mirror_section(mirror: Mirror, section: &mut Section) {
    (section.from, section.to) = (mirror.x(section.to), mirror.x(section.from));
    for level in &mut section.stack {
        match level {
            Level::Storey(storey) => mirror_storey(mirror, storey),
            Level::FloorBand(band) => {
                for layer in &mut band.layers {
                    if let BandLayer::Members(members) = layer {
                        mirror_origin(&mut members.origin);
                    }
                }
            }
        }
    }
    match &mut section.top {
        Top::Flat => {}
        Top::Rake(Rake {
            ridge_x, left, right, ..
        }) => {
            *ridge_x = mirror.x(*ridge_x);
            std::mem::swap(left, right);
        }
        Top::GableTruss(truss) => truss.ridge_x = mirror.x(truss.ridge_x),
        Top::EaveTrusses(trusses) => mirror_origin(&mut trusses.origin),
    }
}

fn mirror_storey(mirror: Mirror, storey: &mut Storey) {
    mirror_origin(&mut storey.origin);
    let EndStuds { left, right } = &mut storey.end_studs;
    std::mem::swap(left, right);
    for opening in &mut storey.openings {
        mirror_opening(mirror, opening);
    }
    let patches = [
        &mut storey.penetrations,
        &mut storey.bare_zones,
        &mut storey.straps,
    ];
    for Patch { left, width, .. } in patches.into_iter().flatten() {
        *left = mirror.x(*left + *width);
    }
}

/// Offsets count from the end that layout is pulled from, and stay.
fn mirror_origin(origin: &mut LayoutOrigin) {
    origin.end = other(origin.end);
}

fn mirror_opening(mirror: Mirror, opening: &mut Opening) {
    opening.left = mirror.x(opening.left + opening.width);
    if let Some(header) = &mut opening.header {
        (header.from, header.to) = (mirror.x(header.to), mirror.x(header.from));
    }
}

/// The first stud is measured from the layout's end, and stays. An opening whose width was not measured is as wide as
/// it should be.
fn mirror_measured(mirror: Mirror, measured: &mut Measured, sections: &[Section]) {
    let levels = sections.iter().flat_map(|section| &section.stack);
    let openings = levels.filter_map(|level| match level {
        Level::Storey(storey) => Some(&storey.openings),
        Level::FloorBand(_) => None,
    });
    let said: Vec<&Opening> = openings.flatten().collect();
    if let Some(diagonals) = &mut measured.diagonals {
        diagonals.reverse();
    }
    for opening in &mut measured.openings {
        let named = said.iter().find(|said| said.name == opening.opening);
        if let (Some(left), Some(width)) = (opening.left, opening.width.or(named.map(|said| said.width))) {
            opening.left = Some(mirror.x(left + width));
        }
        if let Some(diagonals) = &mut opening.diagonals {
            diagonals.reverse();
        }
    }
}

fn mirror_given(mirror: Mirror, given: &mut GivenLayout) {
    match given {
        GivenLayout::Bands { bands } => {
            for band in bands {
                band.seams.reverse();
                for seam in &mut band.seams {
                    *seam = mirror.x(*seam);
                }
            }
        }
        GivenLayout::Pieces { pieces } => {
            for piece in pieces {
                piece.left = mirror.x(piece.left + piece.width);
            }
        }
    }
}
