//! Layouts that were built through all stages, by rank.

use super::weight::Weight;
use crate::amount::Amount;
use crate::evaluate::Evaluated;
use crate::finding::{Finding, Severity, to_mend};
use crate::house::End;
use crate::layout::{LayoutSpec, Running};
use crate::length::Length;
use crate::price::Part;

/// Layouts that were built through all stages: the first so many by rank.
#[derive(Debug)]
pub(super) struct Built {
    /// So many are kept.
    least: usize,
    start: End,
    /// In the order of their ranks.
    pub kept: Vec<(Rank, Evaluated)>,
    /// All that were taken, with what they weigh.
    all: Vec<(LayoutSpec, Weight)>,
    /// What the nails of one cost at least.
    nails: Option<Amount>,
}

impl Built {
    pub const fn new(least: usize, start: End) -> Self {
        Self {
            least,
            start,
            kept: Vec::new(),
            all: Vec::new(),
            nails: None,
        }
    }

    /// How many were built.
    pub fn count(&self) -> u64 {
        self.all.len() as u64
    }

    /// What the best weighs.
    pub fn best(&self) -> Option<Weight> {
        self.kept.first().map(|(rank, _)| rank.weight)
    }

    /// A layout that weighs so much or more may yet be the best.
    pub fn may_be_best(&self, least: Weight) -> bool {
        self.best().is_none_or(|best| least <= best)
    }

    /// A proposal with so much wrong that costs so much without nails seems to be the best, or too few were built: every
    /// layout nails the same members, so that no count of nails is far from another.
    pub fn may_be_best_of_proposals(&self, (refused, mend): (u32, u32), known: Amount) -> bool {
        let nails = self.nails.and_then(|nails| nails.scaled(3, 4));
        let least = (refused, mend, known + nails.unwrap_or_default());
        let best = self.best().filter(|_| self.kept.len() >= self.least);
        best.is_none_or(|best| least <= (best.refused, best.mend, best.cost))
    }

    /// What a layout weighs that was taken before.
    pub fn weight(&self, spec: &LayoutSpec) -> Option<Weight> {
        let mut all = self.all.iter();
        all.find(|(other, _)| other == spec).map(|(_, weight)| *weight)
    }

    /// Takes a layout of which no finished stage tells what practice avoids and which seams are near joints; gives back
    /// what it weighs.
    pub fn take(&mut self, next: Evaluated, known: Weight) -> Weight {
        let of_nails = [Part::Nails, Part::GunNails, Part::HandNails];
        let parts = next.cost.parts.iter();
        let nails: Amount = parts
            .filter(|part| of_nails.contains(&part.part))
            .map(|part| part.amount)
            .sum();
        self.nails = Some(self.nails.map_or(nails, |least| least.min(nails)));
        let rank = Rank::of(&next, known, self.start);
        let weight = rank.weight;
        self.all.push((next.spec.clone(), weight));
        let place = self.kept.partition_point(|(other, _)| *other <= rank);
        if place < self.least {
            self.kept.insert(place, (rank, next));
            self.kept.truncate(self.least);
        }
        weight
    }
}

/// How much is refused, and how much has to be mended.
pub(super) fn wrong(findings: &[Finding]) -> (u32, u32) {
    let refused = |finding: &&Finding| finding.severity == Severity::Refuse;
    let count = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
    (
        count(findings.iter().filter(refused).count()),
        count(to_mend(findings)),
    )
}

/// Legal first, then with least to mend, then cheap, then by the order of ties: each field before those under it.
#[derive(Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Rank {
    pub weight: Weight,
    flat_courses: usize,
    /// The lower bottom line first.
    above_plate: Length,
    /// Tops of courses below zero: the higher course is below, so that what is cut ends at the top.
    levels: Vec<Length>,
    /// Seams of each course in turn, from the starting end, below zero: the longer strip comes first, so that what is cut
    /// ends at the far end.
    seams: Vec<Length>,
}

impl Rank {
    fn of(built: &Evaluated, known: Weight, start: End) -> Self {
        let bands = &built.layout.bands;
        let (refused, mend) = wrong(&built.findings);
        let mut seams = Vec::new();
        for band in bands {
            match start {
                End::Left => seams.extend(band.seams.iter().map(|x| -*x)),
                End::Right => seams.extend(band.seams.iter().rev().copied()),
            }
        }
        Self {
            weight: Weight {
                refused,
                mend,
                cost: built.cost.total,
                pieces: u32::try_from(built.layout.pieces.len()).unwrap_or(u32::MAX),
                ..known
            },
            flat_courses: bands.iter().filter(|band| band.running == Running::Flat).count(),
            above_plate: -built.layout.reach,
            levels: bands.iter().map(|band| -band.y1).collect(),
            seams,
        }
    }
}

/// What more the best costs than the bound of those that were not built, where it has no more to mend than they have.
pub(super) fn gap(best: Weight, bound: Weight) -> Option<Amount> {
    ((best.refused, best.mend, best.avoided, best.cost)
        > (bound.refused, bound.mend, bound.avoided, bound.cost))
        .then(|| (best.cost - bound.cost).max(Amount::ZERO))
}
