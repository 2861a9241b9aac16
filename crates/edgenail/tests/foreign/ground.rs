//! Walls with layouts that their frames were not made for, on generated houses of every class.

use crate::strain::strain;
use edgenail::edges::{EdgeRun, edges};
use edgenail::frame::{Axis, Frame, frame_wall};
use edgenail::generate::house_json;
use edgenail::house::House;
use edgenail::layout::{BandSpec, Layout, LayoutSpec, Running, lay_out};
use edgenail::{Length, read_house};
use std::collections::BTreeMap;

const HOUSES: u64 = 220;
/// A law that has not seen so many houses of every class has not been tested.
const ENOUGH: usize = 20;

/// Numbers that follow from a seed (Lehmer's generator, constants of Park and Miller, 'Random number generators: good
/// ones are hard to find', CACM 1988; from memory).
pub struct Numbers(u64);

impl Numbers {
    pub fn between(&mut self, least: i64, most: i64) -> i64 {
        self.0 = self.0 * 48_271 % 0x7FFF_FFFF;
        least + i64::try_from(self.0).unwrap_or(0) % (most - least + 1)
    }

    pub fn below(&mut self, count: i64) -> usize {
        usize::try_from(self.between(0, count - 1)).unwrap_or(0)
    }
}

/// The middle of the nearest member of this direction, or a place a few sixteenths off it: 13/16 from the middle of a 2x, one
/// of two panels that are 1/8 in. apart ends just where the member does.
fn on_wood(frame: &Frame, axis: Axis, at: Length, numbers: &mut Numbers) -> Length {
    let middles = frame
        .members
        .iter()
        .filter(|member| member.axis == axis && member.nailable)
        .map(|member| {
            let bounds = member.face.bounds();
            if axis == Axis::Vertical {
                (bounds.x0 + bounds.x1).half()
            } else {
                (bounds.y0 + bounds.y1).half()
            }
        });
    let nearest = middles
        .min_by_key(|middle| (*middle - at).abs())
        .filter(|middle| *middle > at - Length::inches(4));
    nearest.map_or(at, |middle| {
        middle + Length::sixteenths([0, 0, 0, 0, 2, -3, 7, 13, -13][numbers.below(9)])
    })
}

/// Courses and seams at any sixteenth of an inch, half of them near the middle of a member.
fn foreign(frame: &Frame, numbers: &mut Numbers) -> LayoutSpec {
    let x = frame.lower.span();
    let low = frame.lower.points().iter().map(|point| point.y).min();
    let high = frame.upper.points().iter().map(|point| point.y).max();
    // Further down than an inch in one of eight.
    let reach = Length::sixteenths(numbers.between(-8, 16) + [0, 0, 0, 0, 0, 0, 0, 24][numbers.below(8)]);
    let (low, high) = (low.unwrap_or_default() - reach, high.unwrap_or_default());
    let mut levels = vec![low];
    let mut y = low + Length::sixteenths(numbers.between(16 * 16, 16 * 110));
    while y + Length::inches(14) < high {
        if numbers.below(2) == 0 {
            y = on_wood(frame, Axis::Horizontal, y, numbers);
        }
        levels.push(y);
        y += Length::sixteenths(numbers.between(16 * 14, 16 * 110));
    }
    levels.push(high);
    // Some layouts leave the lowest or the topmost plates bare.
    let last = levels.len() - 1;
    levels[0] += Length::inches([0, 0, 0, 0, 0, 0, 2, 3][numbers.below(8)]);
    levels[last] -= Length::inches([0, 0, 0, 0, 0, 0, 1, 4][numbers.below(8)]);
    let bands = levels.windows(2).map(|pair| {
        let mut seams = Vec::new();
        let mut at = x.lo + Length::sixteenths(numbers.between(16 * 6, 16 * 96));
        while at + Length::inches(4) < x.hi {
            if numbers.below(2) == 0 {
                at = on_wood(frame, Axis::Vertical, at, numbers);
            }
            seams.push(at);
            at += Length::sixteenths(numbers.between(16 * 9, 16 * 96));
        }
        BandSpec {
            y0: pair[0],
            y1: pair[1],
            running: if numbers.between(0, 1) == 0 {
                Running::Upright
            } else {
                Running::Flat
            },
            sheets: vec![0; seams.len() + 1],
            seams,
        }
    });
    let bands = bands.collect();
    LayoutSpec::Bands { reach, bands }
}

/// A wall with a layout that its frame was not made for.
pub struct Ground {
    pub house: House,
    pub frame: Frame,
    pub layout: Layout,
    pub runs: Vec<EdgeRun>,
}

/// Looks at a law on every wall of many houses, and fails if a class of houses was hardly seen.
pub fn on_every_class(law: impl Fn(&Ground) -> Result<(), String>) {
    let mut seen: BTreeMap<&str, usize> = BTreeMap::new();
    for seed in 0..HOUSES {
        let (text, mix) = house_json(seed);
        let (mut house, _) = read_house(text.as_bytes()).expect("generated houses are read");
        // Every fourth house as it is written.
        if seed % 4 != 0 {
            strain(&mut house, &mut Numbers(seed + 1));
        }
        for wall in 0..house.walls.len() {
            let frame = frame_wall(&house, wall).expect("the house has this wall");
            let spec = foreign(&frame, &mut Numbers(seed * 31 + wall as u64 + 1));
            let layout = lay_out(&house, &frame, &spec);
            let runs = edges(&house, &frame, &layout);
            let ground = Ground {
                house: house.clone(),
                frame,
                layout,
                runs,
            };
            let held = law(&ground);
            assert!(held.is_ok(), "seed {seed}, wall {wall}: {held:?}");
        }
        for (class, _) in mix.classes().into_iter().filter(|(_, has)| *has) {
            *seen.entry(class).or_default() += 1;
        }
    }
    assert_eq!(seen.len(), 10, "{seen:?}");
    assert!(seen.values().all(|count| *count >= ENOUGH), "{seen:?}");
}
