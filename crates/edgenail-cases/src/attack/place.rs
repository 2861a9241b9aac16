//! Every place of a document where the table of fields knows of a value, written there or left out.

use edgenail::reading::fields::{Field, Kind, Object, Preset};
use serde_json::Value;

/// A field of a document.
#[derive(Clone, Debug)]
pub struct Place {
    /// JSON pointer to it.
    pub pointer: String,
    /// The row of the table.
    pub field: &'static Field,
    /// The document says something there.
    pub written: bool,
}

/// All fields of a document, in the order of the table.
pub fn places(root: &'static Object, document: &Value) -> Vec<Place> {
    let mut found = Vec::new();
    walk(root, Some(document), "", &mut found);
    found
}

fn walk(object: &'static Object, node: Option<&Value>, pointer: &str, found: &mut Vec<Place>) {
    for field in object.fields {
        let child = node.and_then(|node| node.get(field.name));
        let pointer = format!("{pointer}/{}", field.name);
        enter(&field.kind, &field.preset, child, &pointer, found);
        found.push(Place {
            pointer,
            field,
            written: child.is_some(),
        });
    }
}

fn enter(kind: &'static Kind, preset: &Preset, node: Option<&Value>, pointer: &str, found: &mut Vec<Place>) {
    match (kind, node) {
        (Kind::Object(object), Some(_)) => walk(object, node, pointer, found),
        // An object that is filled in when it is missing may be written in part.
        (Kind::Object(object), None) if matches!(preset, Preset::Parts(_)) => {
            walk(object, None, pointer, found);
        }
        (Kind::OneOf(objects), Some(node)) => {
            let tag = node.get("kind").and_then(Value::as_str);
            if let Some(object) = objects.iter().find(|object| object.tag == tag) {
                walk(object, Some(node), pointer, found);
            }
        }
        (Kind::List { of, .. }, Some(Value::Array(items))) => {
            for (index, item) in items.iter().enumerate() {
                enter(of, preset, Some(item), &format!("{pointer}/{index}"), found);
            }
        }
        (Kind::Maybe(kind), Some(_)) => enter(kind, preset, node, pointer, found),
        _ => {}
    }
}

/// Writes a value at a pointer, or takes away what is there. Objects on the way are made where they are missing.
pub fn write(document: &mut Value, pointer: &str, value: Option<Value>) {
    let mut node = document;
    let mut parts = pointer.split('/').skip(1).peekable();
    while let Some(part) = parts.next() {
        let last = parts.peek().is_none();
        match node {
            Value::Object(fields) if last => {
                match value {
                    Some(value) => fields.insert(part.to_owned(), value),
                    None => fields.remove(part),
                };
                return;
            }
            Value::Object(fields) => {
                node = fields
                    .entry(part)
                    .or_insert_with(|| Value::Object(serde_json::Map::new()));
            }
            Value::Array(items) => match part.parse().ok().and_then(|index: usize| items.get_mut(index)) {
                Some(item) => node = item,
                None => return,
            },
            _ => return,
        }
    }
}
