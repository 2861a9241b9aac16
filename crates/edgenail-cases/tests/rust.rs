//! The shared cases, in Rust.

#[test]
fn every_shared_case_holds_in_rust() {
    let said = edgenail_cases::run::run("rust", edgenail_cases::answer::rust);
    assert!(said.is_ok(), "{}", said.unwrap_err());
}
