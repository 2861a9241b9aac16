//! A closed interval on a line.

use crate::length::Length;
use serde::Serialize;

/// A stretch of a line, from `lo` to `hi`.
///
/// ```
/// use edgenail::Length;
/// use edgenail::geometry::Interval;
/// let bay = Interval::new(Length::ZERO, Length::inches(16));
/// let stud = Interval::new(Length::inches(15), Length::inches(17));
/// assert_eq!(bay.intersect(stud), Some(Interval::new(Length::inches(15), Length::inches(16))));
/// assert_eq!(Interval::subtract(bay, &[stud]), vec![Interval::new(Length::ZERO, Length::inches(15))]);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub struct Interval {
    /// Its lower end.
    pub lo: Length,
    /// Its upper end, not below the lower.
    pub hi: Length,
}

impl Interval {
    /// The stretch between two places, in either order.
    pub fn new(a: Length, b: Length) -> Self {
        Self {
            lo: a.min(b),
            hi: a.max(b),
        }
    }

    /// How long it is.
    pub fn len(self) -> Length {
        self.hi - self.lo
    }

    /// It has no length.
    pub fn is_empty(self) -> bool {
        self.hi <= self.lo
    }

    /// A place lies on it, ends included.
    pub fn contains(self, at: Length) -> bool {
        self.lo <= at && at <= self.hi
    }

    /// All of another stretch lies on it, ends included.
    pub fn covers(self, other: Self) -> bool {
        self.lo <= other.lo && other.hi <= self.hi
    }

    /// What two stretches share, where that has a length.
    pub fn intersect(self, other: Self) -> Option<Self> {
        let (lo, hi) = (self.lo.max(other.lo), self.hi.min(other.hi));
        (lo < hi).then_some(Self { lo, hi })
    }

    /// Two stretches share more than an end.
    pub fn overlaps(self, other: Self) -> bool {
        self.lo.max(other.lo) < self.hi.min(other.hi)
    }

    /// Moved by a distance.
    #[must_use]
    pub fn shifted(self, by: Length) -> Self {
        Self {
            lo: self.lo + by,
            hi: self.hi + by,
        }
    }

    /// Longer by the same distance at both ends, or shorter where the distance is below zero; `None` where
    /// nothing with a length is left.
    #[must_use]
    pub fn grown(self, by: Length) -> Option<Self> {
        let (lo, hi) = (self.lo - by, self.hi + by);
        (lo < hi).then_some(Self { lo, hi })
    }

    /// Everything that the stretches cover, rising, with gaps between; stretches that touch become one.
    ///
    /// ```
    /// use edgenail::Length;
    /// use edgenail::geometry::Interval;
    /// let inch = |a, b| Interval::new(Length::inches(a), Length::inches(b));
    /// assert_eq!(Interval::union(vec![inch(6, 9), inch(0, 2), inch(2, 4)]), vec![inch(0, 4), inch(6, 9)]);
    /// ```
    pub fn union(mut stretches: Vec<Self>) -> Vec<Self> {
        stretches.retain(|s| !s.is_empty());
        stretches.sort_unstable();
        stretches.dedup_by(|next, kept| {
            let joins = next.lo <= kept.hi;
            if joins {
                kept.hi = kept.hi.max(next.hi);
            }
            joins
        });
        stretches
    }

    /// What is left of a stretch without the others, rising. The others must be rising and apart or touching,
    /// as [`Interval::union`] returns them.
    pub fn subtract(from: Self, taken: &[Self]) -> Vec<Self> {
        let mut left = Vec::new();
        let mut lo = from.lo;
        for cut in taken.iter().filter(|cut| cut.overlaps(from)) {
            if lo < cut.lo {
                left.push(Self { lo, hi: cut.lo });
            }
            lo = lo.max(cut.hi);
        }
        if lo < from.hi {
            left.push(Self { lo, hi: from.hi });
        }
        left
    }
}

#[cfg(test)]
mod tests;
