//! A value of the document at its place, and the faults that it may have.

use super::context::Context;
use super::fields::Kind;
use super::tree::{self, Node, cut};
use crate::issue::{Code, Issue};
use crate::wording::{Say, wording};
use std::rc::Rc;

/// What is said while a value is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Voice {
    /// The user wrote it: faults and defaults are listed.
    User,
    /// A default gave it, and lists its own parts: lengths are in inches.
    Default,
    /// A default that is listed as a whole gave it.
    Listed,
    /// It stands in for a value with a fault: nothing more is listed.
    Mute,
}

/// A value at its place.
#[derive(Clone, Debug)]
pub(super) struct Item<'r, 'n> {
    pub context: &'r Context,
    pub node: &'r Node<'n>,
    /// What may stand there.
    pub kind: &'static Kind,
    /// JSON pointer.
    pub path: String,
    /// Name of the wall that it belongs to.
    pub wall: Rc<str>,
    pub voice: Voice,
}

impl<'r, 'n> Item<'r, 'n> {
    /// Lists a fault of this value.
    pub(super) fn fault(&self, code: Code, allowed: &str, message: &str) {
        if self.voice != Voice::Mute {
            self.context.fault(Issue {
                code,
                path: self.path.clone(),
                wall: self.wall.to_string(),
                found: self.node.shown(),
                allowed: allowed.to_owned(),
                message: message.to_owned(),
            });
        }
    }

    /// Lists that a value of another kind stands here.
    pub(super) fn wrong_kind(&self, wanted: &str) {
        let message = format!("{} stands where {wanted} is wanted", self.node.kind_name());
        self.fault(Code::WrongKind, wanted, &message);
    }

    /// Lists a value outside its range.
    pub(super) fn out_of_range(&self, least: impl Say, most: impl Say) {
        let allowed = self.context.written(&wording![least, " to ", most]);
        let message = format!("`{}` is not within {allowed}", self.node.shown());
        self.fault(Code::OutOfRange, &allowed, &message);
    }

    /// Lists that a row of the table does not suit the value that is read by it.
    pub(super) fn table_fault(&self) {
        self.fault(
            Code::Internal,
            "a field of another kind",
            "the table of fields does not suit the house",
        );
    }

    /// The value as another kind, at the same place.
    pub(super) fn as_kind(&self, kind: &'static Kind) -> Self {
        Self { kind, ..self.clone() }
    }

    /// The items of a list.
    pub(super) fn items(&self) -> Option<Vec<Item<'r, 'n>>> {
        let Kind::List { of, least, most } = self.kind else {
            self.table_fault();
            return None;
        };
        let tree::Kind::List(nodes) = &self.node.kind else {
            self.wrong_kind("a list");
            return None;
        };
        let count = nodes.len();
        if count < *least {
            self.fault(
                Code::TooFewItems,
                &format!("at least {least}"),
                &format!("the list has {count} items"),
            );
        }
        if count > *most {
            self.fault(
                Code::TooManyItems,
                &format!("at most {most}"),
                &format!("the list has {count} items"),
            );
            return None;
        }
        let item = |(index, node)| Item {
            node,
            kind: of,
            path: format!("{}/{index}", self.path),
            ..self.clone()
        };
        Some(nodes.iter().enumerate().map(item).collect())
    }

    /// The text of a value that must be text.
    pub(super) fn text(&self) -> Option<String> {
        let Kind::Text { most, blank } = self.kind else {
            self.table_fault();
            return None;
        };
        let tree::Kind::Text(text) = &self.node.kind else {
            self.wrong_kind("text");
            return None;
        };
        if text.chars().nth(*most).is_some() {
            self.fault(
                Code::TextTooLong,
                &format!("at most {most} characters"),
                "the text is too long",
            );
        } else if text.chars().any(char::is_control) {
            self.fault(
                Code::ControlCharacter,
                "text of one line",
                "the text has a control character",
            );
        } else if !blank && text.trim().is_empty() {
            self.fault(Code::EmptyText, "at least one character", "the text is empty");
        } else {
            return Some(text.clone().into_owned());
        }
        None
    }

    /// One of the words that the field allows.
    pub(super) fn choice(&self) -> Option<String> {
        let Kind::Choice(words) = self.kind else {
            self.table_fault();
            return None;
        };
        let tree::Kind::Text(text) = &self.node.kind else {
            self.wrong_kind("text");
            return None;
        };
        if words.contains(&text.as_ref()) {
            return Some(text.clone().into_owned());
        }
        let help = nearest(text, words.iter().copied());
        let message = format!("`{}` is none of the choices{}", cut(text), perhaps(help));
        self.fault(Code::NotAChoice, &words.join(", "), &message);
        None
    }
}

/// `; perhaps `gap` is meant`.
pub(super) fn perhaps(help: Option<&str>) -> String {
    help.map_or_else(String::new, |word| format!("; perhaps `{word}` is meant"))
}

/// The nearest of these words, if one is near enough to be meant.
pub(super) fn nearest<'w>(word: &str, words: impl Iterator<Item = &'w str>) -> Option<&'w str> {
    const LONGEST: usize = 40;
    let length = word.chars().count();
    if length > LONGEST {
        return None;
    }
    let allowed = (length / 3).max(1);
    words
        .map(|other| (distance(word, other), other))
        .filter(|(distance, _)| *distance <= allowed)
        .min()
        .map(|(_, w)| w)
}

/// How many letters must be put in, left out, changed or swapped with their neighbour.
fn distance(a: &str, b: &str) -> usize {
    let fold = |text: &str| text.chars().flat_map(char::to_lowercase).collect::<Vec<char>>();
    let (a, b) = (fold(a), fold(b));
    let mut before: Vec<usize> = Vec::new();
    let mut row: Vec<usize> = (0..=b.len()).collect();
    for (i, letter) in a.iter().enumerate() {
        let mut next = vec![i + 1];
        for (j, other) in b.iter().enumerate() {
            let at = |row: &[usize], index: usize| row.get(index).copied().unwrap_or(usize::MAX / 2);
            let mut best = (at(&row, j) + usize::from(letter != other))
                .min(at(&row, j + 1) + 1)
                .min(at(&next, j) + 1);
            let swapped = i > 0 && j > 0 && a.get(i - 1) == Some(other) && b.get(j - 1) == Some(letter);
            if swapped {
                best = best.min(at(&before, j - 1) + 1);
            }
            next.push(best);
        }
        before = std::mem::replace(&mut row, next);
    }
    row.last().copied().unwrap_or_default()
}

#[cfg(test)]
mod tests;
