//! From JSON text to a house: every fault is named, every default is listed.
//!
//! The text becomes a [`tree`] that keeps numbers as they were written. The tree becomes a
//! [`House`] through one table of [`fields`], which also gives the JSON schema and the
//! documentation of the input. What no single field can say, such as two openings that overlap, is checked last.

pub mod fields;
pub mod tree;

mod carried;
mod check;
mod choice;
mod context;
mod house;
mod item;
mod question;
mod record;
mod value;

use crate::house::House;
use crate::issue::Issue;
use crate::length::Unit;
use context::Context;
use fields::{HOUSE, Kind};
use item::{Item, Voice};
use record::Record;
use serde::Serialize;
use std::rc::Rc;
use tree::Node;

pub use fields::{fields_markdown, house_schema, question_markdown, question_schema};
pub(crate) use question::question_of;
pub use question::read_question;

/// The most faults that are listed.
pub const ISSUES_MOST: usize = 1_000;

/// A value that the input left to the library.
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize)]
pub struct Assumed {
    /// JSON pointer to the field.
    pub path: String,
    /// The value that was taken.
    pub value: String,
    /// Why this value.
    pub why: String,
}

impl Assumed {
    /// What a document says by not saying its unit.
    fn inches() -> Self {
        Self {
            path: "/unit".to_owned(),
            value: "in".to_owned(),
            why: "bare numbers are inches where the document does not say its unit".to_owned(),
        }
    }
}

/// The document as a whole.
static DOCUMENT: Kind = Kind::Object(&HOUSE);

/// Reads a house, and lists what the text left to the library.
///
/// Lengths are text such as `97 1/8` or `8' 1 1/8"`, or bare numbers in the document's `unit`, or whole numbers of
/// 1/40640 in. where the document says `"length_unit": {"per_inch": 40640}`.
///
/// # Errors
/// Every fault of the text, in the order of the document.
///
/// ```
/// let (house, assumed) = edgenail::read_house(br#"{"walls": [{"name": "north", "length": "32 ft"}]}"#).unwrap();
/// assert_eq!(house.walls[0].length, edgenail::Length::feet(32));
/// assert!(assumed.iter().any(|a| a.path == "/practice/gap" && a.value == "1/8\""));
/// ```
pub fn read_house(bytes: &[u8]) -> Result<(House, Vec<Assumed>), Vec<Issue>> {
    let (tree, doubles) = tree::parse(bytes).map_err(|issue| vec![*issue])?;
    house_of(&tree, doubles)
}

/// The name that a document says for its house, whatever else is wrong with it; empty where there is none.
pub(crate) fn name_of(bytes: &[u8]) -> String {
    let tree = tree::parse(bytes);
    let name = tree.as_ref().ok().and_then(|(tree, _)| tree.get("name"));
    match name.map(|node| &node.kind) {
        Some(tree::Kind::Text(text)) => text.clone().into_owned(),
        _ => String::new(),
    }
}

/// The house that a value of a document describes; paths begin at that value.
fn house_of(tree: &Node<'_>, doubles: Vec<Issue>) -> Result<(House, Vec<Assumed>), Vec<Issue>> {
    let context = context_of(tree, doubles);
    let house = build(&context, tree);
    if let Some((house, _)) = &house {
        check::relations(house, &context);
    }
    let unit_said = !context.assumed_unit();
    let (mut issues, mut assumed) = context.finish();
    match house {
        Some((house, carried)) if issues.is_empty() => {
            assumed.retain(|value| is_of_use(value, tree));
            if !unit_said {
                assumed.insert(0, Assumed::inches());
            }
            Ok((house, carried::on(carried, assumed, tree)))
        }
        _ => {
            issues.sort_by_key(|issue| tree.offset_at(&issue.path));
            Err(issues)
        }
    }
}

/// How the document's bare numbers are read.
fn context_of(tree: &Node<'_>, doubles: Vec<Issue>) -> Context {
    let mut context = Context::new(doubles);
    context.exact = tree
        .get("length_unit")
        .is_some_and(|node| node.kind != tree::Kind::Null);
    context.unit = tree.get("unit").and_then(|node| match &node.kind {
        tree::Kind::Text(word) => Unit::named(word),
        _ => None,
    });
    context
}

fn build(context: &Context, tree: &Node<'_>) -> Option<(House, Vec<Assumed>)> {
    Record::of(&root(context, tree, &DOCUMENT)).map(|record| house::document(&record))
}

/// The document as a value of this kind.
fn root<'r, 'n>(context: &'r Context, node: &'r Node<'n>, kind: &'static Kind) -> Item<'r, 'n> {
    Item {
        context,
        node,
        kind,
        path: String::new(),
        wall: Rc::from(""),
        voice: Voice::User,
    }
}

/// Whether a value was used: a default of the house's practice is not, where every wall says its own.
fn is_of_use(value: &Assumed, tree: &Node<'_>) -> bool {
    let Some(field) = value.path.strip_prefix("/practice") else {
        return true;
    };
    let Some(tree::Kind::List(walls)) = tree.get("walls").map(|walls| &walls.kind) else {
        return true;
    };
    walls
        .iter()
        .any(|wall| !wall.get("practice").is_some_and(|practice| practice.has(field)))
}

#[cfg(test)]
mod tests;
