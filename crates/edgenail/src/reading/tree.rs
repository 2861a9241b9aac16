//! JSON text as a tree that keeps what the user wrote: the order of keys, numbers as text, where each value stands.

mod number;
mod parse;
pub mod patch;
mod place;
mod text;
mod write;

pub use parse::parse;
pub use place::Place;

use std::borrow::Cow;

/// The deepest nesting of lists and objects.
pub const DEPTH_MOST: usize = 32;
/// The largest document, in bytes.
pub const BYTES_MOST: usize = 64 << 20;
/// The most values in a document.
pub const NODES_MOST: usize = 8_000_000;

/// A value and where it stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Node<'a> {
    /// What it is.
    pub kind: Kind<'a>,
    /// Offset of its first byte in the document.
    pub offset: usize,
}

/// A JSON value.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Kind<'a> {
    /// Keys and values in the order of the document.
    Object(Vec<(Cow<'a, str>, Node<'a>)>),
    /// Values in order.
    List(Vec<Node<'a>>),
    /// Text, with its escapes resolved.
    Text(Cow<'a, str>),
    /// A number as it was written.
    Number(Cow<'a, str>),
    /// True or false.
    Flag(bool),
    /// Nothing.
    Null,
}

impl<'a> Node<'a> {
    /// The value of this key; the first of several.
    pub fn get(&self, key: &str) -> Option<&Node<'a>> {
        match &self.kind {
            Kind::Object(entries) => entries.iter().find(|(name, _)| name == key).map(|(_, node)| node),
            _ => None,
        }
    }

    /// What kind of value it is, for a person.
    pub const fn kind_name(&self) -> &'static str {
        match &self.kind {
            Kind::Object(_) => "an object",
            Kind::List(_) => "a list",
            Kind::Text(_) => "text",
            Kind::Number(_) => "a number",
            Kind::Flag(_) => "true or false",
            Kind::Null => "null",
        }
    }

    /// What was written, for a person: a scalar itself, cut after 80 characters, and the kind of anything else.
    pub fn shown(&self) -> String {
        match &self.kind {
            Kind::Text(text) | Kind::Number(text) => cut(text),
            Kind::Flag(flag) => flag.to_string(),
            Kind::Null => "null".to_owned(),
            Kind::Object(_) | Kind::List(_) => self.kind_name().to_owned(),
        }
    }

    /// The offset of the value at this JSON pointer, or of the innermost value on the way to it.
    pub fn offset_at(&self, pointer: &str) -> usize {
        self.follow(pointer).0.offset
    }

    /// Whether there is a value at this JSON pointer.
    pub fn has(&self, pointer: &str) -> bool {
        self.follow(pointer).1
    }

    /// The value at this JSON pointer.
    pub fn at(&self, pointer: &str) -> Option<&Node<'a>> {
        let (node, found) = self.follow(pointer);
        found.then_some(node)
    }

    /// The innermost value on the way along a pointer, and whether that is its end.
    fn follow(&self, pointer: &str) -> (&Node<'a>, bool) {
        let mut node = self;
        for part in pointer.split('/').skip(1) {
            let next = match &node.kind {
                Kind::List(items) => part.parse().ok().and_then(|index: usize| items.get(index)),
                _ => node.get(&part.replace("~1", "/").replace("~0", "~")),
            };
            match next {
                Some(next) => node = next,
                None => return (node, false),
            }
        }
        (node, true)
    }
}

/// The first 80 characters, with a mark where there are more.
pub(super) fn cut(text: &str) -> String {
    let mut shown: String = text.chars().take(80).collect();
    if shown.len() < text.len() {
        shown.push('…');
    }
    shown
}

/// A key or index as a part of a JSON pointer.
pub(super) fn pointer_part(key: &str) -> String {
    key.replace('~', "~0").replace('/', "~1")
}

#[cfg(test)]
mod tests;
