use super::*;
use proptest::prelude::*;

fn at(x: i64, y: i64) -> Point {
    Point::new(Length::from_units(x), Length::from_units(y))
}

fn any_profile() -> impl Strategy<Value = Profile> {
    let part = (1i64..40, -30i64..30, -20i64..20, any::<bool>());
    prop::collection::vec(part, 1..7).prop_map(|parts| {
        let mut points = vec![at(0, 0)];
        for (run, rise, step, steps) in parts {
            let last = *points.last().unwrap();
            let end = Point::new(
                last.x + Length::from_units(run),
                last.y + Length::from_units(rise),
            );
            points.push(end);
            if steps {
                points.push(Point::new(end.x, end.y + Length::from_units(step)));
            }
        }
        Profile::new(points).unwrap()
    })
}

proptest! {
    #[test]
    fn it_passes_through_its_points(profile in any_profile()) {
        for pair in profile.points().windows(2) {
            if pair[0].x < pair[1].x {
                prop_assert_eq!(profile.y_at(pair[0].x, Toward::Right), Some(pair[0].y));
                prop_assert_eq!(profile.y_at(pair[1].x, Toward::Left), Some(pair[1].y));
            }
        }
        prop_assert_eq!(profile.y_at(profile.span().lo, Toward::Left), None);
        prop_assert_eq!(profile.y_at(profile.span().hi, Toward::Right), None);
    }

    /// More vertices change no height anywhere.
    #[test]
    fn vertices_change_nothing(profile in any_profile(), xs in prop::collection::vec(-10i64..250, 0..20)) {
        let xs: Vec<Length> = xs.into_iter().map(Length::from_units).collect();
        let refined = profile.with_vertices_at(&xs);
        for x in (-5..250).map(Length::from_units) {
            for toward in [Toward::Left, Toward::Right] {
                prop_assert_eq!(refined.y_at(x, toward), profile.y_at(x, toward));
            }
        }
        let span = profile.span();
        for x in xs.into_iter().filter(|&x| span.contains(x)) {
            prop_assert!(refined.breaks().contains(&x));
        }
        prop_assert_eq!(refined.breaks().len(), refined.points().len()
            - refined.points().windows(2).filter(|pair| pair[0].x == pair[1].x).count());
    }

    #[test]
    fn shifting_shifts_every_height(profile in any_profile(), up in -99i64..99, x in -5i64..250) {
        let (up, x) = (Length::from_units(up), Length::from_units(x));
        let before = profile.y_at(x, Toward::Right);
        prop_assert_eq!(profile.shifted(up).y_at(x, Toward::Right), before.map(|y| y + up));
    }

    #[test]
    fn a_stretch_knows_its_heights(profile in any_profile(), lo in -5i64..250, len in 0i64..100) {
        let stretch = Interval::new(Length::from_units(lo), Length::from_units(lo + len));
        let inner: Option<Vec<Length>> = (lo..=lo + len)
            .flat_map(|x| [(x, Toward::Right), (x, Toward::Left)])
            .filter(|&(x, t)| !(x == lo && t == Toward::Left || x == lo + len && t == Toward::Right))
            .map(|(x, toward)| profile.y_at(Length::from_units(x), toward))
            .collect();
        let slow = inner.and_then(|ys| Some(Interval::new(*ys.iter().min()?, *ys.iter().max()?)));
        prop_assert_eq!(profile.y_over(stretch), slow);
    }
}

#[test]
fn what_is_no_profile_is_refused() {
    assert_eq!(Profile::new(vec![]), None);
    assert_eq!(Profile::new(vec![at(0, 0)]), None);
    assert_eq!(Profile::new(vec![at(0, 0), at(0, 5)]), None);
    assert_eq!(Profile::new(vec![at(0, 0), at(8, 0), at(6, 0)]), None);
    assert_eq!(
        Profile::new(vec![at(0, 0), at(4, 0), at(4, 9), at(4, 2), at(8, 2)]),
        None
    );
    assert_eq!(Profile::level(Interval::default(), Length::ZERO), None);
}

#[test]
fn points_that_change_nothing_are_left_out() {
    let long = vec![
        at(0, 0),
        at(0, 0),
        at(2, 1),
        at(4, 2),
        at(4, 5),
        at(4, 7),
        at(9, 7),
        at(12, 7),
    ];
    assert_eq!(
        Profile::new(long).unwrap().points(),
        [at(0, 0), at(4, 2), at(4, 7), at(12, 7)]
    );
}
