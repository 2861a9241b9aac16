//! Plans that call themselves proven against every way of cutting a few small pieces.
//!
//! The search here tries every edge-to-edge cut at every whole size and every way of sharing out the pieces; it has nothing
//! in common with the library but what a cut is.

mod cut_ground;

use cut_ground::sheet;
use edgenail::cutting::{
    Blank, CutPlan, CutRules, Drop, Part, Proof, Source, check, cut_by, fill_sheet, replay,
};
use edgenail::house::{Offcut, Sheet, Stock};
use edgenail::{Amount, Length};
use proptest::prelude::*;
use std::collections::HashMap;

/// A small house's pieces in whole units.
#[derive(Clone, Debug)]
struct Job {
    kerf: i64,
    turns: bool,
    /// Width, length, price.
    sheets: Vec<(i64, i64, i32)>,
    offcuts: Vec<(i64, i64)>,
    pieces: Vec<(i64, i64)>,
    /// What falls out of the first piece, for all but that one.
    drop: Option<(i64, i64)>,
}

/// Which of the job's pieces a rectangle of this size can be cut into, all at once.
struct Ground<'a> {
    job: &'a Job,
    known: HashMap<(u32, i64, i64), bool>,
}

impl Ground<'_> {
    fn holds(&mut self, set: u32, w: i64, l: i64) -> bool {
        if set == 0 {
            return true;
        }
        if w <= 0 || l <= 0 {
            return false;
        }
        if let Some(known) = self.known.get(&(set, w, l)) {
            return *known;
        }
        let found = self.alone(set, w, l) || self.parted(set, w, l);
        self.known.insert((set, w, l), found);
        found
    }

    fn alone(&self, set: u32, w: i64, l: i64) -> bool {
        let (a, b) = self.job.pieces[set.trailing_zeros() as usize];
        set.is_power_of_two() && ((a <= w && b <= l) || (self.job.turns && b <= w && a <= l))
    }

    fn parted(&mut self, set: u32, w: i64, l: i64) -> bool {
        if set.is_power_of_two() {
            return false;
        }
        let lowest = set & set.wrapping_neg();
        let mut near = set;
        // Every share of the set that has its first piece; the other share lies on the far side, or the near.
        while near > 0 {
            if near & lowest != 0 && near != set {
                let far = set & !near;
                let kerf = self.job.kerf;
                let across = (1..l).any(|at| self.holds(near, w, at) && self.holds(far, w, l - at - kerf));
                if across || (1..w).any(|at| self.holds(near, at, l) && self.holds(far, w - at - kerf, l)) {
                    return true;
                }
            }
            near = (near - 1) & set;
        }
        false
    }
}

impl Job {
    /// The least price of all pieces; nothing where some piece fits no sheet.
    fn least(&self) -> Option<i64> {
        let mut ground = Ground {
            job: self,
            known: HashMap::new(),
        };
        let all = (1_u32 << self.pieces.len()) - 1;
        let mut free: Vec<(u32, (i64, i64))> = self.offcuts.iter().map(|size| (all, *size)).collect();
        free.extend(self.drop.map(|size| (all & !1, size)));
        // What is cheapest for each set, from sheets alone; then with one free part after the other.
        let mut least: Vec<Option<i64>> = vec![None; all as usize + 1];
        least[0] = Some(0);
        for set in 1..=all {
            let lowest = set & set.wrapping_neg();
            let mut own = set;
            while own > 0 {
                if own & lowest != 0 {
                    let fits = |(w, l, price): &(i64, i64, i32)| {
                        ground.holds(own, *w, *l).then_some(i64::from(*price))
                    };
                    let cheapest = self.sheets.iter().filter_map(fits).min();
                    if let (Some(rest), Some(price)) = (least[(set & !own) as usize], cheapest) {
                        let sum = rest + price;
                        let place = &mut least[set as usize];
                        *place = Some(place.map_or(sum, |known| known.min(sum)));
                    }
                }
                own = (own - 1) & set;
            }
        }
        for (may, (w, l)) in free {
            let before = least.clone();
            for set in 1..=all {
                let mut own = set & may;
                while own > 0 {
                    if ground.holds(own, w, l)
                        && let Some(rest) = before[(set & !own) as usize]
                    {
                        let place = &mut least[set as usize];
                        *place = Some(place.map_or(rest, |known| known.min(rest)));
                    }
                    own = (own - 1) & set & may;
                }
            }
        }
        least[all as usize]
    }

    fn stock(&self) -> Stock {
        let kind = |(place, (w, l, price)): (usize, &(i64, i64, i32))| Sheet {
            name: format!("kind {place}"),
            price: Amount::whole(*price),
            ..sheet(Length::from_units(*w), Length::from_units(*l))
        };
        let offcut = |(w, l): &(i64, i64)| Offcut {
            sheet: "kind 0".into(),
            width: Length::from_units(*w),
            length: Length::from_units(*l),
        };
        Stock {
            sheets: self.sheets.iter().enumerate().map(kind).collect(),
            nails: vec![],
            sticks: vec![],
            offcuts: self.offcuts.iter().map(offcut).collect(),
        }
    }

    fn blanks(&self) -> Vec<Blank> {
        let blank = |(order, (w, l)): (u32, &(i64, i64))| Blank {
            wall: 0,
            piece: order,
            order,
            sheet: 0,
            width: Length::from_units(*w),
            length: Length::from_units(*l),
            may_turn: self.turns,
            drops: self
                .drop
                .filter(|_| order == 0)
                .map(|(w, l)| Drop {
                    width: Length::from_units(w),
                    length: Length::from_units(l),
                })
                .into_iter()
                .collect(),
        };
        (0_u32..).zip(&self.pieces).map(blank).collect()
    }

    fn rules(&self, effort_most: u64) -> CutRules {
        CutRules {
            kerf: Length::from_units(self.kerf),
            offcut_width_least: Length::from_units(2),
            offcut_length_least: Length::from_units(2),
            effort_most,
        }
    }

    fn plan(&self, effort_most: u64) -> CutPlan {
        let plan = cut_by(&self.stock(), &self.rules(effort_most), &self.blanks());
        assert_eq!(check(&plan, &self.stock(), Length::from_units(self.kerf)), Ok(()));
        plan
    }
}

/// Price of the new sheets, read off the plan.
fn price(plan: &CutPlan, stock: &Stock) -> Amount {
    let new = plan.sheets.iter().filter_map(|cut| match cut.source {
        Source::Sheet { sheet } => stock.sheets.get(sheet as usize).map(|sheet| sheet.price),
        _ => None,
    });
    new.sum()
}

prop_compose! {
    fn job()(
        size in (5_i64..11, 5_i64..11),
        kerf in 0_i64..2,
        turns in any::<bool>(),
        kinds in 1_usize..3,
        prices in (4_i32..9, 4_i32..12),
    )(
        pieces in prop::collection::vec((1..=size.0, 1..=size.1), 2..7),
        offcuts in prop::collection::vec((1..=size.0, 1..=size.1), 0..2),
        drop in prop::option::weighted(0.3, (1_i64..5, 1_i64..5)),
        size in Just(size), kerf in Just(kerf), turns in Just(turns), kinds in Just(kinds), prices in Just(prices),
        longer in 1_i64..4,
    ) -> Job {
        let mut sheets = vec![(size.0, size.1, prices.0), (size.0, size.1 + longer, prices.1)];
        sheets.truncate(kinds);
        Job { kerf, turns, sheets, offcuts, pieces, drop }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn nothing_is_cheaper_than_a_proven_plan(job in job()) {
        let least = job.least().expect("every piece fits a sheet");
        let (plan, stock) = (job.plan(1_000_000), job.stock());
        let least = Amount::whole(1) * least;
        prop_assert_eq!(&plan.proof, &Proof::Proven);
        prop_assert_eq!(price(&plan, &stock), least);
        prop_assert_eq!(plan.bounds.patterns, least);
    }

    /// With little work the bound still holds, and what is said of the gap is the difference.
    #[test]
    fn a_bound_holds_however_little_is_spent(job in job(), effort in 0_u64..3_000) {
        let least = Amount::whole(1) * job.least().expect("every piece fits a sheet");
        let (plan, stock) = (job.plan(effort), job.stock());
        prop_assert!(plan.bounds.least <= plan.bounds.patterns && plan.bounds.patterns <= least);
        let over = price(&plan, &stock) - plan.bounds.patterns;
        match plan.proof {
            Proof::Proven => prop_assert_eq!(over, Amount::ZERO),
            Proof::Gap { amount } => prop_assert_eq!(over, amount),
            Proof::Stopped { gap, effort: spent } => {
                prop_assert_eq!(over, gap);
                prop_assert!(spent <= effort);
            }
        }
    }

    #[test]
    fn a_filled_sheet_is_worth_most(job in job(), worths in prop::collection::vec(0_i64..20, 6)) {
        let (w, l, _) = job.sheets[0];
        let mut ground = Ground { job: &job, known: HashMap::new() };
        let worth = |set: u32| -> i64 { (0..job.pieces.len()).filter(|i| set >> i & 1 == 1).map(|i| worths[i]).sum() };
        let most = (0_u32..1 << job.pieces.len()).filter(|set| ground.holds(*set, w, l)).map(worth).max();
        let blanks = job.blanks();
        let filled = fill_sheet((Length::from_units(w), Length::from_units(l)), &job.rules(1_000_000), &blanks, &worths[..blanks.len()]);
        prop_assert_eq!((Some(filled.worth), Some(filled.bound)), (most, most));
        let parts = replay(&filled.cut, &blanks, Length::from_units(job.kerf)).expect("a legal tree");
        let cut = parts.iter().map(|part| match part.part { Part::Blank { blank, .. } => worths[blank as usize], _ => 0 });
        prop_assert_eq!(cut.sum::<i64>(), filled.worth);
    }
}
