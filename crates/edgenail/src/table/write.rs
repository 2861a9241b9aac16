//! Tables as text: CSV and JSON.

use super::{Column, Data, Read, Schema, Table};
use serde::ser::{Serialize, SerializeSeq, SerializeStruct, Serializer};

impl Table {
    /// The table as comma-separated values in the form of RFC 4180: a line of names, then a line for each row,
    /// each ended by CR LF; a value with a comma, a quote or a line break stands in quotes.
    pub fn csv(&self) -> String {
        let mut text = String::new();
        line(
            &mut text,
            self.columns.iter().map(|column| column.head.name.to_owned()),
        );
        for row in 0..self.len() {
            line(
                &mut text,
                self.columns.iter().map(|column| column.data.shown(row)),
            );
        }
        text
    }

    /// The table as JSON: `{"columns": [names], "rows": [[values], …]}`.
    pub fn json(&self) -> String {
        // Serializing numbers and text into memory has no way to fail.
        serde_json::to_string(self).unwrap_or_default()
    }
}

impl Data {
    /// The value of a row as plain text, empty beyond the last row.
    pub fn shown(&self, row: usize) -> String {
        match self {
            Self::Int(values) => values.get(row).map(ToString::to_string),
            Self::Float(values) => values.get(row).map(ToString::to_string),
            Self::Text(values) => values.get(row).cloned(),
        }
        .unwrap_or_default()
    }
}

fn line(text: &mut String, values: impl Iterator<Item = String>) {
    for (position, value) in values.enumerate() {
        if position > 0 {
            text.push(',');
        }
        if value.contains([',', '"', '\r', '\n']) {
            text.push('"');
            text.push_str(&value.replace('"', "\"\""));
            text.push('"');
        } else {
            text.push_str(&value);
        }
    }
    text.push_str("\r\n");
}

/// Rows as the JSON of their table, read off one by one without a table between.
pub(crate) struct Written<'r, T> {
    pub schema: &'r Schema<T>,
    pub rows: &'r [T],
}

impl<T> Serialize for Written<'_, T> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let names = self.schema.fields.iter().map(|field| field.head.name);
        let rows = self.rows.iter().map(|row| WrittenRow {
            schema: self.schema,
            row,
        });
        let mut table = serializer.serialize_struct("Table", 2)?;
        table.serialize_field("columns", &Each(names))?;
        table.serialize_field("rows", &Each(rows))?;
        table.end()
    }
}

struct WrittenRow<'r, T> {
    schema: &'r Schema<T>,
    row: &'r T,
}

impl<T> Serialize for WrittenRow<'_, T> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut values = serializer.serialize_seq(Some(self.schema.fields.len()))?;
        for field in &self.schema.fields {
            match field.read {
                Read::Int(read) => values.serialize_element(&read(self.row))?,
                Read::Length(read) => values.serialize_element(&read(self.row).units())?,
                Read::Float(read) => values.serialize_element(&read(self.row))?,
                Read::Text(read) => values.serialize_element(&read(self.row))?,
            }
        }
        values.end()
    }
}

/// A list of what an iterator gives.
struct Each<I>(I);

impl<I: Iterator<Item: Serialize> + Clone> Serialize for Each<I> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_seq(self.0.clone())
    }
}

impl Serialize for Table {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut table = serializer.serialize_struct("Table", 2)?;
        let names: Vec<_> = self.columns.iter().map(|column| column.head.name).collect();
        table.serialize_field("columns", &names)?;
        table.serialize_field("rows", &Rows(self))?;
        table.end()
    }
}

struct Rows<'a>(&'a Table);

impl Serialize for Rows<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut rows = serializer.serialize_seq(Some(self.0.len()))?;
        for index in 0..self.0.len() {
            rows.serialize_element(&Row {
                columns: &self.0.columns,
                index,
            })?;
        }
        rows.end()
    }
}

struct Row<'a> {
    columns: &'a [Column],
    index: usize,
}

impl Serialize for Row<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut row = serializer.serialize_seq(Some(self.columns.len()))?;
        for column in self.columns {
            match &column.data {
                Data::Int(values) => row.serialize_element(&values.get(self.index))?,
                Data::Float(values) => row.serialize_element(&values.get(self.index))?,
                Data::Text(values) => row.serialize_element(&values.get(self.index))?,
            }
        }
        row.end()
    }
}
