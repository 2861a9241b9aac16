//! The courses of a wall, each searched once for all stacks that it is part of.

use super::course::{Course, Slot};
use super::space::Space;
use super::weight::Weight;
use crate::amount::Amount;
use crate::geometry::Interval;
use crate::house::End;
use crate::layout::{Running, starting_end};
use crate::length::Length;
use std::collections::HashMap;

/// The courses of a wall, each searched once for all stacks that it is part of.
pub(super) struct Courses<'s, 'a> {
    space: &'s Space<'a>,
    pub start: End,
    places: HashMap<Slot, usize>,
    all: Vec<Course<'s, 'a>>,
    line: Weight,
    /// The base is level: how far the sheathing reaches below it matters to the lowest course alone.
    level_base: bool,
}

impl<'s, 'a> Courses<'s, 'a> {
    pub fn new(space: &'s Space<'a>) -> Self {
        let mut line = Amount::ZERO;
        space.prices.line(space.x, &mut line);
        let base = space.frame.lower.points();
        Self {
            space,
            start: starting_end(space.practice, space.frame),
            places: HashMap::new(),
            all: Vec::new(),
            line: Weight::of(line),
            level_base: base
                .iter()
                .all(|point| base.first().is_some_and(|first| first.y == point.y)),
        }
    }

    /// What the line of a course weighs.
    pub const fn line(&self) -> Weight {
        self.line
    }

    pub fn slot(&self, y: Interval, running: Running, lowest: bool, uppermost: bool, reach: Length) -> Slot {
        Slot {
            y,
            running,
            lowest,
            uppermost,
            start: self.start,
            reach: if lowest || !self.level_base {
                reach
            } else {
                Length::ZERO
            },
        }
    }

    pub fn at(&mut self, slot: Slot) -> Option<&mut Course<'s, 'a>> {
        let next = self.all.len();
        let place = *self.places.entry(slot).or_insert(next);
        if place == next {
            self.all.push(Course::new(self.space, slot));
        }
        self.all.get_mut(place)
    }
}
