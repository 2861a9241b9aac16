//! Decimals keep every digit, through text, doubles and JSON.

use super::{Decimal, DecimalFault, divide_half_up};
use proptest::prelude::*;

const MOST: i64 = 999_999_999_999_999;

fn any_decimal() -> impl Strategy<Value = Decimal> {
    (-MOST..=MOST, 0_u32..=15).prop_map(|(mantissa, scale)| Decimal::new(mantissa, scale).unwrap())
}

proptest! {
    #[test]
    fn printing_is_read_back(number in any_decimal()) {
        prop_assert_eq!(Decimal::parse(&number.to_string()).unwrap(), number);
    }

    #[test]
    fn json_is_read_back(number in any_decimal()) {
        prop_assert_eq!(Decimal::parse(&serde_json::to_string(&number).unwrap()).unwrap(), number);
    }

    #[test]
    fn the_double_is_the_nearest(number in any_decimal()) {
        // The standard library rounds decimal text correctly.
        let nearest: f64 = number.to_string().parse().unwrap();
        prop_assert_eq!(number.as_f64().to_bits(), nearest.to_bits());
    }

    #[test]
    fn order_is_that_of_the_values(a in -100_000_i64..=100_000, s in 0_u32..=6, b in -100_000_i64..=100_000, t in 0_u32..=6) {
        let (x, y) = (Decimal::new(a, s).unwrap(), Decimal::new(b, t).unwrap());
        let whole = |mantissa: i64, scale: u32| mantissa * 10_i64.pow(6 - scale);
        prop_assert_eq!(x.cmp(&y), whole(a, s).cmp(&whole(b, t)));
        prop_assert_eq!(x == y, whole(a, s) == whole(b, t));
    }

    #[test]
    fn an_exponent_moves_the_point(mantissa in -999_i64..=999, exponent in -12_i32..=9) {
        let text = format!("{mantissa}e{exponent}");
        let moved = if exponent < 0 {
            Decimal::new(mantissa, exponent.unsigned_abs())
        } else {
            Decimal::new(mantissa * 10_i64.pow(exponent.unsigned_abs()), 0)
        };
        prop_assert_eq!(Decimal::parse(&text).unwrap(), moved.unwrap());
    }

    #[test]
    fn no_text_stops_reading(text in any::<String>()) {
        let _ = Decimal::parse(&text);
    }

    #[test]
    fn nothing_like_a_number_stops_reading(text in "[-+]?[0-9]{0,20}[.]?[0-9]{0,20}([eE][-+]?[0-9]{0,12})?") {
        if let Ok(number) = Decimal::parse(&text) {
            let value: f64 = text.parse().unwrap();
            prop_assert!((number.as_f64() - value).abs() <= value.abs() * 1e-15);
        }
    }

    #[test]
    fn division_is_to_the_nearest_with_halves_up(n in -1_000_000_i64..=1_000_000, d in prop_oneof![-1000_i64..=-1, 1_i64..=1000]) {
        let q = divide_half_up(n.into(), d.into()).unwrap();
        // q − 1/2 ≤ n/d < q + 1/2, times 2 d².
        let (n, d) = (i128::from(n), i128::from(d));
        prop_assert!((2 * q - 1) * d * d <= 2 * n * d && 2 * n * d < (2 * q + 1) * d * d);
    }

    #[test]
    fn scaling_never_stops(mantissa: i64, scale in 0_u32..40, n: i128, d: i128, places in 0_u32..60) {
        if let Some(number) = Decimal::new(mantissa, scale) {
            let _ = number.scaled(n, d, places);
            let _ = number.in_units_of(places);
        }
    }
}

#[test]
fn what_is_no_exact_decimal_is_refused() {
    use DecimalFault::{NotANumber, TooManyDigits};
    let cases = [
        ("", NotANumber),
        ("-", NotANumber),
        (".", NotANumber),
        ("5.", NotANumber),
        ("0,5", NotANumber),
        ("1/2", NotANumber),
        (" 1", NotANumber),
        ("--1", NotANumber),
        ("1e", NotANumber),
        ("1e1.5", NotANumber),
        ("1.2.3", NotANumber),
        ("NaN", NotANumber),
        ("٣", NotANumber),
        ("1234567890123456", TooManyDigits),
        ("1000000000000000", TooManyDigits),
        ("0.1234567890123456", TooManyDigits),
        ("1e15", TooManyDigits),
        ("1e-16", TooManyDigits),
        ("1e99999999999999999999", TooManyDigits),
        ("1e-99999999999999999999", TooManyDigits),
    ];
    for (text, fault) in cases {
        assert_eq!(
            Decimal::parse(text).map_err(|error| error.fault),
            Err(fault),
            "{text}"
        );
    }
}

#[test]
fn zeros_at_the_ends_say_nothing() {
    let half = Decimal::hundredths(50);
    for text in [
        "0.5",
        ".5",
        "0.50",
        "00.500",
        "+0.5",
        "0.50000000000000000000000",
        "5e-1",
        "50E-2",
        "0.005e+2",
    ] {
        assert_eq!(Decimal::parse(text).unwrap(), half, "{text}");
    }
    for text in ["0", "-0", "0.000", "0e999999999999"] {
        let zero = Decimal::parse(text).unwrap();
        assert_eq!((zero, zero.to_string().as_str()), (Decimal::ZERO, "0"), "{text}");
    }
    assert_eq!(half, Decimal::tenths(5));
    assert_eq!(Decimal::thousandths(1000), Decimal::ONE);
}

#[test]
fn a_whole_number_is_whole_in_json() {
    let json = |number: Decimal| serde_json::to_string(&number).unwrap();
    assert_eq!(json(Decimal::whole(5)), "5");
    assert_eq!(json(Decimal::hundredths(-42)), "-0.42");
    assert_eq!(json(Decimal::new(MOST, 4).unwrap()), "99999999999.9999");
}

#[test]
fn a_quotient_by_zero_is_nothing() {
    assert_eq!(Decimal::ONE.scaled(1, 0, 2), None);
    assert_eq!(divide_half_up(1, 0), None);
}
