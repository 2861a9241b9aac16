//! What a schedule's candidate costs, by own arithmetic on the stock and the rates.

use super::inch;
use crate::Amount;
use crate::capacity::*;
use crate::decimal::Decimal;
use crate::length::Length;

/// 7/16 sheathing 4 x 10 ft at 40, on a wall 9 ft high: a foot takes 9 of a sheet's 40 sq. ft. Nails at 6 in. round a panel
/// of 4 ft and 9 ft, 2 x 18 and 2 x 8; at 12 in. on its one stud between, 8; so 60 for 4 ft. A box of 1,000 costs 50; each
/// takes 0.2 minutes by gun, 0.4 by hand, at 0.50 a minute.
#[test]
fn a_foot_of_wall_costs_its_sheet_its_nails_and_their_driving() {
    let of = |tool: &str| {
        let text = format!(
            r#"{{"walls": [{{"name": "a", "length": "8 ft"}}], "stock": {{
                "sheets": [{{"name": "s", "width": "48", "length": "120", "category": "7/16", "grade": "sheathing", "price": "40"}}],
                "nails": [{{"name": "n", "shank": "0.131", "head": "0.281", "length": "2 1/2", "coating": "bright", "tool": "{tool}",
                    "per_box": 1000, "price": "50"}}]}}}}"#
        );
        let (house, _) = crate::read_house(text.as_bytes()).unwrap();
        let mut rates = house.rates;
        let tenths = |tenths: i64| Amount::from_ten_thousandths(1000 * tenths);
        (rates.nail_gun, rates.nail_hand, rates.labour) = (tenths(2), tenths(4), tenths(5));
        let query = ScheduleQuery {
            stock: house.stock,
            rates,
            demand: Demand {
                unit_shear: 100.0,
                height: Length::feet(9),
            },
            edition: Edition::Sdpws2015,
            load: LoadKind::Seismic,
            method: Method::Asd,
            high_seismic: false,
            framing: Framing {
                field_spacing: Length::inches(12),
                stud_spacing: Length::inches(24),
                across_studs: false,
                specific_gravity: Decimal::hundredths(50),
                seam_member: inch("2 1/2"),
                wet_framing: false,
            },
            accept_unverified: false,
        };
        let all = schedule(&query).unwrap();
        let six = all
            .iter()
            .find(|one| one.assembly.edge_spacing == Length::inches(6))
            .unwrap();
        six.cost
    };
    // 40 x 9 / 40 = 9; 60 / 4 x 50 / 1,000 = 0.75; 60 / 4 x 0.2 x 0.5 = 1.5, by hand twice as much.
    assert_eq!(of("gun").to_string(), "11.25");
    assert_eq!(of("hand").to_string(), "12.75");
}

#[test]
fn a_demand_that_no_wall_has_is_refused() {
    let (house, _) = crate::read_house(crate::demo::HOUSE_JSON.as_bytes()).unwrap();
    let faults = |unit_shear: f64, height: Length| -> Vec<String> {
        let query = ScheduleQuery {
            stock: house.stock.clone(),
            rates: house.rates,
            demand: Demand { unit_shear, height },
            edition: Edition::Sdpws2015,
            load: LoadKind::Wind,
            method: Method::Asd,
            high_seismic: false,
            framing: Framing {
                field_spacing: Length::inches(6),
                stud_spacing: Length::inches(16),
                across_studs: false,
                specific_gravity: Decimal::hundredths(50),
                seam_member: inch("2 1/2"),
                wet_framing: false,
            },
            accept_unverified: true,
        };
        let issues = schedule(&query).err().unwrap_or_default();
        issues.into_iter().map(|issue| issue.path).collect()
    };
    let (low, high) = (Length::ZERO, Length::feet(100) + Length::from_units(1));
    assert_eq!(faults(0.0, Length::feet(8)), Vec::<String>::new());
    assert_eq!(faults(0.0, Length::feet(100)), Vec::<String>::new());
    for shear in [-1.0, f64::NAN, f64::INFINITY] {
        assert_eq!(faults(shear, Length::feet(8)), ["/demand/unit_shear"]);
    }
    assert_eq!(faults(1.0, low), ["/demand/height"]);
    assert_eq!(faults(1.0, high), ["/demand/height"]);
}
