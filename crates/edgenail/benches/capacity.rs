//! How long answers about capacity take. `cargo bench -p edgenail --bench capacity`.

#![expect(clippy::expect_used, reason = "a bench that cannot start ends")]
#![allow(missing_docs, reason = "a bench")]

use criterion::{Criterion, criterion_group, criterion_main};
use edgenail::capacity::{Question, facing, schedule, unit_shear, wall_line};
use edgenail::capacity_json;
use edgenail::reading::read_question;
use std::hint::black_box;

/// A line of 20 ft with a doorway and a window.
const LINE: &str = r#"{"kind": "wall_line", "length": "20'", "height": "8'", "openings": [
    {"left": "4'", "width": "3'", "height": "7'"}, {"left": "11'", "width": "3'", "height": "4'"}],
    "method": "segmented", "sharing": "reduced_strength", "demand": 3000, "inset": "4 1/2", "dead": 50,
    "query": {"edition": "2015", "load": "seismic", "method": "asd", "high_seismic": false, "assembly": {
        "grade": "sheathing", "thickness": "7/16", "material": "osb", "edge_spacing": "6", "field_spacing": "6",
        "nail": {"shank": 0.131, "head": 0.281, "length": "2 1/2"}, "blocked": true, "specific_gravity": 0.5,
        "seam_member": "2 1/2"}}}"#;

/// Four sheets and three nails on offer; all prices are invented.
const SCHEDULE: &str = r#"{"kind": "schedule", "edition": "2015", "load": "seismic", "method": "asd",
    "high_seismic": false, "demand": {"unit_shear": 300, "height": "8'"},
    "framing": {"field_spacing": 6, "specific_gravity": 0.5, "seam_member": "2 1/2"},
    "stock": {"sheets": [
        {"name": "a", "width": "47 7/8", "length": "95 7/8", "category": "3/8", "price": 14},
        {"name": "b", "width": "47 7/8", "length": "95 7/8", "category": "7/16", "price": 16},
        {"name": "c", "width": "47 7/8", "length": "95 7/8", "category": "15/32", "price": 19},
        {"name": "d", "width": "47 7/8", "length": "109", "category": "7/16", "price": 21}],
    "nails": [
        {"name": "6d", "shank": 0.113, "head": 0.266, "length": "2", "per_box": 2500, "price": 42},
        {"name": "8d", "shank": 0.131, "head": 0.281, "length": "2 1/2", "per_box": 2500, "price": 50},
        {"name": "10d", "shank": 0.148, "head": 0.312, "length": "3", "per_box": 2000, "price": 55}]}}"#;

/// A face of gypsum wallboard.
const FACING: &str = r#"{"kind": "facing", "edition": "2015", "load": "wind", "method": "asd", "high_seismic": false,
    "facing": {"material": "gypsum_wallboard", "thickness": "5/8", "fastener": "cooler_6d", "edge_spacing": 4,
        "stud_spacing": 16, "blocked": true}}"#;

fn question(text: &str) -> Question {
    read_question(text.as_bytes()).expect("the question is legal").0
}

fn capacity(c: &mut Criterion) {
    let (Question::WallLine(line), Question::Schedule(choice)) = (question(LINE), question(SCHEDULE)) else {
        return;
    };
    let query = line.query;
    c.bench_function("unit shear", |b| b.iter(|| unit_shear(black_box(&query))));
    if let Question::Facing(face) = question(FACING) {
        c.bench_function("face of another material", |b| {
            b.iter(|| facing(black_box(&face)));
        });
    }
    c.bench_function("wall line", |b| b.iter(|| wall_line(black_box(&line))));
    c.bench_function("wall line with its derivation", |b| {
        b.iter(|| wall_line(black_box(&line)).map(|found| found.derive(&line)));
    });
    c.bench_function("wall line as JSON", |b| b.iter(|| capacity_json(black_box(LINE))));
    let count = schedule(&choice).expect("some of the stock carries it").len();
    c.bench_function(&format!("schedule of {count} assemblies"), |b| {
        b.iter(|| schedule(black_box(&choice)));
    });
}

criterion_group!(benches, capacity);
criterion_main!(benches);
