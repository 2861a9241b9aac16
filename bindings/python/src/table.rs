//! Tables as plain values of Python, with what other libraries read beside them.

use crate::arrow::ArrowTable;
use crate::errors::call;
use edgenail::table::{Column, Data, Kind, Table};
use pyo3::prelude::*;

/// A table: (meaning, columns, CSV, Arrow data).
pub(crate) type Plain<'py> = (&'static str, Vec<Bound<'py, PyAny>>, String, ArrowTable);

/// One column as (name, kind, unit, meaning, values).
type ColumnParts<'a> = (&'a str, &'static str, Option<&'a str>, &'a str, Values<'a>);

/// The values of a column, which become a list.
#[derive(IntoPyObject)]
enum Values<'a> {
    Int(&'a [i64]),
    Float(&'a [f64]),
    Text(&'a [String]),
}

pub(crate) fn plain(py: Python<'_>, table: Table) -> PyResult<Plain<'_>> {
    let columns = table.columns.iter().map(|column| {
        let parts = parts(column);
        parts.into_pyobject(py).map(Bound::into_any)
    });
    let (meaning, columns) = (table.meaning, columns.collect::<PyResult<_>>()?);
    let csv = call(py, || Ok(table.csv()))?;
    let arrow = py.detach(|| ArrowTable::try_from(table))?;
    Ok((meaning, columns, csv, arrow))
}

fn parts(column: &Column) -> ColumnParts<'_> {
    let values = match &column.data {
        Data::Int(values) => Values::Int(values),
        Data::Float(values) => Values::Float(values),
        Data::Text(values) => Values::Text(values),
    };
    let kind = match column.head.kind {
        Kind::Int => "int",
        Kind::Float => "float",
        Kind::Text => "text",
    };
    let head = &column.head;
    (head.name, kind, head.unit, head.meaning, values)
}
