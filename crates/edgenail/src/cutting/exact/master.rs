//! The cheapest mixture of patterns, in fractions.
//!
//! The revised simplex method with the inverse of the basis in full. It is written here because patterns enter while it
//! runs and what it finds is read from its prices; floating point guides only, no proof rests on it.

/// Where a pattern comes from, what it costs, and how many of each item it has.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Column {
    /// The place of its origin.
    pub origin: usize,
    pub items: Box<[u16]>,
    /// In steps of price.
    pub cost: f64,
}

impl Column {
    /// A pattern that costs so many steps of price.
    pub fn new(origin: usize, items: Box<[u16]>, price: i64) -> Self {
        Self {
            origin,
            items,
            cost: to_float(price),
        }
    }
}

/// A whole number as a guide.
pub(super) fn to_float(number: i64) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "floating point guides only")]
    let float = number as f64;
    float
}

/// What stands in a row of the basis.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Basic {
    /// A pattern, by its place in the list.
    Column(usize),
    /// An item left uncut.
    Short,
    /// More of an item than is asked for.
    Over(usize),
    /// Origins that are left, by their row.
    Left(usize),
}

/// Patterns weighed so that all items are cut.
#[derive(Clone, Debug)]
pub(super) struct Master {
    /// Rows of items.
    items: usize,
    /// For each origin its row, if there is not any number of it.
    rows: Vec<Option<usize>>,
    count: usize,
    inverse: Vec<f64>,
    basis: Vec<Basic>,
    weights: Vec<f64>,
    /// What leaving an item uncut costs.
    short: f64,
}

const NOTHING: f64 = 1e-9;

impl Master {
    /// For so many of each item and of each origin; `short` is more than an item can cost.
    pub fn new(demand: &[u32], limits: &[Option<u32>], short: f64) -> Self {
        let mut count = demand.len();
        let mut weights: Vec<f64> = demand.iter().map(|count| f64::from(*count)).collect();
        let mut basis = vec![Basic::Short; demand.len()];
        let mut rows = Vec::new();
        for limit in limits {
            rows.push(limit.map(|limit| {
                weights.push(f64::from(limit));
                basis.push(Basic::Left(count));
                count += 1;
                count - 1
            }));
        }
        let mut inverse = vec![0.0; count * count];
        for row in 0..count {
            inverse[row * count + row] = 1.0;
        }
        Self {
            items: demand.len(),
            rows,
            count,
            inverse,
            basis,
            weights,
            short,
        }
    }

    /// Weighs the patterns until no exchange makes them cheaper, or so many exchanges were made.
    pub fn optimize(&mut self, columns: &[Column], mut exchanges: usize) {
        while exchanges > 0 {
            let prices = self.prices(columns);
            let Some(entering) = self.entering(columns, &prices) else {
                return;
            };
            if !self.exchange(columns, entering) {
                return;
            }
            exchanges -= 1;
        }
    }

    /// What one more of each item, and of each limited origin, costs.
    pub fn prices(&self, columns: &[Column]) -> Vec<f64> {
        let mut prices = vec![0.0; self.count];
        for (row, basic) in self.basis.iter().enumerate() {
            let cost = match basic {
                Basic::Column(column) => columns[*column].cost,
                Basic::Short => self.short,
                Basic::Over(_) | Basic::Left(_) => 0.0,
            };
            if cost != 0.0 {
                let inverse = &self.inverse[row * self.count..(row + 1) * self.count];
                for (price, part) in prices.iter_mut().zip(inverse) {
                    *price += cost * part;
                }
            }
        }
        prices
    }

    /// The price of an origin's limit; zero where it has none.
    pub fn price_of_origin(&self, origin: usize, prices: &[f64]) -> f64 {
        self.rows[origin].map_or(0.0, |row| prices[row])
    }

    /// Patterns that are used, with how often.
    pub fn used(&self) -> impl Iterator<Item = (usize, f64)> {
        self.basis
            .iter()
            .zip(&self.weights)
            .filter_map(|(basic, weight)| match basic {
                Basic::Column(column) if *weight > NOTHING => Some((*column, *weight)),
                _ => None,
            })
    }

    fn entering(&self, columns: &[Column], prices: &[f64]) -> Option<Basic> {
        let mut best = (-1e-7, None);
        for (index, column) in columns.iter().enumerate() {
            let items: f64 = column.items.iter().map(|item| prices[usize::from(*item)]).sum();
            let gain = column.cost - items - self.price_of_origin(column.origin, prices);
            if gain < best.0 {
                best = (gain, Some(Basic::Column(index)));
            }
        }
        for (row, price) in prices.iter().enumerate() {
            let (gain, basic) = if row < self.items {
                (*price, Basic::Over(row))
            } else {
                (-*price, Basic::Left(row))
            };
            if gain < best.0 {
                best = (gain, Some(basic));
            }
        }
        best.1
    }

    /// Takes a column into the basis; nothing changes where none can leave.
    fn exchange(&mut self, columns: &[Column], entering: Basic) -> bool {
        let n = self.count;
        let mut direction = vec![0.0; n];
        let mut add = |row: usize, by: f64| {
            for (place, value) in direction.iter_mut().enumerate() {
                *value += by * self.inverse[place * n + row];
            }
        };
        match entering {
            Basic::Column(column) => {
                let column = &columns[column];
                for item in &column.items {
                    add(usize::from(*item), 1.0);
                }
                if let Some(row) = self.rows[column.origin] {
                    add(row, 1.0);
                }
            }
            Basic::Over(item) => add(item, -1.0),
            Basic::Left(row) => add(row, 1.0),
            Basic::Short => return false,
        }
        let mut leaving: Option<(f64, usize)> = None;
        for (row, by) in direction.iter().enumerate() {
            if *by > NOTHING {
                let ratio = self.weights[row] / by;
                if leaving.is_none_or(|(least, _)| ratio < least - 1e-12) {
                    leaving = Some((ratio, row));
                }
            }
        }
        let Some((ratio, leaving)) = leaving else {
            return false;
        };
        let pivot = direction[leaving];
        for (row, by) in direction.iter().enumerate() {
            if row != leaving {
                self.weights[row] = (self.weights[row] - ratio * by).max(0.0);
            }
        }
        self.weights[leaving] = ratio;
        let pivot_row: Vec<f64> = self.inverse[leaving * n..(leaving + 1) * n]
            .iter()
            .map(|part| part / pivot)
            .collect();
        for (row, by) in direction.iter().enumerate() {
            if row != leaving && *by != 0.0 {
                for (part, pivot) in self.inverse[row * n..(row + 1) * n].iter_mut().zip(&pivot_row) {
                    *part -= by * pivot;
                }
            }
        }
        self.inverse[leaving * n..(leaving + 1) * n].copy_from_slice(&pivot_row);
        self.basis[leaving] = entering;
        true
    }
}
