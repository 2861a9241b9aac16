//! Answers gathered into columns.

use crate::answer::internal;
use crate::error::Error;
use crate::reading::tree::{Kind, Node, parse};
use std::collections::HashMap;

/// Values of answers as columns of equal length.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct AnswerTable {
    /// `answers`, or the name of a list within an answer; a list within a list is named with a dot.
    pub name: String,
    /// The number of rows.
    pub rows: usize,
    /// The columns; their order is that of the answers.
    pub columns: Vec<AnswerColumn>,
}

/// A value of each answer.
#[derive(Clone, Debug, PartialEq)]
pub struct AnswerColumn {
    /// Its name in the answer, with its unit at the end.
    pub name: String,
    /// The values, one a row.
    pub values: AnswerValues,
}

/// The values of a column.
#[derive(Clone, Debug, PartialEq)]
pub enum AnswerValues {
    /// Rows and positions, counted from 0.
    Places(Vec<i64>),
    /// Numbers and flags: NaN where a row has none, 1 for true, 0 for false.
    Numbers(Vec<f64>),
    /// Text, empty where a row has none.
    Texts(Vec<String>),
}

impl AnswerTable {
    /// The values of the column of this name.
    pub fn column(&self, name: &str) -> Option<&AnswerValues> {
        self.columns
            .iter()
            .find(|column| column.name == name)
            .map(|column| &column.values)
    }
}

impl AnswerValues {
    /// The number of values.
    pub const fn len(&self) -> usize {
        match self {
            Self::Places(places) => places.len(),
            Self::Numbers(numbers) => numbers.len(),
            Self::Texts(texts) => texts.len(),
        }
    }

    /// Whether there is no value.
    pub const fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// Fills up with what stands for no value.
    fn fill(&mut self, rows: usize) {
        match self {
            Self::Places(places) => places.resize(rows, 0),
            Self::Numbers(numbers) => numbers.resize(rows, f64::NAN),
            Self::Texts(texts) => texts.resize(rows, String::new()),
        }
    }

    fn push(&mut self, value: Scalar<'_>) {
        match (&mut *self, value) {
            (Self::Numbers(numbers), Scalar::Number(number)) => numbers.push(number),
            (Self::Texts(texts), Scalar::Text(text)) => texts.push(text.to_owned()),
            (Self::Texts(texts), Scalar::Number(number)) => texts.push(number.to_string()),
            (Self::Numbers(numbers), Scalar::Text(text)) => {
                // What had been none or a number turns out to be text.
                let shown = |number: &f64| {
                    if number.is_nan() {
                        String::new()
                    } else {
                        number.to_string()
                    }
                };
                let mut texts: Vec<String> = numbers.iter().map(shown).collect();
                texts.push(text.to_owned());
                *self = Self::Texts(texts);
            }
            (Self::Places(_), _) => {}
        }
    }
}

#[derive(Clone, Copy)]
enum Scalar<'a> {
    Number(f64),
    Text(&'a str),
}

/// A table to which rows are added.
#[derive(Default)]
struct Growing {
    table: AnswerTable,
    places: HashMap<String, usize>,
    /// The column that comes next, where a row has the same values as the row before.
    next: usize,
}

impl Growing {
    fn set(&mut self, name: &str, value: Option<Scalar<'_>>) {
        let expected = self
            .table
            .columns
            .get(self.next)
            .is_some_and(|column| column.name == name);
        let place = if expected { self.next } else { self.place(name) };
        self.next = place + 1;
        let rows = self.table.rows;
        if let (Some(column), Some(value)) = (self.table.columns.get_mut(place), value) {
            column.values.fill(rows);
            column.values.push(value);
        }
    }

    fn place(&mut self, name: &str) -> usize {
        if let Some(place) = self.places.get(name) {
            return *place;
        }
        let place = self.table.columns.len();
        self.places.insert(name.to_owned(), place);
        self.table.columns.push(AnswerColumn {
            name: name.to_owned(),
            values: AnswerValues::Numbers(Vec::new()),
        });
        place
    }

    /// A column of positions.
    fn key(&mut self, name: &str) {
        let place = self.place(name);
        if let Some(column) = self.table.columns.get_mut(place) {
            column.values = AnswerValues::Places(Vec::new());
        }
    }

    /// Positions that tell where a row belongs; in front of its values.
    fn keys(&mut self, keys: &[(String, i64)]) {
        for ((_, position), column) in keys.iter().zip(&mut self.table.columns) {
            if let AnswerValues::Places(places) = &mut column.values {
                places.push(*position);
            }
        }
        self.next = keys.len();
    }

    fn end_row(&mut self) {
        self.table.rows += 1;
        self.next = 0;
    }

    fn finished(mut self) -> AnswerTable {
        // What was none in one row and an object in another has its columns under the object's names.
        let names: Vec<String> = self
            .table
            .columns
            .iter()
            .map(|column| format!("{}.", column.name))
            .collect();
        let mut names = names
            .iter()
            .map(|name| self.places.keys().any(|other| other.starts_with(name)));
        self.table.columns.retain(|_| !names.next().unwrap_or(false));
        for column in &mut self.table.columns {
            column.values.fill(self.table.rows);
        }
        self.table
    }
}

/// Every table of the answers so far.
#[derive(Default)]
pub(super) struct Gathered {
    answers: Growing,
    lists: Vec<Growing>,
}

impl Gathered {
    /// Adds the answer of a row, a document without its steps.
    pub(super) fn answer(&mut self, row: usize, document: &str) -> Result<(), Error> {
        let (tree, _) = parse(document.as_bytes()).map_err(|issue| internal(issue.message))?;
        let keys = [("row".to_owned(), super::whole(row))];
        add(&mut self.answers, &mut self.lists, &tree, "", "", &keys);
        self.answers.end_row();
        Ok(())
    }

    /// Adds a row that has no answer.
    pub(super) fn fault(&mut self) {
        self.answers.end_row();
    }

    /// The answers, and their lists.
    pub(super) fn tables(self) -> (AnswerTable, Vec<AnswerTable>) {
        let mut answers = self.answers.finished();
        "answers".clone_into(&mut answers.name);
        (answers, self.lists.into_iter().map(Growing::finished).collect())
    }
}

/// Adds what stands at a node to the row of a table; `name` is its name there, `list` the table's own, `keys` say where the
/// row belongs.
fn add(
    table: &mut Growing,
    lists: &mut Vec<Growing>,
    node: &Node<'_>,
    name: &str,
    list: &str,
    keys: &[(String, i64)],
) {
    match &node.kind {
        Kind::Object(entries) => {
            for (key, value) in entries {
                add(table, lists, value, &dotted(name, key), list, keys);
            }
        }
        Kind::List(items) => add_list(lists, items, &dotted(list, name), keys),
        Kind::Number(number) => table.set(name, number.parse().ok().map(Scalar::Number)),
        Kind::Flag(flag) => table.set(name, Some(Scalar::Number(f64::from(u8::from(*flag))))),
        Kind::Text(text) => table.set(name, Some(Scalar::Text(text))),
        Kind::Null => table.set(name, None),
    }
}

/// Adds a row to the table of a list for each of its items.
fn add_list(lists: &mut Vec<Growing>, items: &[Node<'_>], name: &str, keys: &[(String, i64)]) {
    let place = lists.iter().position(|list| list.table.name == name);
    let place = place.unwrap_or_else(|| {
        let mut list = Growing::default();
        name.clone_into(&mut list.table.name);
        for (key, _) in keys {
            list.key(key);
        }
        list.key("position");
        lists.push(list);
        lists.len() - 1
    });
    // The table is taken out, so that lists within its items can be added meanwhile.
    let Some(mut table) = lists.get_mut(place).map(std::mem::take) else {
        return;
    };
    let outer = keys.len();
    for (position, item) in items.iter().enumerate() {
        let mut own = keys.to_vec();
        own.push(("position".to_owned(), super::whole(position)));
        table.keys(&own);
        // Lists within know this position under the name of this list.
        if let Some((key, _)) = own.get_mut(outer) {
            name.clone_into(key);
        }
        let value = if matches!(item.kind, Kind::Object(_)) {
            ""
        } else {
            "value"
        };
        add(&mut table, lists, item, value, name, &own);
        table.end_row();
    }
    if let Some(list) = lists.get_mut(place) {
        *list = table;
    }
}

fn dotted(before: &str, name: &str) -> String {
    if before.is_empty() {
        name.to_owned()
    } else {
        format!("{before}.{name}")
    }
}
