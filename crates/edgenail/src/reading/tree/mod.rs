//! A JSON document as a tree that keeps what a plan must answer for: order, texts of numbers, places.

mod parser;
mod place;

pub(crate) use parser::parse;
pub(crate) use place::within;

/// Objects and lists may lie so deep in each other.
pub(crate) const DEPTH_MOST: usize = 32;
/// A document may be so long, in bytes: 64 MiB.
pub(crate) const DOCUMENT_MOST: usize = 64 << 20;

/// A value of a document.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Node {
    /// What it is.
    pub kind: Kind,
    /// Where it begins, in bytes from the start of the document.
    pub offset: usize,
}

/// What a value of a document is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Kind {
    /// `null`.
    Null,
    /// `true` or `false`.
    Bool(bool),
    /// A number as it was written.
    Number(String),
    /// A text, with its escapes resolved.
    Text(String),
    /// A list.
    List(Vec<Node>),
    /// An object: its fields as they were written, in order.
    Object(Vec<(String, Node)>),
}

impl Node {
    /// The field of an object; nothing if this is no object or has no such field.
    pub fn field(&self, name: &str) -> Option<&Self> {
        match &self.kind {
            Kind::Object(fields) => fields.iter().find(|(key, _)| key == name).map(|(_, node)| node),
            _ => None,
        }
    }

    /// What the value is, as a word for a person.
    pub const fn word(&self) -> &'static str {
        match &self.kind {
            Kind::Null => "null",
            Kind::Bool(_) => "true or false",
            Kind::Number(_) => "a number",
            Kind::Text(_) => "a text",
            Kind::List(_) => "a list",
            Kind::Object(_) => "an object",
        }
    }

    /// The value as it was written, cut after 200 characters; of a list or an object, only what it is.
    pub fn found(&self) -> String {
        match &self.kind {
            Kind::Null => "null".into(),
            Kind::Bool(value) => value.to_string(),
            Kind::Number(text) | Kind::Text(text) => text.chars().take(200).collect(),
            Kind::List(entries) => format!("a list of {}", entries.len()),
            Kind::Object(fields) => format!("an object of {} fields", fields.len()),
        }
    }
}
