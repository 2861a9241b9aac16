//! A question whose fields take the values of a row.

use super::{Column, Value, Values};
use crate::issue::{Code, Issue};
use crate::reading::tree::{DEPTH_MOST, Kind, Node, parse};
use std::borrow::Cow;

/// A question, and the columns that change it from row to row.
pub(super) struct Varied<'a> {
    tree: Node<'a>,
    columns: Vec<Placed<'a>>,
    rows: usize,
}

/// A column and the way to its field.
struct Placed<'a> {
    way: Vec<String>,
    values: &'a Values,
}

impl<'a> Varied<'a> {
    /// Makes room for every column in the question.
    pub(super) fn new(mut tree: Node<'a>, columns: &'a [Column]) -> Result<Self, Vec<Issue>> {
        let mut issues = Vec::new();
        let mut placed: Vec<Placed<'a>> = Vec::new();
        let mut first: Option<(&str, usize)> = None;
        for column in columns {
            let way = way(&column.field);
            if let Some(values) = column.length() {
                let (name, rows) = *first.get_or_insert((&column.field, values));
                if values != rows {
                    issues.push(disagrees(column, values, name, rows));
                }
            }
            if placed.iter().any(|other| other.way == way) {
                issues.push(fault(
                    Code::DuplicateName,
                    &way,
                    &column.field,
                    "each field once",
                    &format!("two columns set the field `{}`", column.field),
                ));
            } else if let Err(issue) = make_room(&mut tree, &way, &column.field) {
                issues.push(*issue);
            }
            placed.push(Placed {
                way,
                values: &column.values,
            });
        }
        if !issues.is_empty() {
            return Err(issues);
        }
        Ok(Self {
            tree,
            columns: placed,
            rows: first.map_or(1, |(_, rows)| rows),
        })
    }

    pub(super) const fn rows(&self) -> usize {
        self.rows
    }

    /// The question of a row.
    pub(super) fn put(&mut self, row: usize) -> Result<&Node<'a>, Vec<Issue>> {
        let mut issues = Vec::new();
        for column in &self.columns {
            let value = match column.values {
                Values::Each(values) => values.get(row).unwrap_or(&Value::Null),
                Values::All(value) => value,
            };
            match kind(value, &column.way) {
                Ok(kind) => {
                    if let Some(node) = follow(&mut self.tree, &column.way) {
                        node.kind = kind;
                    }
                }
                Err(issue) => issues.push(*issue),
            }
        }
        if issues.is_empty() {
            Ok(&self.tree)
        } else {
            Err(issues)
        }
    }
}

impl Column {
    /// How many rows it has; none where it fills every row.
    fn length(&self) -> Option<usize> {
        match &self.values {
            Values::Each(values) => Some(values.len()),
            Values::All(_) => None,
        }
    }
}

/// The keys on the way to a field: those of a JSON pointer (RFC 6901), or names with dots between.
fn way(field: &str) -> Vec<String> {
    field.strip_prefix('/').map_or_else(
        || field.split('.').map(ToOwned::to_owned).collect(),
        |pointer| {
            let parts = pointer.split('/');
            parts
                .map(|part| part.replace("~1", "/").replace("~0", "~"))
                .collect()
        },
    )
}

/// Adds the field where the question lacks it, and the objects on the way to it.
fn make_room(tree: &mut Node<'_>, way: &[String], field: &str) -> Result<(), Box<Issue>> {
    let refuse = |code, found: &str, allowed: &str, message: &str| {
        Err(Box::new(fault(
            code,
            way,
            found,
            allowed,
            &format!("the column `{field}` {message}"),
        )))
    };
    if way.len() > DEPTH_MOST {
        let allowed = format!("at most {DEPTH_MOST}");
        return refuse(
            Code::TooDeep,
            &format!("{} names", way.len()),
            &allowed,
            "names a field too deep",
        );
    }
    let mut node = tree;
    for part in way {
        let offset = node.offset;
        let name = node.kind_name();
        node = match &mut node.kind {
            Kind::Object(entries) => {
                let place = entries
                    .iter()
                    .position(|(key, _)| key == part)
                    .unwrap_or(entries.len());
                if place == entries.len() {
                    // Faults are told in the order of the document; what is added comes last in its object.
                    let offset = entries.last().map_or(offset, |(_, last)| last.offset);
                    let added = Node {
                        kind: Kind::Object(Vec::new()),
                        offset,
                    };
                    entries.push((Cow::Owned(part.clone()), added));
                }
                match entries.get_mut(place) {
                    Some((_, node)) => node,
                    None => return Ok(()),
                }
            }
            Kind::List(items) => {
                let allowed = format!("a position below {}", items.len());
                match part.parse().ok().and_then(|index: usize| items.get_mut(index)) {
                    Some(node) => node,
                    None => return refuse(Code::OutOfRange, part, &allowed, "names no value of its list"),
                }
            }
            _ => {
                return refuse(
                    Code::WrongKind,
                    name,
                    "an object or a list",
                    "names a field of what has none",
                );
            }
        };
    }
    Ok(())
}

/// The value at the end of the way.
fn follow<'t, 'a>(tree: &'t mut Node<'a>, way: &[String]) -> Option<&'t mut Node<'a>> {
    way.iter().try_fold(tree, |node, part| match &mut node.kind {
        Kind::Object(entries) => entries
            .iter_mut()
            .find(|(key, _)| key == part)
            .map(|(_, node)| node),
        Kind::List(items) => items.get_mut(part.parse::<usize>().ok()?),
        _ => None,
    })
}

/// A value as a document would have it.
fn kind<'a>(value: &'a Value, way: &[String]) -> Result<Kind<'a>, Box<Issue>> {
    Ok(match value {
        Value::Null => Kind::Null,
        Value::Flag(flag) => Kind::Flag(*flag),
        Value::Whole(number) => Kind::Number(Cow::Owned(number.to_string())),
        Value::Number(number) if number.is_finite() => Kind::Number(Cow::Owned(format!("{number:?}"))),
        Value::Number(number) => {
            return Err(Box::new(fault(
                Code::NotANumber,
                way,
                &number.to_string(),
                "a finite number",
                "the value is no number",
            )));
        }
        Value::Text(text) => Kind::Text(Cow::Borrowed(text)),
        Value::Json(json) => {
            let (node, doubles) = parse(json.as_bytes()).map_err(|issue| Box::new(within(way, *issue)))?;
            if let Some(issue) = doubles.into_iter().next() {
                return Err(Box::new(within(way, issue)));
            }
            node.kind
        }
    })
}

fn disagrees(column: &Column, values: usize, first: &str, rows: usize) -> Issue {
    let code = if values < rows {
        Code::TooFewItems
    } else {
        Code::TooManyItems
    };
    fault(
        code,
        &way(&column.field),
        &format!("{values} values"),
        &format!("{rows} values, as many as `{first}` has"),
        &format!(
            "the column `{}` has not as many values as the first",
            column.field
        ),
    )
}

/// A fault of a value of JSON, seen from the question.
fn within(way: &[String], issue: Issue) -> Issue {
    Issue {
        path: format!("{}{}", pointer(way), issue.path),
        ..issue
    }
}

fn fault(code: Code, way: &[String], found: &str, allowed: &str, message: &str) -> Issue {
    Issue {
        code,
        path: pointer(way),
        wall: String::new(),
        found: found.to_owned(),
        allowed: allowed.to_owned(),
        message: message.to_owned(),
    }
}

fn pointer(way: &[String]) -> String {
    let parts = way
        .iter()
        .map(|part| format!("/{}", part.replace('~', "~0").replace('/', "~1")));
    parts.collect()
}
