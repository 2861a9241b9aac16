use super::*;
use crate::decimal::Decimal;
use crate::house::{Coating, Nail, NailTool};
use crate::length::{Length, Unit};

fn common(shank: &str, length: &str) -> Nail {
    Nail {
        name: "common".to_owned(),
        shank: Decimal::parse(shank).unwrap(),
        head: Decimal::parse("0.28").unwrap(),
        length: Length::parse_exact(length, Unit::Inch).unwrap(),
        coating: Coating::Bright,
        tool: NailTool::Hand,
        per_box: 100,
        price: crate::amount::Amount::default(),
    }
}

/// Nails a pound of common nails, as trade lists give them (sizes.com nail tables and US Army course EN0069, as read
/// in secondary copies): 8d 106, 10d 74, 16d 46. Lists differ among themselves by some percent; ours stays within 11 %.
#[test]
fn common_nails_weigh_what_trade_lists_say() {
    for (shank, length, per_pound) in [
        ("0.131", "2 1/2", 106),
        ("0.148", "3", 74),
        ("0.162", "3 1/2", 46),
    ] {
        let weight = nail_micropounds(&common(shank, length));
        let ours = 1_000_000 / weight;
        assert!(
            (ours - per_pound).abs() * 100 <= 11 * per_pound,
            "{shank}: {ours} a pound, listed {per_pound}"
        );
    }
}
