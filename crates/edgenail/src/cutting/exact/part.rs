//! Parts of a sheet: pieces, and parts set side by side.

/// How a part is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Made {
    /// It is one piece.
    Piece { item: u16, turned: bool },
    /// Two parts, the second beyond the first along the sheet's length or beside it across its width.
    Join { across: bool, first: u32, second: u32 },
}

/// A rectangle with its pieces, sizes with their kerfs.
#[derive(Clone, Debug)]
pub(super) struct Part {
    pub w: i64,
    pub l: i64,
    /// Items, rising, as often as they occur.
    pub items: Box<[u16]>,
    pub value: i64,
    pub made: Made,
}

/// All items of two lists, rising; nothing if one of them occurs more often than `most` allows.
pub(super) fn together(a: &[u16], b: &[u16], most: &[u32]) -> Option<Box<[u16]>> {
    let mut both = Vec::with_capacity(a.len() + b.len());
    let (mut a, mut b) = (a.iter().copied().peekable(), b.iter().copied().peekable());
    let mut times = 0;
    loop {
        let next = match (a.peek(), b.peek()) {
            (Some(x), Some(y)) if x <= y => a.next(),
            (Some(_), None) => a.next(),
            (_, Some(_)) => b.next(),
            (None, None) => break,
        };
        let Some(item) = next else { break };
        times = if both.last() == Some(&item) { times + 1 } else { 1 };
        if times > most.get(usize::from(item)).copied().unwrap_or(0) {
            return None;
        }
        both.push(item);
    }
    Some(both.into())
}

/// A number that lists with the same items share.
pub(super) fn mark(items: &[u16]) -> u64 {
    items.iter().fold(0, |sum, item| sum ^ spread(sum, *item))
}

/// One step of the mixing of `SplitMix64` (Steele, Lea and Flood, 2014; constants from memory).
fn spread(sum: u64, item: u16) -> u64 {
    let mut mixed = sum
        .rotate_left(7)
        .wrapping_add((u64::from(item) + 1).wrapping_mul(0x9e37_79b9_7f4a_7c15));
    mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    mixed ^ (mixed >> 27)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lists_are_merged_within_their_counts() {
        let most = [1, 2, 1];
        assert_eq!(
            together(&[0, 1], &[1, 2], &most).as_deref(),
            Some(&[0, 1, 1, 2][..])
        );
        assert_eq!(together(&[0, 1], &[0], &most), None);
        assert_eq!(together(&[1, 1], &[1], &most), None);
    }
}
