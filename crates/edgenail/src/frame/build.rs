//! From a wall's words to its members.

use super::band::{Lying, frame_band};
use super::builder::Material;
use super::corner::ends;
use super::grid::Grid;
use super::neighbour::Beside;
use super::plates::lay_plates;
use super::roof::{Under, frame_top, lay_rake, lay_top_plates, roofline};
use super::storey::{Standing, frame_storey};
use super::{
    EndCondition, Frame, MemberKind, OpeningPlace, PatchPlace, SectionPlace, SegmentPlace, StoreyPlace,
};
use crate::geometry::{Interval, Point, Profile, Rect};
use crate::house::{
    BandLayer, FloorBand, House, Level, Patch, RakeBuild, Section, Segment, Storey, Top, Wall,
};
use crate::length::Length;

/// Frames a wall: every member that its words ask for, and where everything is.
///
/// `None` where the house has no such wall or the wall has no section. What a wall may say is checked when it is
/// read; whatever passes there has a frame.
pub fn frame_wall(house: &House, wall: usize) -> Option<Frame> {
    let said = house.walls.get(wall)?;
    let [left, right] = ends(house, said);
    let nothing = Profile::level(Interval::new(Length::ZERO, Length::from_units(1)), Length::ZERO)?;
    let mut frame = Frame {
        wall: u32::try_from(wall).ok()?,
        lower: nothing.clone(),
        upper: nothing,
        sections: Vec::new(),
        storeys: Vec::new(),
        bands: Vec::new(),
        openings: Vec::new(),
        penetrations: Vec::new(),
        bare_zones: Vec::new(),
        straps: Vec::new(),
        segments: Vec::new(),
        left: left.0,
        right: right.0,
        members: Vec::new(),
    };
    let (mut lower, mut upper) = (Vec::new(), Vec::new());
    let last = said.sections.len().checked_sub(1)?;
    for (index, section) in said.sections.iter().enumerate() {
        let sheathed = Interval::new(
            if index == 0 {
                section.from - reach(left.0)
            } else {
                section.from
            },
            if index == last {
                section.to + reach(right.0)
            } else {
                section.to
            },
        );
        let beside = [
            left.1.filter(|_| index == 0).map(|other| {
                let x = Interval::new(section.from - other.depth, section.from);
                Beside::new(section, other.section, x)
            }),
            right.1.filter(|_| index == last).map(|other| {
                let x = Interval::new(section.to, section.to + other.depth);
                Beside::new(section, other.section, x)
            }),
        ];
        let mut work = Work {
            wall: said,
            section,
            index: u32::try_from(index).ok()?,
            sheathed,
            beside,
            frame: &mut frame,
        };
        let line = work.stack();
        lower.extend([
            Point::new(sheathed.lo, section.base),
            Point::new(sheathed.hi, section.base),
        ]);
        upper.extend(line);
    }
    frame.lower = Profile::new(lower)?;
    frame.upper = Profile::new(upper)?;
    places_of_segments(&mut frame, said);
    Some(frame)
}

/// How far sheathing reaches past the frame's end; below zero where it stops short of it.
fn reach(end: EndCondition) -> Length {
    match end {
        EndCondition::Free | EndCondition::Through => Length::ZERO,
        EndCondition::Laps { by } => by,
        EndCondition::Inside { by } => -by,
    }
}

struct Work<'a> {
    wall: &'a Wall,
    section: &'a Section,
    index: u32,
    sheathed: Interval,
    /// What stands beside its left and its right end.
    beside: [Option<Beside<'a>>; 2],
    frame: &'a mut Frame,
}

impl Work<'_> {
    fn x(&self) -> Interval {
        Interval::new(self.section.from, self.section.to)
    }

    /// The frame, with what a floor at these heights takes up at a corner that the sheathing laps.
    fn lapped(&self, y: Interval) -> Interval {
        let past = self.beside.each_ref();
        let [left, right] =
            past.map(|beside| beside.as_ref().map_or(Length::ZERO, |beside| beside.lets_pass(y)));
        Interval::new(self.section.from - left, self.section.to + right)
    }

    /// Frames all levels and the top, and returns the line that sheathing may reach.
    fn stack(&mut self) -> Vec<Point> {
        let mut y = self.section.base;
        let count = self.section.stack.len();
        let mut last: Option<(&Storey, Material)> = None;
        for (index, level) in self.section.stack.iter().enumerate() {
            match level {
                Level::Storey(storey) => {
                    let uppermost = index + 1 == count;
                    y = self.storey(storey, y, uppermost);
                    last = Some((storey, self.material(storey)));
                }
                Level::FloorBand(band) => y = self.band(band, y),
            }
        }
        let line = match (&self.section.top, last) {
            (Top::Rake(rake), Some((storey, _))) => roofline(rake, storey, y),
            _ => None,
        };
        let material = last.map_or_else(
            || self.band_material(),
            |(_, material)| Material {
                storey: None,
                ..material
            },
        );
        let under = Under {
            x: self.x(),
            sheathed: self.sheathed,
            top: y,
            material,
        };
        if let (Top::Rake(rake), Some(line), Some((storey, material))) = (&self.section.top, &line, last) {
            let under = Under { material, ..under };
            lay_rake(
                self.frame,
                &under,
                rake.build,
                line,
                &storey.top_plates,
                &Grid::new(storey.origin, storey.spacing, self.sheathed),
                storey.stud.width,
            );
        }
        let reached = frame_top(self.frame, &self.section.top, &under, line.as_ref());
        self.frame.sections.push(SectionPlace {
            x: self.x(),
            base: self.section.base,
            top: y,
            sheathing_top: reached.iter().map(|point| point.y).max().unwrap_or(y),
            bears: self.section.bottom.bears,
            reach: self.section.bottom.reach,
            gable: matches!(self.section.top, Top::GableTruss(_)),
        });
        reached
    }

    fn material(&self, storey: &Storey) -> Material {
        Material {
            depth: storey.stud.depth,
            specific_gravity: storey.species.specific_gravity,
            storey: u32::try_from(self.frame.storeys.len().saturating_sub(1)).ok(),
        }
    }

    /// A band's members are of the species of the section's first storey.
    fn band_material(&self) -> Material {
        let storey = self.section.stack.iter().find_map(|level| match level {
            Level::Storey(storey) => Some(storey),
            Level::FloorBand(_) => None,
        });
        Material {
            depth: storey.map_or(Length::ZERO, |storey| storey.stud.depth),
            specific_gravity: storey
                .map(|storey| storey.species.specific_gravity)
                .unwrap_or_default(),
            storey: None,
        }
    }

    fn band(&mut self, band: &FloorBand, y: Length) -> Length {
        let heights = Interval::new(y, y + band.layers.iter().map(BandLayer::height).sum());
        let lying = Lying {
            x: self.lapped(heights),
            sheathed: self.sheathed,
            y,
            section: self.index,
            material: self.band_material(),
        };
        frame_band(self.frame, band, lying)
    }

    /// Frames a storey and returns where it ends.
    fn storey(&mut self, storey: &Storey, base: Length, uppermost: bool) -> Length {
        let sum = |plates: &[crate::house::Plate]| plates.iter().map(|plate| plate.thickness).sum::<Length>();
        let studs_from = base + sum(&storey.bottom_plates);
        let studs_to = studs_from + storey.stud.length;
        let top = studs_to + sum(&storey.top_plates);
        let grid = Grid::new(storey.origin, storey.spacing, self.sheathed);
        let index = u32::try_from(self.frame.storeys.len()).unwrap_or(u32::MAX);
        let storeys = self.frame.storeys.iter();
        let below = storeys.filter(|below| below.section == self.index).count();
        let place = StoreyPlace {
            name: storey.name.clone(),
            section: self.index,
            stage: u32::try_from(below).unwrap_or(u32::MAX),
            base,
            studs_from,
            studs_to,
            top,
            topmost_from: top
                - storey
                    .top_plates
                    .last()
                    .map_or(Length::ZERO, |plate| plate.thickness),
            plate_joints: storey.plate_joints.clone(),
            stud_width: storey.stud.width,
            stud_depth: storey.stud.depth,
            spacing: storey.spacing,
            zero: grid.zero,
            from_right: grid.from_right,
        };
        self.frame.storeys.push(place.clone());
        let material = Material {
            storey: Some(index),
            ..self.material(storey)
        };
        let first_opening = u32::try_from(self.frame.openings.len()).unwrap_or(u32::MAX);
        self.places(storey, base, index);
        let cuts: Vec<Rect> = self
            .frame
            .openings
            .iter()
            .filter(|place| place.storey == index)
            .map(|place| place.rect)
            .collect();
        lay_plates(
            self.frame,
            &material,
            MemberKind::BottomPlate,
            &storey.bottom_plates,
            self.x(),
            base,
            &cuts,
        );
        let line = match &self.section.top {
            Top::Rake(rake) if uppermost => roofline(rake, storey, top).map(|line| (rake.build, line)),
            _ => None,
        };
        let raked = line
            .as_ref()
            .filter(|(build, _)| *build == RakeBuild::RakedPlates)
            .map(|(_, line)| line);
        lay_top_plates(
            self.frame,
            &material,
            storey,
            self.x(),
            studs_to,
            raked.is_some(),
            MemberKind::TopPlate,
        );
        let segments: Vec<Segment> = self
            .wall
            .segments
            .iter()
            .filter(|segment| self.holds(segment, storey))
            .cloned()
            .collect();
        let standing = Standing {
            storey,
            place: &place,
            x: self.x(),
            material,
            roofline: raked,
            segments: &segments,
        };
        frame_storey(self.frame, &standing, first_opening);
        for beside in self.beside.iter_mut().flatten() {
            beside.frame(self.frame, top, &material, raked.is_some());
        }
        top
    }

    fn holds(&self, segment: &Segment, storey: &Storey) -> bool {
        segment.storey == storey.name && self.x().lo <= segment.from && segment.to <= self.x().hi
    }

    fn places(&mut self, storey: &Storey, base: Length, index: u32) {
        for opening in &storey.openings {
            let rect = Rect::from_size(opening.left, base + opening.sill, opening.width, opening.height);
            self.frame.openings.push(OpeningPlace {
                name: opening.name.clone(),
                kind: opening.kind,
                rect,
                storey: index,
            });
        }
        let place = |patch: &Patch| PatchPlace {
            name: patch.name.clone(),
            rect: Rect::from_size(patch.left, base + patch.bottom, patch.width, patch.height),
        };
        self.frame
            .penetrations
            .extend(storey.penetrations.iter().map(place));
        self.frame.bare_zones.extend(storey.bare_zones.iter().map(place));
        self.frame.straps.extend(storey.straps.iter().map(place));
    }
}

/// Where the designer's segments are.
fn places_of_segments(frame: &mut Frame, wall: &Wall) {
    for (segment, index) in wall.segments.iter().zip(0u32..) {
        let storeys = frame.storeys.iter().zip(0u32..).filter(|(storey, _)| {
            let within = frame
                .sections
                .get(storey.section as usize)
                .is_some_and(|place| place.x.lo <= segment.from && segment.to <= place.x.hi);
            storey.name == segment.storey && within
        });
        let found: Vec<SegmentPlace> = storeys
            .map(|(storey, at)| SegmentPlace {
                mark: segment.mark.clone(),
                method: segment.method,
                rect: Rect {
                    x0: segment.from,
                    x1: segment.to,
                    y0: storey.base,
                    y1: storey.top,
                },
                storey: at,
                segment: index,
            })
            .collect();
        frame.segments.extend(found);
    }
}
