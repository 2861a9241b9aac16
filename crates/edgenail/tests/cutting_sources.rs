//! Which sheets and drops serve, where only one choice is the best. Least prices are counted by hand.

mod cut_ground;

use cut_ground::{inch, sheet};
use edgenail::cutting::{Blank, CutPlan, CutRules, Drop, Source, check, cut_by, offcuts_left};
use edgenail::house::{Offcut, Sheet, Stock};
use edgenail::{Amount, Length};

const EIGHTH: Length = Length::sixteenths(2);

/// A kind of this size at a price in hundredths.
fn kind(name: &str, size: (i64, i64), price: i64) -> Sheet {
    Sheet {
        name: name.into(),
        price: Amount::from_ten_thousandths(100 * price),
        ..sheet(inch(size.0), inch(size.1))
    }
}

/// So many blanks of a kind and size, numbered from `first`.
fn blanks(first: u32, count: u32, sheet: u32, size: (i64, i64)) -> Vec<Blank> {
    (first..first + count)
        .map(|order| Blank {
            wall: 0,
            piece: order,
            order,
            sheet,
            width: inch(size.0),
            length: inch(size.1),
            may_turn: false,
            drops: vec![],
        })
        .collect()
}

/// How many new sheets of each kind are cut.
fn cut(sheets: &[Sheet], kerf: Length, blanks: &[Blank]) -> (CutPlan, Vec<u32>) {
    let stock = Stock {
        sheets: sheets.to_vec(),
        nails: vec![],
        sticks: vec![],
        offcuts: vec![],
    };
    let rules = CutRules {
        kerf,
        offcut_width_least: inch(16),
        offcut_length_least: inch(24),
        effort_most: 1_000_000,
    };
    let plan = cut_by(&stock, &rules, blanks);
    assert_eq!(check(&plan, &stock, kerf), Ok(()));
    let counts = (0_u32..)
        .zip(sheets)
        .map(|(kind, _)| plan.new_sheets(kind))
        .collect();
    (plan, counts)
}

/// Six of 20 × 20: three small sheets for 15.00, two of those asked for for 16.90, or one for 8.00. That one is neither
/// the cheapest nor the largest, and costs only a little less by area than the one asked for.
#[test]
fn the_cheapest_by_area_serves() {
    let sheets = [
        kind("small", (24, 44), 500),
        kind("best", (60, 40), 800),
        kind("asked", (56, 45), 845),
    ];
    assert_eq!(
        cut(&sheets, Length::ZERO, &blanks(0, 6, 2, (20, 20))).1,
        [0, 1, 0]
    );
}

/// Two of 24 × 20: two small sheets for 12, a long one for 40, or the one asked for for 11, which is not the cheapest
/// in any way.
#[test]
fn the_kind_that_is_asked_for_serves() {
    let sheets = [
        kind("small", (24, 24), 600),
        kind("asked", (24, 40), 1_100),
        kind("long", (90, 22), 4_000),
    ];
    assert_eq!(
        cut(&sheets, Length::ZERO, &blanks(0, 2, 1, (24, 20))).1,
        [0, 1, 0]
    );
}

/// One of 48 × 60 that asks for the middle kind, two of 48 × 45 that ask for the largest. A small sheet for the first
/// and the only middle one for the two cost 27; three small ones 30, a largest and a small one 35. The middle one must
/// first be given back by the blank that asked for it.
#[test]
fn a_sheet_that_was_given_back_serves_again() {
    let middle = Sheet {
        on_hand: Some(1),
        ..kind("middle", (48, 96), 1_700)
    };
    let sheets = [
        kind("small", (48, 60), 1_000),
        middle,
        kind("large", (48, 120), 2_500),
    ];
    let mut list = blanks(0, 1, 1, (48, 60));
    list.extend(blanks(1, 2, 2, (48, 45)));
    assert_eq!(cut(&sheets, EIGHTH, &list).1, [1, 1, 0]);
}

/// Two strips of 24 and a kerf are more than 48; two of 23 and a kerf are not. Only then does a wide sheet give way.
#[test]
fn a_sheet_gives_way_to_one_that_holds_the_kerf_too() {
    let sheets = [kind("narrow", (48, 96), 1_600), kind("wide", (60, 96), 2_000)];
    assert_eq!(cut(&sheets, EIGHTH, &blanks(0, 2, 1, (24, 96))).1, [0, 1]);
    assert_eq!(cut(&sheets, EIGHTH, &blanks(0, 2, 1, (23, 96))).1, [1, 0]);
    let sheets = [kind("short", (48, 60), 1_600), kind("long", (48, 96), 2_000)];
    assert_eq!(cut(&sheets, EIGHTH, &blanks(0, 2, 1, (48, 30))).1, [0, 1]);
    assert_eq!(cut(&sheets, EIGHTH, &blanks(0, 2, 1, (48, 29))).1, [1, 0]);
}

/// What falls out of a blank exists only once that hangs: it serves the next one and never itself.
#[test]
fn a_blank_does_not_come_from_its_own_drop() {
    let mut list = blanks(0, 2, 0, (20, 30));
    for blank in &mut list {
        blank.drops = vec![Drop {
            width: inch(20),
            length: inch(30),
        }];
    }
    let (plan, counts) = cut(&[sheet(inch(48), inch(96))], EIGHTH, &list);
    assert_eq!(counts, [1]);
    let sources: Vec<Source> = plan.sheets.iter().map(|cut| cut.source).collect();
    assert_eq!(
        sources,
        [Source::Sheet { sheet: 0 }, Source::Drop { blank: 0, drop: 0 }]
    );
}

/// 60 of 96 in. and a kerf leave 35 7/8; what falls out of the piece is left too. The next job takes what fits and
/// leaves the rest: by hand.
#[test]
fn what_one_job_leaves_serves_the_next() {
    let kinds = [kind("4x8", (48, 96), 1600)];
    let mut long = blanks(0, 1, 0, (48, 60));
    long[0].drops.push(Drop {
        width: inch(30),
        length: inch(40),
    });
    let (plan, counts) = cut(&kinds, EIGHTH, &long);
    assert_eq!(counts, [1]);
    let mut stock = Stock {
        sheets: kinds.to_vec(),
        nails: vec![],
        sticks: vec![],
        offcuts: vec![],
    };
    let offcut = |width, length| Offcut {
        sheet: "4x8".into(),
        width,
        length,
    };
    stock.offcuts = offcuts_left(&stock, &plan);
    assert_eq!(
        stock.offcuts,
        [offcut(inch(48), inch(36) - EIGHTH), offcut(inch(30), inch(40))]
    );
    let rules = CutRules {
        kerf: EIGHTH,
        offcut_width_least: inch(16),
        offcut_length_least: inch(24),
        effort_most: 1_000_000,
    };
    let next = cut_by(&stock, &rules, &blanks(0, 1, 0, (48, 35)));
    assert_eq!((check(&next, &stock, EIGHTH), next.new_sheets(0)), (Ok(()), 0));
    // 3/4 in. are no off-cut; the one that was not needed is still there.
    assert_eq!(offcuts_left(&stock, &next), [offcut(inch(30), inch(40))]);
}
