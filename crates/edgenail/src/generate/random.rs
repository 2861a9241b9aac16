//! A small stream of numbers, the same on every machine.

/// Splitmix64 (Steele, Lea, Flood, 'Fast splittable pseudorandom number generators', OOPSLA 2014; constants from
/// memory).
#[derive(Debug)]
pub(super) struct Random(u64);

impl Random {
    pub fn new(seed: u64) -> Self {
        Self(seed ^ 0x5EED_0F5E_ED00_1234)
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// From 0 up to below `count`.
    pub fn below(&mut self, count: usize) -> usize {
        let count = u64::try_from(count).unwrap_or(1).max(1);
        usize::try_from(self.next() % count).unwrap_or(0)
    }

    /// From `least` to `most`, both included.
    pub fn between(&mut self, least: i64, most: i64) -> i64 {
        let span = usize::try_from(most - least + 1).unwrap_or(1);
        least + i64::try_from(self.below(span)).unwrap_or(0)
    }

    /// True so often in a hundred.
    pub fn percent(&mut self, share: usize) -> bool {
        self.below(100) < share
    }
}
