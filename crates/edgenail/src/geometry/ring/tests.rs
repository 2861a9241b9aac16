use super::super::{Interval, Profile, Rect, Region, Shape};
use super::*;
use crate::length::Length;

fn rect(x0: i64, y0: i64, x1: i64, y1: i64) -> Rect {
    let unit = Length::from_units;
    Rect::new(unit(x0), unit(y0), unit(x1), unit(y1))
}

fn at(x: i64, y: i64) -> Point {
    Point::new(Length::from_units(x), Length::from_units(y))
}

/// A wall of 9 by 9 units with holes.
fn rings_of(holes: Vec<Rect>) -> Vec<Vec<Vec<Point>>> {
    let level = |y| {
        Profile::level(
            Interval::new(Length::ZERO, Length::from_units(9)),
            Length::from_units(y),
        )
    };
    let region = Region {
        lower: level(0).unwrap(),
        upper: level(9).unwrap(),
        holes,
    };
    region.pieces().iter().map(Shape::rings).collect()
}

#[test]
fn holes_that_touch_at_a_corner_stay_two() {
    let pieces = rings_of(vec![rect(2, 2, 4, 4), rect(4, 4, 6, 6)]);
    let [rings] = &pieces[..] else { panic!("one piece") };
    assert_eq!(rings.len(), 3);
    assert_eq!(rings[1], [at(2, 2), at(2, 4), at(4, 4), at(4, 2)]);
    assert_eq!(rings[2], [at(4, 4), at(4, 6), at(6, 6), at(6, 4)]);
}

#[test]
fn a_hole_in_a_corner_notches_the_outline() {
    let pieces = rings_of(vec![rect(0, 0, 3, 2)]);
    assert_eq!(
        pieces,
        [[[at(0, 2), at(3, 2), at(3, 0), at(9, 0), at(9, 9), at(0, 9)]]]
    );
}

#[test]
fn parts_that_touch_at_a_corner_are_apart() {
    let pieces = rings_of(vec![rect(0, 5, 5, 9), rect(5, 0, 9, 5)]);
    assert_eq!(pieces.len(), 2);
    assert!(pieces.iter().all(|rings| rings.len() == 1 && rings[0].len() == 4));
}
