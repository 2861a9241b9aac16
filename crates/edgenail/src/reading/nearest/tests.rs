//! Known distances and names.

use super::{distance, nearest};

fn edits(a: &str, b: &str) -> usize {
    distance(&a.chars().collect::<Vec<_>>(), &b.chars().collect::<Vec<_>>())
}

#[test]
fn distances_of_textbook_pairs() {
    // Levenshtein's distance of kitten and sitting is 3, of Saturday and Sunday 3 (Wagner and Fischer 1974, from
    // memory, not checked against print); a swap of neighbours is one edit (Damerau 1964).
    assert_eq!(edits("kitten", "sitting"), 3);
    assert_eq!(edits("Saturday", "Sunday"), 3);
    assert_eq!(edits("widht", "width"), 1);
    assert_eq!(edits("", "abc"), 3);
    assert_eq!(edits("abc", ""), 3);
}

#[test]
fn only_near_names_are_proposed() {
    let known = ["width", "height", "left"];
    assert_eq!(nearest("widht", known.into_iter()), Some("width"));
    assert_eq!(nearest("hight", known.into_iter()), Some("height"));
    assert_eq!(nearest("colour", known.into_iter()), None);
    assert_eq!(nearest(&"w".repeat(1_000_000), known.into_iter()), None);
}
