//! Orders of placing that are tried.

use super::Blank;
use crate::length::Length;
use std::cmp::Reverse;

/// Which blank comes first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Order {
    /// The largest.
    Area,
    /// The longest.
    Length,
    /// The widest.
    Width,
    /// The one with the longest longer side.
    LongSide,
}

/// Which of the two cuts that free a blank is made first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum FirstCut {
    /// Along the sheet.
    Rip,
    /// Across the sheet.
    Across,
    /// The one that leaves the larger single rest.
    LargestRest,
}

/// Which free part takes a blank.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Fit {
    /// The first that is large enough.
    First,
    /// The one that fits most closely.
    Closest,
}

/// Which kind of sheet is opened.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kind {
    /// The one that the blank asks for.
    Own,
    /// The cheapest that is large enough.
    Cheapest,
    /// The one that is cheapest by area.
    CheapestArea,
    /// The largest; once all blanks are placed, each sheet gives way to the cheapest that still holds its blanks.
    Largest,
}

const KINDS: [Kind; 4] = [Kind::Own, Kind::Cheapest, Kind::CheapestArea, Kind::Largest];

/// One way of placing blanks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Policy {
    pub(super) order: Order,
    pub(super) first_cut: FirstCut,
    pub(super) fit: Fit,
    pub(super) kind: Kind,
}

/// Comparisons of a blank with a free part that may be spent on one plan.
const EFFORT: usize = 40_000_000;

impl Policy {
    /// The ways that are tried for so many blanks: all of them where that takes little work, at least one. Where no
    /// kind of sheet can stand in for another, the ways differ in the rest only.
    pub(super) fn for_count(count: usize, choice: bool) -> impl Iterator<Item = Self> {
        let most = (EFFORT / count.saturating_mul(count).max(1)).max(1);
        let kinds = if choice { &KINDS[..] } else { &[Kind::Own] };
        Self::all(kinds).take(if count == 0 { 0 } else { most })
    }

    fn all(kinds: &'static [Kind]) -> impl Iterator<Item = Self> {
        let fits = move |kind| [Fit::Closest, Fit::First].into_iter().map(move |fit| (kind, fit));
        let cuts = move |(kind, fit)| {
            let cuts = [FirstCut::LargestRest, FirstCut::Rip, FirstCut::Across].into_iter();
            cuts.map(move |first_cut| (kind, fit, first_cut))
        };
        let orders = move |(kind, fit, first_cut)| {
            let orders = [Order::Area, Order::Length, Order::Width, Order::LongSide].into_iter();
            orders.map(move |order| Self {
                order,
                first_cut,
                fit,
                kind,
            })
        };
        kinds
            .iter()
            .copied()
            .flat_map(fits)
            .flat_map(cuts)
            .flat_map(orders)
    }
}

impl Order {
    /// What blanks are sorted by, the smallest first.
    pub(super) fn key(self, blank: &Blank) -> impl Ord + use<> {
        let (w, l) = (blank.width, blank.length);
        let area = w * l;
        let (first, second): (Length, Length) = match self {
            Self::Area => (Length::ZERO, Length::ZERO),
            Self::Length => (l, w),
            Self::Width => (w, l),
            Self::LongSide => (w.max(l), w.min(l)),
        };
        (Reverse((first, second, area, w, l)), blank.order)
    }
}
