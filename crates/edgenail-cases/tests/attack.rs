//! The fuzz targets' bodies on bytes from a fixed stream, and on the inputs that once broke a law.

use edgenail::generate::house_json;
use edgenail::read_house;
use edgenail::reading::fields::HOUSE;
use edgenail_cases::attack::{Reached, beyond, foreign, places, read, spoiled, write};
use serde_json::Value;
use sha2::{Digest, Sha256};

/// A thousand bytes and more, the same everywhere: hashes of a name and a number.
fn bytes(name: &str, number: u32) -> Vec<u8> {
    let blocks = (0..40u32).map(|block| Sha256::digest(format!("{name} {number} {block}")));
    blocks.flat_map(|block| block.to_vec()).collect()
}

fn percent(of: &[Reached], reached: Reached) -> usize {
    of.iter().filter(|one| **one == reached).count() * 100 / of.len()
}

#[test]
fn spoiled_houses_keep_the_laws_and_half_of_them_reach_nailing() {
    let all: Vec<Reached> = (0..200)
        .map(|number| spoiled(&bytes("spoiled", number)))
        .collect();
    assert!(percent(&all, Reached::Nailing) >= 50, "{all:?}");
    // Some have to be refused, else nothing absurd was tried.
    assert!(percent(&all, Reached::Refused) >= 5, "{all:?}");
}

#[test]
fn foreign_layouts_keep_the_laws() {
    let all: Vec<Reached> = (0..100)
        .map(|number| foreign(&bytes("foreign", number)))
        .collect();
    assert!(percent(&all, Reached::Nailing) >= 90, "{all:?}");
}

#[test]
fn documents_of_the_project_are_read_and_planned() {
    for file in [
        "tests/changes/bases/window.json",
        "tests/cases/plan/inputs/one-wall.json",
    ] {
        let bytes = std::fs::read(edgenail_cases::root().join(file)).unwrap_or_default();
        assert_eq!(read(&bytes), Reached::Nailing, "{file}");
        // Every shorter document is refused in words.
        for end in (0..bytes.len()).step_by(7) {
            assert_eq!(read(&bytes[..end]), Reached::Refused, "{file} up to {end}");
        }
    }
}

/// Found by fuzzing: what is found in a given layout stands with the wall, not with what was built.
#[test]
fn a_given_layout_too_short_for_its_wall_is_told_of() {
    let file = edgenail_cases::root().join("tests/changes/bases/window.json");
    let text = std::fs::read_to_string(file).unwrap_or_default();
    let longer = text.replacen("\"length\": \"192\"", "\"length\": \"595\"", 1);
    assert_ne!(text, longer);
    assert_eq!(read(longer.as_bytes()), Reached::Nailing);
}

/// A field that says what its own row forbids is among the faults, by its pointer and with its wall.
#[test]
fn every_field_beyond_its_row_is_named_with_its_wall() {
    let mut tried = 0;
    for seed in 0..12 {
        let text = house_json(seed).0;
        let house: Value = serde_json::from_str(&text).unwrap_or_default();
        for place in places(&HOUSE, &house) {
            for value in beyond(&place.field.kind) {
                let mut spoiled = house.clone();
                write(&mut spoiled, &place.pointer, Some(value.clone()));
                let issues = read_house(spoiled.to_string().as_bytes())
                    .err()
                    .unwrap_or_default();
                let named = issues.iter().find(|issue| issue.path == place.pointer);
                let Some(issue) = named else {
                    panic!("seed {seed}, {}: {value} is not among {issues:#?}", place.pointer);
                };
                if let Some(wall) = wall_of(&house, &place.pointer) {
                    assert_eq!(issue.wall, wall, "seed {seed}, {}", place.pointer);
                }
                tried += 1;
            }
        }
    }
    assert!(tried > 10_000, "{tried}");
}

/// The name of the wall that a field belongs to, if it is not that name itself.
fn wall_of<'h>(house: &'h Value, pointer: &str) -> Option<&'h str> {
    let mut parts = pointer.strip_prefix("/walls/")?.split('/');
    let index: usize = parts.next()?.parse().ok()?;
    if parts.eq(["name"]) {
        return None;
    }
    house.get("walls")?.get(index)?.get("name")?.as_str()
}
