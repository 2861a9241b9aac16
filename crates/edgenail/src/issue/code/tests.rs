//! The table of codes is consistent in itself.

use super::Code;
use std::collections::BTreeSet;

#[test]
fn names_and_numbers_are_unique_and_in_order() {
    let names: BTreeSet<&str> = Code::ALL.iter().map(|code| code.name()).collect();
    assert_eq!(names.len(), Code::ALL.len());
    assert!(
        Code::ALL
            .windows(2)
            .all(|pair| pair[0].number() < pair[1].number())
    );
}

#[test]
fn json_shows_the_name() {
    for code in Code::ALL {
        assert_eq!(
            serde_json::to_string(code).unwrap(),
            format!("\"{}\"", code.name())
        );
        assert_eq!(Code::named(code.name()), Some(*code));
    }
}
