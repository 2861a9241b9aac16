use super::*;
use crate::decimal::Decimal;
use crate::house::{Coating, Nail, NailTool};
use crate::length::{Length, Unit};
use crate::plan_json;

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

/// Nails a pound, as trade lists give them (sizes.com nail tables and US Army course EN0069, as read
/// in secondary copies): common 8d 106, 10d 74, 16d 46; box 8d 145, 10d 94. Lists differ among themselves by some percent; ours stays within 11 %.
#[test]
fn nails_weigh_what_trade_lists_say() {
    for (shank, length, per_pound) in [
        ("0.131", "2 1/2", 106),
        ("0.148", "3", 74),
        ("0.162", "3 1/2", 46),
        ("0.113", "2 1/2", 145),
        ("0.128", "3", 94),
    ] {
        let weight = nail_micropounds(&common(shank, length));
        let ours = 1_000_000 / weight;
        assert!(
            (ours - per_pound).abs() * 100 <= 11 * per_pound,
            "{shank}: {ours} a pound, listed {per_pound}"
        );
    }
}

/// A wall of one sheet, or a house of these walls, planned with a stock of our own.
fn plan_of(walls: &str, practice: &str) -> crate::Plan {
    let house = format!(
        r#"{{"name": "h", "walls": [{walls}], "practice": {{{practice}}}, "stock": {{
        "sheets": [{{"name": "4x8", "width": "47 7/8", "length": "95 7/8", "category": "7/16", "price": "16"}}],
        "nails": [{{"name": "8d", "shank": "0.131", "head": "0.281", "length": "2 1/2", "per_box": 2500, "price": "52"}}],
        "sticks": [{{"name": "2x4", "thickness": "1 1/2", "depth": "3 1/2", "length": "8'", "price": "4"}}]}}}}"#
    );
    plan_json(&house).expect("the house has a plan")
}

fn wall(name: &str, length: &str, stack: &str) -> String {
    format!(
        r#"{{"name": "{name}", "length": "{length}", "sections": [{{"bottom": {{"bears": "floor"}}, "stack": [{stack}]}}]}}"#
    )
}

fn storey(name: &str, openings: &str) -> String {
    format!(
        r#"{{"kind": "storey", "name": "{name}", "spacing": "16", "openings": [{openings}],
        "stud": {{"width": "1 1/2", "depth": "3 1/2", "length": "91 1/2"}}}}"#
    )
}

/// The default rates are invented so that a plain 4 × 8 ft sheet takes about 10 person-minutes on the deck.
#[test]
fn a_plain_sheet_takes_about_ten_minutes_on_the_deck() {
    let plan = plan_of(&wall("w", "4'", &storey("first", "")), "");
    let labour = plan
        .takeoff()
        .lines
        .iter()
        .filter(|line| line.scope == "house" && line.what == TakeoffWhat::Labour);
    let kinds: Vec<_> = labour
        .clone()
        .map(|line| (line.part.unwrap(), line.place))
        .collect();
    assert!(kinds.contains(&(Part::Set8, Some(Place::Deck))), "{kinds:?}");
    let line = |part: Part| {
        labour
            .clone()
            .find(|line| line.part == Some(part))
            .map_or(0, |line| line.minutes.ten_thousandths())
    };
    let minutes = line(Part::Set8) + line(Part::GunNails);
    assert!((90_000..=110_000).contains(&minutes), "{minutes}");
}

/// Factors 1.3 standing, 1.5 from a ladder or in an upper storey, 2 above 10 ft on the 6 minutes of a 4 × 8 ft sheet
/// (invented). The factor is on setting alone.
#[test]
fn the_place_of_a_piece_adds_to_setting_it() {
    let single = plan_of(
        &wall("w", "8'", &storey("first", "")),
        r#""sheathed": "standing""#,
    );
    let extra = |part: Part| {
        let lines = &single.takeoff().lines;
        let own = lines
            .iter()
            .filter(|line| line.scope == "house" && line.part == Some(part));
        own.fold((0, 0), |(pieces, minutes), line| {
            (
                pieces + line.used.in_units_of(0).unwrap(),
                minutes + line.minutes.ten_thousandths(),
            )
        })
    };
    assert_eq!(extra(Part::Standing), (2, 2 * 18_000));
    assert_eq!(extra(Part::Set8), (2, 2 * 60_000));
    let rates = &single.house().rates;
    for (place, added) in [
        (Place::Standing, 18_000),
        (Place::Ladder, 30_000),
        (Place::UpperStorey, 30_000),
        (Place::High, 60_000),
    ] {
        let (_, factor) = place.factor(rates).unwrap();
        assert_eq!(
            Place::adds(factor, rates.set_8).ten_thousandths(),
            added,
            "{place:?}"
        );
    }
}

/// Two storeys of 96 in. with a band of 12 5/8 in. between: what stays within a storey is set on its deck, what crosses
/// the band waits until the wall stands and is reached from a ladder above 108 in.; a wall sheathed standing is high
/// up above 120 in. (the default factors' own limits).
#[test]
fn a_piece_is_set_from_where_it_is_reached() {
    let band = r#"{"kind": "floor_band", "name": "band", "layers": [{"kind": "members", "direction": "across",
        "member": "truss", "width": "2 1/2", "depth": "11 7/8", "spacing": "16"}, {"kind": "subfloor", "thickness": "3/4"}]}"#;
    let house = |sheathed: &str| {
        let stack = format!("{}, {band}, {}", storey("first", ""), storey("second", ""));
        let walls = wall("w", "8'", &stack);
        let text =
            format!(r#"{{"name": "h", "walls": [{walls}], "practice": {{"sheathed": "{sheathed}"}}}}"#);
        crate::read_house(text.as_bytes()).expect("the house is read").0
    };
    let place = |sheathed: &str, from: i64, to: i64| {
        let house = house(sheathed);
        let frame = crate::frame::frame_wall(&house, 0).expect("the wall is framed");
        let (right, from, to) = (
            Length::inches(48),
            Length::sixteenths(from),
            Length::sixteenths(to),
        );
        let blank = crate::geometry::Rect::new(Length::ZERO, from, right, to);
        Place::of(&frame, &house.walls[0].practice, &house.rates, &blank)
    };
    let (first, band) = (96 * 16, 96 * 16 + 202);
    assert_eq!(place("deck", 0, first), Place::Deck);
    assert_eq!(place("deck", band, band + first), Place::UpperStorey);
    assert_eq!(place("deck", first - 24, band + 12), Place::Ladder);
    assert_eq!(place("deck", first - 24, first + 24), Place::Standing);
    assert_eq!(place("standing", 0, first), Place::Standing);
    assert_eq!(place("standing", band, band + first), Place::High);
    assert_eq!(place("standing", band, band + 16 * 20), Place::UpperStorey);
}

/// Whatever is counted for walls or for storeys is what is counted for the house.
#[test]
fn walls_and_storeys_add_up_to_the_house() {
    let plan = plan_json(crate::demo::HOUSE_JSON).unwrap();
    let sum = |scope: &str| {
        let mut sums: std::collections::BTreeMap<(TakeoffWhat, String), (i64, i64, i64, i64)> =
            std::collections::BTreeMap::new();
        for line in plan
            .takeoff()
            .lines
            .iter()
            .filter(|line| line.scope.starts_with(scope))
        {
            let ordered = [
                TakeoffWhat::Sheets,
                TakeoffWhat::Sticks,
                TakeoffWhat::BlocksFromScrap,
                TakeoffWhat::AreaMethod,
            ];
            if ordered.contains(&line.what) {
                continue;
            }
            let sum = sums.entry((line.what, line.item.clone())).or_default();
            sum.0 += line.used.in_units_of(0).unwrap();
            sum.1 += line.sheets;
            sum.2 += line.minutes.ten_thousandths();
            sum.3 += line.charged.ten_thousandths();
        }
        sums
    };
    let house = sum("house");
    assert!(house.len() > 8, "{house:?}");
    assert_eq!(house, sum("wall: "));
    assert_eq!(house, sum("storey: "));
    let ordered: i64 = plan
        .takeoff()
        .lines
        .iter()
        .filter(|line| line.what == TakeoffWhat::Sheets)
        .map(|line| line.sheets)
        .sum();
    let counted: i64 = house.values().map(|(_, sheets, _, _)| sheets).sum();
    assert_eq!(ordered, counted);
    let serves = |serves: Serves| {
        plan.takeoff()
            .lines
            .iter()
            .any(|line| line.what == TakeoffWhat::Pieces && line.serves == serves)
    };
    assert!(serves(Serves::Shear) || serves(Serves::Braced));
    assert!(serves(Serves::Rest));
}

/// Openings are not deducted unless practice says so, and then only the larger ones: a door of 3 × 7 ft is 21 sq ft of
/// the 128 sq ft of a wall of 16 × 8 ft (arithmetic).
#[test]
fn the_area_method_deducts_what_practice_says() {
    let door = r#"{"name": "d", "kind": "door", "left": "6'", "sill": "0", "width": "36", "height": "84"}"#;
    let feet = |practice: &str| {
        let plan = plan_of(&wall("w", "16'", &storey("first", door)), practice);
        let area = plan
            .takeoff()
            .lines
            .iter()
            .find(|line| line.what == TakeoffWhat::AreaMethod)
            .unwrap()
            .clone();
        (area.square_feet, area.sheets)
    };
    assert_eq!(feet(""), (Decimal::whole(128), 4));
    assert_eq!(feet(r#""area_method_deducts": true"#), (Decimal::whole(107), 4));
    assert_eq!(
        feet(r#""area_method_deducts": true, "area_method_opening_least": 21"#),
        (Decimal::whole(128), 4)
    );
    assert_eq!(
        feet(r#""area_method_deducts": true, "area_method_opening_least": "20.9""#),
        (Decimal::whole(107), 4)
    );
}

/// 5 % of 62 nails are 3.1, so 4 (arithmetic); 20 % of loose common nails (US Army course EN0069, as quoted).
#[test]
fn loss_is_rounded_up_to_whole_nails() {
    assert_eq!(lines::raised(62, Decimal::whole(5)), 66);
    assert_eq!(lines::raised(62, Decimal::whole(20)), 75);
    assert_eq!(lines::raised(100, Decimal::whole(5)), 105);
    assert_eq!(lines::raised(7, Decimal::ZERO), 7);
}

/// What hangs once the wall stands is not priced as if it were set on the deck: of generated houses, and of a piece that
/// laps past a neighbour (the factor of 1.3 for a standing wall is invented).
#[test]
fn a_piece_is_priced_where_it_is_set() {
    use crate::layout::{Turn, When};
    let mut lapping = 0;
    for seed in 0..60 {
        let (text, mix) = crate::generate::house_json(seed);
        let plan = plan_json(&text).expect("a generated house has a plan");
        let house = plan.house();
        for (planned, wall) in plan.walls().iter().zip(&house.walls) {
            let frame = &planned.frame;
            for piece in &planned.built.layout.pieces {
                let blank = piece.blank();
                let when = Turn::of(frame, &wall.practice, &blank).when;
                let place = Place::of(frame, &wall.practice, &house.rates, &blank);
                assert!(
                    when == When::Deck || place != Place::Deck,
                    "house {seed}: {} hangs {when:?} and is priced {place:?}",
                    piece.mark
                );
                let ends = frame.sections.first().zip(frame.sections.last());
                let past = ends.is_some_and(|(first, last)| blank.x0 < first.x.lo || last.x.hi < blank.x1);
                lapping += u32::from(mix.butting_corner && past && place == Place::Standing);
            }
        }
    }
    assert!(lapping >= 10, "{lapping} pieces lap past a neighbour");
}
