//! What a call from C costs beyond the call in Rust: `cargo bench -p edgenail-cases --bench calls`.

#![expect(
    clippy::print_stdout,
    clippy::unwrap_used,
    reason = "a bench prints, and fails by a panic"
)]

use edgenail::Length;
use edgenail::answer::capacity_numbers;
use edgenail::length::{Finest, Rounding, Style, Unit};
use edgenail_cases::library::{Linking, compile, run};
use edgenail_cases::root;
use std::hint::black_box;
use std::process::Command;
use std::time::Instant;

const ROUNDS: u32 = 7;
const HOLD_DOWN: &str =
    r#"{"kind":"hold_down","shear":"250","length":"4 ft","height":"8 ft","dead":"0","inset":"0 ft"}"#;
const UNIT_SHEAR: &str = r#"{"kind":"unit_shear","edition":"2015","load":"seismic","method":"asd","high_seismic":false,
    "accept_unverified":false,"assembly":{"grade":"sheathing","thickness":"0.4375 in","material":"osb",
    "nail":{"shank":"0.131","head":"0.281","length":"2.5 in","coating":"bright"},"edge_spacing":"6 in",
    "field_spacing":"6 in","stud_spacing":"24 in","blocked":true,"across_studs":false,"specific_gravity":"0.5",
    "seam_member":"1.5 in","wet_framing":false}}"#;

/// Nanoseconds of a call, the least of several rounds.
fn time(calls: u32, call: impl Fn()) -> f64 {
    (0..ROUNDS)
        .map(|_| {
            let start = Instant::now();
            (0..calls).for_each(|_| call());
            start.elapsed().as_secs_f64() * 1e9 / f64::from(calls)
        })
        .fold(f64::INFINITY, f64::min)
}

fn in_rust(name: &str) -> f64 {
    let size = || black_box("8' 1 1/8");
    let parsed = || Length::parse(size(), Unit::Inch).unwrap();
    let shown = || {
        black_box(Length::from_units(3_947_160)).show(Style::FeetInches(Finest::Sixteenth), Rounding::Nearest)
    };
    match name.trim_end_matches("_utf16") {
        "length_from_double" => time(1_000_000, || {
            black_box(Length::from_double(black_box(97.125), Unit::Inch).unwrap());
        }),
        "length_parse" => time(200_000, || {
            black_box(parsed());
        }),
        "length_show" => time(200_000, || {
            black_box(shown());
        }),
        "hold_down" => time(20_000, || {
            black_box(capacity_numbers(black_box(HOLD_DOWN), ["/tension_lb"]).unwrap());
        }),
        _ => time(20_000, || {
            let pointers = ["/nominal_plf", "/design_plf", "/stiffness_kips_per_in"];
            black_box(capacity_numbers(black_box(UNIT_SHEAR), pointers).unwrap());
        }),
    }
}

fn main() {
    let cargo = std::env::var("CARGO").unwrap();
    let built = root().join("target/release");
    run(Command::new(cargo)
        .current_dir(root())
        .args(["build", "--release", "--package", "edgenail-c"]))
    .unwrap();
    let program = root().join("target/release/calls-in-c");
    compile("tests/c/calls.c", &built, Linking::Static, &["-O2"], &program).unwrap();
    let said = String::from_utf8(run(&mut Command::new(program)).unwrap().stdout).unwrap();
    println!("{:24}{:>10}{:>10}{:>10}  ns", "call", "C", "Rust", "beyond");
    for line in said.lines() {
        let (name, nanoseconds) = line.split_once(' ').unwrap();
        let in_c: f64 = nanoseconds.parse().unwrap();
        let in_rust = in_rust(name);
        println!("{name:24}{in_c:>10.0}{in_rust:>10.0}{:>10.0}", in_c - in_rust);
    }
}
