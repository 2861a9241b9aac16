//! Bounds of cutting against the same functions in exact fractions.
//!
//! The functions are those of Fekete and Schepers, *New classes of lower bounds for bin packing problems* (2001), from
//! memory: u(n), the steps, and U(ε), which cuts off at ε. What every plan needs is the largest sum of products over
//! both directions, rounded up.

mod cut_ground;

use cut_ground::{inch, sheet};
use edgenail::Amount;
use edgenail::cutting::{Blank, CutPlan, CutRules, Proof, cut_by};
use edgenail::house::{Sheet, Stock};
use proptest::prelude::*;

/// A fraction of whole numbers.
type Fraction = (i128, i128);

/// A function of a size's share of the whole.
#[derive(Clone, Copy)]
enum Weight {
    /// U(ε) for this ε.
    Cut(Fraction),
    /// u(n).
    Steps(i128),
}

/// Nothing is below nothing: what is left is the share itself.
const SHARE: Weight = Weight::Cut((0, 1));

fn less(a: Fraction, b: Fraction) -> bool {
    a.0 * b.1 < b.0 * a.1
}

impl Weight {
    fn of(self, share: Fraction) -> Fraction {
        let (size, whole) = share;
        match self {
            Self::Cut(least) if less((1, 2), least) => share,
            Self::Cut(least) if less(share, least) => (0, 1),
            Self::Cut(least) if less((least.1 - least.0, least.1), share) => (1, 1),
            Self::Cut(_) => share,
            Self::Steps(n) if (n + 1) * size % whole == 0 => share,
            Self::Steps(n) => ((n + 1) * size / whole, n),
        }
    }
}

/// All functions that are tried for these shares.
fn weights(shares: impl Iterator<Item = Fraction>) -> Vec<Weight> {
    let steps = (1..=11).map(Weight::Steps);
    let cuts = shares.chain([(1, 2)]).map(Weight::Cut);
    [SHARE].into_iter().chain(cuts).chain(steps).collect()
}

/// A list to be cut from one kind of sheet, in whole inches.
#[derive(Clone, Debug)]
struct List {
    sheet: (i64, i64),
    kerf: i64,
    turns: bool,
    sizes: Vec<(i64, i64)>,
}

impl List {
    /// The shares of a blank, as it may lie: each size with its kerf, in the sheet with a kerf.
    fn ways(&self, (width, length): (i64, i64)) -> Vec<[Fraction; 2]> {
        let share = |size: i64, whole: i64| (i128::from(size + self.kerf), i128::from(whole + self.kerf));
        let turned = self.turns.then_some((length, width));
        let fits = |(w, l): &(i64, i64)| *w <= self.sheet.0 && *l <= self.sheet.1;
        let ways = [(width, length)].into_iter().chain(turned).filter(fits);
        ways.map(|(w, l)| [share(w, self.sheet.0), share(l, self.sheet.1)])
            .collect()
    }

    /// Sheets by one pair of functions: each blank counts as it lies best.
    fn sheets_by(&self, f: Weight, g: Weight) -> i128 {
        // Products are sums of this fraction of a sheet: sizes over sheets, or steps.
        let ones =
            27_720 * i128::from(self.sheet.0 + self.kerf) * 27_720 * i128::from(self.sheet.1 + self.kerf);
        let product = |[w, l]: [Fraction; 2]| {
            let (f, g) = (f.of(w), g.of(l));
            assert_eq!(ones % (f.1 * g.1), 0);
            f.0 * g.0 * (ones / (f.1 * g.1))
        };
        let least = |size: &(i64, i64)| self.ways(*size).into_iter().map(product).min().unwrap_or(0);
        let sum: i128 = self.sizes.iter().map(least).sum();
        (sum + ones - 1) / ones
    }

    /// The most sheets that a pair of functions asks for. Widths are cut off at widths, lengths at lengths, each as the
    /// blank is stated.
    fn sheets(&self) -> i128 {
        let with_kerf = |size: i64, whole: i64| (i128::from(size + self.kerf), i128::from(whole + self.kerf));
        let widths = weights(self.sizes.iter().map(|(w, _)| with_kerf(*w, self.sheet.0)));
        let lengths = weights(self.sizes.iter().map(|(_, l)| with_kerf(*l, self.sheet.1)));
        let pairs = widths.iter().flat_map(|f| lengths.iter().map(move |g| (*f, *g)));
        pairs.map(|(f, g)| self.sheets_by(f, g)).max().unwrap_or(0)
    }

    fn plan(&self, price: i32) -> CutPlan {
        let stock = Stock {
            sheets: vec![Sheet {
                price: Amount::whole(price),
                may_turn: self.turns,
                ..sheet(inch(self.sheet.0), inch(self.sheet.1))
            }],
            nails: vec![],
            sticks: vec![],
            offcuts: vec![],
        };
        let rules = CutRules {
            kerf: inch(self.kerf),
            offcut_width_least: inch(16),
            offcut_length_least: inch(24),
            effort_most: 1_000_000,
        };
        let blanks: Vec<Blank> = (0..)
            .zip(&self.sizes)
            .map(|(order, (width, length))| Blank {
                wall: 0,
                piece: order,
                order,
                sheet: 0,
                width: inch(*width),
                length: inch(*length),
                may_turn: self.turns,
                drops: vec![],
            })
            .collect();
        cut_by(&stock, &rules, &blanks)
    }
}

prop_compose! {
    fn list()(sheet in (6_i64..24, 6_i64..24), kerf in 0_i64..3, turns in any::<bool>())(
        sizes in prop::collection::vec((1..=sheet.0, 1..=sheet.1), 1..12),
        sheet in Just(sheet), kerf in Just(kerf), turns in Just(turns),
    ) -> List {
        List { sheet, kerf, turns, sizes }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn bounds_are_those_of_exact_fractions(list in list()) {
        let bounds = list.plan(16).bounds;
        prop_assert_eq!(i128::from(bounds.area), list.sheets_by(SHARE, SHARE));
        prop_assert_eq!(i128::from(bounds.dual), list.sheets());
        prop_assert_eq!(bounds.least, Amount::whole(16) * i64::from(bounds.dual));
    }

    /// Where sheets cost nothing, plans are held to their number, and the gap is counted in sheets.
    #[test]
    fn free_sheets_are_counted(list in list()) {
        let plan = list.plan(0);
        prop_assert_eq!(plan.bounds.least.ten_thousandths(), 10_000 * i64::from(plan.bounds.dual));
        let over = Amount::whole(1) * i64::from(plan.new_sheets(0)) - plan.bounds.patterns;
        let gap = match plan.proof {
            Proof::Proven => Amount::ZERO,
            Proof::Gap { amount } => amount,
            Proof::Stopped { gap, .. } => gap,
        };
        prop_assert_eq!(over, gap);
        prop_assert_eq!(list.plan(3).sheets, plan.sheets);
    }
}

/// Three blanks of 30 × 50 in. fill less than one sheet of 48 × 96 in., but no two lie beside or beyond one another.
#[test]
fn more_than_half_counts_as_a_sheet() {
    let list = List {
        sheet: (48, 96),
        kerf: 0,
        turns: false,
        sizes: vec![(30, 50); 3],
    };
    let bounds = list.plan(16).bounds;
    assert_eq!(
        (bounds.area, bounds.dual, bounds.least),
        (1, 3, Amount::whole(48))
    );
    assert_eq!(list.sheets(), 3);
}

/// Four strips of 60 and four of 39 from sheets 98 wide, the saw taking 2: no 60 shares its sheet with another strip,
/// two of 39 share one, so that six sheets are the least. Only U(ε) with a strip of 39 and its kerf for ε says so.
#[test]
fn strips_that_share_no_sheet() {
    let mut sizes = vec![(60, 96); 4];
    sizes.extend([(39, 96); 4]);
    let list = List {
        sheet: (98, 96),
        kerf: 2,
        turns: false,
        sizes,
    };
    let plan = list.plan(16);
    assert_eq!(
        (plan.bounds.dual, plan.new_sheets(0), plan.proof),
        (6, 6, Proof::Proven)
    );
}
