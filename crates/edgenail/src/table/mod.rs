//! Columnar tables: one definition of each table gives its JSON, its CSV, its C rows and columns, its Python
//! columns and its documentation.
//!
//! A [`Schema`] lists the fields of a table once, each with its unit, its meaning and how it is read off a row.
//! [`Schema::table`] applies it to rows and gives a [`Table`] of plain columns.
//!
//! ```
//! use edgenail::table::{Field, Read, Schema};
//! struct Stud { wall: String, x: i64 }
//! let studs = Schema {
//!     name: "studs",
//!     meaning: "Studs from left to right.",
//!     fields: vec![
//!         Field { name: "wall", unit: None, meaning: "Name of the wall.", read: Read::Text(|s: &Stud| s.wall.clone()) },
//!         Field { name: "x", unit: Some("1/40640 in."), meaning: "Left face.", read: Read::Int(|s: &Stud| s.x) },
//!     ],
//! };
//! let table = studs.table(&[Stud { wall: "north".into(), x: 0 }, Stud { wall: "north".into(), x: 650_240 }]);
//! assert_eq!(table.csv(), "wall,x\r\nnorth,0\r\nnorth,650240\r\n");
//! assert_eq!(table.json(), r#"{"columns":["wall","x"],"rows":[["north",0],["north",650240]]}"#);
//! ```

mod write;

use serde::Serialize;

/// The unit of every length in a table.
pub const LENGTH_UNIT: &str = "1/40640 in.";

/// A table as columns of equal length.
#[derive(Clone, Debug, PartialEq)]
pub struct Table {
    /// The table's name, such as `panels`.
    pub name: &'static str,
    /// What one row is.
    pub meaning: &'static str,
    /// The columns, in the order in which every language shows them.
    pub columns: Vec<Column>,
}

/// One column of a table.
#[derive(Clone, Debug, PartialEq)]
pub struct Column {
    /// The column's name, unique within its table.
    pub name: &'static str,
    /// The unit of its numbers; nothing for text, counts and indices.
    pub unit: Option<&'static str>,
    /// What the value says.
    pub meaning: &'static str,
    /// The values, one a row.
    pub data: Data,
}

/// The values of a column.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(untagged)]
pub enum Data {
    /// Whole numbers: lengths in units, counts, money in 1/10,000, indices.
    Int(Vec<i64>),
    /// Doubles, in results of mechanics only.
    Float(Vec<f64>),
    /// Text.
    Text(Vec<String>),
}

/// The kind of a column's values.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Whole numbers.
    Int,
    /// Doubles.
    Float,
    /// Text.
    Text,
}

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
    /// The column's name.
    pub name: &'static str,
    /// The unit of its numbers.
    pub unit: Option<&'static str>,
    /// What the value says.
    pub meaning: &'static str,
    /// How the value is read off a row.
    pub read: Read<T>,
}

/// How a value is read off a row; the variant is the column's kind.
#[derive(Clone, Debug)]
pub enum Read<T> {
    /// A whole number.
    Int(fn(&T) -> i64),
    /// A double.
    Float(fn(&T) -> f64),
    /// Text.
    Text(fn(&T) -> String),
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
    fn column(&self, rows: &[T]) -> Column {
        let data = match self.read {
            Read::Int(read) => Data::Int(rows.iter().map(read).collect()),
            Read::Float(read) => Data::Float(rows.iter().map(read).collect()),
            Read::Text(read) => Data::Text(rows.iter().map(read).collect()),
        };
        Column {
            name: self.name,
            unit: self.unit,
            meaning: self.meaning,
            data,
        }
    }
}

impl Table {
    /// The number of rows.
    pub fn len(&self) -> usize {
        self.columns.first().map_or(0, |column| column.data.len())
    }

    /// Whether the table has no row.
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// The column of this name.
    pub fn column(&self, name: &str) -> Option<&Column> {
        self.columns.iter().find(|column| column.name == name)
    }
}

impl Data {
    /// The number of values.
    pub fn len(&self) -> usize {
        match self {
            Self::Int(values) => values.len(),
            Self::Float(values) => values.len(),
            Self::Text(values) => values.len(),
        }
    }

    /// Whether there is no value.
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// The kind of the values.
    pub const fn kind(&self) -> Kind {
        match self {
            Self::Int(_) => Kind::Int,
            Self::Float(_) => Kind::Float,
            Self::Text(_) => Kind::Text,
        }
    }
}

#[cfg(test)]
mod tests;
