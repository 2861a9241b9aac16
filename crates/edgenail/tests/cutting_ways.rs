//! A plan is never worse than any of the ways of placing that are tried, each told slowly.

mod cut_ground;
#[path = "cut_ground/ways.rs"]
mod ways;

use cut_ground::{blank, inch, sheet};
use edgenail::cutting::{Blank, CutNode, CutPlan, CutRules, Drop, Part, check, cut_by, replay};
use edgenail::house::{Offcut, Sheet, Stock};
use edgenail::{Amount, Length};
use proptest::prelude::*;
use std::cmp::Reverse;
use ways::{Rank, Way, place};

/// What a plan is worth, read off its trees.
fn rank(plan: &CutPlan, stock: &Stock, kerf: Length) -> Rank {
    let new: Vec<u32> = (0_u32..)
        .zip(&stock.sheets)
        .map(|(kind, _)| plan.new_sheets(kind))
        .collect();
    let prices = new
        .iter()
        .zip(&stock.sheets)
        .map(|(count, sheet)| i64::from(*count) * sheet.price.ten_thousandths());
    let sheets: u32 = new.iter().sum();
    let (mut cuts, mut largest) = (0, 0);
    for cut in &plan.sheets {
        let mut open = vec![&cut.tree];
        while let Some(node) = open.pop() {
            if let CutNode::Split { first, second, .. } = node {
                cuts += 1;
                open.extend([&**first, &**second]);
            }
        }
        for part in replay(cut, &plan.blanks, kerf).unwrap_or_default() {
            if !matches!(part.part, Part::Blank { .. }) {
                largest = largest.max(i128::from(part.width.units()) * i128::from(part.length.units()));
            }
        }
    }
    (
        plan.uncut.len(),
        prices.sum(),
        sheets as usize,
        cuts,
        Reverse(largest),
    )
}

fn rules(kerf: Length) -> CutRules {
    CutRules {
        kerf,
        offcut_width_least: inch(16),
        offcut_length_least: inch(24),
        effort_most: 1_000_000,
    }
}

fn no_worse(stock: &Stock, kerf: Length, blanks: &[Blank]) -> Result<(), TestCaseError> {
    let plan = cut_by(stock, &rules(kerf), blanks);
    prop_assert_eq!(check(&plan, stock, kerf), Ok(()));
    let own = rank(&plan, stock, kerf);
    for way in Way::all() {
        let slow = place(stock, kerf, blanks, way);
        prop_assert!(own <= slow, "{own:?} is worse than {slow:?} by {way:?}");
    }
    Ok(())
}

prop_compose! {
    /// One to three kinds that may stand in for one another, of few sizes, so that areas and prices are often near.
    fn any_stock()(
        kinds in prop::collection::vec((2_i64..5, 3_i64..11, 1_i32..30, prop::option::weighted(0.2, 0_u32..4)), 1..4),
        offcuts in prop::collection::vec((0_usize..3, 8_i64..40, 8_i64..90), 0..2),
        turns in any::<bool>(),
    ) -> Stock {
        let kind = |(number, (width, length, price, on_hand)): (usize, &(i64, i64, i32, Option<u32>))| Sheet {
            name: number.to_string(),
            price: Amount::whole(*price),
            on_hand: *on_hand,
            may_turn: turns,
            ..sheet(inch(12 * width), inch(12 * length))
        };
        let offcut = |(kind, width, length): &(usize, i64, i64)| Offcut {
            sheet: (kind % kinds.len()).to_string(),
            width: inch(*width),
            length: inch(*length),
        };
        Stock {
            sheets: kinds.iter().enumerate().map(kind).collect(),
            nails: vec![],
            sticks: vec![],
            offcuts: offcuts.iter().map(offcut).collect(),
        }
    }
}

prop_compose! {
    fn any_job()(stock in any_stock(), sizes in prop::collection::vec((4_i64..48, 6_i64..100, 0_u32..3, 0_u32..6), 1..14)) -> (Stock, Vec<Blank>) {
        let kinds = u32::try_from(stock.sheets.len()).unwrap_or(1);
        let turns = stock.sheets[0].may_turn;
        let blanks = (0_u32..).zip(sizes).map(|(order, (width, length, kind, holed))| {
            let falls = holed == 0 && width > 20 && length > 30;
            let drop = Drop { width: inch(width - 8), length: inch(length - 12) };
            Blank {
                sheet: kind % kinds,
                may_turn: turns,
                drops: if falls { vec![drop] } else { vec![] },
                ..blank(order, width, length)
            }
        });
        let blanks = blanks.collect();
        (stock, blanks)
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn no_way_is_better((stock, blanks) in any_job(), kerf in prop_oneof![0_i64..4, 16_i64..64]) {
        no_worse(&stock, Length::sixteenths(kerf), &blanks)?;
    }
}
