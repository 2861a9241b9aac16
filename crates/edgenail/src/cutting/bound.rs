//! What every plan needs at least.
//!
//! A blank is charged the least, over the kinds of sheet that serve and the ways in which it may lie, of the kind's
//! price times the weight of its width times the weight of its length. What comes out of one sheet is charged at most
//! the sheet's price, so that all charges together are at most the price of any plan. Off-cuts and drops may carry
//! blanks for nothing: what they could carry at most is taken off.

use super::scale::{ONE, Scale};
use super::sheet::{fits, lies};
use super::{Blank, Bounds, CutRules};
use crate::amount::Amount;
use crate::house::{Sheet, Stock};
use crate::length::Length;
use std::collections::{BTreeMap, BTreeSet};

/// All sheets are free: plans are compared by their number.
pub(super) fn counts(stock: &Stock) -> bool {
    stock.sheets.iter().all(|sheet| sheet.price <= Amount::ZERO)
}

/// What the blanks of one material need at least.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Least {
    area: i128,
    dual: i128,
    /// In ten-thousandths.
    price: i128,
}

impl Least {
    /// In the unit that plans are compared in.
    pub(super) fn compared(self, counts: bool) -> i64 {
        i64::try_from(if counts { self.dual } else { self.price }).unwrap_or(i64::MAX)
    }
}

/// The bounds of each material for blanks in building order.
pub(super) fn leasts(stock: &Stock, rules: &CutRules, blanks: &[Blank], materials: &[usize]) -> Vec<Least> {
    let least = |material: usize| {
        let sheets: Vec<&Sheet> = kinds(stock, materials, material).collect();
        if sheets.is_empty() {
            return Least::default();
        }
        let group = Group::new(stock, rules, blanks, materials, material, sheets);
        let ones = vec![1; group.sheets.len()];
        let share = [Scale::Share];
        let prices: Vec<i128> = group
            .sheets
            .iter()
            .map(|s| i128::from(s.price.ten_thousandths()).max(0))
            .collect();
        Least {
            area: group.best_of(&ones, &share, &share),
            dual: group.best(&ones),
            price: to_multiple(group.best(&prices), &prices),
        }
    };
    (0..stock.sheets.len()).map(least).collect()
}

/// The bounds of all materials together; `patterns` is what mixtures of patterns prove, in the unit that plans are
/// compared in.
pub(super) fn bounds(leasts: &[Least], patterns: i64, counts: bool) -> Bounds {
    let sheets =
        |of: fn(&Least) -> i128| u32::try_from(leasts.iter().map(of).sum::<i128>()).unwrap_or(u32::MAX);
    let least = leasts
        .iter()
        .map(|least| least.compared(counts))
        .fold(0, i64::saturating_add);
    Bounds {
        area: sheets(|least| least.area),
        dual: sheets(|least| least.dual),
        least: compared(least, counts),
        patterns: compared(patterns, counts),
    }
}

/// An amount in the unit that plans are compared in.
pub(super) fn compared(amount: i64, counts: bool) -> Amount {
    Amount::from_ten_thousandths(if counts {
        amount.saturating_mul(10_000)
    } else {
        amount
    })
}

fn kinds<'a>(stock: &'a Stock, materials: &'a [usize], material: usize) -> impl Iterator<Item = &'a Sheet> {
    let same = move |(_, of): &(&Sheet, &usize)| **of == material;
    stock
        .sheets
        .iter()
        .zip(materials)
        .filter(same)
        .map(|(sheet, _)| sheet)
}

/// Sums of whole sheets are multiples of what their prices have in common.
fn to_multiple(sum: i128, prices: &[i128]) -> i128 {
    let common = prices.iter().fold(0, |a, b| gcd(a, *b));
    if common == 0 {
        sum
    } else {
        (sum + common - 1).div_euclid(common) * common
    }
}

fn gcd(a: i128, b: i128) -> i128 {
    if b == 0 { a } else { gcd(b, a % b) }
}

/// Blanks of one material with what may carry them.
struct Group<'a> {
    kerf: Length,
    sheets: Vec<&'a Sheet>,
    /// Sizes, how many blanks have them, whether they may turn.
    wanted: Vec<(Blank, i128)>,
    /// Parts that cost nothing.
    free: Vec<(Length, Length)>,
}

impl<'a> Group<'a> {
    fn new(
        stock: &Stock,
        rules: &CutRules,
        blanks: &[Blank],
        materials: &[usize],
        material: usize,
        sheets: Vec<&'a Sheet>,
    ) -> Self {
        let of = |sheet: usize| materials.get(sheet).copied() == Some(material);
        let fits_a_sheet = |blank: &&Blank| sheets.iter().any(|sheet| fits(blank, sheet.width, sheet.length));
        let own: Vec<&Blank> = blanks
            .iter()
            .filter(|blank| of(blank.sheet as usize))
            .filter(fits_a_sheet)
            .collect();
        let mut sizes: BTreeMap<(Length, Length, bool), (Blank, i128)> = BTreeMap::new();
        for blank in &own {
            let size = (blank.width, blank.length, blank.may_turn);
            sizes.entry(size).or_insert_with(|| ((*blank).clone(), 0)).1 += 1;
        }
        let mut free = Vec::new();
        for offcut in &stock.offcuts {
            let kind = stock.sheets.iter().position(|sheet| sheet.name == offcut.sheet);
            let carries = own.iter().any(|blank| fits(blank, offcut.width, offcut.length));
            if kind.is_some_and(of) && carries {
                free.push((offcut.width, offcut.length));
            }
        }
        for blank in &own {
            for drop in &blank.drops {
                let carries =
                    |other: &&&Blank| other.order > blank.order && fits(other, drop.width, drop.length);
                if own.iter().any(|other| carries(&other)) {
                    free.push((drop.width, drop.length));
                }
            }
        }
        Self {
            kerf: rules.kerf,
            sheets,
            wanted: sizes.into_values().collect(),
            free,
        }
    }

    /// The best bound over all pairs of functions.
    fn best(&self, prices: &[i128]) -> i128 {
        let widths = self.scales(|blank| blank.width);
        let lengths = self.scales(|blank| blank.length);
        self.best_of(prices, &widths, &lengths)
    }

    /// The best bound over the pairs of these functions.
    fn best_of(&self, prices: &[i128], widths: &[Scale], lengths: &[Scale]) -> i128 {
        let ways = Ways::new(self);
        // Functions that weigh all of these alike are one.
        let across: BTreeSet<Vec<i128>> = widths.iter().map(|f| ways.across(self, *f)).collect();
        let along: BTreeSet<Vec<i128>> = lengths.iter().map(|g| ways.along(self, *g)).collect();
        let pairs = across.iter().flat_map(|f| along.iter().map(move |g| (f, g)));
        pairs.map(|(f, g)| ways.charge(prices, f, g)).max().unwrap_or(0)
    }

    /// Functions worth trying along one direction.
    fn scales(&self, size: fn(&Blank) -> Length) -> Vec<Scale> {
        let mut sizes: Vec<Length> = self
            .wanted
            .iter()
            .map(|(blank, _)| size(blank) + self.kerf)
            .collect();
        sizes.sort_unstable();
        sizes.dedup();
        // Any choice of functions gives a bound; so many sizes keep the work small.
        let step = sizes.len().div_ceil(SIZES).max(1);
        let mut scales = vec![Scale::Share];
        scales.extend(sizes.into_iter().step_by(step).map(Scale::Without));
        scales.extend((1..=STEPS).map(Scale::Steps));
        scales
    }
}

/// How blanks and free parts may lie on sheets, one after the other, so that every function weighs each of them once.
struct Ways {
    /// The place of the sheet in the group, and the size across and along it.
    all: Vec<(usize, Length, Length)>,
    /// How many of these are of each blank, and how many such blanks there are.
    wanted: Vec<(usize, i128)>,
    /// How many of these are of each free part.
    free: Vec<usize>,
}

impl Ways {
    fn new(group: &Group<'_>) -> Self {
        let sheets = || group.sheets.iter().enumerate();
        let (mut all, mut wanted, mut free) = (Vec::new(), Vec::new(), Vec::new());
        for (blank, count) in &group.wanted {
            let before = all.len();
            for (place, sheet) in sheets() {
                let here = lies(blank).filter(|(w, l, _)| *w <= sheet.width && *l <= sheet.length);
                all.extend(here.map(|(w, l, _)| (place, w, l)));
            }
            wanted.push((all.len() - before, *count));
        }
        for (width, length) in &group.free {
            let large = sheets().filter(|(_, sheet)| *width <= sheet.width && *length <= sheet.length);
            let before = all.len();
            all.extend(large.map(|(place, _)| (place, *width, *length)));
            free.push(all.len() - before);
        }
        Self { all, wanted, free }
    }

    fn across(&self, group: &Group<'_>, f: Scale) -> Vec<i128> {
        let weigh = |(sheet, width, _): &(usize, Length, Length)| {
            let sheet = group.sheets.get(*sheet);
            sheet.map_or(0, |sheet| f.weigh(*width, sheet.width, group.kerf))
        };
        self.all.iter().map(weigh).collect()
    }

    fn along(&self, group: &Group<'_>, g: Scale) -> Vec<i128> {
        let weigh = |(sheet, _, length): &(usize, Length, Length)| {
            let sheet = group.sheets.get(*sheet);
            sheet.map_or(0, |sheet| g.weigh(*length, sheet.length, group.kerf))
        };
        self.all.iter().map(weigh).collect()
    }

    /// All charges less what costs nothing, rounded up.
    fn charge(&self, prices: &[i128], across: &[i128], along: &[i128]) -> i128 {
        let weights = across.iter().zip(along);
        let mut charges = self.all.iter().zip(weights).map(|((sheet, ..), (f, g))| {
            let price = prices.get(*sheet).copied().unwrap_or(0);
            price * (f * g)
        });
        let mut sum: i128 = 0;
        for (ways, count) in &self.wanted {
            let least = charges.by_ref().take(*ways).min();
            sum = sum.saturating_add(least.unwrap_or(0).saturating_mul(*count));
        }
        for ways in &self.free {
            // A part larger than every sheet may carry anything.
            let carried = charges.by_ref().take(*ways).min();
            sum = sum.saturating_sub(carried.unwrap_or(i128::MAX));
        }
        (sum.max(0) + ONE * ONE - 1).div_euclid(ONE * ONE)
    }
}

/// Sizes tried for cutting off.
const SIZES: usize = 16;
/// Stepped functions tried.
const STEPS: i64 = 11;
