//! Bottom lines that a layout may start from.

use super::Space;
use crate::frame::MemberKind;
use crate::house::{Bearing, DatumChoice, Practice, Wall};
use crate::length::Length;

/// How far the sheathing may reach below the lowest plate, in the order of practice.
///
/// What the user fixed leaves no choice. On concrete a sheet is held up or overhangs the foundation and never bears on it; half a
/// plate is a lap with a course below, which a foundation does not have (common practice, no source).
pub(super) fn reaches(space: &Space<'_>) -> Vec<Length> {
    let (wall, frame) = (space.wall, space.frame);
    let fixed = frame.sections.iter().find_map(|section| section.reach);
    if let Some(reach) = fixed {
        return vec![reach];
    }
    let on_concrete = frame
        .sections
        .iter()
        .any(|section| section.bears == Bearing::Concrete);
    let lowest = lowest_plate(wall);
    let mut reaches = Vec::new();
    for datum in &wall.practice.datums {
        let of_datum = match datum {
            DatumChoice::TopFlush => top_flush(space, on_concrete),
            datum => reach(*datum, &wall.practice, on_concrete, lowest)
                .into_iter()
                .collect(),
        };
        for reach in of_datum {
            if !reaches.contains(&reach) {
                reaches.push(reach);
            }
        }
    }
    reaches
}

/// Whole sheets that hang down from the top and end on the rim or plate that the wall stands on, which the sheets of the
/// storey below leave to them.
fn top_flush(space: &Space<'_>, on_concrete: bool) -> Vec<Length> {
    let base = space.frame.lower.points().iter().map(|point| point.y).min();
    let Some(base) = base.filter(|_| !on_concrete) else {
        return Vec::new();
    };
    let lowest = space.frame.members.iter().filter(|member| {
        matches!(
            member.kind,
            MemberKind::Rim | MemberKind::Mudsill | MemberKind::BottomPlate
        )
    });
    let faces = lowest.map(|member| member.face.bounds());
    let thinnest = faces
        .filter(|face| face.y0 == base)
        .map(|face| face.height())
        .min();
    let most = thinnest.unwrap_or_default() - space.practice.plate_cover_least;
    let reaches = space.sizes.iter().map(|size| base - (space.top - *size));
    reaches
        .filter(|reach| -most <= *reach && *reach < Length::ZERO)
        .collect()
}

fn reach(
    datum: DatumChoice,
    practice: &Practice,
    on_concrete: bool,
    lowest: Option<Length>,
) -> Option<Length> {
    match datum {
        DatumChoice::Flush => (!on_concrete).then_some(Length::ZERO),
        DatumChoice::HeldUp => on_concrete.then_some(-practice.held_up),
        DatumChoice::Overhang => {
            (!on_concrete || practice.overhang <= practice.overhang_most).then_some(practice.overhang)
        }
        DatumChoice::HalfPlate => {
            if on_concrete {
                None
            } else {
                lowest.map(|plate| -plate.half())
            }
        }
        DatumChoice::TopFlush => None,
    }
}

/// Thickness of the lowest plate of the first section.
fn lowest_plate(wall: &Wall) -> Option<Length> {
    use crate::house::{BandLayer, Level};
    match wall.sections.first()?.stack.first()? {
        Level::Storey(storey) => storey.bottom_plates.first().map(|plate| plate.thickness),
        Level::FloorBand(band) => match band.layers.first()? {
            BandLayer::Plate(plate) => Some(plate.thickness),
            _ => None,
        },
    }
}
