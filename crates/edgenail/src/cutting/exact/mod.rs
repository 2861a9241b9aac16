//! Cutting that proves itself: the cheapest plan for the pieces of one material, or by how much a plan may miss it.
//!
//! Prices of a mixture of patterns bound every plan from below ([`columns`]). Where a plan that is known costs more
//! than that, plans are made from the mixture ([`dive`]), and what could still be cheaper is looked through ([`cover`]).

mod axis;
mod columns;
mod cover;
mod dive;
mod estimate;
mod fill;
mod ground;
mod lay;
mod master;
mod mend;
mod part;
mod patterns;
mod problem;

use super::open::{Node, Open};
use super::{Blank, Source};
use columns::{Rest, Values, generate};
use cover::{Covered, cover};
use dive::{Chosen, dive, whole_parts};
pub(super) use fill::fill;
use master::Column;
pub(super) use problem::Problem;
use std::collections::BTreeSet;

/// What is known of the cheapest plan.
pub(super) struct Solved {
    /// A cheaper plan than the one that was known.
    pub cheaper: Option<Vec<Open>>,
    /// No plan costs less, in the unit of prices.
    pub bound: i64,
}

/// Looks for a plan that costs less than `known`, in the unit of prices; no plan costs less than `bound`. `tried` are
/// sheets of plans for the same blanks. `work` is what may be spent, in parts looked at, and falls.
pub(super) fn solve(
    problem: &Problem,
    blanks: &[Blank],
    tried: &[&Open],
    known: i64,
    bound: i64,
    work: &mut u64,
) -> Solved {
    let step = problem.step;
    let mut solving = Solving {
        problem,
        columns: first_columns(problem, blanks, tried),
        known: known.div_euclid(step) + i64::from(known % step != 0),
        bound: bound.div_euclid(step) + i64::from(bound % step != 0),
        best: None,
    };
    solving.run(work);
    let cheaper = solving.best.as_ref().and_then(|chosen| opens(problem, chosen));
    Solved {
        cheaper,
        bound: solving.bound * step,
    }
}

struct Solving<'a> {
    problem: &'a Problem,
    columns: Vec<Column>,
    /// What the best plan costs, in steps of price.
    known: i64,
    bound: i64,
    best: Option<Chosen>,
}

impl Solving<'_> {
    fn run(&mut self, work: &mut u64) {
        let whole = Rest::all(self.problem);
        let mut share = *work * 2 / 5;
        *work -= share;
        let (master, values) = generate(
            self.problem,
            &whole,
            &mut self.columns,
            self.known,
            u64::MAX,
            &mut share,
        );
        *work += share;
        let Some(mut values) = values else { return };
        self.prove(&values);
        // What the mixture uses in full stays; then nothing does.
        let mut rest = whole.clone();
        let fixed = whole_parts(&master, &self.columns, &mut rest);
        self.finish(&fixed, &rest, work);
        self.finish(&Chosen::new(), &whole, work);
        self.mend(&values, work);
        if self.bound < self.known && *work > 0 {
            let (_, more) = generate(
                self.problem,
                &whole,
                &mut self.columns,
                self.known,
                u64::MAX,
                work,
            );
            values = more.unwrap_or(values);
            self.prove(&values);
        }
        if *work > 0 && self.cover(&Chosen::new(), &whole, &values, 1, work) {
            self.bound = self.known;
        }
    }

    fn prove(&mut self, values: &Values) {
        self.bound = self.bound.max(values.steps());
    }

    /// Makes the best plan cheaper piecemeal.
    fn mend(&mut self, values: &Values, work: &mut u64) {
        let mut round = 0;
        while self.bound < self.known && *work > 0 {
            let plan = self.best.as_ref().and_then(|best| lay::cut(self.problem, best));
            let Some(plan) = plan else { return };
            let mended = mend::mend(self.problem, values, &plan, &mut self.columns, &mut round, work);
            let Some(mended) = mended else { return };
            self.take(mended);
        }
    }

    /// Looks for plans that have these sheets, with part of the work. If they are none, what is known may be proven.
    fn finish(&mut self, fixed: &Chosen, rest: &Rest, work: &mut u64) {
        if self.bound >= self.known || *work == 0 {
            return;
        }
        let price = self.price(fixed);
        let (_, values) = generate(
            self.problem,
            rest,
            &mut self.columns,
            self.known - price,
            FINISH_WORK,
            work,
        );
        let Some(values) = values else { return };
        if values.steps() + price >= self.known {
            return;
        }
        let mut share = *work / 3;
        *work -= share;
        if let Some(chosen) = dive(self.problem, rest.clone(), &mut self.columns, &mut share) {
            self.take(fixed.iter().cloned().chain(chosen).collect());
        }
        *work += share;
        // Few patterns that fall short by little are looked through sooner than all that may belong to a plan.
        for part in [16, 4, 1] {
            let mut share = *work / 8;
            *work -= share;
            let covered = self.cover(fixed, rest, &values, part, &mut share);
            *work += share;
            if covered {
                if fixed.is_empty() {
                    self.bound = self.known;
                }
                return;
            }
        }
    }

    /// Looks for cheaper plans with these sheets until there is none, which gives true, or the work is spent.
    fn cover(&mut self, fixed: &Chosen, rest: &Rest, values: &Values, part: i64, work: &mut u64) -> bool {
        if rest.pieces() > MOST_PIECES {
            return false;
        }
        let price = self.price(fixed);
        let with = |chosen: &Chosen| {
            fixed
                .iter()
                .cloned()
                .chain(chosen.iter().cloned())
                .collect::<Chosen>()
        };
        while self.bound < self.known {
            let fits = |chosen: &Chosen| lay::loads(self.problem, &with(chosen)).is_some();
            match cover(
                self.problem,
                rest,
                values,
                self.known - 1 - price,
                part,
                work,
                fits,
            ) {
                Covered::Cheaper(chosen) => self.take(with(&chosen)),
                Covered::None => return true,
                Covered::Stopped => return false,
            }
        }
        true
    }

    fn take(&mut self, chosen: Chosen) {
        let price = self.price(&chosen);
        if price < self.known && lay::loads(self.problem, &chosen).is_some() {
            self.known = price;
            self.best = Some(chosen);
        }
    }

    /// In steps of price.
    fn price(&self, chosen: &Chosen) -> i64 {
        let prices = chosen
            .iter()
            .map(|(origin, _)| self.problem.origins[*origin].price);
        prices.sum()
    }
}

/// What may be spent on one pattern for what is left beside sheets that are fixed.
const FINISH_WORK: u64 = 500_000;
/// More pieces are not looked through one by one.
const MOST_PIECES: u32 = 2_000;

/// The patterns of sheets that were tried, each once.
fn first_columns(problem: &Problem, blanks: &[Blank], tried: &[&Open]) -> Vec<Column> {
    let mut seen = BTreeSet::new();
    for open in tried {
        let same = |source: Source| problem.origins.iter().position(|origin| origin.source == source);
        let Some(origin) = same(open.source) else { continue };
        let of = |node: &Node| match node {
            Node::Piece { blank, .. } => problem.item_of(blanks.get(*blank)?),
            _ => None,
        };
        let mut items: Vec<u16> = open.live().iter().filter_map(of).collect();
        items.sort_unstable();
        seen.insert((origin, items.into_boxed_slice()));
    }
    let column = |(origin, items): (usize, Box<[u16]>)| {
        let price = problem.origins.get(origin).map_or(0, |origin| origin.price);
        Column::new(origin, items, price)
    };
    seen.into_iter().map(column).collect()
}

/// The sheets of a plan.
fn opens(problem: &Problem, chosen: &Chosen) -> Option<Vec<Open>> {
    let loads = lay::loads(problem, chosen)?;
    let used = loads.iter().filter(|(_, load)| !load.is_empty());
    used.map(|(origin, load)| lay::lay(problem, *origin, load))
        .collect()
}
