//! Patterns that make a mixture cheaper, and what their prices prove.
//!
//! Column generation after Gilmore and Gomory, *A linear programming approach to the cutting-stock problem* (1961); the
//! bound from prices that are not yet the best is Farley's (1990). Both from memory, not checked against print.

use super::master::{Column, Master, to_float};
use super::patterns::{Outcome, Room, Wanted, patterns};
use super::problem::{Origin, Problem};

/// One unit of price, in the whole numbers that values of pieces are counted in.
pub(super) const UNIT: i64 = 1 << 24;

/// Values of pieces that no sheet's content exceeds the price of.
#[derive(Clone, Debug)]
pub(super) struct Values {
    /// For each item.
    pub items: Vec<i64>,
    /// For each origin, by how much its content may exceed its price.
    pub excess: Vec<i64>,
    /// What all pieces are worth, less what limited origins may exceed their price by: no plan costs less.
    pub bound: i64,
}

/// What is left to be cut, and of what.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Rest {
    pub demand: Vec<u32>,
    /// Of each origin.
    pub limits: Vec<Option<u32>>,
}

impl Values {
    /// What no plan costs less than, in whole steps of price.
    pub fn steps(&self) -> i64 {
        (self.bound + UNIT - 1).div_euclid(UNIT)
    }
}

impl Rest {
    pub fn all(problem: &Problem) -> Self {
        Self {
            demand: problem.demand.clone(),
            limits: problem.origins.iter().map(|origin| origin.limit).collect(),
        }
    }

    /// How many pieces are left.
    pub fn pieces(&self) -> u32 {
        self.demand.iter().sum()
    }

    pub fn is_empty(&self) -> bool {
        self.demand.iter().all(|count| *count == 0)
    }

    /// How many of each item may come from one of an origin.
    pub fn most(&self, origin: &Origin) -> Vec<u32> {
        let both = origin.most.iter().zip(&self.demand);
        both.map(|(most, rest)| *most.min(rest)).collect()
    }

    /// Takes a pattern out; what it has more of is left out.
    pub fn take(&mut self, origin: usize, items: &[u16]) {
        for item in items {
            if let Some(count) = self.demand.get_mut(usize::from(*item)) {
                *count = count.saturating_sub(1);
            }
        }
        if let Some(Some(limit)) = self.limits.get_mut(origin) {
            *limit = limit.saturating_sub(1);
        }
    }
}

/// Adds patterns to the list until none makes the mixture cheaper, the bound reaches `enough`, or the work is spent.
/// Returns the mixture and the best values that were proven. The search for one pattern ends once it has looked at so many
/// parts as `patience` says, and has found one or not.
pub(super) fn generate(
    problem: &Problem,
    rest: &Rest,
    columns: &mut Vec<Column>,
    enough: i64,
    patience: u64,
    work: &mut u64,
) -> (Master, Option<Values>) {
    let dearest = problem
        .origins
        .iter()
        .map(|origin| origin.price)
        .max()
        .unwrap_or(1);
    let mut master = Master::new(&rest.demand, &rest.limits, to_float(10 * dearest));
    let mut proven: Option<Values> = None;
    loop {
        master.optimize(columns, 100 + 20 * (columns.len() + rest.demand.len()));
        let prices = master.prices(columns);
        let values: Vec<i64> = prices
            .iter()
            .take(rest.demand.len())
            .map(|price| to_units(*price).max(1))
            .collect();
        let (better, values) = improve(problem, rest, (&master, &prices), values, columns, patience, work);
        if let Some(values) =
            values.filter(|values| proven.as_ref().is_none_or(|best| best.bound < values.bound))
        {
            proven = Some(values);
        }
        let reached = proven
            .as_ref()
            .is_some_and(|values| values.bound > (enough - 1) * UNIT);
        if !better || reached || *work == 0 {
            return (master, proven);
        }
    }
}

/// Looks for a better pattern for each origin, and lowers the values until they prove something.
fn improve(
    problem: &Problem,
    rest: &Rest,
    (master, prices): (&Master, &[f64]),
    mut values: Vec<i64>,
    columns: &mut Vec<Column>,
    patience: u64,
    work: &mut u64,
) -> (bool, Option<Values>) {
    let mut better = false;
    let mut most_worth = Vec::new();
    let (mut worth, mut of) = (1, 1);
    for (index, origin) in problem.origins.iter().enumerate() {
        let own = origin.price * UNIT;
        let above = own + to_units(-master.price_of_origin(index, prices)).max(0);
        if rest.limits[index] == Some(0) {
            most_worth.push(0);
            continue;
        }
        let most = rest.most(origin);
        let room = Room {
            size: origin.size,
            items: &problem.items,
            most: &most,
        };
        let outcome = search(&room, &values, above + SLIGHT, patience, work);
        for found in &outcome.found {
            let column = Column::new(index, outcome.parts[*found as usize].items.clone(), origin.price);
            if !columns.contains(&column) {
                columns.push(column);
                better = true;
            }
        }
        most_worth.push(outcome.upper);
        // The kind whose content exceeds its price by the largest share.
        if origin.limit.is_none()
            && i128::from(outcome.upper) * i128::from(of) > i128::from(worth) * i128::from(own)
        {
            (worth, of) = (outcome.upper, own);
        }
    }
    if of == 0 {
        return (better, None);
    }
    let lowered = |value: i64, up: bool| {
        let product = i128::from(value) * i128::from(of);
        let floor = product.div_euclid(i128::from(worth));
        let exact = floor * i128::from(worth) == product;
        i64::try_from(if up && !exact { floor + 1 } else { floor }).unwrap_or(0)
    };
    if worth > of {
        for value in &mut values {
            *value = lowered(*value, false).max(0);
        }
        for worth in &mut most_worth {
            *worth = lowered(*worth, true);
        }
    }
    let excess: Vec<i64> = problem
        .origins
        .iter()
        .zip(&most_worth)
        .map(|(origin, worth)| (worth - origin.price * UNIT).max(0))
        .collect();
    let all: i64 = values
        .iter()
        .zip(&rest.demand)
        .map(|(value, count)| value * i64::from(*count))
        .sum();
    let free: i64 = excess
        .iter()
        .zip(&rest.limits)
        .map(|(excess, limit)| excess * i64::from(limit.unwrap_or(0)))
        .sum();
    let proven = Values {
        items: values,
        excess,
        bound: all - free,
    };
    (better, Some(proven))
}

/// The best pattern for these values, and those that were the best on the way; more work is spent only where little of
/// it finds none.
fn search(room: &Room<'_>, values: &[i64], above: i64, patience: u64, work: &mut u64) -> Outcome {
    let mut most = LITTLE_WORK;
    loop {
        let given = (*work).min(most);
        let mut share = given;
        let outcome = patterns(room, values, Wanted::Best { above }, POINTS, &mut share);
        *work -= given - share;
        if !outcome.stopped || !outcome.found.is_empty() || *work == 0 || most >= patience {
            return outcome;
        }
        most *= 8;
    }
}

/// Parts looked at for one pattern at first.
pub(super) const LITTLE_WORK: u64 = 30_000;
/// Sizes told apart across and along a sheet.
pub(super) const POINTS: (usize, usize) = (48, 64);
/// What rounding may add up to in one pattern.
const SLIGHT: i64 = 64;

fn to_units(price: f64) -> i64 {
    #[expect(
        clippy::cast_possible_truncation,
        reason = "prices are far below 2^38; what is rounded is proven anew"
    )]
    let units = libm::round(price * to_float(UNIT)) as i64;
    units
}
