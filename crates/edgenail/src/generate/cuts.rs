//! Lists of pieces to be cut, made from a number.

use super::random::Random;
use crate::amount::Amount;
use crate::cutting::{Blank, CutRules};
use crate::decimal::Decimal;
use crate::house::{Sheet, Stock, StrengthAxis};
use crate::length::Length;

/// Pieces with the stock that they are cut from.
#[derive(Clone, Debug)]
pub struct CutJob {
    /// One kind of sheet, sized for spacing or true, 8, 9 or 10 ft long.
    pub stock: Stock,
    /// A kerf of 1/8 in.
    pub rules: CutRules,
    /// No whole sheets.
    pub blanks: Vec<Blank>,
}

/// So many pieces as walls ask for, none of them a whole sheet.
///
/// Of a hundred about 30 are rips of upright sheets, 25 lie over or under openings, 20 are flat courses cut short, 15
/// are strips along a band and 10 have sides as they were measured; a third repeats the piece before it, as walls do.
/// Invented: it stands for no house in particular.
///
/// ```
/// let job = edgenail::generate::cut_job(7, 25);
/// assert_eq!(job.blanks.len(), 25);
/// assert_eq!(edgenail::generate::cut_job(7, 25).blanks, job.blanks);
/// ```
pub fn cut_job(seed: u64, pieces: usize) -> CutJob {
    let mut random = Random::new(seed);
    let less = if random.percent(50) { 2 } else { 0 };
    let feet = [8, 8, 8, 9, 10][random.below(5)];
    let sheet = (
        Length::sixteenths(768 - less),
        Length::sixteenths(feet * 192 - less),
    );
    let may_turn = random.percent(15);
    let mut blanks: Vec<Blank> = Vec::with_capacity(pieces);
    for order in (0_u32..).take(pieces) {
        let repeated = blanks.last().filter(|_| random.percent(33));
        let (width, length) =
            repeated.map_or_else(|| piece(&mut random, sheet), |last| (last.width, last.length));
        blanks.push(Blank {
            wall: order / 8,
            piece: order % 8,
            order,
            sheet: 0,
            width,
            length,
            may_turn,
            drops: Vec::new(),
        });
    }
    CutJob {
        stock: Stock {
            sheets: vec![kind(sheet, may_turn)],
            nails: Vec::new(),
            sticks: Vec::new(),
            offcuts: Vec::new(),
        },
        rules: CutRules {
            kerf: Length::sixteenths(2),
            offcut_width_least: Length::inches(16),
            offcut_length_least: Length::inches(24),
            effort_most: 5_000_000,
        },
        blanks,
    }
}

fn piece(random: &mut Random, sheet: (Length, Length)) -> (Length, Length) {
    let inches = Length::inches;
    let layout = [inches(16), inches(24), Length::sixteenths(307)][random.below(3)];
    let bays = |random: &mut Random, most: i64| layout * random.between(1, most) - Length::sixteenths(2);
    // Sizes as measured, to a sixteenth.
    let measured = |random: &mut Random, least: i64, most: i64| {
        Length::sixteenths(random.between(16 * least, 16 * most))
    };
    let (width, length) = match random.below(100) {
        0..30 => (bays(random, 2), sheet.1 - inches(random.between(0, 2))),
        30..55 => (
            inches(random.between(8, 40)),
            inches([32, 38, 50, 62, 74][random.below(5)]),
        ),
        55..75 => (sheet.0, bays(random, 5)),
        75..90 => (inches(random.between(9, 20)), sheet.1),
        _ => (measured(random, 8, 44), measured(random, 16, 92)),
    };
    let (width, length) = (width.min(sheet.0), length.min(sheet.1));
    if (width, length) == sheet {
        (width.half(), length)
    } else {
        (width, length)
    }
}

fn kind((width, length): (Length, Length), may_turn: bool) -> Sheet {
    Sheet {
        name: "panel".into(),
        width,
        length,
        category: "7/16".into(),
        grade: "sheathing".into(),
        span_rating: "24/16".into(),
        strength_axis: StrengthAxis::Length,
        plies: None,
        faces_alike: true,
        may_turn,
        gap: None,
        price: Amount::whole(16),
        on_hand: None,
        pounds_per_square_foot: Decimal::tenths(14),
        unit_count: 66,
    }
}
