//! Walls.

use super::{given, measured, practice, section, segment};
use crate::house::{Face, Wall};
use crate::reading::object::Object;
use crate::reading::tree::{Kind, Node, within};

/// A wall; `shared` is what the document says about the practice of the house.
pub(super) fn wall(object: &Object<'_>, shared: Option<(&str, &Node)>) -> Wall {
    object.notes.borrow_mut().wall = wall_name(object);
    let length = object.length("length");
    let alone = section_count(object) == 1;
    let wall = Wall {
        name: object.text("name"),
        length,
        face: object.choice("face", [Face::Exterior, Face::Interior, Face::Party]),
        sections: object.list("sections", |entry| {
            section::section(entry, alone.then_some(length))
        }),
        segments: object.list("segments", segment::segment),
        measured: object.object_or_null("measured", measured::measured),
        given_layout: object.variant_or_null("given_layout", given::layout),
        practice: practice_of(object, shared),
    };
    object.notes.borrow_mut().wall.clear();
    wall
}

/// The wall's practice: its own changes over those of the house over the defaults.
fn practice_of(object: &Object<'_>, shared: Option<(&str, &Node)>) -> crate::house::Practice {
    let root = "";
    let home = within(root, "practice");
    let below = shared.filter(|(_, node)| matches!(node.kind, Kind::Object(_)));
    object.layered(
        "practice",
        below.map(|(path, node)| (within(path, "practice"), node)),
        &home,
        practice::practice,
    )
}

/// The name for faults of the wall, read without noting faults of its own.
fn wall_name(object: &Object<'_>) -> String {
    match object.given("name").map(|(_, node)| &node.kind) {
        Some(Kind::Text(name)) => name.chars().take(200).collect(),
        _ => String::new(),
    }
}

fn section_count(object: &Object<'_>) -> usize {
    match object.given("sections").map(|(_, node)| &node.kind) {
        Some(Kind::List(entries)) => entries.len(),
        _ => 0,
    }
}
