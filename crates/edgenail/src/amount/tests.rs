//! Amounts are exact in text and JSON, and a rate is rounded half up once.

use super::Amount;
use crate::decimal::DecimalFault;
use proptest::prelude::*;

fn amount(text: &str) -> Amount {
    Amount::parse(text).unwrap()
}

fn any_amount() -> impl Strategy<Value = Amount> {
    let limit = Amount::LIMIT.ten_thousandths();
    prop_oneof![-limit..=limit, -100_000_i64..=100_000].prop_map(Amount::from_ten_thousandths)
}

proptest! {
    #[test]
    fn printing_is_read_back(value in any_amount()) {
        prop_assert_eq!(amount(&value.to_string()), value);
        prop_assert_eq!(amount(&format!("{value:.4}")), value);
        prop_assert_eq!(amount(&format!("{value:.9}")), value);
    }

    #[test]
    fn json_is_read_back(value in any_amount()) {
        prop_assert_eq!(amount(&serde_json::to_string(&value).unwrap()), value);
    }

    #[test]
    fn a_precision_rounds_half_up(value in any_amount(), places in 0_usize..=4) {
        let step = 10_i64.pow(u32::try_from(4 - places).unwrap());
        let shown = amount(&format!("{value:.places$}")).ten_thousandths();
        prop_assert_eq!(shown % step, 0);
        let off = 2 * (shown - value.ten_thousandths());
        prop_assert!(-step < off && off <= step);
    }

    #[test]
    fn a_rate_is_rounded_half_up(rate in -1_000_000_i64..=1_000_000, n in -1_000_i64..=1_000, d in 1_i64..=1_000) {
        let cost = Amount::from_ten_thousandths(rate).scaled(n.into(), d.into()).unwrap().ten_thousandths();
        let off = 2 * (cost * d - rate * n);
        prop_assert!(-d < off && off <= d);
    }

    #[test]
    fn arithmetic_is_that_of_whole_numbers(a in -1_000_000_i64..=1_000_000, b in -1_000_000_i64..=1_000_000) {
        let (x, y) = (Amount::from_ten_thousandths(a), Amount::from_ten_thousandths(b));
        prop_assert_eq!((x + y).ten_thousandths(), a + b);
        prop_assert_eq!((x - y).ten_thousandths(), a - b);
        prop_assert_eq!((x * b).ten_thousandths(), a * b);
        prop_assert_eq!(x.times(b), Some(x * b));
        prop_assert_eq!(x.checked_add(y), Some(x + y));
        prop_assert_eq!(x.checked_sub(y), Some(x - y));
        prop_assert_eq!(-x + x, Amount::ZERO);
        prop_assert_eq!([x, y].into_iter().sum::<Amount>(), x + y);
        let mut z = x;
        z += y;
        z -= x;
        prop_assert_eq!(z, y);
        prop_assert_eq!(x < y, a < b);
    }

    #[test]
    fn no_number_stops_printing_or_scaling(count: i64, places in 0_usize..=20, n: i128, d: i128) {
        let value = Amount::from_ten_thousandths(count);
        let text = format!("{value}{value:.places$}");
        prop_assert!(!text.is_empty());
        let _ = value.scaled(n, d);
        let _ = serde_json::to_string(&value);
    }
}

#[test]
fn what_does_not_fit_is_nothing() {
    let most = Amount::from_ten_thousandths(i64::MAX);
    assert_eq!(most.times(2), None);
    assert_eq!(most.checked_add(most), None);
    assert_eq!((-most).checked_sub(most), None);
    assert_eq!(most.scaled(2, 1), None);
    assert_eq!(most.scaled(i128::MAX, 1), None);
    assert_eq!(Amount::whole(1).scaled(1, 0), None);
    assert!(serde_json::to_string(&most).is_err());
}

#[test]
fn text_that_is_no_amount_is_refused() {
    let fault = |text: &str| Amount::parse(text).unwrap_err().fault;
    assert_eq!(fault("0.00001"), DecimalFault::TooFine);
    assert_eq!(fault("12.34567"), DecimalFault::TooFine);
    assert_eq!(fault("100000000000"), DecimalFault::OutOfRange);
    assert_eq!(fault("-100000000000"), DecimalFault::OutOfRange);
    assert_eq!(fault("12,50"), DecimalFault::NotANumber);
    assert_eq!(fault("$12"), DecimalFault::NotANumber);
    assert_eq!(amount("99999999999.9999"), Amount::LIMIT);
    assert_eq!(amount("1.50000"), Amount::from_ten_thousandths(15_000));
}

#[test]
fn money_prints_plainly_or_to_the_cent() {
    assert_eq!(amount("12.5").to_string(), "12.5");
    assert_eq!(amount("100").to_string(), "100");
    assert_eq!(amount("-0.05").to_string(), "-0.05");
    assert_eq!(Amount::ZERO.to_string(), "0");
    assert_eq!(format!("{:.2}", amount("12.5")), "12.50");
    assert_eq!(format!("{:.2}", amount("0.005")), "0.01");
    assert_eq!(format!("{:.2}", amount("-0.005")), "0.00");
    assert_eq!(format!("{:.0}", amount("2.5")), "3");
}
