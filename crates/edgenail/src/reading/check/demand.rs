//! Loads and fasteners belong to walls and storeys of the house, and say their level.

use super::Place;
use crate::house::{Acting, DesignMethod, House, LateralDemand, Level, LoadLevel, Wall};
use crate::issue::Code;

pub(super) fn check(place: &Place<'_>, house: &House, demand: &LateralDemand) {
    for (index, load) in demand.loads.iter().enumerate() {
        let path = format!("/demand/loads/{index}");
        if !place.sound(&path) {
            continue;
        }
        of_storey(place, house, &path, (&load.wall, &load.storey));
        let level = format!("{path}/level");
        match (load.kind, load.level) {
            (Acting::Dead, Some(_)) => {
                place.fault(
                    &level,
                    Code::OutOfRange,
                    "a level",
                    "null: dead load has one level",
                );
            }
            (Acting::Wind | Acting::Seismic, None) => {
                place.fault(&level, Code::MissingField, "null", "strength or asd");
            }
            (_, Some(LoadLevel::Asd)) if demand.method == DesignMethod::Lrfd => {
                place.fault(
                    &level,
                    Code::OutOfRange,
                    "asd",
                    "strength, where the method is lrfd: nothing is made larger silently",
                );
            }
            _ => {}
        }
    }
    let acts = |kind| demand.loads.iter().any(|load| load.kind == kind);
    if acts(Acting::Seismic) && acts(Acting::Dead) && demand.spectral_acceleration.is_none() {
        place.fault(
            "/demand/spectral_acceleration",
            Code::MissingField,
            "null",
            "a number, where earthquake and dead load act together",
        );
    }
    for (index, fasteners) in demand.fasteners.iter().enumerate() {
        let path = format!("/demand/fasteners/{index}");
        if !place.sound(&path) {
            continue;
        }
        of_storey(place, house, &path, (&fasteners.wall, &fasteners.storey));
        let same = demand.fasteners.iter().take(index).any(|other| {
            other.wall == fasteners.wall
                && other.storey == fasteners.storey
                && other.interface == fasteners.interface
        });
        if same {
            place.fault(
                &path,
                Code::DuplicateName,
                &fasteners.name,
                "one kind of fasteners for an interface; add up what they carry",
            );
        }
    }
}

/// The wall is one of the house and has the storey.
fn of_storey(place: &Place<'_>, house: &House, path: &str, (wall, storey): (&String, &String)) {
    let Some(index) = house.walls.iter().position(|found| found.name == *wall) else {
        let named = (0..house.walls.len()).all(|index| place.sound(&format!("/walls/{index}/name")));
        if named {
            place.fault(
                &format!("{path}/wall"),
                Code::UnknownName,
                wall,
                "the name of a wall",
            );
        }
        return;
    };
    if place.sound(&format!("/walls/{index}/sections")) && !has_storey(&house.walls[index], storey) {
        place.fault(
            &format!("{path}/storey"),
            Code::UnknownName,
            storey,
            "the name of a storey of this wall",
        );
    }
}

fn has_storey(wall: &Wall, name: &str) -> bool {
    let levels = wall.sections.iter().flat_map(|section| &section.stack);
    levels
        .into_iter()
        .any(|level| matches!(level, Level::Storey(storey) if storey.name == name))
}
