//! Building candidates through all stages: which of them, and which is best.

use super::space::Space;
use crate::amount::Amount;
use crate::evaluate::{BackedLayout, Evaluated};
use crate::finding::{Finding, FindingCode, Severity, to_mend};
use crate::house::House;
use crate::layout::{Layout, LayoutSpec, Running};
use crate::length::Length;
use crate::price::Part;

/// A layout that may be built through the other stages.
pub(super) struct Candidate {
    pub spec: LayoutSpec,
    pub layout: Layout,
    /// What it costs without backing and nails.
    pub known: Amount,
    /// What the rules of layouts say.
    pub judged: Vec<Finding>,
}

/// Takes candidates through all stages, those first that have least to mend, then those that cost least without backing
/// and nails; at least so many, and all that may yet be the best once they are backed.
///
/// Every layout nails the same members, so that no count of nails is far from another: a candidate is left where
/// even with three quarters of the fewest nails seen it would cost more than one that was built.
///
/// Returns the first so many by rank, and how many were built: the others are not kept.
pub(super) fn build(
    space: &Space<'_>,
    house: &House,
    mut candidates: Vec<Candidate>,
    least: usize,
) -> (Vec<Evaluated>, u64) {
    candidates.sort_by_cached_key(|candidate| (wrong(&candidate.judged), candidate.known));
    let mut built = Built {
        least,
        ..Built::default()
    };
    for candidate in candidates {
        let Candidate {
            spec,
            layout,
            mut known,
            judged,
        } = candidate;
        if !built.may_be_best(wrong(&judged), known) {
            break;
        }
        let backed = BackedLayout::new(house, space.frame, spec, layout, judged);
        space.prices.wood(&mut known, &backed.blocking);
        if built.may_be_best(wrong(&backed.findings), known) {
            built.take(backed.nailed(house, space.frame));
        }
    }
    let kept = built.kept.into_iter().map(|(_, built)| built);
    (kept.collect(), built.count)
}

/// Layouts that were built through all stages.
#[derive(Default)]
struct Built {
    /// So many are kept.
    least: usize,
    /// The first of them by rank, in its order.
    kept: Vec<(Rank, Evaluated)>,
    /// How many were built.
    count: u64,
    /// What the nails of one cost at least.
    nails: Option<Amount>,
}

impl Built {
    /// A layout with so much wrong that costs so much without nails may yet be the best, or too few were built.
    fn may_be_best(&self, wrong: Wrong, known: Amount) -> bool {
        let nails = self.nails.and_then(|nails| nails.scaled(3, 4));
        let least = (wrong, known + nails.unwrap_or_default());
        let best = self.kept.first().filter(|_| self.kept.len() >= self.least);
        best.is_none_or(|(best, _)| least <= (best.wrong, best.total))
    }

    fn take(&mut self, next: Evaluated) {
        let of_nails = [Part::Nails, Part::GunNails, Part::HandNails];
        let parts = next.cost.parts.iter();
        let nails = parts.filter(|part| of_nails.contains(&part.part));
        let nails: Amount = nails.map(|part| part.amount).sum();
        self.nails = Some(self.nails.map_or(nails, |least| least.min(nails)));
        let rank = Rank::of(&next);
        let place = self.kept.partition_point(|(other, _)| *other <= rank);
        self.kept.insert(place, (rank, next));
        self.kept.truncate(self.least);
        self.count += 1;
    }
}

/// How much is refused, and how much has to be mended.
type Wrong = (usize, usize);

fn wrong(findings: &[Finding]) -> Wrong {
    let refused = |finding: &&Finding| finding.severity == Severity::Refuse;
    (findings.iter().filter(refused).count(), to_mend(findings))
}

/// Legal first, then with least to mend, then cheap, then by the order of ties: each field before those under it.
#[derive(PartialEq, Eq, PartialOrd, Ord)]
struct Rank {
    wrong: Wrong,
    total: Amount,
    /// Seams near joints of plates.
    near_joints: usize,
    pieces: usize,
    flat_courses: usize,
    /// The lower bottom line first.
    above_plate: Length,
    /// Tops of courses below zero: the higher course is below, so that what is cut ends at the top.
    levels: Vec<Length>,
    seams: Vec<Length>,
}

impl Rank {
    fn of(built: &Evaluated) -> Self {
        let bands = &built.layout.bands;
        let near_joint = |finding: &&Finding| finding.code == FindingCode::SeamNearPlateJoint;
        Self {
            wrong: wrong(&built.findings),
            total: built.cost.total,
            near_joints: built.findings.iter().filter(near_joint).count(),
            pieces: built.layout.pieces.len(),
            flat_courses: bands.iter().filter(|band| band.running == Running::Flat).count(),
            above_plate: -built.layout.reach,
            levels: bands.iter().map(|band| -band.y1).collect(),
            seams: bands.iter().flat_map(|band| band.seams.iter().copied()).collect(),
        }
    }
}
