//! Runs all cases in one language and reports every failure at once.

use crate::answer::Answer;
use crate::case::{Case, load};
use crate::compare::differences;
use crate::root;
use sha2::{Digest, Sha256};
use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::fs;

/// Runs every case through `answer`, and leaves a line for each case — name, operation, digest of the answer —
/// in `target/cases/LANGUAGE.txt`, so that the answers of the languages can be compared byte for byte.
///
/// The environment variable `EDGENAIL_CASE` picks the cases whose name contains it; no file is written then.
///
/// # Errors
///
/// Every failure: cases that differ, known failures that pass, no case at all.
pub fn run(
    language: &str,
    mut answer: impl FnMut(&Case) -> Result<Answer, String>,
) -> Result<String, String> {
    let cases = load(&root().join("tests/cases")).map_err(|faults| faults.join("\n"))?;
    let filter = std::env::var("EDGENAIL_CASE").unwrap_or_default();
    let mut failures = Vec::new();
    let mut counts: BTreeMap<&str, usize> = BTreeMap::new();
    let mut lines = String::new();
    for case in cases.cases.iter().filter(|case| case.name.contains(&filter)) {
        *counts.entry(&case.operation).or_default() += 1;
        let faults = match answer(case) {
            Ok(answer) => {
                let _ = writeln!(lines, "{} {} {}", case.name, case.operation, digest(&answer));
                differences(case, &answer)
            }
            Err(fault) => vec![fault],
        };
        let known = cases.known_failures.iter().find(|known| known.name == case.name);
        match (known, faults.is_empty()) {
            (None, false) => failures.push(format!("{}: {}", case.name, faults.join("; "))),
            (Some(known), true) => {
                failures.push(format!(
                    "{}: passes, take it off the list ({})",
                    case.name, known.reason
                ));
            }
            _ => {}
        }
    }
    if counts.is_empty() {
        failures.push("no case was run".into());
    }
    if filter.is_empty() {
        let folder = root().join("target/cases");
        let written = fs::create_dir_all(&folder)
            .and_then(|()| fs::write(folder.join(format!("{language}.txt")), &lines));
        failures.extend(
            written
                .err()
                .map(|error| format!("{}: {error}", folder.display())),
        );
    }
    if failures.is_empty() {
        Ok(format!("{language}: {counts:?}"))
    } else {
        Err(failures.join("\n"))
    }
}

/// SHA-256 of an answer, in hexadecimal.
pub fn digest(answer: &Answer) -> String {
    let kind = match answer {
        Answer::Result(_) => "result",
        Answer::Error(_) => "error",
    };
    let digest = Sha256::digest(answer.text().as_bytes());
    digest.iter().fold(format!("{kind} "), |mut text, byte| {
        let _ = write!(text, "{byte:02x}");
        text
    })
}
