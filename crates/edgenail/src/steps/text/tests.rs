use super::ranges;

fn marks(text: &str) -> Vec<String> {
    text.split(' ').map(str::to_owned).collect()
}

#[test]
fn marks_that_follow_each_other_are_told_by_the_first_and_the_last() {
    for (given, told) in [
        ("A1", "A1"),
        ("A1 A2", "A1, A2"),
        ("A1 A2 A3", "A1 to A3"),
        ("A11 A10 A9 A1", "A11 to A9, A1"),
        ("A2 A3 A4 B5 B6 AA7 AA8 AA9", "A2 to A4, B5, B6, AA7 to AA9"),
        ("A1 A3 A4 A5 A4", "A1, A3 to A5, A4"),
    ] {
        assert_eq!(ranges(&marks(given)), told);
    }
}
