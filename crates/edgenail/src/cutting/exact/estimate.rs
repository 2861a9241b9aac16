//! What a rectangle, and what is left of a sheet around a rectangle, may hold at most.

use super::axis::Axis;
use super::problem::{Item, lies};

/// Upper limits of value, as if there were any number of each piece.
///
/// The recursion over edge-to-edge cuts is that of Gilmore and Gomory, *Multistage cutting stock problems of two and
/// more dimensions* (1965); what a sheet may hold around a part is after Viswanathan and Bagchi, *Best-first search
/// methods for constrained two-dimensional cutting stock problems* (1993). Both from memory, not checked against print.
#[derive(Debug)]
pub(super) struct Estimate {
    across: Axis,
    along: Axis,
    /// What a rectangle holds at most, by its points across and along.
    inside: Vec<i64>,
    /// What can be added around a rectangle in the corner of the sheet.
    around: Vec<i64>,
}

impl Estimate {
    /// For a sheet of this size; `most` tells how many of each item one sheet may hold, `values` what each is worth.
    pub fn new(
        size: (i64, i64),
        items: &[Item],
        most: &[u32],
        values: &[i64],
        points: (usize, usize),
    ) -> Self {
        let (mut widths, mut lengths) = (Vec::new(), Vec::new());
        for ((item, most), value) in items.iter().zip(most).zip(values) {
            for (w, l, _) in lies(item).filter(|_| *most > 0 && *value > 0) {
                widths.push((w, *most));
                lengths.push((l, *most));
            }
        }
        let across = Axis::new(size.0, &merged(widths), points.0);
        let along = Axis::new(size.1, &merged(lengths), points.1);
        let mut estimate = Self {
            inside: vec![0; across.count() * along.count()],
            around: vec![0; across.count() * along.count()],
            across,
            along,
        };
        for ((item, most), value) in items.iter().zip(most).zip(values) {
            for (w, l, _) in lies(item).filter(|(w, l, _)| *most > 0 && *w <= size.0 && *l <= size.1) {
                let place = estimate.place(estimate.across.floor(w), estimate.along.floor(l));
                estimate.inside[place] = estimate.inside[place].max(*value);
            }
        }
        estimate.fill_inside();
        estimate.fill_around();
        estimate
    }

    /// How much work the tables were.
    pub fn work(&self) -> u64 {
        let (x, y) = (self.across.count(), self.along.count());
        (x * y * (x + y)) as u64 / 8
    }

    /// What can be added around a part of this size.
    pub fn around(&self, w: i64, l: i64) -> i64 {
        self.around[self.place(self.across.floor(w), self.along.floor(l))]
    }

    fn place(&self, x: usize, y: usize) -> usize {
        x * self.along.count() + y
    }

    fn fill_inside(&mut self) {
        let (xs, ys) = (self.across.count(), self.along.count());
        for x in 0..xs {
            for y in 0..ys {
                let mut best = self.inside[self.place(x, y)];
                if x > 0 {
                    best = best.max(self.inside[self.place(x - 1, y)]);
                }
                if y > 0 {
                    best = best.max(self.inside[self.place(x, y - 1)]);
                }
                for part in 1..x {
                    let rest = self.across.less(x, part);
                    if rest < part {
                        break;
                    }
                    best = best.max(self.inside[self.place(part, y)] + self.inside[self.place(rest, y)]);
                }
                for part in 1..y {
                    let rest = self.along.less(y, part);
                    if rest < part {
                        break;
                    }
                    best = best.max(self.inside[self.place(x, part)] + self.inside[self.place(x, rest)]);
                }
                let place = self.place(x, y);
                self.inside[place] = best;
            }
        }
    }

    fn fill_around(&mut self) {
        let (xs, ys) = (self.across.count(), self.along.count());
        for x in (0..xs).rev() {
            for y in (0..ys).rev() {
                let mut best = 0;
                for to in x + 1..xs {
                    let beside = self.inside[self.place(self.across.less(to, x), y)];
                    best = best.max(beside + self.around[self.place(to, y)]);
                }
                for to in y + 1..ys {
                    let beyond = self.inside[self.place(x, self.along.less(to, y))];
                    best = best.max(beyond + self.around[self.place(x, to)]);
                }
                let place = self.place(x, y);
                self.around[place] = best;
            }
        }
    }
}

/// Sizes that occur more than once, with the sum of their counts.
fn merged(mut sizes: Vec<(i64, u32)>) -> Vec<(i64, u32)> {
    sizes.sort_unstable();
    sizes.dedup_by(|next, kept| {
        let same = next.0 == kept.0;
        if same {
            kept.1 = kept.1.saturating_add(next.1);
        }
        same
    });
    sizes
}
