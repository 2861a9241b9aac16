//! Every mutant against the tests that come by its place, the quickest first.

use crate::build::{Built, cargo};
use crate::list::Mutant;
use serde_json::Value;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::Mutex;
use std::time::{Duration, Instant};
use std::{fs, thread};

/// Test programs that look at no place of the core more closely than the others, and take long.
const LEFT_OUT: [&str; 5] = ["attack", "mirror", "c", "c_cells", "c_programs"];

/// A test of a test program.
#[derive(Clone, Debug)]
struct Test {
    program: PathBuf,
    folder: PathBuf,
    name: String,
    takes: Duration,
}

/// What became of a mutant.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fate {
    /// A test failed.
    Caught,
    /// A test did not end.
    Endless,
    /// Every test passed.
    Missed,
    /// No test comes by.
    Unreached,
}

/// The fate of each mutant that could be built; with words, against the tests that have one of them in their program or
/// name. Who escapes is told at once.
pub fn run(
    built: &Built,
    mutants: &[Mutant],
    words: &[&str],
    threads: usize,
) -> Result<BTreeMap<u32, Fate>, String> {
    let mut tests = tests(built)?;
    tests.retain(|test| words.is_empty() || words.iter().any(|word| test.has(word)));
    let reached = reached(&tests, &built.top, threads)?;
    let fates = Mutex::new(BTreeMap::new());
    let left = Mutex::new(
        mutants
            .iter()
            .filter_map(|one| Some((one, *built.sites.get(&one.id)?))),
    );
    thread::scope(|scope| {
        for _ in 0..threads {
            scope.spawn(|| {
                while let Some((mutant, site)) = left.lock().ok().and_then(|mut left| left.next()) {
                    let fate = reached
                        .get(&site)
                        .map_or(Fate::Unreached, |tests| fate(mutant.id, tests));
                    if let Ok(mut fates) = fates.lock() {
                        fates.insert(mutant.id, fate);
                        if matches!(fate, Fate::Missed | Fate::Unreached) {
                            eprintln!("\r{fate:?} {}", mutant.name);
                        }
                        eprint!("\r{} mutants run ", fates.len());
                    }
                }
            });
        }
    });
    fates.into_inner().map_err(|error| error.to_string())
}

fn fate(id: u32, tests: &[Test]) -> Fate {
    for test in tests {
        let mut command = test.command();
        command
            .env("MUTANT", id.to_string())
            .stdout(Stdio::null())
            .stderr(Stdio::null());
        let Ok(mut running) = command.spawn() else {
            continue;
        };
        let until = Instant::now() + (test.takes * 10).max(Duration::from_secs(6));
        loop {
            match running.try_wait() {
                Ok(Some(status)) if status.success() => break,
                Ok(Some(_)) => return Fate::Caught,
                _ if Instant::now() < until => thread::sleep(Duration::from_millis(2)),
                _ => {
                    let _ = running.kill();
                    let _ = running.wait();
                    return Fate::Endless;
                }
            }
        }
    }
    Fate::Missed
}

impl Test {
    fn has(&self, word: &str) -> bool {
        let program = self.program.file_name().unwrap_or_default().to_string_lossy();
        program.starts_with(word) || self.name.contains(word)
    }

    fn command(&self) -> Command {
        let mut command = Command::new(&self.program);
        command
            .args(["--exact", &self.name, "--test-threads", "1"])
            .current_dir(&self.folder);
        command
            .env("PROPTEST_RNG_SEED", "20261125")
            .env("RUST_BACKTRACE", "0");
        command
    }
}

/// Every test of the core and of the shared cases.
fn tests(built: &Built) -> Result<Vec<Test>, String> {
    let asked = [
        "test",
        "-p",
        "edgenail",
        "-p",
        "edgenail-cases",
        "--lib",
        "--tests",
        "--no-run",
        "--message-format=json",
    ];
    let out = cargo(&built.top, &asked)?;
    if !out.status.success() {
        return Err(String::from_utf8_lossy(&out.stderr).into_owned());
    }
    let text = String::from_utf8_lossy(&out.stdout).into_owned();
    let mut tests = Vec::new();
    for line in text
        .lines()
        .filter_map(|line| serde_json::from_str::<Value>(line).ok())
    {
        let name = line["target"]["name"].as_str().unwrap_or_default();
        let (Some(program), Some(manifest)) = (line["executable"].as_str(), line["manifest_path"].as_str())
        else {
            continue;
        };
        if line["profile"]["test"] != true || LEFT_OUT.contains(&name) {
            continue;
        }
        let listed = Command::new(program)
            .args(["--list", "--format", "terse"])
            .output();
        let listed = listed.map_err(|error| format!("{program}: {error}"))?;
        let names = String::from_utf8_lossy(&listed.stdout).into_owned();
        tests.extend(
            names
                .lines()
                .filter_map(|line| line.strip_suffix(": test"))
                .map(|name| Test {
                    program: program.into(),
                    folder: Path::new(manifest).parent().unwrap_or(Path::new(".")).into(),
                    name: name.into(),
                    takes: Duration::ZERO,
                }),
        );
    }
    Ok(tests)
}

/// By place, the tests that come by, the quickest first. A test that fails without a mutant is an error.
fn reached(tests: &[Test], top: &Path, threads: usize) -> Result<BTreeMap<u32, Vec<Test>>, String> {
    let found: Mutex<BTreeMap<u32, Vec<Test>>> = Mutex::default();
    let failed: Mutex<Vec<String>> = Mutex::default();
    let left = Mutex::new(tests.iter().zip(0u32..));
    thread::scope(|scope| {
        for _ in 0..threads {
            scope.spawn(|| {
                while let Some((test, number)) = left.lock().ok().and_then(|mut left| left.next()) {
                    let places = top.join(format!("target/reached-{number}"));
                    let mut command = test.command();
                    let began = Instant::now();
                    let out = command
                        .env("MUTANTS_REACHED", &places)
                        .stdout(Stdio::null())
                        .stderr(Stdio::null())
                        .status();
                    if !out.is_ok_and(|status| status.success()) {
                        failed
                            .lock()
                            .map(|mut failed| failed.push(test.name.clone()))
                            .unwrap_or_default();
                    }
                    let test = Test {
                        takes: began.elapsed(),
                        ..test.clone()
                    };
                    let sites = fs::read_to_string(&places).unwrap_or_default();
                    if let Ok(mut found) = found.lock() {
                        for site in sites.lines().filter_map(|line| line.parse().ok()) {
                            found.entry(site).or_default().push(test.clone());
                        }
                    }
                }
            });
        }
    });
    let failed = failed.into_inner().map_err(|error| error.to_string())?;
    if !failed.is_empty() {
        return Err(format!("without a mutant these fail: {failed:?}"));
    }
    let mut found = found.into_inner().map_err(|error| error.to_string())?;
    for tests in found.values_mut() {
        tests.sort_by_key(|test| test.takes);
    }
    Ok(found)
}
