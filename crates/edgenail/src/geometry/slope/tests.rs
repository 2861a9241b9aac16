use super::*;
use proptest::prelude::*;

const LIMIT: i64 = Length::LIMIT.units();

fn coordinate() -> impl Strategy<Value = Length> {
    (-LIMIT..=LIMIT).prop_map(Length::from_units)
}

fn any_slope() -> impl Strategy<Value = Slope> {
    (coordinate(), coordinate(), coordinate(), 1..=LIMIT)
        .prop_map(|(x, y, rise, run)| Slope::new(Point::new(x, y), rise, Length::from_units(run)).unwrap())
}

proptest! {
    /// The rounded height is within half a unit of run·(y − y0) = rise·(x − x0), a tie below it.
    #[test]
    fn height_is_nearest(slope in any_slope(), x in coordinate()) {
        let wide = |l: Length| i128::from(l.units());
        let (rise, run) = (wide(slope.rise()), wide(slope.run()));
        let off = 2 * (rise * wide(x - slope.base().x) - run * wide(slope.y_at(x) - slope.base().y));
        prop_assert!(-run < off && off <= run);
    }

    #[test]
    fn a_rising_line_never_falls(slope in any_slope(), x in coordinate(), further in 0..=LIMIT) {
        let beyond = x + Length::from_units(further);
        let (here, there) = (slope.y_at(x), slope.y_at(beyond));
        let keeps_on = if slope.rise() < Length::ZERO { there <= here } else { here <= there };
        prop_assert!(keeps_on);
    }

    /// One line is one line, whichever of its exact points it is given through.
    #[test]
    fn the_base_point_does_not_matter(
        x in coordinate(), y in coordinate(), rise in -99i64..99, run in 1i64..99,
        steps in 1i64..1000, at in coordinate()
    ) {
        let (rise, run) = (Length::from_units(rise), Length::from_units(run));
        let base = Point::new(x, y);
        let further = Point::new(x + run * steps, y + rise * steps);
        let (one, other) = (Slope::new(base, rise, run).unwrap(), Slope::through(further, base).unwrap());
        prop_assert_eq!(one.y_at(at), other.y_at(at));
        prop_assert_eq!(one.x_at(at), other.x_at(at));
    }

    /// Going to a height and back ends within the rise over half a unit, and half a unit more.
    #[test]
    fn crossings_agree_both_ways(slope in any_slope(), y in coordinate()) {
        if let Some(x) = slope.x_at(y) {
            let back = (slope.y_at(x) - y).abs().units();
            let (rise, run) = (slope.rise().abs().units(), slope.run().units());
            prop_assert!(back <= rise / (2 * run) + 1);
        }
    }
}

#[test]
fn a_plumb_line_is_refused() {
    let at = |y| Point::new(Length::inches(3), Length::inches(y));
    assert_eq!(Slope::through(at(0), at(5)), None);
    assert_eq!(Slope::new(at(0), Length::inches(1), Length::ZERO), None);
}

#[test]
fn a_tie_goes_down_on_both_hands() {
    let half = Slope::new(Point::default(), Length::from_units(1), Length::from_units(2)).unwrap();
    assert_eq!(half.y_at(Length::from_units(1)), Length::ZERO);
    assert_eq!(half.y_at(Length::from_units(-1)), Length::from_units(-1));
}
