//! The C library, and C programs built against it.

use crate::root;
use std::collections::BTreeSet;
use std::fs;
use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

/// Compiler flags under which every C program of the project must compile.
pub const STRICT: [&str; 7] = [
    "-std=c99",
    "-Wall",
    "-Wextra",
    "-Wpedantic",
    "-Werror",
    "-Wstrict-prototypes",
    "-g",
];

/// How a program is linked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Linking {
    /// With `libedgenail.a`.
    Static,
    /// With `libedgenail.so`.
    Shared,
}

/// The folder of the C libraries, built on demand.
///
/// # Errors
///
/// What the build said.
pub fn build(target: &Path) -> Result<PathBuf, String> {
    build_with(target, &[])?;
    Ok(target.join("debug"))
}

/// The folder of the C libraries as they are shipped, built on demand.
///
/// # Errors
///
/// What the build said.
pub fn build_release(target: &Path) -> Result<PathBuf, String> {
    build_with(target, &["--release"])?;
    Ok(target.join("release"))
}

fn build_with(target: &Path, profile: &[&str]) -> Result<Output, String> {
    let cargo = std::env::var("CARGO").unwrap_or_else(|_| "cargo".into());
    let mut command = Command::new(cargo);
    command
        .current_dir(root())
        .args(["build", "--quiet", "--package", "edgenail-c", "--target-dir"])
        .arg(target)
        .args(profile);
    run(&mut command)
}

/// Whether a tool is installed; one that is not is named, and in CI it is an error.
///
/// # Errors
///
/// The tool, and what is not done without it.
pub fn has(tool: &str, without: &str) -> Result<bool, String> {
    if Command::new(tool).arg("--version").output().is_ok() {
        return Ok(true);
    }
    let fault = format!("{tool} is not installed: {without}");
    if std::env::var("CI").is_ok_and(|value| value == "true") {
        return Err(fault);
    }
    let _ = writeln!(std::io::stderr(), "{fault}");
    Ok(false)
}

/// Compiles a C program of the project; `source` is its path from the root.
///
/// # Errors
///
/// What the compiler said.
pub fn compile(
    source: &str,
    libraries: &Path,
    linking: Linking,
    flags: &[&str],
    program: &Path,
) -> Result<(), String> {
    let mut command = Command::new(std::env::var("CC").unwrap_or_else(|_| "cc".into()));
    command
        .current_dir(root())
        .args(STRICT)
        .args(flags)
        .args(["-I", "bindings/c/include", source, "-o"])
        .arg(program);
    match linking {
        Linking::Static => command
            .arg(libraries.join("libedgenail.a"))
            .args(["-lpthread", "-ldl", "-lm"]),
        Linking::Shared => {
            // The loader looks for the library's own name, which carries the ABI's number.
            let name = libraries.join("libedgenail.so.1");
            if !name.exists() {
                let _ = std::os::unix::fs::symlink("libedgenail.so", &name);
            }
            let path = format!("-Wl,-rpath,{}", libraries.display());
            command
                .arg(libraries.join("libedgenail.so"))
                .arg(path)
                .arg("-lpthread")
        }
    };
    run(&mut command).map(|_| ())
}

/// The functions that the header declares: names before an opening bracket, outside comments and macros.
///
/// # Errors
///
/// The header cannot be read.
pub fn declared() -> Result<BTreeSet<String>, String> {
    let header = root().join("bindings/c/include/edgenail.h");
    let header = fs::read_to_string(header).map_err(|error| error.to_string())?;
    let code = header
        .lines()
        .filter(|line| !line.trim_start().starts_with(['*', '/', '#']));
    let code: Vec<&str> = code.collect();
    let code = code.join("\n");
    let pieces: Vec<&str> = code.split('(').collect();
    let names = pieces[..pieces.len() - 1]
        .iter()
        .filter_map(|piece| piece.split([' ', '*', '\n']).next_back());
    let ours = names.filter(|name| name.starts_with("edgenail_"));
    Ok(ours.map(str::to_owned).collect())
}

/// Runs a command that must succeed.
///
/// # Errors
///
/// The command, its status and what it said.
pub fn run(command: &mut Command) -> Result<Output, String> {
    let output = command
        .output()
        .map_err(|error| format!("{command:?}: {error}"))?;
    if output.status.success() {
        return Ok(output);
    }
    let said = [output.stdout.as_slice(), output.stderr.as_slice()].concat();
    Err(format!(
        "{command:?}: {}\n{}",
        output.status,
        String::from_utf8_lossy(&said)
    ))
}
