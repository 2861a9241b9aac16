//! The most memory that is in use at once while the demo house goes from its text to its files.
//! `cargo bench -p edgenail --bench heap`.

#![expect(
    clippy::expect_used,
    clippy::print_stdout,
    reason = "a bench that cannot start ends, and prints"
)]

use edgenail::{demo, plan_json};
use peak_alloc::PeakAlloc;
use std::hint::black_box;

#[global_allocator]
static HEAP: PeakAlloc = PeakAlloc;

fn main() {
    let before = HEAP.current_usage();
    HEAP.reset_peak_usage();
    let plan = plan_json(demo::HOUSE_JSON).expect("the demo house has a plan");
    show("planned", HEAP.peak_usage() - before);
    black_box(plan.json());
    show("with its JSON", HEAP.peak_usage() - before);
    for wall in plan.walls() {
        black_box(plan.wall_svg(&wall.name));
    }
    for page in 0..plan.cut_sheet_pages() {
        black_box(plan.cut_sheets_svg(page));
    }
    black_box(plan.table("takeoff").map(|takeoff| takeoff.csv()));
    show("with its drawings and its take-off", HEAP.peak_usage() - before);
}

fn show(what: &str, bytes: usize) {
    println!("peak heap of the demo house, {what}: {} kB", bytes / 1000);
}
