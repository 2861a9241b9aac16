//! The C interface from outside: its header, its symbols, its numbers, and programs that use and misuse it, plain,
//! under the sanitizers of the compiler and under valgrind.

#![expect(clippy::unwrap_used, reason = "a test fails by a panic")]

use edgenail_cases::library::{Linking, build, build_release, compile, declared, has, run};
use edgenail_cases::root;
use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

/// A house that can be planned.
const HOUSE: &str = "tests/cases/plan/inputs/one-wall.json";

fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_TARGET_TMPDIR"))
}

fn libraries() -> PathBuf {
    build(&folder().join("..")).unwrap()
}

fn program(name: &str, variant: &str, linking: Linking, flags: &[&str]) -> PathBuf {
    let stem = Path::new(name)
        .file_stem()
        .unwrap()
        .to_string_lossy()
        .into_owned();
    let program = folder().join(format!("{stem}-{variant}"));
    compile(name, &libraries(), linking, flags, &program).unwrap();
    program
}

fn every_way(source: &str) {
    for (variant, linking) in [("static", Linking::Static), ("shared", Linking::Shared)] {
        run(Command::new(program(source, variant, linking, &[])).arg(root().join(HOUSE))).unwrap();
    }
    let flags = [
        "-fsanitize=address,undefined",
        "-fno-sanitize-recover=all",
        "-fno-sanitize=alignment",
    ];
    run(Command::new(program(source, "sanitized", Linking::Static, &flags)).arg(root().join(HOUSE))).unwrap();
    if !has("valgrind", &format!("{source} was not run under it")).unwrap() {
        return;
    }
    let mut valgrind = Command::new("valgrind");
    valgrind.args([
        "--quiet",
        "--leak-check=full",
        "--show-leak-kinds=all",
        "--error-exitcode=9",
    ]);
    let known = root().join("tests/c/valgrind.supp");
    run(valgrind
        .arg(format!("--suppressions={}", known.display()))
        .arg(program(source, "valgrind", Linking::Static, &[]))
        .arg(root().join(HOUSE)))
    .unwrap();
}

#[test]
fn hostile_calls_get_a_status_and_touch_nothing() {
    every_way("tests/c/hostile.c");
    every_way("tests/c/hostile_houses.c");
}

#[test]
fn threads_share_a_plan_and_keep_their_own_errors() {
    every_way("tests/c/threads.c");
}

#[test]
fn a_batch_goes_on_after_a_bad_house_and_ends_when_it_is_cancelled() {
    every_way("tests/c/batch.c");
}

#[test]
fn rows_and_columns_agree() {
    every_way("tests/c/rows.c");
}

#[test]
fn the_example_plans_a_house() {
    every_way("bindings/c/examples/plan_house.c");
}

#[test]
fn the_header_compiles_alone_in_c_and_in_cpp() {
    let folder = folder();
    for (compiler, language, standard) in [
        ("cc", "c", "c99"),
        ("cc", "c", "c11"),
        ("cc", "c", "c17"),
        ("c++", "cpp", "c++11"),
        ("c++", "cpp", "c++17"),
        ("clang", "c", "c99"),
        ("clang++", "cpp", "c++17"),
    ] {
        if !has(compiler, "the header was not compiled by it").unwrap() {
            continue;
        }
        let source = folder.join(format!("header.{language}"));
        let uses = "#include \"edgenail.h\"\nint main(void) { return edgenail_abi() - EDGENAIL_ABI; }\n";
        fs::write(&source, uses).unwrap();
        let mut command = Command::new(compiler);
        command.args([
            "-Wall",
            "-Wextra",
            "-Wpedantic",
            "-Werror",
            "-fsyntax-only",
            &format!("-std={standard}"),
        ]);
        run(command
            .arg("-I")
            .arg(root().join("bindings/c/include"))
            .arg(&source))
        .unwrap();
    }
}

#[test]
fn the_shared_library_exports_what_the_header_declares_and_nothing_else() {
    let declared = declared().unwrap();
    assert!(declared.contains("edgenail_plan_free"));
    let target = folder().join("..");
    for libraries in [libraries(), build_release(&target).unwrap()] {
        let library = libraries.join("libedgenail.so");
        let output = run(Command::new("nm").args(["-D", "--defined-only"]).arg(&library)).unwrap();
        let symbols = String::from_utf8(output.stdout).unwrap();
        let exported: BTreeSet<String> = symbols
            .lines()
            .filter_map(|line| line.split_whitespace().next_back())
            .map(str::to_owned)
            .collect();
        assert_eq!(exported, declared, "{}", library.display());
    }
}

/// Numbers that programs were compiled with: a line is added here, and none is ever changed.
const NUMBERS: &str = "\
EDGENAIL_STATUS_OK 0
EDGENAIL_STATUS_NULL_POINTER 1
EDGENAIL_STATUS_BAD_LENGTH 2
EDGENAIL_STATUS_ROW_SIZE 3
EDGENAIL_STATUS_NOT_FOUND 4
EDGENAIL_STATUS_WRONG_KIND 5
EDGENAIL_STATUS_BAD_CHOICE 6
EDGENAIL_STATUS_FULL 7
EDGENAIL_STATUS_BUFFER_TOO_SMALL 10
EDGENAIL_STATUS_NOT_UTF8 11
EDGENAIL_STATUS_NOT_UTF16 12
EDGENAIL_STATUS_INPUT 100
EDGENAIL_STATUS_NO_LAYOUT 200
EDGENAIL_STATUS_CANCELLED 201
EDGENAIL_STATUS_INTERNAL 250
EDGENAIL_ERROR_FIELD_CODE 0
EDGENAIL_ERROR_FIELD_PATH 1
EDGENAIL_ERROR_FIELD_WALL 2
EDGENAIL_ERROR_FIELD_FOUND 3
EDGENAIL_ERROR_FIELD_ALLOWED 4
EDGENAIL_ERROR_FIELD_MESSAGE 5
EDGENAIL_KIND_INT64 1
EDGENAIL_KIND_DOUBLE 2
EDGENAIL_KIND_TEXT 3
EDGENAIL_UNIT_INCH 1
EDGENAIL_UNIT_FOOT 2
EDGENAIL_UNIT_MILLIMETRE 3
EDGENAIL_UNIT_CENTIMETRE 4
EDGENAIL_UNIT_METRE 5
EDGENAIL_STYLE_INCHES_SIXTEENTH 1
EDGENAIL_STYLE_INCHES_THIRTY_SECOND 2
EDGENAIL_STYLE_INCHES_SIXTY_FOURTH 3
EDGENAIL_STYLE_FEET_INCHES_SIXTEENTH 4
EDGENAIL_STYLE_FEET_INCHES_THIRTY_SECOND 5
EDGENAIL_STYLE_FEET_INCHES_SIXTY_FOURTH 6
EDGENAIL_STYLE_DECIMAL_INCHES 7
EDGENAIL_STYLE_MILLIMETRES 8
EDGENAIL_ROUNDING_DOWN 1
EDGENAIL_ROUNDING_UP 2
EDGENAIL_ROUNDING_NEAREST 3
EDGENAIL_LOAD_WIND 1
EDGENAIL_LOAD_SEISMIC 2
EDGENAIL_METHOD_ASD 1
EDGENAIL_METHOD_LRFD 2
EDGENAIL_GRADE_SHEATHING 1
EDGENAIL_GRADE_STRUCTURAL_I 2
EDGENAIL_PANEL_MATERIAL_OSB 1
EDGENAIL_PANEL_MATERIAL_PLYWOOD3 2
EDGENAIL_PANEL_MATERIAL_PLYWOOD4 3
EDGENAIL_COATING_BRIGHT 1
EDGENAIL_COATING_HOT_DIPPED 2
EDGENAIL_COATING_STAINLESS 3
EDGENAIL_LINE_METHOD_SEGMENTED 1
EDGENAIL_LINE_METHOD_PERFORATED 2
EDGENAIL_LEVEL_STRENGTH 1
EDGENAIL_LEVEL_ASD 2
EDGENAIL_SHARING_REDUCED_STRENGTH 1
EDGENAIL_SHARING_EQUAL_DEFLECTION 2
EDGENAIL_PLIES_THREE 1
EDGENAIL_PLIES_FOUR 2
EDGENAIL_PLIES_FIVE 3
EDGENAIL_PLIES_OSB 4
EDGENAIL_AXIS_ACROSS_STUDS 1
EDGENAIL_AXIS_ALONG_STUDS 2
EDGENAIL_FORM_TEXT 1
EDGENAIL_FORM_MARKDOWN 2
EDGENAIL_FORM_HTML 3
EDGENAIL_ABI 1
";

#[test]
fn the_numbers_of_the_header_never_change_and_the_versions_agree() {
    let output = run(&mut Command::new(program(
        "tests/c/layout.c",
        "static",
        Linking::Static,
        &[],
    )))
    .unwrap();
    let version = env!("CARGO_PKG_VERSION");
    let wanted = format!("{NUMBERS}header {version}\nlibrary {version}\n");
    assert_eq!(String::from_utf8(output.stdout).unwrap(), wanted);
}
