use super::super::point::ring_area2;
use super::super::{Facing, Profile, Region};
use super::*;
use proptest::prelude::*;
use std::collections::BTreeSet;

const SIDE: i64 = 16;

fn rect(x0: i64, y0: i64, x1: i64, y1: i64) -> Rect {
    let unit = Length::from_units;
    Rect::new(unit(x0), unit(y0), unit(x1), unit(y1))
}

fn region(holes: Vec<Rect>) -> Region {
    let level = |y| {
        Profile::level(
            Interval::new(Length::ZERO, Length::from_units(SIDE)),
            Length::from_units(y),
        )
    };
    Region {
        lower: level(0).unwrap(),
        upper: level(SIDE).unwrap(),
        holes,
    }
}

fn any_holes() -> impl Strategy<Value = Vec<Rect>> {
    let hole = (0..SIDE, 0..SIDE, 1i64..9, 1i64..9).prop_map(|(x, y, w, h)| rect(x, y, x + w, y + h));
    prop::collection::vec(hole, 0..9)
}

type Squares = BTreeSet<(i64, i64)>;

/// Parts of the wall found square by square: unit squares in no hole, flooded over shared sides.
fn flooded(holes: &[Rect]) -> Vec<Squares> {
    let free = |x, y| !holes.iter().any(|hole| hole.covers(&rect(x, y, x + 1, y + 1)));
    let mut left: Squares = (0..SIDE)
        .flat_map(|x| (0..SIDE).map(move |y| (x, y)))
        .filter(|&(x, y)| free(x, y))
        .collect();
    let mut parts = Vec::new();
    while let Some(first) = left.pop_first() {
        let (mut part, mut open) = (Squares::new(), vec![first]);
        while let Some((x, y)) = open.pop() {
            part.insert((x, y));
            open.extend(
                [(x - 1, y), (x + 1, y), (x, y - 1), (x, y + 1)]
                    .into_iter()
                    .filter(|s| left.remove(s)),
            );
        }
        parts.push(part);
    }
    parts
}

/// Sides of a part's squares that have no neighbour in it.
fn free_sides(part: &Squares) -> usize {
    let beside = |&(x, y): &(i64, i64)| [(x - 1, y), (x + 1, y), (x, y - 1), (x, y + 1)];
    part.iter()
        .flat_map(beside)
        .filter(|square| !part.contains(square))
        .count()
}

proptest! {
    /// Number, order, area, perimeter, place of the parts: as counted square by square.
    #[test]
    fn parts_agree_with_squares(holes in any_holes()) {
        let (pieces, parts) = (region(holes.clone()).pieces(), flooded(&holes));
        prop_assert_eq!(pieces.len(), parts.len());
        for (piece, part) in pieces.iter().zip(&parts) {
            prop_assert_eq!(piece.area2(), 2 * i128::try_from(part.len()).unwrap());
            prop_assert_eq!(piece.perimeter(), Length::from_units(i64::try_from(free_sides(part)).unwrap()));
            for (x, y) in (0..SIDE).flat_map(|x| (0..SIDE).map(move |y| (x, y))) {
                prop_assert_eq!(piece.intersects_rect(&rect(x, y, x + 1, y + 1)), part.contains(&(x, y)));
            }
            for x in 0..SIDE {
                let spans = piece.span_at_x(Length::from_units(x), Toward::Right);
                let height: Length = spans.iter().map(|s| s.len()).sum();
                let squares = part.iter().filter(|square| square.0 == x).count();
                prop_assert_eq!(height, Length::from_units(i64::try_from(squares).unwrap()));
                prop_assert_eq!(
                    piece.span_at_x(Length::from_units(x + 1), Toward::Left),
                    spans
                );
            }
        }
    }

    /// Edges close into rings, are as long as they are straight, and face away from the shape.
    #[test]
    fn edges_close_and_face_outward(holes in any_holes()) {
        for (piece, part) in region(holes.clone()).pieces().iter().zip(&flooded(&holes)) {
            let rings = piece.rings();
            let edges = piece.boundary();
            prop_assert_eq!(edges.len(), rings.iter().map(Vec::len).sum::<usize>());
            let mut edge = edges.iter();
            for ring in &rings {
                for (&a, &b) in ring.iter().zip(ring.iter().cycle().skip(1)) {
                    let here = edge.next().unwrap();
                    prop_assert_eq!((here.a, here.b), (a, b));
                    let (low, _) = here.ends();
                    let (x, y) = (low.x.units(), low.y.units());
                    let (inside, outside) = match here.facing {
                        Facing::Left => ((x, y), (x - 1, y)),
                        Facing::Right => ((x - 1, y), (x, y)),
                        Facing::Bottom => ((x, y), (x, y - 1)),
                        Facing::Top => ((x, y - 1), (x, y)),
                    };
                    prop_assert!(part.contains(&inside) && !part.contains(&outside));
                }
                for (i, &b) in ring.iter().enumerate() {
                    let (a, c) = (ring[(i + ring.len() - 1) % ring.len()], ring[(i + 1) % ring.len()]);
                    prop_assert!(super::super::point::turn(a, b, c) != 0);
                }
            }
            let areas: Vec<i128> = rings.iter().map(|ring| ring_area2(ring)).collect();
            prop_assert!(areas[0] > 0 && areas[1..].iter().all(|&hole| hole < 0));
            prop_assert_eq!(areas.iter().sum::<i128>(), piece.area2());
        }
    }

    #[test]
    fn overlap_counts_shared_squares(some in any_holes(), others in any_holes()) {
        for (a, of_a) in region(some.clone()).pieces().iter().zip(&flooded(&some)) {
            for (b, of_b) in region(others.clone()).pieces().iter().zip(&flooded(&others)) {
                let shared = i128::try_from(of_a.intersection(of_b).count()).unwrap();
                prop_assert_eq!(a.overlap_area2(b), 2 * shared);
            }
        }
    }
}

/// A right triangle of legs 3 and 4 ft over a square of 4 ft.
fn gabled() -> Shape {
    let feet = |x, y| Point::new(Length::feet(x), Length::feet(y));
    let region = Region {
        lower: Profile::new(vec![feet(0, 0), feet(4, 0)]).unwrap(),
        upper: Profile::new(vec![feet(0, 4), feet(4, 7)]).unwrap(),
        holes: vec![],
    };
    let pieces = region.pieces();
    assert_eq!(pieces.len(), 1);
    pieces[0].clone()
}

#[test]
fn a_slope_counts_with_its_length() {
    assert_eq!(gabled().perimeter(), Length::feet(4 + 7 + 5 + 4));
    assert_eq!(
        gabled().area2(),
        2 * (Length::feet(4) * Length::feet(4)).square_units() * 11 / 8
    );
}

#[test]
fn overlap_over_a_slope_is_the_shared_triangle() {
    let inch = Length::inches;
    let above = Shape::from_rect(Rect::new(inch(0), inch(48), inch(48), inch(100))).unwrap();
    assert_eq!(
        gabled().overlap_area2(&above),
        (inch(48) * inch(36)).square_units()
    );
    assert!(gabled().contains(Point::new(inch(24), inch(66))));
    assert!(!gabled().contains(Point::new(inch(24), inch(67))));
    let corner = Rect::new(inch(0), inch(60), inch(16), inch(84));
    assert!(!gabled().intersects_rect(&corner));
    assert!(gabled().intersects_rect(&corner.grown(inch(1))));
}

#[test]
fn it_is_written_as_rings() {
    let shape = Shape::from_rect(rect(0, 0, 2, 1)).unwrap();
    let text = serde_json::to_string(&shape).unwrap();
    assert_eq!(
        text,
        r#"{"rings":[[{"x":0,"y":0},{"x":2,"y":0},{"x":2,"y":1},{"x":0,"y":1}]]}"#
    );
}
