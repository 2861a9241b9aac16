//! What an earlier reading of the house chose, where it still holds.

use super::Assumed;
use super::tree::{Kind, Node};
use super::value::Value;
use crate::length::{Length, Unit};

/// Entries of an earlier reading that the document does not contradict, then those of this one.
pub(super) fn on(carried: Vec<Assumed>, chosen: Vec<Assumed>, tree: &Node<'_>) -> Vec<Assumed> {
    let mut all: Vec<Assumed> = carried
        .into_iter()
        .filter(|entry| chosen.iter().all(|new| new.path != entry.path) && holds(entry, tree))
        .collect();
    all.extend(chosen);
    all
}

/// Whether the document says what the entry says, or nothing.
fn holds(entry: &Assumed, tree: &Node<'_>) -> bool {
    let says = |node: Option<&Node<'_>>| node.is_none_or(|node| same(node, &entry.value));
    let Some(field) = entry.path.strip_prefix("/practice") else {
        return says(tree.at(&entry.path));
    };
    // A plan writes practice wall by wall.
    let Some(Kind::List(walls)) = tree.get("walls").map(|walls| &walls.kind) else {
        return says(tree.at(&entry.path));
    };
    says(tree.at(&entry.path))
        && walls
            .iter()
            .any(|wall| says(wall.get("practice").and_then(|practice| practice.at(field))))
}

/// Whether a value of the document is the one in these words. Of a list or an object that is taken to be so.
fn same(node: &Node<'_>, words: &str) -> bool {
    match &node.kind {
        Kind::Object(_) | Kind::List(_) => true,
        Kind::Text(text) => text == words || exact(text).is_some_and(|length| exact(words) == Some(length)),
        Kind::Flag(flag) => flag.to_string() == words,
        Kind::Null => words == "null",
        Kind::Number(number) => number == words || number.parse().is_ok_and(|units| length(units, words)),
    }
}

/// Whether so many units are the length in these words, which may be rounded for a person.
fn length(units: i64, words: &str) -> bool {
    let length = Length::from_units(units);
    Value::show(&length) == words || exact(words) == Some(length)
}

/// The exact length in these words.
fn exact(words: &str) -> Option<Length> {
    Length::parse_exact(words, Unit::Inch).ok()
}
