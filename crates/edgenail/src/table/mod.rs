//! Columnar tables: one definition of each table gives its JSON, its CSV, its C rows and columns, its Python
//! columns and its documentation.
//!
//! A [`Schema`] lists the fields of a table once, each with its unit, its meaning and how it is read off a row.
//! [`Schema::table`] applies it to rows and gives a [`Table`] of plain columns.
//!
//! ```
//! use edgenail::Length;
//! use edgenail::table::{Field, Schema};
//! struct Stud { wall: String, x: Length }
//! let studs = Schema {
//!     name: "studs",
//!     meaning: "Studs from left to right.",
//!     fields: vec![
//!         Field::text("wall", "Name of the wall.", |stud: &Stud| stud.wall.as_str().into()),
//!         Field::length("x", "Left face.", |stud: &Stud| stud.x),
//!     ],
//! };
//! let rows = [0, 16].map(|x| Stud { wall: "north".into(), x: Length::inches(x) });
//! let table = studs.table(&rows);
//! assert_eq!(table.csv(), "wall,x\r\nnorth,0\r\nnorth,650240\r\n");
//! assert_eq!(table.json(), r#"{"columns":["wall","x"],"rows":[["north",0],["north",650240]]}"#);
//! ```

mod schema;
mod write;

pub use schema::{Field, Head, Read, Schema};
use serde::Serialize;
pub(crate) use write::Written;

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
    /// What the column is.
    pub head: Head,
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
        self.columns.iter().find(|column| column.head.name == name)
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
