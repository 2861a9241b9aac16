//! Sizes that the parts of a sheet are told apart by, along one direction.

/// Rising sizes from nothing to the whole: every sum of sizes of pieces that may matter, or, where these are too many,
/// the steps of an even scale. On the scale a piece is taken for no larger than it is, so that what is found to fit
/// is never less than what fits.
#[derive(Clone, Debug)]
pub(super) struct Axis {
    points: Vec<i64>,
    /// Sizes are multiplied by this before they are looked up.
    scale: i64,
    /// For two points, the largest that their difference reaches; by the larger, then by the smaller.
    less: Vec<usize>,
    /// The last point at or before each step of 2^`step`: where a look-up begins.
    first: Vec<usize>,
    step: u32,
}

impl Axis {
    /// For a whole of this size and pieces of these sizes, each with how many of them there are; at most so many
    /// points.
    pub fn new(whole: i64, sizes: &[(i64, u32)], most: usize) -> Self {
        let (points, scale) = sums(whole, sizes, most).map_or_else(
            || {
                let steps = i64::try_from(most.max(2)).unwrap_or(i64::MAX) - 1;
                ((0..=steps).map(|step| step * whole).collect(), steps)
            },
            |points| (points, 1),
        );
        let mut axis = Self {
            points,
            scale,
            less: Vec::new(),
            first: Vec::new(),
            step: 0,
        };
        axis.index();
        let count = axis.points.len();
        axis.less = Vec::with_capacity(count * count);
        for to in 0..count {
            for from in 0..count {
                let rest = axis.points[to] - axis.points[from.min(to)];
                axis.less.push(axis.below(rest));
            }
        }
        axis
    }

    /// How many points there are.
    pub fn count(&self) -> usize {
        self.points.len()
    }

    /// The last point that is no larger than a size.
    pub fn floor(&self, size: i64) -> usize {
        self.below(size * self.scale)
    }

    /// The point that is left of one point once another is taken off.
    pub fn less(&self, whole: usize, part: usize) -> usize {
        self.less[whole * self.points.len() + part]
    }

    fn index(&mut self) {
        let last = self.points.last().copied().unwrap_or(0);
        while last >> self.step >= STEPS {
            self.step += 1;
        }
        let mut place = 0;
        for step in 0..=last >> self.step {
            while self
                .points
                .get(place + 1)
                .is_some_and(|next| *next <= step << self.step)
            {
                place += 1;
            }
            self.first.push(place);
        }
    }

    fn below(&self, scaled: i64) -> usize {
        let step = usize::try_from(scaled >> self.step)
            .unwrap_or(0)
            .min(self.first.len() - 1);
        let mut place = self.first[step];
        while self.points.get(place + 1).is_some_and(|next| *next <= scaled) {
            place += 1;
        }
        place
    }
}

/// Steps of the index.
const STEPS: i64 = 256;

/// All sums of sizes up to the whole, and the whole; nothing if they are more than so many.
fn sums(whole: i64, sizes: &[(i64, u32)], most: usize) -> Option<Vec<i64>> {
    let mut sums = vec![0];
    for (size, count) in sizes.iter().filter(|(size, _)| *size <= whole) {
        let mut front = sums.clone();
        for _ in 0..*count {
            front = front
                .iter()
                .map(|sum| sum + size)
                .filter(|sum| *sum <= whole)
                .filter(|sum| sums.binary_search(sum).is_err())
                .collect();
            if front.is_empty() {
                break;
            }
            sums.extend(&front);
            sums.sort_unstable();
            sums.dedup();
            if sums.len() >= most {
                return None;
            }
        }
    }
    if sums.last() != Some(&whole) {
        sums.push(whole);
    }
    Some(sums)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sums_of_sizes() {
        let axis = Axis::new(10, &[(3, 2), (4, 1)], 20);
        assert_eq!(axis.points, [0, 3, 4, 6, 7, 10]);
        assert_eq!(axis.floor(5), 2);
        assert_eq!(axis.less(5, 2), 3);
    }

    #[test]
    fn too_many_sums_become_an_even_scale() {
        let axis = Axis::new(100, &[(7, 9), (11, 9), (13, 9)], 11);
        assert_eq!(axis.count(), 11);
        assert_eq!(axis.floor(29), 2);
        assert_eq!(axis.less(10, 3), 7);
    }
}
