//! The C library as a DLL for 64-bit Windows, under wine: its names, and programs that use and misuse it.
//!
//! `tests/run --lane windows` builds the DLL and runs these; they are ignored elsewhere, because that wants mingw and wine.

#![expect(clippy::unwrap_used, reason = "a test fails by a panic")]

use edgenail::demo::HOUSE_JSON;
use edgenail::plan::Figures;
use edgenail::wall_schedule::{Row, WallSchedule};
use edgenail_cases::library::{STRICT, declared, run};
use edgenail_cases::{root, scalar};
use std::collections::BTreeSet;
use std::fs;
use std::path::PathBuf;
use std::process::Command;
use std::sync::LazyLock;

const HOUSE: &str = "tests/cases/plan/inputs/one-wall.json";
const DLL: &str = "edgenail.dll";

/// The folder that the DLL is built to.
fn built() -> PathBuf {
    root().join("target/windows")
}

/// The folder of the programs, with the DLL and what wine lacks beside them; wine is ready to run them.
static FOLDER: LazyLock<PathBuf> = LazyLock::new(|| {
    let folder = built().join("programs");
    fs::create_dir_all(&folder).unwrap();
    fs::copy(built().join(DLL), folder.join(DLL)).unwrap();
    let stand_in = folder.join("bcryptprimitives.dll");
    run(mingw(&["-shared", "tests/c/bcryptprimitives.c", "-o"])
        .arg(stand_in)
        .arg("-ladvapi32"))
    .unwrap();
    run(wine().args(["wineboot", "--init"])).unwrap();
    folder
});

fn mingw(arguments: &[&str]) -> Command {
    let mut command = Command::new("x86_64-w64-mingw32-gcc");
    command.current_dir(root()).args(STRICT).args(arguments);
    command
}

/// Wine in a folder of its own, without its remarks.
fn wine() -> Command {
    let mut command = Command::new("wine");
    command
        .env("WINEPREFIX", built().join("wine"))
        .env("WINEDEBUG", "-all");
    command
}

/// A C program, ready to be run; with `link` the system loads the DLL before it begins.
fn program(name: &str, link: bool) -> Command {
    let path = FOLDER.join(format!("{name}.exe"));
    let source = format!("tests/c/{name}.c");
    let mut compiler = mingw(&["-I", "bindings/c/include", &source, "-o"]);
    compiler.arg(&path);
    if link {
        let library = built().join("libedgenail.dll.a");
        // The threads of POSIX that some of the programs use, inside the program.
        compiler.arg(library).args(["-Wl,-Bstatic", "-lpthread"]);
    }
    run(&mut compiler).unwrap();
    let mut wine = wine();
    wine.arg(path);
    wine
}

/// What objdump says of the DLL.
fn described() -> String {
    let mut command = Command::new("x86_64-w64-mingw32-objdump");
    let output = run(command.arg("-p").arg(built().join(DLL))).unwrap();
    String::from_utf8(output.stdout).unwrap()
}

#[test]
#[ignore = "tests/run --lane windows builds the DLL"]
fn the_dll_exports_what_the_header_declares_and_nothing_else() {
    let described = described();
    let (_, names) = described.split_once("[Ordinal/Name Pointer] Table").unwrap();
    let exported: BTreeSet<String> = names
        .lines()
        .skip(1)
        .take_while(|line| line.trim_start().starts_with('['))
        .filter_map(|line| line.split_whitespace().next_back())
        .map(str::to_owned)
        .collect();
    assert_eq!(exported, declared().unwrap());
}

#[test]
#[ignore = "tests/run --lane windows builds the DLL"]
fn the_dll_needs_no_library_of_the_compiler() {
    let described = described();
    let needed = described
        .lines()
        .filter_map(|line| line.trim().strip_prefix("DLL Name: "));
    let needed: Vec<&str> = needed.collect();
    assert!(needed.contains(&"KERNEL32.dll"), "{needed:?}");
    assert!(needed.iter().all(|name| !name.starts_with("lib")), "{needed:?}");
}

#[test]
#[ignore = "tests/run --lane windows builds the DLL"]
fn functions_are_found_by_name_and_take_utf16() {
    run(&mut program("windows", false)).unwrap();
}

#[test]
#[ignore = "tests/run --lane windows builds the DLL"]
fn every_shared_case_for_cells_holds_to_the_bit() {
    let scalars = scalar::all().unwrap();
    let calls = FOLDER.join("cells.txt");
    let said = scalar::ask(&scalars, &mut program("cells", true), &calls, "windows").unwrap();
    assert_eq!(said, scalar::own(&scalars).unwrap());
}

#[test]
#[ignore = "tests/run --lane windows builds the DLL"]
fn programs_that_misuse_the_library_and_share_it_between_threads_end_well() {
    for name in ["hostile", "hostile_houses", "rows", "batch", "threads"] {
        run(program(name, true).arg(root().join(HOUSE))).unwrap();
    }
}

#[test]
#[ignore = "tests/run --lane windows builds the DLL"]
fn the_demo_house_is_planned_byte_for_byte_as_here() {
    let house = FOLDER.join("house.json");
    fs::write(&house, HOUSE_JSON).unwrap();
    let output = run(program("driver", true).arg("plan").arg(house)).unwrap();
    // Windows writes a line's end as two characters; the document has no carriage return of its own.
    let said = String::from_utf8(output.stdout).unwrap().replace("\r\n", "\n");
    let wanted = edgenail::plan_json(HOUSE_JSON).unwrap().json();
    assert!(said == wanted, "{} and {} bytes", said.len(), wanted.len());
}

/// Rows of a sheet: length, plate height, stud spacing, openings, practice.
const WALLS: [(f64, f64, f64, &str, &str); 4] = [
    (144.0, 97.125, 16.0, "36,40,48,36", "upright"),
    (240.0, 97.125, 16.0, "24,0,36,82.5; 96,40,48,42", "flat blocked"),
    (
        363.5,
        109.125,
        24.0,
        "30,36,60,48; 160,36,60,48; 300,0,36,82.5",
        "either 4/12",
    ),
    (97.25, 121.125, 19.2, "", ""),
];

#[test]
#[ignore = "tests/run --lane windows builds the DLL"]
fn a_wall_in_a_row_of_a_sheet_has_the_same_figures() {
    let mut rows = Vec::new();
    let mut wanted = Vec::new();
    for (index, (length, plate_height, stud_spacing, openings, practice)) in WALLS.into_iter().enumerate() {
        rows.push(format!(
            "wall {index}\t{length}\t{plate_height}\t{stud_spacing}\t{openings}\t{practice}\n"
        ));
        let mut schedule = WallSchedule::new("house", None);
        let row = Row {
            name: "wall",
            length,
            plate_height,
            stud_spacing,
            openings,
            practice,
            ..Row::default()
        };
        schedule.add(&row).unwrap();
        let figures = Figures::of(&schedule.plan().unwrap());
        wanted.push([
            figures.sheets,
            figures.nails,
            figures.blocks,
            figures.refuse,
            figures.mend,
        ]);
    }
    let file = FOLDER.join("walls.txt");
    fs::write(&file, rows.concat()).unwrap();
    let output = run(program("walls", true).arg("figures").arg(file)).unwrap();
    let said = String::from_utf8(output.stdout).unwrap();
    let said: Vec<[u64; 5]> = said
        .lines()
        .map(|line| {
            let words: Vec<&str> = line.split(' ').collect();
            // Between them stand money and minutes.
            [0, 1, 2, 5, 6].map(|place| words[place].parse().unwrap())
        })
        .collect();
    assert_eq!(said, wanted);
}
