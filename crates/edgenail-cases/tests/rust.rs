//! The shared cases, in Rust.

use edgenail::issue::Code;
use std::collections::BTreeSet;

#[test]
fn every_shared_case_holds_in_rust() {
    let said = edgenail_cases::run::run("rust", edgenail_cases::answer::rust);
    assert!(said.is_ok(), "{}", said.unwrap_err());
}

/// Codes that no text in a file of cases can bring about: bytes that are no text, a document of more than 64 MiB, plans of
/// several houses that do not go together, a contradiction of the library's own.
const WITHOUT_CASE: [Code; 4] = [Code::NotUtf8, Code::TooLarge, Code::StreetUnlike, Code::Internal];

#[test]
fn every_code_has_a_case() {
    let loaded = edgenail_cases::case::load(&edgenail_cases::root().join("tests/cases")).unwrap();
    let told: BTreeSet<&str> = loaded
        .cases
        .iter()
        .filter_map(|case| case.expect_error.as_ref())
        .map(|error| error.code.as_str())
        .collect();
    for code in Code::ALL {
        assert_eq!(
            told.contains(code.name()),
            !WITHOUT_CASE.contains(code),
            "{}",
            code.name()
        );
    }
}
