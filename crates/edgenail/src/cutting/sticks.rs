//! Lumber cut from sticks: sheets of one width, cut across.

use super::{Blank, CutRules, Part, Placed, cut_by, replay};
use crate::amount::Amount;
use crate::decimal::Decimal;
use crate::house::{Sheet, Stock, StrengthAxis};
use crate::length::Length;
use serde::Serialize;

/// One stick of lumber and what is cut from it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct StickCut {
    /// The stick, as a place in the stock's list.
    pub stick: u32,
    /// Lengths, in the order of cutting.
    pub cuts: Vec<Length>,
    /// What is left.
    pub left: Length,
}

/// Lengths on sticks.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct SticksPlan {
    /// The sticks.
    pub sticks: Vec<StickCut>,
    /// No plan takes fewer.
    pub least: u32,
}

/// Any width does, as all of a stick has it.
const WIDTH: Length = Length::inches(1);

/// Cuts lengths from sticks: the longest first, each from the first stick that has enough left; where that takes more
/// sticks than their length asks for, with fewer if any are found.
///
/// Every cut takes a kerf, unless it ends the stick. Lengths longer than the stick are left out. `effort_most` is what
/// may be spent, as in [`cut_by`].
///
/// ```
/// use edgenail::Length;
/// use edgenail::cutting::cut_sticks;
/// // Six blocks of 14 7/16 in. come from one stick of 96 in.: six blocks and five kerfs are 87 1/4.
/// let block = Length::sixteenths(231);
/// let plan = cut_sticks(&[block; 7], 0, Length::inches(96), Length::sixteenths(2), 1_000_000);
/// assert_eq!(plan.sticks.iter().map(|stick| stick.cuts.len()).collect::<Vec<_>>(), [6, 1]);
/// assert_eq!(plan.least, 2);
/// ```
pub fn cut_sticks(
    lengths: &[Length],
    stick: u32,
    stick_length: Length,
    kerf: Length,
    effort_most: u64,
) -> SticksPlan {
    let mut lengths: Vec<Length> = lengths
        .iter()
        .copied()
        .filter(|length| Length::ZERO < *length && *length <= stick_length)
        .collect();
    lengths.sort_unstable_by(|a, b| b.cmp(a));
    let first = first_fit(&lengths, stick, stick_length, kerf);
    let asked: Length = lengths.iter().map(|length| *length + kerf).sum();
    let whole = (stick_length + kerf).units().max(1);
    let least = count(asked.units().div_euclid(whole) + i64::from(asked.units() % whole > 0));
    if first.len() <= least as usize {
        return SticksPlan { sticks: first, least };
    }
    let stock = Stock {
        sheets: vec![as_sheet(stick_length)],
        nails: Vec::new(),
        sticks: Vec::new(),
        offcuts: Vec::new(),
    };
    let rules = CutRules {
        kerf,
        offcut_width_least: WIDTH,
        offcut_length_least: stick_length,
        effort_most,
    };
    let blanks: Vec<Blank> = (0..)
        .zip(&lengths)
        .map(|(order, length)| Blank {
            wall: 0,
            piece: order,
            order,
            sheet: 0,
            width: WIDTH,
            length: *length,
            may_turn: false,
            drops: Vec::new(),
        })
        .collect();
    let plan = cut_by(&stock, &rules, &blanks);
    let least = least.max(count(plan.bounds.patterns.ten_thousandths() / Amount::PER_UNIT));
    if plan.sheets.len() >= first.len() {
        return SticksPlan { sticks: first, least };
    }
    let cuts = |parts: Vec<Placed>| {
        let mut cuts: Vec<Length> = parts
            .iter()
            .filter(|placed| matches!(placed.part, Part::Blank { .. }))
            .map(|placed| placed.length)
            .collect();
        cuts.sort_unstable_by(|a, b| b.cmp(a));
        StickCut {
            stick,
            left: cuts.iter().fold(stick_length, |left, cut| rest(left, *cut, kerf)),
            cuts,
        }
    };
    let sheets = plan.sheets.iter();
    let fewer = sheets.map(|sheet| replay(sheet, &plan.blanks, kerf).map(cuts));
    SticksPlan {
        // Whatever cannot be replayed is no plan.
        sticks: fewer.collect::<Result<_, _>>().unwrap_or(first),
        least,
    }
}

fn count(count: i64) -> u32 {
    u32::try_from(count).unwrap_or(u32::MAX)
}

/// What a cut leaves.
fn rest(left: Length, cut: Length, kerf: Length) -> Length {
    (left - cut - kerf).max(Length::ZERO)
}

/// The longest first, each from the first stick that has enough left.
fn first_fit(longest_first: &[Length], stick: u32, stick_length: Length, kerf: Length) -> Vec<StickCut> {
    let mut sticks: Vec<StickCut> = Vec::new();
    for length in longest_first.iter().copied() {
        let open = sticks.iter().position(|stick| stick.left >= length);
        let at = open.unwrap_or(sticks.len());
        if open.is_none() {
            sticks.push(StickCut {
                stick,
                cuts: Vec::new(),
                left: stick_length,
            });
        }
        if let Some(open) = sticks.get_mut(at) {
            open.left = rest(open.left, length, kerf);
            open.cuts.push(length);
        }
    }
    sticks
}

/// A stick as a sheet that costs one unit, so that price counts sticks.
fn as_sheet(length: Length) -> Sheet {
    Sheet {
        name: String::new(),
        width: WIDTH,
        length,
        category: String::new(),
        grade: String::new(),
        span_rating: String::new(),
        strength_axis: StrengthAxis::Length,
        plies: None,
        faces_alike: true,
        may_turn: false,
        gap: None,
        price: Amount::whole(1),
        on_hand: None,
        pounds_per_square_foot: Decimal::ZERO,
        unit_count: 1,
    }
}

#[cfg(test)]
mod tests;
