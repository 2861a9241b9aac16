//! A double is read to the nearest unit, and noise of conversion is told from a figure that does not fit.

use crate::length::{Length, LengthFault, Unit};
use proptest::prelude::*;

proptest! {
    #[test]
    fn a_whole_number_of_units_survives_a_double(units in -(1_i64 << 29)..=1 << 29, unit in prop::sample::select(&Unit::ALL[..])) {
        let length = Length::from_units(units);
        let value = f64::from(i32::try_from(units).unwrap()) / f64::from(i32::try_from(unit.length().units()).unwrap());
        let parsed = Length::from_double(value, unit).unwrap();
        prop_assert_eq!((parsed.length, parsed.exact), (length, true));
    }

    #[test]
    fn more_than_a_thousandth_of_a_unit_is_not_exact(
        units in -(1_i32 << 29) + 1..1 << 29,
        off in prop_oneof![-0.49..-0.00101, 0.00101..0.49],
    ) {
        let value = (f64::from(units) + off) / 40_640.0;
        let parsed = Length::from_double(value, Unit::Inch).unwrap();
        prop_assert_eq!((parsed.length.units(), parsed.exact), (units.into(), false));
    }

    #[test]
    fn less_than_a_thousandth_of_a_unit_is_noise(units in -(1_i32 << 29) + 1..1 << 29, off in -0.000_99..0.000_99) {
        let value = (f64::from(units) + off) / 40_640.0;
        let parsed = Length::from_double(value, Unit::Inch).unwrap();
        prop_assert_eq!((parsed.length.units(), parsed.exact), (units.into(), true));
    }

    #[test]
    fn no_double_stops_reading(bits: u64, unit in prop::sample::select(&Unit::ALL[..])) {
        let value = f64::from_bits(bits);
        match Length::from_double(value, unit) {
            Ok(parsed) => prop_assert!(parsed.length.abs() <= Length::LIMIT),
            Err(error) => prop_assert!(!value.is_finite() || value.abs() > 335.0, "{}", error),
        }
    }
}

#[test]
fn what_is_not_finite_or_out_of_range_is_refused() {
    let fault = |value| Length::from_double(value, Unit::Inch).unwrap_err().fault;
    for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        assert_eq!(fault(value), LengthFault::NotFinite);
    }
    let limit = 536_870_912.0 / 1_600.0;
    for value in [limit, -limit] {
        assert_eq!(
            Length::from_double(value, Unit::Millimetre).unwrap().length.abs(),
            Length::LIMIT
        );
        let past = value + value.signum() / 1_600.0;
        assert_eq!(
            Length::from_double(past, Unit::Millimetre).unwrap_err().fault,
            LengthFault::OutOfRange
        );
    }
    for value in [13_211.0, -13_211.0, f64::MAX, f64::MIN] {
        assert_eq!(fault(value), LengthFault::OutOfRange);
    }
}

#[test]
fn ties_round_away_from_zero() {
    // 1/3200 mm is half a unit; as a double it is off by less than noise on either side, 0.5 mm / 1600 is not.
    let half = 0.5 / 1600.0;
    for (value, units) in [(half, 1), (-half, -1), (half * 3.0, 2), (-half * 3.0, -2)] {
        let parsed = Length::from_double(value, Unit::Millimetre).unwrap();
        assert_eq!((parsed.length.units(), parsed.exact), (units, false));
    }
}
