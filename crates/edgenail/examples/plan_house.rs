//! Plans a house and leaves the plan, its take-off, its order of work, its drawings and why its layouts were chosen in a folder.
//!
//! `plan_house [HOUSE.json FOLDER]` — without arguments the embedded demo house goes to `target/demo`.

use edgenail::cutting::{Proof, Source};
use std::collections::BTreeSet;
use std::error::Error;
use std::fs;
use std::path::{Path, PathBuf};

fn main() -> Result<(), Box<dyn Error>> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let (house, folder) = match arguments.as_slice() {
        [] => (
            edgenail::demo::HOUSE_JSON.as_bytes().to_vec(),
            PathBuf::from("target/demo"),
        ),
        [house, folder] => (fs::read(house)?, PathBuf::from(folder)),
        _ => return Err("usage: plan_house [HOUSE.json FOLDER]".into()),
    };
    let plan = edgenail::plan_bytes(&house)?;
    fs::create_dir_all(&folder)?;
    let write = |name: &str, text: &str| fs::write(folder.join(name), text);
    write("plan.json", &plan.json())?;
    for name in ["takeoff", "steps"] {
        if let Some(table) = plan.table(name) {
            write(&format!("{name}.csv"), &table.csv())?;
        }
    }
    let mut taken = BTreeSet::new();
    for wall in plan.walls() {
        let name = file_name(&wall.name, &mut taken);
        if let Some(svg) = plan.wall_svg(&wall.name) {
            write(&format!("wall-{name}.svg"), &svg)?;
        }
        if let Some(text) = plan.why(&wall.name) {
            write(&format!("why-{name}.txt"), &text)?;
        }
        if let Some(svg) = plan.frame_svg(&wall.name) {
            write(&format!("frame-{name}.svg"), &svg)?;
        }
    }
    for page in 0..plan.cut_sheet_pages() {
        if let Some(svg) = plan.cut_sheets_svg(page) {
            write(&format!("cut-sheets-{}.svg", page + 1), &svg)?;
        }
    }
    summary(&plan, &folder)?;
    Ok(())
}

/// What a person reads first.
#[expect(clippy::print_stdout, reason = "a program's output")]
fn summary(plan: &edgenail::Plan, folder: &Path) -> Result<(), Box<dyn Error>> {
    let cutting = plan.cutting();
    println!("{}, walls: {}", plan.house().name, plan.walls().len());
    for wall in plan.walls() {
        let (pieces, blocks) = (wall.built.layout.pieces.len(), wall.built.blocking.blocks.len());
        println!(
            "  {}: pieces {pieces}, blocks {blocks}, nails {}",
            wall.name,
            wall.built.nailing.count()
        );
    }
    let new = |source: &Source| matches!(source, Source::Sheet { .. });
    let new = cutting.sheets.iter().filter(|cut| new(&cut.source)).count();
    let known = match &cutting.proof {
        Proof::Proven => "no plan for these pieces costs less".to_owned(),
        Proof::Gap { amount: gap } | Proof::Stopped { gap, .. } => format!("at most {gap} could be saved"),
    };
    println!(
        "sheets to cut: {}, {new} of them new ({known})",
        cutting.sheets.len()
    );
    let findings = plan.findings();
    let style = plan.house().drawn_in.in_text();
    println!("findings: {}", findings.len());
    for finding in findings
        .iter()
        .filter(|finding| finding.severity != edgenail::finding::Severity::Advise)
    {
        println!("  {}: {}", finding.wall, finding.message.written(style));
    }
    println!("written to {}", fs::canonicalize(folder)?.display());
    Ok(())
}

/// A wall's name as part of a file's name, with a number where another wall's comes out the same.
fn file_name(wall: &str, taken: &mut BTreeSet<String>) -> String {
    let letter = |c: char| {
        if c.is_ascii_alphanumeric() {
            c.to_ascii_lowercase()
        } else {
            '-'
        }
    };
    let plain: String = wall.chars().map(letter).collect();
    let mut name = plain.clone();
    let mut number = 1;
    while !taken.insert(name.clone()) {
        number += 1;
        name = format!("{plain}-{number}");
    }
    name
}
