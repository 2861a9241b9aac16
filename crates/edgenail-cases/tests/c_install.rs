//! The C library as `bindings/c/install.sh` installs it: found by pkg-config, linked both ways, and run.

#![expect(clippy::unwrap_used, reason = "a test fails by a panic")]

use edgenail_cases::library::{STRICT, has, run};
use edgenail_cases::root;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

const EXAMPLE: &str = "bindings/c/examples/plan_house.c";
const HOUSE: &str = "tests/cases/plan/inputs/one-wall.json";

/// What a command says, without the line's end.
fn said(command: &mut Command) -> String {
    let output = run(command).unwrap();
    String::from_utf8(output.stdout).unwrap().trim_end().to_owned()
}

/// What pkg-config says of the library installed there.
fn asked(prefix: &Path, arguments: &[&str]) -> Vec<String> {
    let mut command = Command::new("pkg-config");
    command
        .env("PKG_CONFIG_PATH", prefix.join("lib/pkgconfig"))
        .args(arguments)
        .arg("edgenail");
    said(&mut command).split_whitespace().map(str::to_owned).collect()
}

/// The example, compiled with nothing but what pkg-config says.
fn example(prefix: &Path, name: &str, flags: &[&str], arguments: &[&str]) -> PathBuf {
    let program = prefix.join(name);
    let mut compiler = Command::new(std::env::var("CC").unwrap_or_else(|_| "cc".into()));
    compiler.current_dir(root()).args(STRICT).args(flags).arg(EXAMPLE);
    run(compiler.args(asked(prefix, arguments)).arg("-o").arg(&program)).unwrap();
    program
}

/// Global symbols that a library defines: of a shared one those that the loader sees.
fn defined(library: &Path, flag: &str) -> Vec<String> {
    let symbols = said(Command::new("nm").args([flag, "--defined-only"]).arg(library));
    let symbols = symbols.lines().filter(|line| line.contains(' '));
    let mut symbols: Vec<String> = symbols
        .filter_map(|line| line.split(' ').next_back())
        .map(str::to_owned)
        .collect();
    symbols.sort_unstable();
    symbols
}

#[test]
fn the_installed_library_is_found_by_pkg_config_and_links_both_ways() {
    if !has("pkg-config", "the installed library was not tried").unwrap() {
        return;
    }
    let prefix = Path::new(env!("CARGO_TARGET_TMPDIR")).join("prefix");
    let _ = fs::remove_dir_all(&prefix);
    let mut install = Command::new(root().join("bindings/c/install.sh"));
    let target = Path::new(env!("CARGO_TARGET_TMPDIR")).join("..");
    run(install
        .env("CARGO_TARGET_DIR", target)
        .arg("--debug")
        .arg(&prefix))
    .unwrap();
    let lib = prefix.join("lib");

    assert_eq!(asked(&prefix, &["--modversion"]), [env!("CARGO_PKG_VERSION")]);
    let header = fs::read_to_string(prefix.join("include/edgenail.h")).unwrap();
    let abi = header
        .lines()
        .find_map(|line| line.strip_prefix("#define EDGENAIL_ABI "));
    let soname = format!("libedgenail.so.{}", abi.unwrap());
    assert_eq!(
        fs::read_link(lib.join("libedgenail.so")).unwrap(),
        Path::new(&soname)
    );

    let shared = example(&prefix, "shared", &[], &["--cflags", "--libs"]);
    let needed = said(Command::new("objdump").arg("-p").arg(&shared));
    let needed = needed
        .lines()
        .filter_map(|line| line.trim().strip_prefix("NEEDED"));
    assert!(needed.map(str::trim).any(|name| name == soname), "{soname}");
    let by_shared = said(
        Command::new(&shared)
            .env("LD_LIBRARY_PATH", &lib)
            .arg(root().join(HOUSE)),
    );

    let whole = example(
        &prefix,
        "static",
        &["-static"],
        &["--static", "--cflags", "--libs"],
    );
    let by_static = said(Command::new(&whole).arg(root().join(HOUSE)));
    assert!(by_shared.contains("sheets,4x8,house"), "{by_shared}");
    assert_eq!(by_shared, by_static);

    let exported = defined(&lib.join("libedgenail.so"), "-D");
    assert!(
        exported.iter().all(|name| name.starts_with("edgenail_")),
        "{exported:?}"
    );
    assert_eq!(defined(&lib.join("libedgenail.a"), "-g"), exported);
}
