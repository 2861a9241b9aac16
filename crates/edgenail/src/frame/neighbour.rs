//! The end of a wall that another one butts against, as it shows edge on in that wall's face.

use super::builder::{Material, Piece};
use super::plates::lay_plates;
use super::roof::lay_top_plates;
use super::{Axis, Frame, MemberKind};
use crate::geometry::{Interval, Rect};
use crate::house::{BandLayer, Direction, FloorBand, Level, Section, Storey};
use crate::length::Length;

/// What stands beside an end of a section, where the section's sheathing laps it.
#[derive(Clone, Debug)]
pub(super) struct Beside<'a> {
    x: Interval,
    /// The neighbour's levels at their heights in this wall, from below, but for floors at the height of the section's own
    /// ones: those run on to the sheathing's corner.
    levels: Vec<Placed<'a>>,
    /// How many of them are framed.
    framed: usize,
}

/// A level with the heights that it takes up.
type Placed<'a> = (Interval, &'a Level);

impl<'a> Beside<'a> {
    /// The end of a neighbour's section over this stretch beside a section. Both walls' floors lie level where the
    /// section's lowest storey stands, which is the neighbour's storey of that name, else its lowest; from there on each
    /// wall keeps its own heights.
    pub fn new(section: &Section, neighbour: &'a Section, x: Interval) -> Self {
        let (ours, theirs) = (
            placed(&section.stack, section.base),
            placed(&neighbour.stack, Length::ZERO),
        );
        let lowest = ours.iter().find_map(storey);
        let all = || theirs.iter().filter_map(storey);
        let same = lowest.and_then(|(_, lowest)| all().find(|(_, storey)| storey.name == lowest.name));
        let up = match (lowest, same.or_else(|| all().next())) {
            (Some((here, _)), Some((there, _))) => here - there,
            _ => section.base,
        };
        let floors: Vec<Interval> = ours
            .iter()
            .filter(|placed| is_floor(placed))
            .map(|(y, _)| *y)
            .collect();
        let raised = theirs
            .into_iter()
            .map(|(y, level)| (Interval::new(y.lo + up, y.hi + up), level));
        let levels = raised
            .filter(|placed| !(is_floor(placed) && floors.contains(&placed.0)) && section.base < placed.0.hi)
            .collect();
        Self { x, levels, framed: 0 }
    }

    /// How far a floor of this wall at these heights runs on past its frame: to the sheathing's corner, unless the
    /// neighbour's wall, or its floor at another height, is in the way.
    pub fn lets_pass(&self, y: Interval) -> Length {
        if self.levels.iter().any(|(other, _)| other.overlaps(y)) {
            Length::ZERO
        } else {
            self.x.len()
        }
    }

    /// Frames what begins below this height and is not framed yet.
    pub fn frame(&mut self, frame: &mut Frame, below: Length, material: &Material, raked: bool) {
        let next = self.levels.iter().skip(self.framed);
        for (y, level) in next.take_while(|(y, _)| y.lo < below) {
            self.framed += 1;
            match level {
                Level::Storey(storey) => end_stud(frame, material, storey, (self.x, y.lo), raked),
                Level::FloorBand(band) => floor_end(frame, material, band, (self.x, y.lo)),
            }
        }
    }
}

/// Levels on each other.
fn placed(stack: &[Level], base: Length) -> Vec<Placed<'_>> {
    let mut y = base;
    let levels = stack.iter().map(|level| {
        let from = y;
        y += level.height();
        (Interval::new(from, y), level)
    });
    levels.collect()
}

/// A storey with the height at which it begins.
fn storey<'a>((y, level): &Placed<'a>) -> Option<(Length, &'a Storey)> {
    match level {
        Level::Storey(storey) => Some((y.lo, storey)),
        Level::FloorBand(_) => None,
    }
}

fn is_floor((_, level): &Placed<'_>) -> bool {
    matches!(level, Level::FloorBand(_))
}

/// A storey's end stud between its plates, from `y` up.
fn end_stud(
    frame: &mut Frame,
    material: &Material,
    storey: &Storey,
    (x, y): (Interval, Length),
    raked: bool,
) {
    let plate = MemberKind::NeighbourPlate;
    let from = lay_plates(frame, material, plate, &storey.bottom_plates, x, y, &[]);
    let to = from + storey.stud.length;
    frame.put(
        material,
        Piece::said(MemberKind::NeighbourStud, Axis::Vertical),
        Rect::from_spans(x, Interval::new(from, to)),
    );
    lay_top_plates(frame, material, storey, x, to, raked, plate);
}

/// What of a floor that lies at another height than this wall's holds nails at the corner, from `y` up: its plates, and
/// the rim or the joist that closes it.
fn floor_end(frame: &mut Frame, material: &Material, band: &FloorBand, (x, mut y): (Interval, Length)) {
    for layer in &band.layers {
        let heights = Interval::new(y, y + layer.height());
        let treated = match layer {
            BandLayer::Plate(plate) => Some(plate.treated),
            BandLayer::Members(members) => {
                let closed = members.rim.is_some() || members.direction == Direction::Along;
                (closed || members.blocking_between).then_some(false)
            }
            BandLayer::Subfloor { .. } => None,
        };
        if let Some(treated) = treated {
            let piece = Piece {
                treated,
                ..Piece::said(MemberKind::NeighbourPlate, Axis::Horizontal)
            };
            frame.put(material, piece, Rect::from_spans(x, heights));
        }
        y = heights.hi;
    }
}
