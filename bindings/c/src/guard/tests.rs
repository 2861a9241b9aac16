use super::{Fault, errors, guard, read_only};
use crate::status::edgenail_status as Status;

#[test]
fn a_panic_becomes_a_status_and_an_entry() {
    let status = guard(|| panic!("on purpose"));
    assert_eq!(status, Status::Internal as i32);
    let entry = errors(|errors| errors.entries[0].clone()).unwrap();
    assert_eq!(entry.code, "internal");
}

#[test]
fn a_good_call_clears_the_list_and_a_reader_leaves_it() {
    let fault = || Err(Fault::argument(Status::NullPointer, "plan", "is NULL"));
    assert_eq!(guard(fault), 1);
    assert_eq!(read_only(fault), 1);
    assert_eq!(
        errors(|errors| errors.entries[0].code.clone()).as_deref(),
        Some("null_pointer")
    );
    assert_eq!(guard(|| Ok(())), 0);
    assert_eq!(errors(|errors| errors.entries.len()), Some(0));
}

#[test]
fn each_thread_has_its_own_list() {
    assert_eq!(
        guard(|| Err(Fault::argument(Status::NotFound, "table", "there is none"))),
        4
    );
    let other = std::thread::spawn(|| errors(|errors| errors.entries.len()))
        .join()
        .unwrap();
    assert_eq!(other, Some(0));
    assert_eq!(errors(|errors| errors.entries.len()), Some(1));
}
