//! A copy of the repository with every mutant that compiles.

use crate::list::Mutant;
use crate::weave::{Woven, blamed, weave};
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};
use std::hash::{DefaultHasher, Hash, Hasher};
use std::path::{Path, PathBuf};
use std::process::{Command, Output};
use std::{fs, io};

const LIB: &str = "crates/edgenail/src/lib.rs";

/// What the core asks at every place that has a mutant: which one is on. With `MUTANTS_REACHED` set, the places that a
/// test comes by are written to that file.
const SWITCH: &str = "
#[doc(hidden)]
pub(crate) fn mutant_on(site: u32) -> u32 {
    use std::io::Write;
    use std::sync::{Mutex, OnceLock};
    type Reached = Mutex<(std::collections::BTreeSet<u32>, std::fs::File)>;
    static ON: OnceLock<(u32, Option<Reached>)> = OnceLock::new();
    let (on, reached) = ON.get_or_init(|| {
        let on = std::env::var(\"MUTANT\").ok().and_then(|id| id.parse().ok()).unwrap_or(0);
        let file = std::env::var(\"MUTANTS_REACHED\").ok().and_then(|path| std::fs::File::create(path).ok());
        (on, file.map(|file| Mutex::new((std::collections::BTreeSet::new(), file))))
    });
    if let Some(mut reached) = reached.as_ref().and_then(|reached| reached.lock().ok()) {
        if reached.0.insert(site) {
            let _ = writeln!(reached.1, \"{site}\");
        }
    }
    *on
}
";

/// The copy, and by mutant the place under which it counts as reached.
pub struct Built {
    pub top: PathBuf,
    pub sites: BTreeMap<u32, u32>,
}

/// Copies what git tracks to `top`, and weaves the mutants in; what the compiler refuses is left out, also the next time
/// that the same mutants are built. What has not changed is not written again, so that it is not compiled again.
pub fn build(root: &Path, top: &Path, mutants: &[Mutant]) -> Result<Built, String> {
    let mut files: BTreeMap<&str, Vec<&Mutant>> = BTreeMap::new();
    for mutant in mutants {
        files.entry(&mutant.file).or_default().push(mutant);
    }
    let to_file = |error: io::Error| format!("{}: {error}", top.display());
    copy(root, top, |file| file == LIB || files.contains_key(file)).map_err(to_file)?;
    let plain = fs::read_to_string(root.join(LIB)).map_err(to_file)?;
    write(&top.join(LIB), (plain + SWITCH).as_bytes()).map_err(to_file)?;
    // Another type in the same place, such as an empty iterator, is no value that the function may return.
    let of_another_type = |mutant: &&&Mutant| mutant.replacement.starts_with("::std::iter");
    let mut refused: BTreeSet<u32> = mutants
        .iter()
        .filter(|one| of_another_type(&one))
        .map(|one| one.id)
        .collect();
    let known = top.join(format!("target/refused-{:016x}", hash(root, &files)?));
    let before = fs::read_to_string(&known).unwrap_or_default();
    refused.extend(before.lines().filter_map(|id| id.parse::<u32>().ok()));
    loop {
        let mut sites = BTreeMap::new();
        for (file, of_file) in &files {
            let source = fs::read_to_string(root.join(file)).map_err(|error| format!("{file}: {error}"))?;
            let left: Vec<&Mutant> = of_file
                .iter()
                .filter(|one| !refused.contains(&one.id))
                .copied()
                .collect();
            let Woven { text, sites: own } =
                weave(&source, &left).map_err(|error| format!("{file}: {error}"))?;
            write(&top.join(file), text.as_bytes()).map_err(to_file)?;
            sites.extend(own);
        }
        let out = cargo(
            top,
            &["check", "-p", "edgenail", "--lib", "--message-format=json"],
        )?;
        let before = refused.len();
        refused.extend(errors(&out).filter_map(|(file, line, column)| {
            let text = fs::read_to_string(top.join(file)).ok()?;
            blamed(text.lines().nth(line - 1)?, column)
        }));
        if out.status.success() {
            let ids: Vec<String> = refused.iter().map(u32::to_string).collect();
            write(&known, ids.join("\n").as_bytes()).map_err(to_file)?;
            return Ok(Built {
                top: top.into(),
                sites,
            });
        }
        if refused.len() == before {
            return Err(String::from_utf8_lossy(&out.stderr).into_owned());
        }
    }
}

/// Runs cargo in the copy, where no lint fails a build.
pub fn cargo(top: &Path, arguments: &[&str]) -> Result<Output, String> {
    let mut command = Command::new("cargo");
    command
        .args(arguments)
        .current_dir(top)
        .env("RUSTFLAGS", "--cap-lints=allow");
    command
        .env("CARGO_PROFILE_TEST_DEBUG", "0")
        .env("CARGO_PROFILE_DEV_DEBUG", "0")
        .env("CARGO_INCREMENTAL", "0");
    command.output().map_err(|error| format!("cargo: {error}"))
}

/// What the mutants are made of: their sources and their words.
fn hash(root: &Path, files: &BTreeMap<&str, Vec<&Mutant>>) -> Result<u64, String> {
    let mut hasher = DefaultHasher::new();
    for (file, mutants) in files {
        let source = fs::read_to_string(root.join(file)).map_err(|error| format!("{file}: {error}"))?;
        source.hash(&mut hasher);
        mutants
            .iter()
            .for_each(|one| (one.id, &one.name).hash(&mut hasher));
    }
    Ok(hasher.finish())
}

fn write(to: &Path, text: &[u8]) -> io::Result<()> {
    if fs::read(to).is_ok_and(|there| there == text) {
        return Ok(());
    }
    fs::create_dir_all(to.parent().unwrap_or(to))?;
    fs::write(to, text)
}

/// Copies what git tracks, but for what is woven, and takes away what was copied before and is tracked no more.
fn copy(root: &Path, top: &Path, is_woven: impl Fn(&str) -> bool) -> io::Result<()> {
    let tracked = Command::new("git")
        .args(["ls-files", "-z"])
        .current_dir(root)
        .output()?;
    let tracked = String::from_utf8_lossy(&tracked.stdout).into_owned();
    let now: BTreeSet<&str> = tracked.split('\0').filter(|file| !file.is_empty()).collect();
    let list = top.join("target/copied");
    let before = fs::read_to_string(&list).unwrap_or_default();
    for gone in before
        .split('\0')
        .filter(|file| !file.is_empty() && !now.contains(file))
    {
        fs::remove_file(top.join(gone))?;
    }
    for file in now.into_iter().filter(|file| !is_woven(file)) {
        write(&top.join(file), &fs::read(root.join(file))?)?;
    }
    write(&list, tracked.as_bytes())
}

/// The files, lines and columns that errors of the compiler point at.
fn errors(out: &Output) -> impl Iterator<Item = (String, usize, usize)> {
    let text = String::from_utf8_lossy(&out.stdout).into_owned();
    let lines: Vec<Value> = text
        .lines()
        .filter_map(|line| serde_json::from_str(line).ok())
        .collect();
    let spans = lines
        .into_iter()
        .filter(|line| line["message"]["level"] == "error")
        .flat_map(|line| {
            let spans = line["message"]["spans"].as_array().cloned().unwrap_or_default();
            spans
                .into_iter()
                .filter(|span| span["is_primary"] == true)
                .collect::<Vec<Value>>()
        });
    spans.filter_map(|span| {
        let number = |field: &str| usize::try_from(span[field].as_u64()?).ok();
        Some((
            span["file_name"].as_str()?.to_string(),
            number("line_start")?,
            number("column_start")?,
        ))
    })
}
