use super::{fitted, width, wrapped};
use proptest::prelude::*;

const SIZE: i64 = 2_200;

proptest! {
    /// What is wrapped keeps every character but the spaces, and no line is wider than the room.
    #[test]
    fn wrapping_loses_nothing(text in "[ a-zA-Z0-9é×—漢]{0,80}", room in 8_000_i64..60_000) {
        let lines = wrapped(&text, room, SIZE);
        prop_assert!(lines.iter().all(|line| width(line, SIZE, false) <= room));
        let solid = |s: &str| s.chars().filter(|c| !c.is_whitespace()).collect::<String>();
        prop_assert_eq!(solid(&lines.concat()), solid(&text));
    }

    /// What is fitted is the text, or a beginning of it with an ellipsis.
    #[test]
    fn fitting_shows_what_is_left_out(text in "[ a-zA-Z0-9é]{0,80}", room in 8_000_i64..60_000) {
        let kept = fitted(&text, room, SIZE, true);
        prop_assert!(width(&kept, SIZE, true) <= room);
        match kept.strip_suffix("...") {
            Some(beginning) if kept != text => prop_assert!(text.starts_with(beginning)),
            _ => prop_assert_eq!(kept, text),
        }
    }

    /// Text only grows, in plain and in bold type, and bold is never narrower.
    #[test]
    fn width_grows_with_text(a in "\\PC{0,20}", b in "\\PC{0,20}") {
        let joined = format!("{a}{b}");
        for bold in [false, true] {
            prop_assert!(width(&joined, SIZE, bold) >= width(&a, SIZE, bold));
        }
        prop_assert!(width(&joined, SIZE, true) >= width(&joined, SIZE, false));
    }
}
