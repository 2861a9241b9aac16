//! Help with misspelt words.

use super::{distance, nearest};
use proptest::prelude::*;

#[test]
fn known_distances() {
    // The pair that textbooks use for this measure.
    assert_eq!(distance("kitten", "sitting"), 3);
    assert_eq!(distance("widht", "width"), 1);
    assert_eq!(distance("", "abc"), 3);
}

#[test]
fn only_near_words_are_named() {
    let words = ["width", "height", "left"];
    assert_eq!(nearest("widht", words.into_iter()), Some("width"));
    assert_eq!(nearest("Heigth", words.into_iter()), Some("height"));
    assert_eq!(nearest("colour", words.into_iter()), None);
    assert_eq!(nearest(&"w".repeat(1_000_000), words.into_iter()), None);
}

proptest! {
    #[test]
    fn distance_is_the_same_both_ways_and_nothing_for_equals(a in "[a-d]{0,8}", b in "[a-d]{0,8}") {
        prop_assert_eq!(distance(&a, &b), distance(&b, &a));
        prop_assert_eq!(distance(&a, &b) == 0, a == b);
        prop_assert!(distance(&a, &b) <= a.len().max(b.len()));
    }
}
