//! Bottom lines that a layout may start from.

use crate::frame::Frame;
use crate::house::{Bearing, DatumChoice, Practice, Wall};
use crate::length::Length;

/// How far the sheathing may reach below the lowest plate, in the order of practice.
///
/// What the user fixed leaves no choice. On concrete a sheet is held up or overhangs the foundation and never bears on it; half a
/// plate is a lap with a course below, which a foundation does not have (common practice, no source).
pub(super) fn reaches(wall: &Wall, frame: &Frame) -> Vec<Length> {
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
        let reach = reach(*datum, &wall.practice, on_concrete, lowest);
        if let Some(reach) = reach.filter(|reach| !reaches.contains(reach)) {
            reaches.push(reach);
        }
    }
    reaches
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
