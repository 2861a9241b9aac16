mod lists;
mod published;
mod scales;

use super::policy::Policy;
use super::*;
use crate::amount::Amount;
use crate::decimal::Decimal;
use crate::house::{Offcut, Sheet, StrengthAxis};
use crate::length::Length;
use proptest::prelude::*;

const EIGHTH: Length = Length::sixteenths(2);

fn inches(count: i64) -> Length {
    Length::inches(count)
}

fn sheet(name: &str, width: Length, length: Length, price: i32) -> Sheet {
    Sheet {
        name: name.into(),
        width,
        length,
        category: "7/16".into(),
        grade: "sheathing".into(),
        span_rating: "24/16".into(),
        strength_axis: StrengthAxis::Length,
        plies: None,
        faces_alike: false,
        may_turn: false,
        gap: None,
        price: Amount::whole(price),
        on_hand: None,
        pounds_per_square_foot: Decimal::tenths(14),
        unit_count: 66,
    }
}

fn stock(sheets: Vec<Sheet>) -> Stock {
    Stock {
        sheets,
        nails: vec![],
        sticks: vec![],
        offcuts: vec![],
    }
}

fn four_by_eight() -> Stock {
    stock(vec![sheet("4x8", inches(48), inches(96), 16)])
}

fn rules(kerf: Length) -> CutRules {
    CutRules {
        kerf,
        offcut_width_least: inches(16),
        offcut_length_least: inches(24),
        effort_most: 1_000_000,
    }
}

fn blank(order: u32, width: Length, length: Length) -> Blank {
    Blank {
        wall: 0,
        piece: order,
        order,
        sheet: 0,
        width,
        length,
        may_turn: false,
        drops: vec![],
    }
}

fn many(count: u32, width: Length, length: Length) -> Vec<Blank> {
    (0..count).map(|order| blank(order, width, length)).collect()
}

fn plan(stock: &Stock, kerf: Length, blanks: &[Blank]) -> CutPlan {
    let plan = cut_by(stock, &rules(kerf), blanks);
    assert_eq!(check(&plan, stock, kerf), Ok(()));
    plan
}

const fn waste() -> CutNode {
    CutNode::Waste
}

/// Arithmetic of a kerf of 1/8 in.: 24 + 24 + 1/8 is more than 48; 23 7/8 + 1/8 + 23 7/8 is 47 7/8;
/// 23 7/8 + 1/8 + 23 15/16 is 47 15/16.
#[test]
fn halves_of_a_sheet() {
    let true_48 = four_by_eight();
    let spaced = stock(vec![sheet(
        "4x8 sized for spacing",
        Length::sixteenths(766),
        Length::sixteenths(1534),
        16,
    )]);
    let long = inches(95);
    let inner = Length::sixteenths(382);
    let at_end = Length::sixteenths(383);
    assert_eq!(plan(&true_48, EIGHTH, &many(2, inches(24), long)).sheets.len(), 2);
    assert_eq!(
        plan(&true_48, Length::ZERO, &many(2, inches(24), long))
            .sheets
            .len(),
        1
    );
    assert_eq!(plan(&true_48, EIGHTH, &many(2, inner, long)).sheets.len(), 1);
    assert_eq!(plan(&spaced, EIGHTH, &many(2, inner, long)).sheets.len(), 1);
    let mixed = [blank(0, inner, long), blank(1, at_end, long)];
    assert_eq!(plan(&spaced, EIGHTH, &mixed).sheets.len(), 2);
    assert_eq!(plan(&true_48, EIGHTH, &mixed).sheets.len(), 1);
    let hair = Length::from_units(1);
    assert_eq!(
        plan(&spaced, EIGHTH + hair, &many(2, inner, long)).sheets.len(),
        2
    );
}

#[test]
fn whole_sheets_take_no_cut() {
    let plan = plan(&four_by_eight(), EIGHTH, &many(7, inches(48), inches(96)));
    assert_eq!(plan.sheets.len(), 7);
    assert!(
        plan.sheets
            .iter()
            .all(|cut| matches!(cut.tree, CutNode::Piece { turned: false, .. }))
    );
    assert_eq!(
        (plan.bounds.area, plan.bounds.dual, plan.bounds.least),
        (7, 7, Amount::whole(112))
    );
    assert_eq!(plan.proof, Proof::Proven);
    assert!(plan.leftovers.is_empty());
}

/// Three strips of 14 in. and two kerfs are 42 1/4: the strips that tie a wall to its rim come three a sheet.
#[test]
fn tie_strips_come_three_a_sheet() {
    let plan = plan(&four_by_eight(), EIGHTH, &many(9, inches(14), inches(96)));
    assert_eq!(plan.sheets.len(), 3);
    assert_eq!(plan.proof, Proof::Proven);
}

#[test]
fn a_strength_axis_is_kept_unless_the_sheet_may_turn() {
    let stock = four_by_eight();
    let mut across = blank(0, inches(96), inches(48));
    let kept = plan(&stock, EIGHTH, std::slice::from_ref(&across));
    assert_eq!(
        kept.uncut,
        [Uncut {
            blank: 0,
            why: WhyUncut::TooLarge
        }]
    );
    across.may_turn = true;
    let turned = plan(&stock, EIGHTH, &[across]);
    assert_eq!(
        turned.sheets[0].tree,
        CutNode::Piece {
            blank: 0,
            turned: true
        }
    );
}

#[test]
fn off_cuts_serve_later_walls_and_are_kept_from_16_by_24() {
    let stock = four_by_eight();
    let mut below = blank(1, inches(48), inches(30));
    below.wall = 3;
    let one = plan(&stock, EIGHTH, &[blank(0, inches(48), inches(60)), below]);
    assert_eq!(one.sheets.len(), 1);
    let left = |width| {
        plan(&stock, EIGHTH, &[blank(0, width, inches(96))])
            .leftovers
            .len()
    };
    assert_eq!(left(inches(32) - EIGHTH), 1);
    assert_eq!(left(inches(32)), 0);
    let short = |width, length| rules(EIGHTH).keeps(width, length);
    assert!(short(inches(24), inches(16)) && !short(inches(23), inches(16)));
}

#[test]
fn off_cuts_on_hand_come_first() {
    let mut stock = four_by_eight();
    stock.offcuts = vec![Offcut {
        sheet: "4x8".into(),
        width: inches(48),
        length: inches(40),
    }];
    let both = plan(
        &stock,
        EIGHTH,
        &[blank(0, inches(48), inches(40)), blank(1, inches(48), inches(70))],
    );
    let sources: Vec<Source> = both.sheets.iter().map(|cut| cut.source).collect();
    assert_eq!(
        sources,
        [Source::Offcut { offcut: 0 }, Source::Sheet { sheet: 0 }]
    );
    assert_eq!(both.proof, Proof::Proven);
    let only = plan(&stock, EIGHTH, &[blank(0, inches(48), inches(40))]);
    assert_eq!(
        (only.new_sheets(0), only.bounds.area, only.bounds.dual),
        (0, 0, 0)
    );
}

#[test]
fn a_drop_serves_later_pieces_only() {
    let stock = four_by_eight();
    let drop = Drop {
        width: inches(30),
        length: inches(40),
    };
    let small = |order| blank(order, inches(30), inches(40));
    let holed = |order| Blank {
        drops: vec![drop],
        ..blank(order, inches(48), inches(96))
    };
    let after = plan(&stock, EIGHTH, &[holed(0), small(1)]);
    assert_eq!(after.sheets[1].source, Source::Drop { blank: 0, drop: 0 });
    assert_eq!((after.new_sheets(0), &after.proof), (1, &Proof::Proven));
    let before = plan(&stock, EIGHTH, &[small(0), holed(1)]);
    assert_eq!(before.new_sheets(0), 2);
    assert_eq!(before.proof, Proof::Proven);
    let mut early = after;
    early.blanks[0].order = 2;
    assert_eq!(
        check(&early, &stock, EIGHTH),
        Err(PlanFault::TooEarly { blank: 1 })
    );
}

#[test]
fn the_cheaper_of_two_interchangeable_kinds_serves() {
    let eight = sheet("4x8", inches(48), inches(96), 16);
    let nine = sheet("4x9", inches(48), inches(108), 20);
    let both = stock(vec![eight.clone(), nine.clone()]);
    let asks_for_nine = Blank {
        sheet: 1,
        ..blank(0, inches(48), inches(90))
    };
    let cheaper = plan(&both, EIGHTH, std::slice::from_ref(&asks_for_nine));
    assert_eq!(
        (cheaper.new_sheets(0), cheaper.bounds.least),
        (1, Amount::whole(16))
    );
    // Two pieces of 50 in. come from neither one 8 ft sheet nor one 9 ft sheet less its kerf; of 53 from one 9 ft.
    let pair = plan(&both, EIGHTH, &many(2, inches(48), inches(53)));
    assert_eq!((pair.new_sheets(1), pair.proof), (1, Proof::Proven));
    let other = stock(vec![
        Sheet {
            category: "15/32".into(),
            ..eight.clone()
        },
        nine.clone(),
    ]);
    assert_eq!(plan(&other, EIGHTH, &[asks_for_nine]).new_sheets(1), 1);
    let short = stock(vec![
        Sheet {
            on_hand: Some(1),
            ..eight
        },
        nine,
    ]);
    let three = plan(&short, EIGHTH, &many(3, inches(48), inches(96)));
    assert_eq!((three.new_sheets(0), three.new_sheets(1)), (1, 2));
}

#[test]
fn what_no_sheet_is_left_for_is_listed() {
    let one = stock(vec![Sheet {
        on_hand: Some(1),
        ..sheet("4x8", inches(48), inches(96), 16)
    }]);
    let two = plan(&one, EIGHTH, &many(2, inches(48), inches(96)));
    assert_eq!(
        two.uncut,
        [Uncut {
            blank: 1,
            why: WhyUncut::NoneLeft
        }]
    );
}

#[test]
fn a_plan_without_blanks_is_empty() {
    let none = plan(&four_by_eight(), EIGHTH, &[]);
    assert_eq!(
        (none.sheets.len(), none.bounds.dual, none.proof),
        (0, 0, Proof::Proven)
    );
}

#[test]
fn replay_refuses_what_a_saw_cannot_do() {
    let cut = |tree| CutSheet {
        source: Source::Sheet { sheet: 0 },
        sheet: 0,
        width: inches(48),
        length: inches(96),
        tree,
    };
    let split = |at, second: CutNode| {
        cut(CutNode::Split {
            across: true,
            at,
            first: Box::new(CutNode::Piece {
                blank: 0,
                turned: false,
            }),
            second: Box::new(second),
        })
    };
    let blanks = [blank(0, inches(48), inches(40))];
    let go = |sheet: &CutSheet| replay(sheet, &blanks, EIGHTH);
    assert!(go(&split(inches(40), waste())).is_ok());
    assert_eq!(
        go(&split(inches(41), waste())),
        Err(CutFault::WrongSize { blank: 0 })
    );
    assert_eq!(
        go(&split(inches(96), waste())),
        Err(CutFault::CutOutside {
            at: inches(96),
            size: inches(96)
        })
    );
    assert_eq!(
        go(&split(Length::ZERO, waste())),
        Err(CutFault::CutOutside {
            at: Length::ZERO,
            size: inches(96)
        })
    );
    let missing = cut(CutNode::Piece {
        blank: 4,
        turned: false,
    });
    assert_eq!(go(&missing), Err(CutFault::NoSuchBlank { blank: 4 }));
    assert_eq!(
        go(&cut(CutNode::Piece {
            blank: 0,
            turned: true
        })),
        Err(CutFault::Turned { blank: 0 })
    );
    let tall = [blank(0, inches(48), inches(96) - Length::sixteenths(1))];
    let rest = |second| split(inches(96) - Length::sixteenths(1), second);
    assert!(replay(&rest(waste()), &tall, EIGHTH).is_ok_and(|parts| parts.len() == 1));
    let kept = rest(CutNode::Offcut { leftover: 0 });
    assert_eq!(replay(&kept, &tall, EIGHTH), Err(CutFault::NothingLeft));
}

/// All ways of placing are tried where their comparisons of each blank with a part of each other stay within the
/// effort, else as many as do, and one of any list; four times as many where sheets can stand in for one another.
#[test]
fn ways_are_tried_within_the_effort() {
    assert_eq!(Policy::for_count(0, true).count(), 0);
    for count in [1, 30, 640, 650, 1_300, 2_000, 6_000, 7_000, 100_000] {
        for (choice, all) in [(false, 24), (true, 96)] {
            let tried = Policy::for_count(count, choice).count();
            let spent = |ways: usize| ways * count * count;
            assert!(tried == 1 || spent(tried) <= 40_000_000, "{count}: {tried}");
            assert!(tried == all || spent(tried + 1) > 40_000_000, "{count}: {tried}");
        }
    }
}

/// Sheets are a choice only if two are of one material.
#[test]
fn another_size_is_a_choice_and_another_material_is_none() {
    let mut two = stock(vec![
        sheet("4x8", inches(48), inches(96), 16),
        sheet("4x9", inches(48), inches(108), 20),
    ]);
    assert!(sheet::is_choice(&two));
    two.sheets[1].category = "15/32".into();
    assert!(!sheet::is_choice(&two));
    assert!(!sheet::is_choice(&four_by_eight()));
}

fn sizes() -> impl Strategy<Value = (Length, Length)> {
    let side = |most: i64| (1..=most * 8).prop_map(|eighths| Length::sixteenths(2 * eighths));
    let strip = side(96).prop_map(|length| (inches(48), length));
    let half = side(48).prop_map(|width| (width, inches(96)));
    prop_oneof![(side(48), side(96)), strip, half]
}

prop_compose! {
    fn any_blanks()(sizes in prop::collection::vec((sizes(), any::<bool>(), any::<bool>(), 0_u32..2), 0..30)) -> Vec<Blank> {
        (0_u32..).zip(sizes).map(|(order, ((width, length), turns, holed, kind))| Blank {
            sheet: if turns { 2 } else { kind },
            may_turn: turns,
            drops: if holed && width > inches(20) && length > inches(28) {
                vec![Drop { width: width - inches(4), length: length - inches(4) }]
            } else {
                vec![]
            },
            ..blank(order, width, length)
        }).collect()
    }
}

prop_compose! {
    fn any_stock()(
        prices in prop::collection::vec(0..40, 3),
        on_hand in prop::option::of(0_u32..4),
        offcuts in prop::collection::vec((0_usize..3, 10_i64..48, 10_i64..96), 0..3),
    ) -> Stock {
        let names = ["4x8", "4x10", "turning"];
        let offcut = |(kind, w, l): &(usize, i64, i64)| Offcut { sheet: names[*kind].into(), width: inches(*w), length: inches(*l) };
        let mut stock = stock(vec![
            Sheet { on_hand, ..sheet(names[0], inches(48), inches(96), prices[0]) },
            sheet(names[1], inches(48), inches(120), prices[1]),
            Sheet { may_turn: true, ..sheet(names[2], inches(48), inches(96), prices[2]) },
        ]);
        stock.offcuts = offcuts.iter().map(offcut).collect();
        stock
    }
}

/// What the new sheets of a plan cost.
fn cost(plan: &CutPlan, stock: &Stock) -> Amount {
    (0_u32..)
        .zip(&stock.sheets)
        .map(|(kind, sheet)| sheet.price * i64::from(plan.new_sheets(kind)))
        .sum()
}

proptest! {
    #[test]
    fn every_plan_can_be_cut(blanks in any_blanks(), stock in any_stock(), kerf in 0_i64..4) {
        let kerf = Length::sixteenths(kerf);
        let plan = cut_by(&stock, &rules(kerf), &blanks);
        prop_assert_eq!(check(&plan, &stock, kerf), Ok(()));
        prop_assert!(plan.uncut.is_empty());
        let sheets: u32 = (0..3).map(|kind| plan.new_sheets(kind)).sum();
        prop_assert!(plan.bounds.area <= plan.bounds.dual && plan.bounds.dual <= sheets);
        let paid = cost(&plan, &stock);
        if !bound::counts(&stock) {
            prop_assert!(plan.bounds.least <= paid);
            let gap = match plan.proof {
                Proof::Proven => Amount::ZERO,
                Proof::Gap { amount } => amount,
                Proof::Stopped { gap, .. } => gap,
            };
            prop_assert_eq!(paid - plan.bounds.patterns, gap);
        }
        // Parts lie within their sheet and apart by the kerf, seen from the outside.
        for sheet in &plan.sheets {
            let parts = replay(sheet, &plan.blanks, kerf).unwrap();
            for (number, a) in parts.iter().enumerate() {
                prop_assert!(a.x + a.width <= sheet.width && a.y + a.length <= sheet.length);
                for b in &parts[number + 1..] {
                    let beside = a.x + a.width + kerf <= b.x || b.x + b.width + kerf <= a.x;
                    let beyond = a.y + a.length + kerf <= b.y || b.y + b.length + kerf <= a.y;
                    prop_assert!(beside || beyond);
                }
            }
        }
    }

    #[test]
    fn the_order_of_the_list_does_not_matter(blanks in any_blanks().prop_shuffle(), stock in any_stock()) {
        let shuffled = cut_by(&stock, &rules(EIGHTH), &blanks);
        let mut sorted = blanks;
        sorted.sort_by_key(|blank| blank.order);
        prop_assert_eq!(shuffled, cut_by(&stock, &rules(EIGHTH), &sorted));
    }
}
