//! How a wall meets its neighbours.

use super::EndCondition;
use crate::house::{CornerTurn, End, House, Level, Section, Storey, Wall, WallEnd};
use crate::length::{Length, Unit};

/// A neighbour that a wall butts against.
#[derive(Clone, Copy, Debug)]
pub(super) struct Neighbour<'a> {
    /// Depth of its studs: the width of its end stud in this wall's face.
    pub depth: Length,
    /// Its section at the corner.
    pub section: &'a Section,
}

/// How both ends of a wall meet their neighbours, the left end first.
pub(super) fn ends<'a>(house: &'a House, wall: &Wall) -> [(EndCondition, Option<Neighbour<'a>>); 2] {
    [End::Left, End::Right].map(|end| meet(house, wall, end))
}

/// At an outside corner the through wall's sheets stop at its frame and the butting wall's sheets lap past its
/// neighbour's end stud and sheathing. At an inside corner the butting wall's frame stands against the face of the
/// through wall: the through wall's sheets stop there, and the butting wall's sheets stop at those.
fn meet<'a>(house: &'a House, wall: &Wall, end: End) -> (EndCondition, Option<Neighbour<'a>>) {
    let here = |place: &WallEnd| place.wall == wall.name && place.end == end;
    let named = |place: &WallEnd| house.walls.iter().find(|other| other.name == place.wall);
    for corner in &house.corners {
        if here(&corner.through) {
            let condition = match (corner.turn, named(&corner.butting)) {
                (CornerTurn::Inside, Some(other)) => EndCondition::Inside {
                    by: stud_depth(other),
                },
                _ => EndCondition::Through,
            };
            return (condition, None);
        }
        if here(&corner.butting) {
            let Some(other) = named(&corner.through) else {
                continue;
            };
            let (depth, sheathing) = (stud_depth(other), sheathing_thickness(other));
            let section = match corner.through.end {
                End::Left => other.sections.first(),
                End::Right => other.sections.last(),
            };
            return match corner.turn {
                CornerTurn::Outside => (
                    EndCondition::Laps {
                        by: depth + sheathing,
                    },
                    section.map(|section| Neighbour { depth, section }),
                ),
                CornerTurn::Inside => (EndCondition::Inside { by: sheathing }, None),
            };
        }
    }
    (EndCondition::Free, None)
}

/// The storeys of a wall from below, section by section.
fn storeys(wall: &Wall) -> impl Iterator<Item = &Storey> {
    let levels = wall.sections.iter().flat_map(|section| &section.stack);
    levels.filter_map(|level| match level {
        Level::Storey(storey) => Some(storey),
        Level::FloorBand(_) => None,
    })
}

/// Depth of the studs of a wall's lowest storey.
fn stud_depth(wall: &Wall) -> Length {
    storeys(wall)
        .next()
        .map_or(Length::ZERO, |storey| storey.stud.depth)
}

/// The thickness that a wall's performance category names; nothing where it names none.
fn sheathing_thickness(wall: &Wall) -> Length {
    Length::parse(&wall.practice.assembly.category, Unit::Inch).map_or(Length::ZERO, |parsed| parsed.length)
}

#[cfg(test)]
mod tests;
