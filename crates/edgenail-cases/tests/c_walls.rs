//! The functions for cells that plan a wall, in C, against plans of houses written out in JSON: 200 generated walls.

#![expect(clippy::unwrap_used, reason = "a test fails by a panic")]

use arbitrary::Unstructured;
use edgenail::plan::Figures;
use edgenail::street::Street;
use edgenail_cases::library::{Linking, build, compile, run};
use serde_json::{Value, json};
use sha2::{Digest, Sha256};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

const WALLS: u32 = 200;
/// As many of them stand in one schedule.
const TOGETHER: usize = 6;

/// A wall, as a row has it and as a house has it; sizes are counted in eighths of an inch.
struct Wall {
    row: String,
    house: Value,
}

fn eighths(count: i64) -> String {
    format!("{} {}/8", count / 8, count % 8)
}

fn decimal(count: i64) -> String {
    format!("{}.{:03}", count / 8, count % 8 * 125)
}

/// The wall of this number.
fn wall(number: u32) -> Wall {
    let bytes: Vec<u8> = (0..4u32)
        .flat_map(|part| Sha256::digest([number.to_le_bytes(), part.to_le_bytes()].concat()))
        .collect();
    let mut random = Unstructured::new(&bytes);
    let name = format!("wall {number}");
    let length = random.int_in_range(8 * 36..=8 * 240).unwrap();
    let stud = *random.choose(&[8 * 92 + 5, 8 * 104 + 5, 8 * 96]).unwrap();
    let spacing = *random.choose(&["16", "24", "12", "19.2"]).unwrap();
    let (practice, running, blocked) = *random
        .choose(&[
            ("", "either", "wide_bays"),
            ("upright", "upright", "wide_bays"),
            ("Flat", "flat", "wide_bays"),
            ("either-blocked", "either", "all"),
            ("Upright Blocked", "upright", "all"),
            ("flat_blocked", "flat", "all"),
        ])
        .unwrap();
    let (edge, nailing) = *random.choose(&[(6, ""), (4, " 4/12"), (3, " 3/12")]).unwrap();
    let mut cells = Vec::new();
    let mut openings = Vec::new();
    let mut left = 0;
    for index in 1..=random.int_in_range(0..=2).unwrap() {
        left += random.int_in_range(8 * 12..=8 * 60).unwrap();
        let width = random.int_in_range(8 * 16..=8 * 72).unwrap();
        if left + width + 8 * 9 > length {
            break;
        }
        let door = random.ratio(1, 4).unwrap();
        let sill = if door {
            0
        } else {
            random.int_in_range(8 * 18..=8 * 44).unwrap()
        };
        let height = if door {
            8 * 80
        } else {
            random.int_in_range(8 * 12..=8 * 36).unwrap()
        };
        cells.push([left, sill, width, height].map(eighths).join(","));
        openings.push(json!({
            "name": format!("opening {index}"), "kind": if door { "door" } else { "window" },
            "left": eighths(left), "sill": eighths(sill), "width": eighths(width), "height": eighths(height),
        }));
        left += width;
    }
    let row = [
        name.clone(),
        decimal(length),
        decimal(stud + 8 * 9 / 2),
        spacing.to_owned(),
        cells.join("; "),
        format!("{practice}{nailing}"),
    ];
    let house = json!({"name": name, "length": eighths(length),
        "practice": {"running": running, "blocked_edges": blocked, "assembly": {"edge_spacing": edge}},
        "sections": [{"bottom": {"bears": "concrete"}, "stack": [
            {"kind": "storey", "name": "first floor", "stud": {"length": eighths(stud)}, "spacing": spacing,
             "openings": openings}]}]});
    Wall {
        row: row.join("\t"),
        house,
    }
}

fn program() -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR"));
    let program = folder.join("walls");
    compile(
        "tests/c/walls.c",
        &build(&folder.join("..")).unwrap(),
        Linking::Static,
        &[],
        &program,
    )
    .unwrap();
    program
}

fn said(mode: &str, walls: &[Wall]) -> String {
    let file = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("walls-{mode}.txt"));
    let rows: Vec<&str> = walls.iter().map(|wall| wall.row.as_str()).collect();
    fs::write(&file, rows.join("\n") + "\n").unwrap();
    let output = run(Command::new(program()).arg(mode).arg(file)).unwrap();
    String::from_utf8(output.stdout).unwrap()
}

fn planned(walls: &[&Value]) -> Figures {
    let house = json!({"name": "job", "unit": "in", "walls": walls});
    Figures::of(&edgenail::plan_json(&house.to_string()).unwrap())
}

#[test]
fn cells_plan_the_house_that_a_person_would_write() {
    let walls: Vec<Wall> = (0..WALLS).map(wall).collect();
    let wanted: Vec<String> = walls
        .iter()
        .map(|wall| {
            let figures = planned(&[&wall.house]);
            format!(
                "{} {} {} {} {} {} {}",
                figures.sheets,
                figures.nails,
                figures.blocks,
                four_places(figures.money),
                four_places(figures.minutes),
                figures.refuse,
                figures.mend
            )
        })
        .collect();
    let with_openings = walls.iter().filter(|wall| wall.row.contains(',')).count();
    assert!(with_openings > 60, "{with_openings}");
    assert_eq!(said("figures", &walls).lines().collect::<Vec<_>>(), wanted);
}

#[test]
fn a_schedule_is_one_house() {
    let walls: Vec<Wall> = (0..).map(wall).take(TOGETHER).collect();
    let said = said("schedule", &walls);
    let lines: Vec<&str> = said.lines().collect();
    let [house, sheets, street] = lines[..] else {
        panic!("{said}");
    };
    let plan = edgenail::plan_json(house).unwrap();
    let together = Street::of(&[&plan, &plan], 1_000_000).unwrap();
    assert_eq!(street, together.json());
    assert!(together.together <= together.alone);
    let by_hand: Vec<&Value> = walls.iter().map(|wall| &wall.house).collect();
    assert_eq!(sheets, planned(&by_hand).sheets.to_string());
    let by_hand = json!({"name": "job", "unit": "in", "walls": by_hand}).to_string();
    let read = |text: &str| edgenail::read_house(text.as_bytes()).unwrap().0;
    assert_eq!(read(house), read(&by_hand));
}

fn four_places(amount: edgenail::Amount) -> String {
    let count = amount.ten_thousandths();
    format!("{}.{:04}", count / 10_000, count % 10_000)
}
