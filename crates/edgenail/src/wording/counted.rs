//! Counts in words.

use std::fmt::Display;

/// A count with the word for one or for several: `1 block`, `3 blocks`.
pub(crate) fn counted<N: Copy + Display + PartialEq + From<u8>>(
    count: N,
    one: &str,
    several: &str,
) -> String {
    let name = if count == N::from(1) { one } else { several };
    format!("{count} {name}")
}

#[cfg(test)]
mod tests {
    use super::counted;

    /// English grammar: one is singular, none and several are plural.
    #[test]
    fn only_one_is_singular() {
        let said: Vec<String> = (0_u32..3).map(|count| counted(count, "box", "boxes")).collect();
        assert_eq!(said, ["0 boxes", "1 box", "2 boxes"]);
    }
}
