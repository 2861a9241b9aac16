//! How long each stage takes. `cargo bench -p edgenail`.

#![expect(clippy::expect_used, reason = "a bench that cannot start ends")]

use criterion::{BatchSize, Criterion, criterion_group, criterion_main};
use edgenail::capacity::{AtOpenings, NailResistance, rack, racking_of_storey};
use edgenail::evaluate::evaluate;
use edgenail::frame::frame_wall;
use edgenail::house::House;
use edgenail::{blocking, edges, layout, nailing, plan_json, read_house, search};
use std::fs;
use std::hint::black_box;
use std::path::Path;

/// A 30 ft wall of one storey with three openings.
const WALL: &str = r#"{"name": "bench", "unit": "in", "walls": [{"name": "w", "length": "30'", "sections": [{"bottom": {"bears": "concrete"},
  "stack": [{"kind": "storey", "name": "first", "bottom_plates": [{"thickness": "1 1/2", "treated": true}], "openings": [
    {"name": "a", "kind": "window", "left": "60", "sill": "36", "width": "48", "height": "46"},
    {"name": "b", "kind": "door", "left": "156", "sill": "0", "width": "38", "height": "82"},
    {"name": "c", "kind": "window", "left": "256", "sill": "36", "width": "60", "height": "46"}]}], "top": {"kind": "flat"}}]}]}"#;

fn house(text: &str) -> House {
    read_house(text.as_bytes()).expect("the bench house is legal").0
}

fn stages(c: &mut Criterion) {
    let house = house(WALL);
    let frame = frame_wall(&house, 0).expect("it has a wall");
    let found = search::search(&house, &frame).expect("it has a layout");
    let spec = found.chosen.spec.clone();
    let built = &found.chosen;
    c.bench_function("read", |b| b.iter(|| read_house(black_box(WALL.as_bytes()))));
    c.bench_function("frame", |b| b.iter(|| frame_wall(black_box(&house), 0)));
    c.bench_function("layout", |b| {
        b.iter(|| layout::lay_out(&house, &frame, black_box(&spec)));
    });
    c.bench_function("edges", |b| {
        b.iter(|| edges::edges(&house, &frame, black_box(&built.layout)));
    });
    c.bench_function("blocking", |b| {
        b.iter(|| blocking::blocking(&house, &frame, &built.layout, black_box(&built.runs)));
    });
    c.bench_function("nailing", |b| {
        b.iter(|| nailing::nailing(&house, &built.backed, &built.layout, black_box(&built.runs)));
    });
    c.bench_function("frame to nailing", |b| {
        b.iter(|| {
            let frame = frame_wall(black_box(&house), 0).expect("it has a wall");
            let layout = layout::lay_out(&house, &frame, &spec);
            let bare = edges::edges(&house, &frame, &layout);
            let blocking = blocking::blocking(&house, &frame, &layout, &bare);
            let backed = frame.with(&blocking);
            let site = edges::Site::new(&house, &backed).expect("it has a wall");
            let runs = edges::runs_with(&site, &layout, &bare, frame.members.len());
            nailing::nailing(&house, &backed, &layout, &runs)
        });
    });
    c.bench_function("evaluate", |b| {
        b.iter_batched(
            || spec.clone(),
            |spec| evaluate(&house, &frame, spec),
            BatchSize::SmallInput,
        );
    });
    c.bench_function("search", |b| b.iter(|| search::search(&house, black_box(&frame))));
}

fn demo(c: &mut Criterion) {
    let plan = plan_json(edgenail::demo::HOUSE_JSON).expect("the demo house has a plan");
    let nails: u64 = plan.walls().iter().map(|wall| wall.built.nailing.count()).sum();
    c.bench_function("demo house: plan", |b| {
        b.iter(|| plan_json(black_box(edgenail::demo::HOUSE_JSON)));
    });
    c.bench_function(&format!("demo house: JSON of {nails} nails"), |b| {
        b.iter(|| plan.json());
    });
    c.bench_function(&format!("demo house: SVG of {nails} nails"), |b| {
        b.iter(|| {
            plan.walls()
                .iter()
                .filter_map(|wall| plan.wall_svg(&wall.name))
                .map(|svg| svg.len())
                .sum::<usize>()
        });
    });
}

/// As the example `plan_house` does it, into a folder of the build.
fn files(c: &mut Criterion) {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("bench-demo");
    fs::create_dir_all(&folder).expect("the build has a folder");
    let write = |name: &str, text: &str| fs::write(folder.join(name), text).expect("the folder takes files");
    c.bench_function("demo house to files", |b| {
        b.iter(|| {
            let plan = plan_json(black_box(edgenail::demo::HOUSE_JSON)).expect("the demo house has a plan");
            write("plan.json", &plan.json());
            for (index, wall) in plan.walls().iter().enumerate() {
                let svg = plan.wall_svg(&wall.name).expect("the wall has a drawing");
                write(&format!("wall-{index}.svg"), &svg);
            }
            for page in 0..plan.cut_sheet_pages() {
                let svg = plan.cut_sheets_svg(page).expect("the drawing has this page");
                write(&format!("cut-sheets-{page}.svg"), &svg);
            }
            let takeoff = plan.table("takeoff").expect("the plan has a take-off");
            write("takeoff.csv", &takeoff.csv());
        });
    });
}

/// Every nail of the bench wall, pieces at openings too.
fn racking(c: &mut Criterion) {
    let house = house(WALL);
    let frame = frame_wall(&house, 0).expect("it has a wall");
    let built = search::search(&house, &frame).expect("it has a layout").chosen;
    let nail = NailResistance {
        strength: 72.8,
        stiffness: 5000.0,
    };
    let nails = vec![Some(nail); house.stock.nails.len()];
    c.bench_function("racking", |b| {
        b.iter(|| {
            let taken = racking_of_storey(black_box(&built), 0, &nails, AtOpenings::Counted, 3000.0);
            rack(&taken.expect("the nails have resistances").wall)
        });
    });
}

criterion_group!(benches, stages, racking, demo, files);
criterion_main!(benches);
