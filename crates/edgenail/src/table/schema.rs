//! What a table's columns are and how they are read off rows.

use super::{Column, Data, Kind, LENGTH_UNIT, Table};
use crate::length::Length;
use std::borrow::Cow;

/// A table's definition over rows of type `T`.
#[derive(Clone, Debug)]
pub struct Schema<T> {
    /// The table's name.
    pub name: &'static str,
    /// What one row is.
    pub meaning: &'static str,
    /// The fields, in order. A field is only ever added at the end, so that C rows keep their layout.
    pub fields: Vec<Field<T>>,
}

/// One column's definition over rows of type `T`.
#[derive(Clone, Debug)]
pub struct Field<T> {
    /// What the column is.
    pub head: Head,
    /// How the value is read off a row.
    pub read: Read<T>,
}

/// What a column is, without its values.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Head {
    /// The column's name, unique within its table.
    pub name: &'static str,
    /// The kind of its values.
    pub kind: Kind,
    /// The unit of its numbers; nothing for text, counts and indices.
    pub unit: Option<&'static str>,
    /// What the value says.
    pub meaning: &'static str,
}

/// How a value is read off a row.
#[derive(Clone, Debug)]
pub enum Read<T> {
    /// A whole number.
    Int(fn(&T) -> i64),
    /// A length, in units.
    Length(fn(&T) -> Length),
    /// A double.
    Float(fn(&T) -> f64),
    /// Text.
    Text(fn(&T) -> Cow<'_, str>),
}

impl<T> Schema<T> {
    /// The table of these rows.
    pub fn table(&self, rows: &[T]) -> Table {
        let columns = self.fields.iter().map(|field| field.column(rows)).collect();
        Table {
            name: self.name,
            meaning: self.meaning,
            columns,
        }
    }
}

impl<T> Field<T> {
    /// A column of counts or indices.
    pub const fn int(name: &'static str, meaning: &'static str, read: fn(&T) -> i64) -> Self {
        Self::new(name, Kind::Int, None, meaning, Read::Int(read))
    }

    /// A column of whole numbers of a unit, such as money in 1/10,000.
    pub const fn int_in(
        unit: &'static str,
        name: &'static str,
        meaning: &'static str,
        read: fn(&T) -> i64,
    ) -> Self {
        Self::new(name, Kind::Int, Some(unit), meaning, Read::Int(read))
    }

    /// A column of lengths.
    pub const fn length(name: &'static str, meaning: &'static str, read: fn(&T) -> Length) -> Self {
        Self::new(name, Kind::Int, Some(LENGTH_UNIT), meaning, Read::Length(read))
    }

    /// A column of doubles.
    pub const fn float(
        unit: Option<&'static str>,
        name: &'static str,
        meaning: &'static str,
        read: fn(&T) -> f64,
    ) -> Self {
        Self::new(name, Kind::Float, unit, meaning, Read::Float(read))
    }

    /// A column of text.
    pub const fn text(name: &'static str, meaning: &'static str, read: fn(&T) -> Cow<'_, str>) -> Self {
        Self::new(name, Kind::Text, None, meaning, Read::Text(read))
    }

    const fn new(
        name: &'static str,
        kind: Kind,
        unit: Option<&'static str>,
        meaning: &'static str,
        read: Read<T>,
    ) -> Self {
        let head = Head {
            name,
            kind,
            unit,
            meaning,
        };
        Self { head, read }
    }

    fn column(&self, rows: &[T]) -> Column {
        let data = match self.read {
            Read::Int(read) => Data::Int(rows.iter().map(read).collect()),
            Read::Length(read) => Data::Int(rows.iter().map(|row| read(row).units()).collect()),
            Read::Float(read) => Data::Float(rows.iter().map(read).collect()),
            Read::Text(read) => Data::Text(rows.iter().map(|row| read(row).into_owned()).collect()),
        };
        Column {
            head: self.head,
            data,
        }
    }
}
