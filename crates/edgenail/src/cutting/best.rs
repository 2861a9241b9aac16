//! The best plan that is found, and how good it is known to be.

use super::bound::{self, Least};
use super::exact::{Problem, solve};
use super::open::Open;
use super::pack::{Packed, pack};
use super::policy::Policy;
use super::sheet::{is_choice, materials};
use super::{Blank, CutPlan, CutRules, Proof, WhyUncut};
use crate::amount::Amount;
use crate::house::Stock;

/// Cuts blanks, which are in building order.
pub(super) fn best(stock: &Stock, rules: &CutRules, blanks: Vec<Blank>) -> CutPlan {
    let materials = materials(stock);
    let counts = bound::counts(stock);
    let leasts = bound::leasts(stock, rules, &blanks, &materials);
    let packed: Vec<Packed> = Policy::for_count(blanks.len(), is_choice(stock))
        .map(|policy| pack(stock, rules, &blanks, policy))
        .collect();
    let Some(first) = packed.iter().min_by_key(|packed| packed.rank()) else {
        return CutPlan {
            blanks,
            sheets: vec![],
            leftovers: vec![],
            uncut: vec![],
            bounds: bound::bounds(&leasts, 0, counts),
            proof: Proof::Proven,
        };
    };
    let choosing = Choosing {
        stock,
        rules,
        blanks: &blanks,
        materials: &materials,
        counts,
        packed: &packed,
        first,
    };
    let mut work = rules.effort_most;
    let (mut opens, mut patterns, mut stopped) = (Vec::new(), 0_i64, false);
    for (material, least) in leasts.iter().enumerate() {
        let chosen = choosing.material(material, *least, &mut work);
        opens.extend(chosen.opens);
        patterns = patterns.saturating_add(chosen.bound);
        stopped |= chosen.looked;
    }
    let bounds = bound::bounds(&leasts, patterns, counts);
    let best = Packed::new(stock, opens, first.uncut().to_vec());
    let gap = best
        .compared(counts)
        .checked_sub(bounds.patterns)
        .unwrap_or_default();
    let effort = rules.effort_most - work;
    let proof = match (gap > Amount::ZERO, stopped) {
        (false, _) => Proof::Proven,
        (true, true) => Proof::Stopped { gap, effort },
        (true, false) => Proof::Gap { amount: gap },
    };
    let (sheets, leftovers, uncut) = best.finish(rules);
    CutPlan {
        blanks,
        sheets,
        leftovers,
        uncut,
        bounds,
        proof,
    }
}

struct Choosing<'a> {
    stock: &'a Stock,
    rules: &'a CutRules,
    blanks: &'a [Blank],
    materials: &'a [usize],
    counts: bool,
    packed: &'a [Packed],
    /// The best of these.
    first: &'a Packed,
}

/// The sheets of one material.
struct Chosen {
    opens: Vec<Open>,
    /// No plan for its blanks costs less.
    bound: i64,
    /// A cheaper plan was looked for and may yet exist.
    looked: bool,
}

impl Choosing<'_> {
    fn material(&self, material: usize, least: Least, work: &mut u64) -> Chosen {
        let of = |open: &&Open| self.materials.get(open.sheet).copied() == Some(material);
        let own: Vec<&Open> = self.first.opens().iter().filter(of).collect();
        let known = Packed::compare(self.stock, own.iter().copied(), self.counts);
        let bound = least.compared(self.counts);
        let as_packed = |bound, looked| Chosen {
            opens: own.iter().map(|open| (*open).clone()).collect(),
            bound,
            looked,
        };
        if known <= bound || self.lacks_sheets(material) {
            return as_packed(bound.min(known), false);
        }
        let problem = Problem::new(
            self.stock,
            self.rules,
            self.blanks,
            self.materials,
            material,
            self.counts,
        );
        let Some(problem) = problem else {
            return as_packed(bound, false);
        };
        let tried: Vec<&Open> = self
            .packed
            .iter()
            .flat_map(|packed| packed.opens().iter().filter(of))
            .collect();
        let solved = solve(&problem, self.blanks, &tried, known, bound, work);
        match solved.cheaper {
            Some(opens) => Chosen {
                looked: Packed::compare(self.stock, opens.iter(), self.counts) > solved.bound,
                bound: solved.bound,
                opens,
            },
            None => as_packed(solved.bound, known > solved.bound),
        }
    }

    /// Blanks are left uncut for want of sheets: a cheaper plan is none if it cuts fewer.
    fn lacks_sheets(&self, material: usize) -> bool {
        self.first.uncut().iter().any(|uncut| {
            let blank = self.blanks.get(uncut.blank as usize);
            let of = blank
                .and_then(|blank| self.materials.get(blank.sheet as usize))
                .copied();
            uncut.why == WhyUncut::NoneLeft && of == Some(material)
        })
    }
}
