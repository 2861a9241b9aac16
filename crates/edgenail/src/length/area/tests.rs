//! Areas are exact and print as square feet.

use super::Area;
use crate::length::{Length, Unit};
use crate::{Amount, Decimal};
use proptest::prelude::*;

#[test]
fn sheets_have_their_nominal_areas() {
    for (feet, square_feet) in [(8, 32), (9, 36), (10, 40), (12, 48)] {
        let sheet = Length::feet(4) * Length::feet(feet);
        assert_eq!(sheet, Area::SQUARE_FOOT * square_feet);
    }
    // One square foot is 0.09290304 m² exactly: NIST SP 811, appendix B; from memory, not checked against print.
    let square_metre = Unit::Metre.length() * Unit::Metre.length();
    assert_eq!(Area::SQUARE_FOOT * 100_000_000, square_metre * 9_290_304);
}

#[test]
fn printing_rounds_half_up_to_a_hundredth() {
    assert_eq!((Area::SQUARE_INCH * 9).to_string(), "0.06 sq ft");
    assert_eq!((Area::SQUARE_FOOT * 5).to_string(), "5.00 sq ft");
    let tie = Area::from_square_units(Area::SQUARE_FOOT.square_units() / 200);
    assert_eq!(tie.to_string(), "0.01 sq ft");
    assert_eq!((-tie).to_string(), "0.00 sq ft");
    assert_eq!((-tie * 3).to_string(), "-0.01 sq ft");
    assert_eq!((tie - Area::from_square_units(1)).to_string(), "0.00 sq ft");
    assert_eq!(
        (Area::SQUARE_FOOT - Area::from_square_units(1)).to_string(),
        "1.00 sq ft"
    );
}

#[test]
fn json_has_square_feet() {
    let json = |area: Area| serde_json::to_string(&area).unwrap();
    assert_eq!(json(Length::feet(4) * Length::feet(8)), "32");
    assert_eq!(json(Length::inches(16) * Length::inches(97)), "10.7778");
    assert!(serde_json::to_string(&Area::from_square_units(i128::MAX)).is_err());
}

#[test]
fn a_rate_per_square_foot_is_rounded_once() {
    let rate = Amount::parse("0.55").unwrap();
    let area = Length::inches(16) * Length::inches(97);
    let cost = rate.scaled(area.square_units(), Area::SQUARE_FOOT.square_units());
    assert_eq!(cost, Some(Amount::parse("5.9278").unwrap()));
}

proptest! {
    #[test]
    fn areas_add_like_strips(a in -(1_i64 << 29)..=1 << 29, b in -(1_i64 << 29)..=1 << 29, c in -(1_i64 << 29)..=1 << 29) {
        let (x, y, z) = (Length::from_units(a), Length::from_units(b), Length::from_units(c));
        prop_assert_eq!(x * z + y * z, (x + y) * z);
        prop_assert_eq!(x * y - z * y, (x - z) * y);
        prop_assert_eq!([x * y, x * z].into_iter().sum::<Area>(), x * (y + z));
        let mut sum = x * y;
        sum += x * z;
        sum -= x * y;
        prop_assert_eq!(sum, z * x);
        prop_assert_eq!(-(x * y), -x * y);
    }

    #[test]
    fn printed_and_decimal_square_feet_agree(a in -(1_i64 << 29)..=1 << 29, b in 0_i64..=1 << 24) {
        let area = Length::from_units(a) * Length::from_units(b);
        let number = area.square_feet(2).unwrap();
        let text = area.to_string();
        prop_assert_eq!(Decimal::parse(text.strip_suffix(" sq ft").unwrap()).unwrap(), number);
        prop_assert!((number.as_f64() - area.as_square_feet()).abs() < 0.005_000_1);
    }

    #[test]
    fn no_area_stops_printing(units: i128) {
        prop_assert!(Area::from_square_units(units).to_string().ends_with(" sq ft"));
    }
}
