//! How a wall meets its neighbours.

use super::EndCondition;
use crate::house::{CornerTurn, End, House, Level, Wall};
use crate::length::{Length, Unit};

/// A neighbour that a wall butts against.
#[derive(Clone, Copy, Debug)]
pub(super) struct Neighbour {
    /// Depth of its studs: the width of its end stud in this wall's face.
    pub depth: Length,
}

/// How both ends of a wall meet their neighbours, the left end first.
pub(super) fn ends(house: &House, wall: &Wall) -> [(EndCondition, Option<Neighbour>); 2] {
    [End::Left, End::Right].map(|end| meet(house, wall, end))
}

/// At an outside corner the through wall's sheets stop at its frame and the butting wall's sheets lap past its
/// neighbour's end stud and sheathing. At an inside corner the butting wall's sheets stop at its neighbour's.
fn meet(house: &House, wall: &Wall, end: End) -> (EndCondition, Option<Neighbour>) {
    let here = |place: &crate::house::WallEnd| place.wall == wall.name && place.end == end;
    for corner in &house.corners {
        if here(&corner.through) {
            return (EndCondition::Through, None);
        }
        if here(&corner.butting) {
            let Some(other) = house.walls.iter().find(|other| other.name == corner.through.wall) else {
                continue;
            };
            let (depth, sheathing) = (stud_depth(other), sheathing_thickness(other));
            return match corner.turn {
                CornerTurn::Outside => (
                    EndCondition::Laps {
                        by: depth + sheathing,
                    },
                    Some(Neighbour { depth }),
                ),
                CornerTurn::Inside => (EndCondition::Inside { by: sheathing }, None),
            };
        }
    }
    (EndCondition::Free, None)
}

/// Depth of the studs of a wall's lowest storey.
fn stud_depth(wall: &Wall) -> Length {
    let storeys = wall
        .sections
        .iter()
        .flat_map(|section| &section.stack)
        .filter_map(|level| match level {
            Level::Storey(storey) => Some(storey.stud.depth),
            Level::FloorBand(_) => None,
        });
    storeys.into_iter().next().unwrap_or_default()
}

/// The thickness that a wall's performance category names; nothing where it names none.
fn sheathing_thickness(wall: &Wall) -> Length {
    Length::parse(&wall.practice.assembly.category, Unit::Inch).map_or(Length::ZERO, |parsed| parsed.length)
}
