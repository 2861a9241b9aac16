//! The shared cases, in C: each case is one run of `tests/c/driver.c`, with the static and the shared library.

use edgenail_cases::answer::{Answer, LengthInput, ROUNDINGS, STYLES, ShowInput, named, parse};
use edgenail_cases::case::Case;
use edgenail_cases::library::{Linking, build, compile};
use std::fs;
use std::path::Path;
use std::process::Command;

/// Statuses that come with an error document.
const INPUT: i32 = 100;
const NO_LAYOUT: i32 = 200;

fn answer(driver: &Path, folder: &Path, case: &Case) -> Result<Answer, String> {
    let mut command = Command::new(driver);
    match case.operation.as_str() {
        "plan" => {
            let input = folder.join("input.json");
            fs::write(&input, &case.text).map_err(|error| error.to_string())?;
            command.arg("plan").arg(input);
        }
        "length" => {
            let input: LengthInput = parse(&case.text)?;
            command.args(["length", &input.text, &input.unit]);
        }
        "show" => {
            let input: ShowInput = parse(&case.text)?;
            let style = named(&STYLES, &input.style)?.0.to_string();
            let rounding = named(&ROUNDINGS, &input.rounding)?.0.to_string();
            command.args(["show", &input.units.to_string(), &style, &rounding]);
        }
        other => return Err(format!("no operation `{other}`")),
    }
    let output = command.output().map_err(|error| error.to_string())?;
    let text = String::from_utf8(output.stdout).map_err(|error| error.to_string())?;
    match output.status.code() {
        Some(0) => Ok(Answer::Result(text)),
        Some(INPUT | NO_LAYOUT) => Ok(Answer::Error(text)),
        _ => Err(format!(
            "{}: {}",
            output.status,
            String::from_utf8_lossy(&output.stderr)
        )),
    }
}

fn every_case(language: &str, linking: Linking) -> Result<String, String> {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(language);
    fs::create_dir_all(&folder).map_err(|error| error.to_string())?;
    let libraries = build(&Path::new(env!("CARGO_TARGET_TMPDIR")).join(".."))?;
    let driver = folder.join("driver");
    compile("tests/c/driver.c", &libraries, linking, &[], &driver)?;
    edgenail_cases::run::run(language, |case| answer(&driver, &folder, case))
}

#[test]
fn every_shared_case_holds_in_c_with_the_static_library() {
    let said = every_case("c-static", Linking::Static);
    assert!(said.is_ok(), "{}", said.unwrap_err());
}

#[test]
fn every_shared_case_holds_in_c_with_the_shared_library() {
    let said = every_case("c-shared", Linking::Shared);
    assert!(said.is_ok(), "{}", said.unwrap_err());
}
