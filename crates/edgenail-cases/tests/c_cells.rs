//! The functions for cells, in C, against the answers to the same questions in JSON: every shared case that they can ask.

use edgenail_cases::library::{Linking, build, compile};
use edgenail_cases::scalar;
use std::collections::BTreeSet;
use std::path::Path;
use std::process::Command;

#[test]
fn cells_say_what_the_answers_in_json_say() {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR"));
    let program = folder.join("cells");
    let libraries = build(&folder.join("..")).unwrap();
    compile("tests/c/cells.c", &libraries, Linking::Static, &[], &program).unwrap();
    let scalars = scalar::all().unwrap();
    let own = scalar::own(&scalars).unwrap();
    let calls = folder.join("cells.txt");
    assert_eq!(
        scalar::ask(&scalars, &mut Command::new(program), &calls, "c").unwrap(),
        own
    );
    let (answered, refused): (Vec<_>, Vec<_>) =
        scalars.iter().partition(|scalar| scalar.said.starts_with("0\t"));
    let functions: BTreeSet<&str> = answered.iter().map(|scalar| scalar.function).collect();
    let every = [
        "anchorage",
        "drift",
        "drift_four_terms",
        "hold_down",
        "length_parse",
        "length_show",
        "nail",
        "panel_pressure",
        "unit_shear",
        "wall_line",
    ];
    assert_eq!(functions, BTreeSet::from(every));
    assert!(refused.len() > 5, "{}", refused.len());
}
