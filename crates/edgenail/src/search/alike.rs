//! Prices of things that are alike but for one size.

use crate::length::Length;

/// Prices that change only at certain sizes: one is worked out for all between two of them.
#[derive(Debug)]
pub(super) struct Alike<T> {
    /// Sizes at which a price changes, rising.
    breaks: Vec<Length>,
    /// For each group and each stretch between breaks, the price once it is known.
    known: Vec<Option<T>>,
}

impl<T: Copy> Alike<T> {
    /// For so many groups of things; `breaks` rise.
    pub fn new(breaks: Vec<Length>, groups: usize) -> Self {
        Self {
            known: vec![None; groups * breaks.len()],
            breaks,
        }
    }

    /// The price of a thing of this group and size. Under the first break each has its own.
    pub fn of(&mut self, group: usize, size: Length, price: impl FnOnce() -> T) -> T {
        let stretch = self.breaks.partition_point(|from| *from <= size);
        let known = stretch
            .checked_sub(1)
            .and_then(|stretch| self.known.get_mut(group * self.breaks.len() + stretch));
        match known {
            Some(known) => *known.get_or_insert_with(price),
            None => price(),
        }
    }
}
