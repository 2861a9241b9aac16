//! Cases as they are written down.

use serde::Deserialize;
use serde_json::Value;
use serde_json::value::RawValue;
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

/// Folders of `tests/cases` whose files have another form, and tests of their own.
const OTHER_FORMS: [&str; 1] = ["changes"];

/// One case.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Case {
    /// A name that no other case has.
    pub name: String,
    /// The operation of the library, such as `plan`.
    pub operation: String,
    /// Where the expected result is from.
    pub source: Source,
    /// The input as JSON; for `plan` a string is the text of the document itself.
    pub input: Option<Box<RawValue>>,
    /// A file that holds the input, beside the case's own file.
    pub input_file: Option<String>,
    /// What must come out: JSON pointer to value.
    #[serde(default)]
    pub expect: BTreeMap<String, Value>,
    /// Which fault must be found.
    pub expect_error: Option<ExpectedError>,
    /// The relative difference allowed at a JSON pointer.
    #[serde(default)]
    pub tolerance: BTreeMap<String, f64>,
    /// The input's text.
    #[serde(skip)]
    pub text: String,
    /// The case reproduces a number or a statement that was published elsewhere.
    #[serde(skip)]
    pub validation: bool,
}

/// The folder of the cases that hold the library to its own definitions. Of the others, those whose knowledge was
/// obtained in one of the [`UNPUBLISHED`] ways are no validation either.
const OWN: &str = "own";

/// Ways in which knowledge of the trade is obtained without a publication, or without one that was looked at.
const UNPUBLISHED: [&str; 4] = [
    "arithmetic",
    "common practice",
    "a standard recalled",
    "an example recalled",
];

/// Where the expected result is from.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Source {
    /// A name listed in `sources.json`.
    pub id: String,
    /// Where in the source: a table, section, figure or page.
    pub place: Option<String>,
}

/// A fault that must be found.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ExpectedError {
    /// The kind of fault.
    pub code: String,
    /// JSON pointer to the field of the input.
    #[serde(default)]
    pub path: Option<String>,
    /// What else the error's document says: JSON pointer to value.
    #[serde(default)]
    pub says: BTreeMap<String, Value>,
}

/// A source, as `sources.json` describes it.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SourceEntry {
    /// Title, or what kind of knowledge it is.
    pub title: String,
    /// Edition or date.
    #[serde(default)]
    pub edition: Option<String>,
    /// How it was obtained: `seen`, `memory`, `common practice`, or `own`.
    pub obtained: String,
}

/// A case that is known to fail, with the reason.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct KnownFailure {
    /// The case's name.
    pub name: String,
    /// Why it fails.
    pub reason: String,
}

/// Every case, in the order of their files' paths, and the known failures.
#[derive(Debug)]
pub struct Cases {
    /// The cases.
    pub cases: Vec<Case>,
    /// The sources.
    pub sources: BTreeMap<String, SourceEntry>,
    /// The known failures.
    pub known_failures: Vec<KnownFailure>,
}

/// Loads every case below a folder.
///
/// # Errors
///
/// Everything that is wrong with the files: unreadable ones, unknown keys, unknown sources, names used twice.
pub fn load(folder: &Path) -> Result<Cases, Vec<String>> {
    let mut faults = Vec::new();
    let sources: BTreeMap<String, SourceEntry> = read(&folder.join("sources.json"), &mut faults);
    let known_failures: Vec<KnownFailure> = read(&folder.join("known_failures.json"), &mut faults);
    let mut cases = Vec::new();
    for path in files(folder, &mut faults) {
        let read: Vec<Case> = read(&path, &mut faults);
        for mut case in read {
            match input(&case, &path) {
                Ok(text) => case.text = text,
                Err(fault) => faults.push(format!("{}: {fault}", case.name)),
            }
            let own_folder = path.parent().is_some_and(|folder| folder.ends_with(OWN));
            match sources.get(&case.source.id) {
                None => faults.push(format!("{}: sources.json has no `{}`", case.name, case.source.id)),
                Some(source) if (source.obtained == OWN) != own_folder => {
                    faults.push(format!(
                        "{}: own definitions, and only those, belong to `own/`",
                        case.name
                    ));
                }
                Some(source) => {
                    let unpublished = UNPUBLISHED.iter().any(|way| source.obtained.starts_with(way));
                    case.validation = !own_folder && !unpublished;
                }
            }
            if case.expect.is_empty() == case.expect_error.is_none() {
                faults.push(format!("{}: needs either `expect` or `expect_error`", case.name));
            }
            cases.push(case);
        }
    }
    let mut names = BTreeSet::new();
    let twice = cases.iter().filter(|case| !names.insert(&case.name));
    faults.extend(twice.map(|case| format!("{}: the name is used twice", case.name)));
    let unknown = known_failures
        .iter()
        .filter(|failure| !names.contains(&failure.name));
    faults.extend(unknown.map(|failure| format!("{}: known failure, but no such case", failure.name)));
    if faults.is_empty() {
        Ok(Cases {
            cases,
            sources,
            known_failures,
        })
    } else {
        Err(faults)
    }
}

fn input(case: &Case, path: &Path) -> Result<String, String> {
    match (&case.input, &case.input_file) {
        (Some(input), None) => {
            let text = input.get();
            if case.operation == "plan" && text.starts_with('"') {
                return serde_json::from_str(text).map_err(|error| error.to_string());
            }
            Ok(text.to_owned())
        }
        (None, Some(file)) => {
            let file = path.with_file_name(file);
            fs::read_to_string(&file).map_err(|error| format!("{}: {error}", file.display()))
        }
        _ => Err("needs either `input` or `input_file`".into()),
    }
}

fn read<T: for<'a> Deserialize<'a> + Default>(path: &Path, faults: &mut Vec<String>) -> T {
    let text = fs::read_to_string(path).map_err(|error| error.to_string());
    text.and_then(|text| serde_json::from_str(&text).map_err(|error| error.to_string()))
        .unwrap_or_else(|fault| {
            faults.push(format!("{}: {fault}", path.display()));
            T::default()
        })
}

/// The case files: every `*.json` one folder down, sorted; files in folders of inputs lie deeper.
fn files(folder: &Path, faults: &mut Vec<String>) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for topic in entries(folder, faults) {
        let name = topic.file_name().unwrap_or_default().to_string_lossy();
        if topic.is_dir() && !OTHER_FORMS.contains(&name.as_ref()) {
            let inside = entries(&topic, faults);
            found.extend(
                inside
                    .into_iter()
                    .filter(|path| path.extension().is_some_and(|end| end == "json")),
            );
        }
    }
    found
}

fn entries(folder: &Path, faults: &mut Vec<String>) -> Vec<PathBuf> {
    match fs::read_dir(folder) {
        Ok(entries) => {
            let mut paths: Vec<_> = entries
                .filter_map(|entry| entry.ok().map(|entry| entry.path()))
                .collect();
            paths.sort();
            paths
        }
        Err(error) => {
            faults.push(format!("{}: {error}", folder.display()));
            Vec::new()
        }
    }
}
