//! The same bytes on any number of threads: a plan, and what is wrong where there is none.

#![expect(clippy::unwrap_used, reason = "a test that cannot start fails")]

use edgenail::plan::plan_house_on;
use edgenail::{demo, generate, read_house};
use std::num::NonZeroUsize;

fn on(threads: usize, text: &str) -> String {
    let (house, assumed) = read_house(text.as_bytes()).unwrap();
    match plan_house_on(NonZeroUsize::new(threads).unwrap(), house, assumed) {
        Ok(plan) => plan.json(),
        Err(error) => error.to_string(),
    }
}

fn same_on_one_two_and_eight(text: &str) {
    let alone = on(1, text);
    for threads in [2, 8] {
        assert!(on(threads, text) == alone, "{threads} threads: {alone:.80}…");
    }
}

#[test]
fn a_plan_is_the_same_on_any_number_of_threads() {
    same_on_one_two_and_eight(demo::HOUSE_JSON);
    for seed in 0..40 {
        same_on_one_two_and_eight(&generate::house_json(seed).0);
    }
}

/// Of several walls without a layout the first is told.
#[test]
fn an_error_is_the_same_on_any_number_of_threads() {
    let wall = |name: &str| {
        format!(
            r#"{{"name": "{name}", "length": "12'", "sections": [{{"bottom": {{"bears": "floor"}},
            "stack": [{{"kind": "storey"}}]}}]}}"#
        )
    };
    let walls: Vec<String> = (0..9).map(|number| wall(&format!("w{number}"))).collect();
    let sheet = r#"{"name": "s", "width": "48", "length": "96", "category": "7/16", "on_hand": 0}"#;
    let text = format!(
        r#"{{"walls": [{}], "stock": {{"sheets": [{sheet}]}}}}"#,
        walls.join(", ")
    );
    assert!(on(1, &text).contains("w0"), "{}", on(1, &text));
    same_on_one_two_and_eight(&text);
}
