//! The fuzz targets' bodies on bytes from a fixed stream, and on the inputs that once broke a law.

use edgenail_cases::attack::{Reached, foreign, read, spoiled};
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
