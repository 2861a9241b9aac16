//! Pieces of one material and what they may come from.

use crate::cutting::sheet::{fits, lies as blank_lies};
use crate::cutting::{Blank, CutRules, Source};
use crate::house::Stock;
use crate::length::Length;
use std::collections::BTreeMap;

/// Pieces of one size, sizes with their kerfs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Item {
    pub w: i64,
    pub l: i64,
    pub may_turn: bool,
}

/// The ways in which a piece may lie: its sizes across and along the sheet, and whether it is turned.
pub(super) fn lies(item: &Item) -> impl Iterator<Item = (i64, i64, bool)> + use<> {
    let turned = (item.may_turn && item.w != item.l).then_some((item.l, item.w, true));
    std::iter::once((item.w, item.l, false)).chain(turned)
}

/// Something that pieces may come from.
#[derive(Clone, Debug)]
pub(super) struct Origin {
    pub source: Source,
    /// The kind of sheet, as a place in the stock's list.
    pub sheet: usize,
    /// Width and length, with a kerf each.
    pub size: (i64, i64),
    /// What one costs, in steps of the problem.
    pub price: i64,
    /// How many there are, if not any number.
    pub limit: Option<u32>,
    /// Only pieces of a later order may come from it.
    pub born: Option<u32>,
    /// How many of each item may come from one.
    pub most: Vec<u32>,
}

/// Pieces of one material and what they may come from.
#[derive(Clone, Debug)]
pub(in crate::cutting) struct Problem {
    pub(super) kerf: i64,
    pub(super) items: Vec<Item>,
    /// For each item its blanks in building order: their places in the list and their orders.
    pub(super) blanks: Vec<Vec<(usize, u32)>>,
    pub(super) demand: Vec<u32>,
    pub(super) origins: Vec<Origin>,
    /// What all prices are multiples of, in ten-thousandths; one where sheets are counted.
    pub(super) step: i64,
}

impl Problem {
    /// The pieces of one material that fit some sheet of it. Nothing where some sheets cost something and others do not,
    /// or where a piece fits no sheet but a part that costs nothing.
    pub(in crate::cutting) fn new(
        stock: &Stock,
        rules: &CutRules,
        blanks: &[Blank],
        materials: &[usize],
        material: usize,
        counts: bool,
    ) -> Option<Self> {
        let kerf = rules.kerf.units();
        let of = |sheet: usize| materials.get(sheet).copied() == Some(material);
        let kinds = || stock.sheets.iter().enumerate().filter(|(kind, _)| of(*kind));
        let offcuts = stock.offcuts.iter().map(|offcut| (offcut.width, offcut.length));
        let drops = blanks
            .iter()
            .flat_map(|blank| blank.drops.iter().map(|drop| (drop.width, drop.length)));
        let free: Vec<(Length, Length)> = offcuts.chain(drops).collect();
        let mut sizes: BTreeMap<Item, Vec<(usize, u32)>> = BTreeMap::new();
        for (index, blank) in blanks.iter().enumerate() {
            if !of(blank.sheet as usize) {
                continue;
            }
            if kinds().any(|(_, sheet)| fits(blank, sheet.width, sheet.length)) {
                let item = Item {
                    w: blank.width.units() + kerf,
                    l: blank.length.units() + kerf,
                    may_turn: blank.may_turn,
                };
                sizes.entry(item).or_default().push((index, blank.order));
            } else if free.iter().any(|(width, length)| fits(blank, *width, *length)) {
                return None;
            }
        }
        let mut problem = Self {
            kerf,
            items: sizes.keys().copied().collect(),
            demand: sizes.values().map(|blanks| count(blanks.len())).collect(),
            blanks: sizes.into_values().collect(),
            origins: Vec::new(),
            step: 0,
        };
        for (kind, sheet) in kinds().filter(|(_, sheet)| sheet.on_hand != Some(0)) {
            let price = if counts { 1 } else { sheet.price.ten_thousandths() };
            if price <= 0 {
                return None;
            }
            let source = Source::Sheet { sheet: count(kind) };
            problem.add(
                source,
                kind,
                (sheet.width, sheet.length),
                price,
                sheet.on_hand,
                None,
            );
        }
        for (index, offcut) in stock.offcuts.iter().enumerate() {
            let kind = stock.sheets.iter().position(|sheet| sheet.name == offcut.sheet);
            if let Some(kind) = kind.filter(|kind| of(*kind)) {
                let source = Source::Offcut { offcut: count(index) };
                problem.add(source, kind, (offcut.width, offcut.length), 0, Some(1), None);
            }
        }
        for (index, blank) in blanks
            .iter()
            .enumerate()
            .filter(|(_, blank)| of(blank.sheet as usize))
        {
            for (number, drop) in blank.drops.iter().enumerate() {
                let source = Source::Drop {
                    blank: count(index),
                    drop: count(number),
                };
                let size = (drop.width, drop.length);
                problem.add(source, blank.sheet as usize, size, 0, Some(1), Some(blank.order));
            }
        }
        problem.step = problem.step.max(1);
        for origin in &mut problem.origins {
            origin.price /= problem.step;
        }
        Some(problem)
    }

    /// Adds what some piece may come from.
    fn add(
        &mut self,
        source: Source,
        sheet: usize,
        (width, length): (Length, Length),
        price: i64,
        limit: Option<u32>,
        born: Option<u32>,
    ) {
        let size = (width.units() + self.kerf, length.units() + self.kerf);
        let most = |(item, blanks): (&Item, &Vec<(usize, u32)>)| {
            let fits = lies(item).any(|(w, l, _)| w <= size.0 && l <= size.1);
            let later = blanks
                .iter()
                .filter(|(_, order)| born.is_none_or(|born| *order > born));
            if fits { count(later.count()) } else { 0 }
        };
        let most: Vec<u32> = self.items.iter().zip(&self.blanks).map(most).collect();
        if most.iter().any(|most| *most > 0) {
            self.step = gcd(self.step, price);
            self.origins.push(Origin {
                source,
                sheet,
                size,
                price,
                limit,
                born,
                most,
            });
        }
    }

    /// The item that a blank belongs to.
    pub(super) fn item_of(&self, blank: &Blank) -> Option<u16> {
        let (width, length, _) = blank_lies(blank).next()?;
        let item = Item {
            w: width.units() + self.kerf,
            l: length.units() + self.kerf,
            may_turn: blank.may_turn,
        };
        u16::try_from(self.items.binary_search(&item).ok()?).ok()
    }
}

fn gcd(a: i64, b: i64) -> i64 {
    if b == 0 { a } else { gcd(b, a % b) }
}

fn count(number: usize) -> u32 {
    u32::try_from(number).unwrap_or(u32::MAX)
}
