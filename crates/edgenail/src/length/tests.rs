//! Sums of the trade come out exactly.

use super::{Length, Unit};
use proptest::prelude::*;

fn length(text: &str) -> Length {
    Length::parse_exact(text, Unit::Inch).unwrap()
}

/// Precut studs with one bottom and two top plates of 1 1/2 in.: common practice, no source.
#[test]
fn precut_studs_and_three_plates_make_the_usual_walls() {
    for (stud, wall) in [
        ("92 5/8", "97 1/8"),
        ("104 5/8", "109 1/8"),
        ("116 5/8", "121 1/8"),
    ] {
        assert_eq!(length(stud) + length("1 1/2") * 3, length(wall));
    }
}

/// 19.2 in. spacing puts five spaces on an 8 ft sheet: common practice, no source.
#[test]
fn five_spaces_of_19_2_are_a_sheet() {
    assert_eq!(length("19.2") * 5, Length::feet(8));
    assert_eq!(Length::feet(8).spaces(length("19.2")), 5);
}

/// International inch of 25.4 mm: NIST SP 811, appendix B; from memory, not checked against print.
#[test]
fn units_agree_with_the_international_inch() {
    assert_eq!(Length::inches(10), Length::mm(254));
    assert_eq!(Length::inches(10).units(), 10 * Length::PER_INCH);
    assert_eq!(Length::feet(1), Length::sixteenths(192));
    for (unit, tenths_of_mm) in Unit::ALL.iter().zip([254, 3048, 10, 100, 10_000]) {
        assert_eq!(unit.length() * 10, Length::mm(tenths_of_mm));
    }
}

#[test]
fn a_length_is_a_whole_number_in_json() {
    let text = serde_json::to_string(&Length::inches(-1)).unwrap();
    assert_eq!(text, "-40640");
    assert_eq!(serde_json::from_str::<Length>(&text).unwrap(), Length::inches(-1));
}

#[test]
fn the_limit_keeps_cross_products_within_64_bits() {
    let difference = (Length::LIMIT + Length::LIMIT).units();
    assert!(
        difference
            .checked_mul(difference)
            .and_then(|product| product.checked_mul(2))
            .is_some()
    );
}

proptest! {
    #[test]
    fn spaces_are_the_fewest_that_keep_the_spacing(total in 0_i64..=1 << 29, spacing in 1_i64..=1 << 21) {
        let (total, spacing) = (Length::from_units(total), Length::from_units(spacing));
        let count = total.spaces(spacing);
        prop_assert!(spacing * count >= total);
        prop_assert!(spacing * (count - 1) < total);
    }

    #[test]
    fn two_halves_miss_at_most_one_unit(units in -(1_i64 << 29)..=1 << 29) {
        let length = Length::from_units(units);
        let rest = length - length.half() * 2;
        prop_assert!(rest == Length::ZERO || rest == Length::from_units(1));
    }

    #[test]
    fn arithmetic_is_that_of_whole_numbers(a in -(1_i64 << 29)..=1 << 29, b in -(1_i64 << 29)..=1 << 29, count in -100_i64..=100) {
        let (x, y) = (Length::from_units(a), Length::from_units(b));
        let mut z = x;
        z += y;
        z -= x;
        prop_assert_eq!(z, y);
        prop_assert_eq!((x + y).units(), a + b);
        prop_assert_eq!((x - y).units(), a - b);
        prop_assert_eq!((x * count).units(), a * count);
        prop_assert_eq!(-x + x, Length::ZERO);
        prop_assert_eq!(x.abs(), x.max(-x));
        prop_assert_eq!([x, y].into_iter().sum::<Length>(), x + y);
        prop_assert_eq!(x < y, a < b);
    }
}
