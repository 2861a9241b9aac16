//! The shared cases, in C: each case is one run of `tests/c/driver.c`, with the static and the shared library.

use edgenail_cases::answer::{
    Answer, LengthInput, ROUNDINGS, STYLES, ShowInput, WhatIfInput, houses, named, parse,
};
use edgenail_cases::case::Case;
use edgenail_cases::library::{Linking, build, compile};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

/// Statuses that come with an error document.
const INPUT: i32 = 100;
const NO_LAYOUT: i32 = 200;

fn answer(driver: &Path, folder: &Path, case: &Case) -> Result<Answer, String> {
    let mut command = Command::new(driver);
    match case.operation.as_str() {
        operation @ ("plan" | "capacity") => {
            let input = folder.join("input.json");
            fs::write(&input, &case.text).map_err(|error| error.to_string())?;
            command.arg(operation).arg(input);
        }
        "batch" => {
            let input = folder.join("input.jsonl");
            let lines = houses(&case.text)?.join("\n");
            fs::write(&input, lines).map_err(|error| error.to_string())?;
            command.arg("batch").arg(input);
        }
        "what_if" => {
            let input: WhatIfInput<'_> = parse(&case.text)?;
            command.arg("what-if");
            for (name, text) in [("house.json", input.house), ("changes.json", input.changes)] {
                let file = folder.join(name);
                fs::write(&file, text.get()).map_err(|error| error.to_string())?;
                command.arg(file);
            }
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

/// The driver, linked in this way, and a folder of its own.
fn driver(name: &str, linking: Linking) -> Result<(PathBuf, PathBuf), String> {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    fs::create_dir_all(&folder).map_err(|error| error.to_string())?;
    let libraries = build(&Path::new(env!("CARGO_TARGET_TMPDIR")).join(".."))?;
    let driver = folder.join("driver");
    compile("tests/c/driver.c", &libraries, linking, &[], &driver)?;
    Ok((driver, folder))
}

fn every_case(language: &str, linking: Linking) -> Result<String, String> {
    let (driver, folder) = driver(language, linking)?;
    edgenail_cases::run::run(language, |case| answer(&driver, &folder, case))
}

/// Every drawing of the demo house, and why its walls are laid out so, is the same in C, byte for byte.
#[test]
fn drawings_and_reasons_are_the_same_in_c() {
    let (driver, folder) = driver("c-drawings", Linking::Static).unwrap_or_else(|fault| panic!("{fault}"));
    let input = folder.join("demo.json");
    assert!(fs::write(&input, edgenail::demo::HOUSE_JSON).is_ok());
    let ask = |operation: &str, name: &str| {
        let output = Command::new(&driver).args([operation, name]).arg(&input).output();
        output
            .ok()
            .filter(|output| output.status.success())
            .and_then(|output| String::from_utf8(output.stdout).ok())
    };
    let plan = edgenail::plan_json(edgenail::demo::HOUSE_JSON).unwrap_or_else(|fault| panic!("{fault}"));
    for wall in plan.walls() {
        assert_eq!(ask("svg", &wall.name), plan.wall_svg(&wall.name), "{}", wall.name);
        assert_eq!(ask("why", &wall.name), plan.why(&wall.name), "{}", wall.name);
        assert_eq!(
            ask("frame", &wall.name),
            plan.frame_svg(&wall.name),
            "{}",
            wall.name
        );
    }
    for page in 0..=plan.cut_sheet_pages() {
        assert_eq!(
            ask("cut-sheets", &page.to_string()),
            plan.cut_sheets_svg(page),
            "page {page}"
        );
    }
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
