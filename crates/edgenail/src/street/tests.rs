use super::*;
use crate::cutting::check;
use crate::demo;
use crate::plan_json;

/// Houses with an odd wall each, so that what is left of one serves another.
fn houses() -> Vec<Plan> {
    let house = |feet: u32| {
        let text =
            format!(r#"{{"name": "lot {feet}", "walls": [{{"name": "front", "length": "{feet} ft"}}]}}"#);
        plan_json(&text).unwrap()
    };
    [10, 14, 9, 13, 6].into_iter().map(house).collect()
}

#[test]
fn a_street_takes_no_more_than_its_houses() {
    let plans = houses();
    let plans: Vec<&Plan> = plans.iter().collect();
    let stock = &plans[0].house().stock;
    let kerf = plans[0].house().walls[0].practice.kerf;
    for effort in [0, 1_000_000] {
        let street = Street::of(&plans, effort).unwrap();
        assert_eq!(check(&street.cutting, stock, kerf), Ok(()));
        assert!(street.together <= street.alone);
        let delivered: u32 = street.deliveries.iter().map(|row| row.delivered).sum();
        let new: u32 = (0..3).map(|kind| street.cutting.new_sheets(kind)).sum();
        assert_eq!(delivered, new);
        let alone = plans
            .iter()
            .map(|plan| price(plan.cutting(), stock))
            .sum::<Amount>();
        assert_eq!(street.alone, alone);
        assert!(street.carried.iter().all(|carried| carried.from < carried.to));
        for row in &street.deliveries {
            let unit = stock.sheets[row.sheet as usize].unit_count;
            assert_eq!(row.units * unit + row.loose, row.delivered);
        }
    }
    // Ten feet and fourteen leave halves of sheets that others need: common arithmetic of 4 ft sheets.
    let street = Street::of(&plans, 1_000_000).unwrap();
    assert!(street.together < street.alone && !street.carried.is_empty());
    assert_eq!(street.table().len(), street.deliveries.len());
}

#[test]
fn every_piece_of_every_house_is_cut_once() {
    let plans = houses();
    let plans: Vec<&Plan> = plans.iter().collect();
    let street = Street::of(&plans, 100_000).unwrap();
    let mut pieces: Vec<(u32, u32, u32)> = street
        .cutting
        .blanks
        .iter()
        .map(|blank| {
            let (house, wall) = street.walls[blank.wall as usize];
            (house, wall, blank.piece)
        })
        .collect();
    pieces.sort_unstable();
    let mut wanted: Vec<(u32, u32, u32)> = (0..)
        .zip(&plans)
        .flat_map(|(house, plan)| {
            plan.cutting()
                .blanks
                .iter()
                .map(move |blank| (house, blank.wall, blank.piece))
        })
        .collect();
    wanted.sort_unstable();
    assert_eq!(pieces, wanted);
}

#[test]
fn one_stock_and_one_saw() {
    let demo = plan_json(demo::HOUSE_JSON).unwrap();
    let plans = houses();
    let error = Street::of(&[&plans[0], &demo], 0).unwrap_err();
    assert!(error.issues().iter().any(|issue| issue.path == "/1/stock/sheets"));
    assert!(Street::of(&[], 0).unwrap().deliveries.is_empty());
}
