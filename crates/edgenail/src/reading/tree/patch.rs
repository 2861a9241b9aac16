//! Changes to a document: JSON Patch (RFC 6902) with the operations `add`, `remove`, `replace` and `test`, at JSON
//! pointers (RFC 6901).
//!
//! Numbers are never turned into doubles: what a change does not name stays as it was written.

use super::super::ISSUES_MOST;
use super::{Kind, Node, number};
use crate::issue::{Code, Issue};
use std::borrow::Cow;
use std::mem;

/// What a change does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Operation {
    Add,
    Remove,
    Replace,
    Test,
}

const OPERATIONS: [(&str, Operation); 4] = [
    ("add", Operation::Add),
    ("remove", Operation::Remove),
    ("replace", Operation::Replace),
    ("test", Operation::Test),
];

/// One change, as it was read.
struct Change<'p, 'a> {
    operation: Operation,
    pointer: &'p str,
    steps: Vec<Cow<'p, str>>,
    /// Given for all but `remove`.
    value: Option<&'p Node<'a>>,
}

/// Applies changes to a document, one after the other.
///
/// `changes` is the patch: a list of objects with `op`, `path` and, but for `remove`, `value`; other members are ignored, as
/// RFC 6902 wants it. Paths of the faults point into the patch.
///
/// # Errors
/// Every change that is none; otherwise the first that the document does not allow. The document is then of no use.
pub fn patch<'a>(document: &mut Node<'a>, changes: &Node<'a>) -> Result<(), Vec<Issue>> {
    let Kind::List(list) = &changes.kind else {
        return Err(vec![issue(
            Code::WrongKind,
            String::new(),
            changes.shown(),
            "a list of changes",
            "changes are a list of objects with `op`, `path` and `value`",
        )]);
    };
    let mut faults = Vec::new();
    let read: Vec<Change<'_, 'a>> = list
        .iter()
        .enumerate()
        .filter_map(|(place, change)| read(place, change, &mut faults))
        .collect();
    if !faults.is_empty() {
        faults.truncate(ISSUES_MOST);
        return Err(faults);
    }
    for (place, change) in read.iter().enumerate() {
        apply(document, change).map_err(|code| vec![refused(place, change, code)])?;
    }
    Ok(())
}

fn read<'p, 'a>(place: usize, change: &'p Node<'a>, faults: &mut Vec<Issue>) -> Option<Change<'p, 'a>> {
    if !matches!(change.kind, Kind::Object(_)) {
        faults.push(issue(
            Code::WrongKind,
            format!("/{place}"),
            change.shown(),
            "an object",
            "a change is an object with `op`, `path` and `value`",
        ));
        return None;
    }
    let mut text = |key: &str| match change.get(key) {
        Some(Node {
            kind: Kind::Text(text),
            ..
        }) => Some(text.as_ref()),
        other => {
            let (code, found) = other.map_or((Code::MissingField, String::new()), |node| {
                (Code::WrongKind, node.shown())
            });
            let message = format!("a change must say its `{key}`");
            faults.push(issue(code, format!("/{place}/{key}"), found, "text", &message));
            None
        }
    };
    let (name, pointer) = (text("op"), text("path"));
    let operation = name.and_then(|name| {
        let known = OPERATIONS.iter().find(|(word, _)| *word == name);
        if known.is_none() {
            faults.push(issue(
                Code::NotAChoice,
                format!("/{place}/op"),
                super::cut(name),
                "add, remove, replace, test",
                "there is no such operation",
            ));
        }
        known.map(|(_, operation)| *operation)
    });
    let steps = pointer.and_then(|pointer| {
        let steps = steps(pointer);
        if steps.is_none() {
            faults.push(issue(
                Code::NotAPointer,
                format!("/{place}/path"),
                super::cut(pointer),
                "a JSON pointer: nothing, or parts that each begin with `/`, `~0` for `~` and `~1` for `/`",
                "the text is no JSON pointer",
            ));
        }
        steps
    });
    let value = change.get("value");
    if value.is_none() && operation.is_some_and(|operation| operation != Operation::Remove) {
        faults.push(issue(
            Code::MissingField,
            format!("/{place}/value"),
            String::new(),
            "a value",
            "a change must say its `value`, unless it removes one",
        ));
        return None;
    }
    Some(Change {
        operation: operation?,
        pointer: pointer?,
        steps: steps?,
        value,
    })
}

/// The parts of a pointer; nothing where it is none.
fn steps(pointer: &str) -> Option<Vec<Cow<'_, str>>> {
    if pointer.is_empty() {
        return Some(Vec::new());
    }
    pointer.strip_prefix('/')?.split('/').map(step).collect()
}

fn step(text: &str) -> Option<Cow<'_, str>> {
    if !text.contains('~') {
        return Some(Cow::Borrowed(text));
    }
    let mut parts = text.split('~');
    let mut step = parts.next().unwrap_or_default().to_owned();
    for part in parts {
        let (escaped, rest) = match part.as_bytes().first() {
            Some(b'0') => ('~', part.get(1..)),
            Some(b'1') => ('/', part.get(1..)),
            _ => return None,
        };
        step.push(escaped);
        step.push_str(rest.unwrap_or_default());
    }
    Some(Cow::Owned(step))
}

fn apply<'a>(document: &mut Node<'a>, change: &Change<'_, 'a>) -> Result<(), Code> {
    let value = || change.value.cloned().ok_or(Code::MissingField);
    match change.operation {
        Operation::Test => {
            let found = find(document, &change.steps).ok_or(Code::NothingThere)?;
            let same = change.value.is_some_and(|value| equal(found, value));
            same.then_some(()).ok_or(Code::TestFailed)
        }
        Operation::Replace => {
            *find(document, &change.steps).ok_or(Code::NothingThere)? = value()?;
            Ok(())
        }
        Operation::Add => add(document, &change.steps, value()?),
        Operation::Remove => remove(document, &change.steps),
    }
}

fn find<'n, 'a>(node: &'n mut Node<'a>, steps: &[Cow<'_, str>]) -> Option<&'n mut Node<'a>> {
    steps.iter().try_fold(node, |node, step| match &mut node.kind {
        Kind::Object(entries) => {
            let mut entries = entries.iter_mut();
            entries.find(|(key, _)| key == step).map(|(_, node)| node)
        }
        Kind::List(items) => items.get_mut(index(step)?),
        _ => None,
    })
}

/// A place in a list: digits without a zero in front (RFC 6901, section 4).
fn index(step: &str) -> Option<usize> {
    let digits = step.bytes().all(|byte| byte.is_ascii_digit());
    let zeros = step.len() > 1 && step.starts_with('0');
    (digits && !zeros).then(|| step.parse().ok()).flatten()
}

fn add<'a>(document: &mut Node<'a>, steps: &[Cow<'_, str>], value: Node<'a>) -> Result<(), Code> {
    let Some((last, before)) = steps.split_last() else {
        *document = value;
        return Ok(());
    };
    match &mut find(document, before).ok_or(Code::NothingThere)?.kind {
        Kind::Object(entries) => {
            match entries.iter_mut().find(|(key, _)| key == last) {
                Some((_, old)) => *old = value,
                None => entries.push((Cow::Owned(last.clone().into_owned()), value)),
            }
            Ok(())
        }
        Kind::List(items) => {
            let place = if last == "-" {
                Some(items.len())
            } else {
                index(last)
            };
            let place = place.filter(|place| *place <= items.len());
            items.insert(place.ok_or(Code::NothingThere)?, value);
            Ok(())
        }
        _ => Err(Code::NothingThere),
    }
}

fn remove(document: &mut Node<'_>, steps: &[Cow<'_, str>]) -> Result<(), Code> {
    let (last, before) = steps.split_last().ok_or(Code::NothingThere)?;
    match &mut find(document, before).ok_or(Code::NothingThere)?.kind {
        Kind::Object(entries) => {
            let place = entries.iter().position(|(key, _)| key == last);
            entries.remove(place.ok_or(Code::NothingThere)?);
            Ok(())
        }
        Kind::List(items) => {
            let place = index(last).filter(|place| *place < items.len());
            items.remove(place.ok_or(Code::NothingThere)?);
            Ok(())
        }
        _ => Err(Code::NothingThere),
    }
}

/// Whether two values are the same (RFC 6902, section 4.6): numbers by their value, objects whatever their order.
fn equal(one: &Node<'_>, other: &Node<'_>) -> bool {
    match (&one.kind, &other.kind) {
        (Kind::Object(one), Kind::Object(others)) => {
            let has = |(key, node): &(Cow<'_, str>, Node<'_>)| {
                let other = others.iter().find(|(name, _)| name == key);
                other.is_some_and(|(_, other)| equal(node, other))
            };
            one.len() == others.len() && one.iter().all(has)
        }
        (Kind::List(one), Kind::List(others)) => {
            one.len() == others.len() && one.iter().zip(others).all(|(one, other)| equal(one, other))
        }
        (Kind::Number(one), Kind::Number(other)) => number::same(one, other),
        (Kind::Text(one), Kind::Text(other)) => one == other,
        (Kind::Flag(one), Kind::Flag(other)) => one == other,
        (one, other) => mem::discriminant(one) == mem::discriminant(other),
    }
}

fn refused(place: usize, change: &Change<'_, '_>, code: Code) -> Issue {
    let pointer = super::cut(change.pointer);
    if code == Code::TestFailed {
        return issue(
            code,
            format!("/{place}/value"),
            change.value.map(Node::shown).unwrap_or_default(),
            "what the document says there",
            &format!("the document says something else at `{pointer}`"),
        );
    }
    let message = match change.operation {
        Operation::Add => format!("nothing can be added at `{pointer}`"),
        _ => format!("there is nothing at `{pointer}`"),
    };
    issue(
        code,
        format!("/{place}/path"),
        pointer,
        "a place that the document has when its turn comes",
        &message,
    )
}

fn issue(code: Code, path: String, found: String, allowed: &str, message: &str) -> Issue {
    Issue {
        code,
        path,
        wall: String::new(),
        found,
        allowed: allowed.to_owned(),
        message: message.to_owned(),
    }
}

#[cfg(test)]
mod tests;
