use super::*;
use proptest::prelude::*;

fn at(x: i64, y: i64) -> Point {
    Point::new(Length::from_units(x), Length::from_units(y))
}

fn rect(x0: i64, y0: i64, x1: i64, y1: i64) -> Rect {
    let unit = Length::from_units;
    Rect::new(unit(x0), unit(y0), unit(x1), unit(y1))
}

/// The hull of a few points, where it has three to eight corners.
fn any_convex(reach: i64) -> impl Strategy<Value = Convex> {
    prop::collection::vec((-reach..reach, -reach..reach), 3..12)
        .prop_filter_map("flat or too many corners", |points| {
            Convex::from_points(&hull(points.into_iter().map(|(x, y)| at(x, y)).collect()))
        })
}

proptest! {
    /// Direction, start, repeats and straight corners do not matter.
    #[test]
    fn one_polygon_has_one_form(convex in any_convex(60), turns in 0usize..8, backward in any::<bool>()) {
        let mut points: Vec<Point> = convex.edges().flat_map(|(a, b)| [a, a, b]).collect();
        let turns = turns % points.len();
        points.rotate_left(turns);
        if backward {
            points.reverse();
        }
        prop_assert_eq!(Convex::from_points(&points), Some(convex));
        prop_assert!(convex.area2() > 0);
    }

    /// Spans agree with asking point by point: exact where a whole point tells, within a unit elsewhere.
    #[test]
    fn spans_agree_with_points(convex in any_convex(40), v in -45i64..45) {
        let unit = Length::from_units;
        let held = |at: &dyn Fn(Length) -> Point| -> Vec<Length> {
            (-50..50).map(unit).filter(|&w| convex.contains(at(w))).collect()
        };
        let (column, row) = (held(&|y| Point::new(unit(v), y)), held(&|x| Point::new(x, unit(v))));
        for (slow, quick) in [(column, convex.span_at_x(unit(v))), (row, convex.span_at_y(unit(v)))] {
            if let (Some(first), Some(last)) = (slow.first(), slow.last()) {
                let quick = quick.unwrap();
                prop_assert!(quick.covers(Interval::new(*first, *last)));
                prop_assert!(quick.lo + unit(1) >= *first && quick.hi <= *last + unit(1));
            }
        }
        let bounds = convex.bounds();
        prop_assert_eq!(convex.span_at_x(unit(v)).is_some(), bounds.x_span().contains(unit(v)));
        prop_assert_eq!(convex.span_at_y(unit(v)).is_some(), bounds.y_span().contains(unit(v)));
    }

    /// What a clipped way keeps lies within a unit of the polygon, and what lies inside is kept.
    #[test]
    fn clipping_agrees_with_points(
        convex in any_convex(40), a in (-60i64..60, -60i64..60), b in (-60i64..60, -60i64..60)
    ) {
        let (a, b) = (at(a.0, a.1), at(b.0, b.1));
        let clipped = convex.clip_segment(a, b);
        // Sixteen places on the way, sixteen times finer than whole points.
        let fine = |p: Point| Point::new(p.x * 16, p.y * 16);
        let finer = Convex::from_points(&convex.points().iter().map(|&p| fine(p)).collect::<Vec<_>>()).unwrap();
        let place = |i: i64| Point::new(a.x * (16 - i) + b.x * i, a.y * (16 - i) + b.y * i);
        for p in (0..=16).map(place).filter(|&p| finer.contains(p)) {
            let (from, to) = clipped.unwrap();
            let fine_span = |p: Length, q: Length| Interval::new(p * 16, q * 16);
            let near = Rect::from_spans(fine_span(from.x, to.x), fine_span(from.y, to.y));
            prop_assert!(near.grown(Length::from_units(8)).contains(p));
        }
        if let Some((from, to)) = clipped {
            let one = Length::from_units(1);
            let around = |p: &Point| Rect::new(p.x, p.y, p.x, p.y).grown(one).corners();
            let grown: Vec<Point> = convex.points().iter().flat_map(around).collect();
            let ring = hull(grown);
            for p in [from, to] {
                prop_assert!(ring.iter().zip(ring.iter().cycle().skip(1)).all(|(&c, &d)| turn(c, d, p) >= 0));
            }
            prop_assert_eq!(convex.contains(a), from == a && convex.contains(a));
        }
    }

    /// Level and plumb ways are cut exactly where the span says.
    #[test]
    fn level_and_plumb_ways_match_the_spans(convex in any_convex(40), v in -45i64..45) {
        let unit = Length::from_units;
        let plumb = convex.clip_segment(at(v, -99), at(v, 99));
        prop_assert_eq!(plumb.map(|(p, q)| Interval::new(p.y, q.y)), convex.span_at_x(unit(v)));
        prop_assert!(plumb.is_none_or(|(p, q)| p.x == unit(v) && q.x == unit(v)));
        let level = convex.clip_segment(at(-99, v), at(99, v));
        prop_assert_eq!(level.map(|(p, q)| Interval::new(p.x, q.x)), convex.span_at_y(unit(v)));
    }

    /// Every corner left keeps the distance from every edge: cross² ≥ by²·length².
    #[test]
    fn an_inset_keeps_its_distance(convex in any_convex(1 << 20), by in 0i64..(1 << 18)) {
        if let Some(inner) = convex.inset(Length::from_units(by)) {
            for (a, b) in convex.edges() {
                let (dx, dy) = ((b.x - a.x).units(), (b.y - a.y).units());
                let length2 = i128::from(dx).pow(2) + i128::from(dy).pow(2);
                for &p in inner.points() {
                    let cross = turn(a, b, p);
                    prop_assert!(cross >= 0 && cross.pow(2) >= i128::from(by).pow(2) * length2);
                }
            }
        }
    }

    /// And no more is taken than a few units: a point that keeps six units more than asked is still inside.
    #[test]
    fn an_inset_takes_little_more(
        convex in any_convex(1 << 10), by in 0i64..200, x in -1_024i64..1_024, y in -1_024i64..1_024
    ) {
        let point = at(x, y);
        let clear = convex.edges().all(|(a, b)| {
            let (dx, dy) = ((b.x - a.x).units(), (b.y - a.y).units());
            let cross = turn(a, b, point);
            cross > 0 && cross.pow(2) >= i128::from(by + 6).pow(2) * i128::from(dx * dx + dy * dy)
        });
        if clear {
            prop_assert!(convex.inset(Length::from_units(by)).is_some_and(|inner| inner.contains(point)));
        }
    }

    #[test]
    fn a_rectangle_stays_exact(x in -99i64..99, y in -99i64..99, w in 1i64..99, h in 1i64..99, by in 0i64..60) {
        let outer = rect(x, y, x + w, y + h);
        let convex = Convex::from_rect(outer).unwrap();
        prop_assert_eq!(convex.is_rect(), Some(outer));
        prop_assert_eq!(convex.bounds(), outer);
        let inner = outer.grown(Length::from_units(-by));
        prop_assert_eq!(convex.inset(Length::from_units(by)), Convex::from_rect(inner));
    }
}

#[test]
fn what_is_not_convex_is_refused() {
    let star: Vec<Point> = [(0, 10), (6, -8), (-10, 3), (10, 3), (-6, -8)]
        .map(|(x, y)| at(x, y))
        .to_vec();
    assert_eq!(Convex::from_points(&star), None);
    assert_eq!(
        Convex::from_points(&[at(0, 0), at(9, 0), at(3, 3), at(0, 9)]),
        None
    );
    assert_eq!(Convex::from_points(&[at(0, 0), at(9, 0), at(20, 0)]), None);
    assert_eq!(
        Convex::from_points(&[at(0, 0), at(9, 0), at(9, 0), at(0, 0)]),
        None
    );
    assert_eq!(Convex::from_points(&[]), None);
    assert_eq!(Convex::from_rect(rect(3, 0, 3, 9)), None);
    let nine: Vec<Point> = (0..9).map(|i| at(i, i * i)).collect();
    assert_eq!(Convex::from_points(&nine), None);
}

#[test]
fn it_is_written_as_its_corners() {
    let convex = Convex::from_rect(rect(0, 0, 2, 1)).unwrap();
    let text = serde_json::to_string(&convex).unwrap();
    assert_eq!(
        text,
        r#"[{"x":0,"y":0},{"x":2,"y":0},{"x":2,"y":1},{"x":0,"y":1}]"#
    );
}
