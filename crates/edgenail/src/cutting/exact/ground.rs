//! What an area may be worth at most.

use super::master::to_float;
use super::problem::Item;

/// The most that pieces are worth which may be divided, but of which there are only so many: the pieces worth most for
/// their area come first.
#[derive(Debug)]
pub(super) struct Ground {
    /// Areas up to which each piece reaches, rising, with the worth so far and the worth of a unit of area beyond.
    reached: Vec<(i64, i64, f64)>,
}

impl Ground {
    pub fn new(items: &[Item], most: &[u32], values: &[i64]) -> Self {
        let mut pieces: Vec<(i64, i64, u32)> = items
            .iter()
            .zip(values)
            .zip(most)
            .filter(|((_, value), most)| **value > 0 && **most > 0)
            .map(|((item, value), most)| (item.w * item.l, *value, *most))
            .collect();
        pieces.sort_by(|a, b| (i128::from(b.1) * i128::from(a.0)).cmp(&(i128::from(a.1) * i128::from(b.0))));
        let (mut area, mut worth) = (0_i64, 0_i64);
        let mut reached = Vec::with_capacity(pieces.len() + 1);
        for (each, value, most) in pieces {
            reached.push((area, worth, to_float(value) / to_float(each.max(1))));
            area = area.saturating_add(each.saturating_mul(i64::from(most)));
            worth = worth.saturating_add(value.saturating_mul(i64::from(most)));
        }
        reached.push((area, worth, 0.0));
        Self { reached }
    }

    /// What an area is worth at most.
    pub fn worth(&self, area: i64) -> i64 {
        let place = self
            .reached
            .partition_point(|(from, ..)| *from <= area)
            .saturating_sub(1);
        let (from, before, each) = self.reached[place];
        #[expect(
            clippy::cast_possible_truncation,
            reason = "worths are below 2^52, so that rounding stays within the two that are added"
        )]
        let beyond = (each * to_float(area - from)) as i64;
        before + beyond + 2
    }
}
