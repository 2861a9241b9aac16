//! Tables as Arrow data, handed over through the Arrow `PyCapsule` interface.

use arrow_array::ffi_stream::FFI_ArrowArrayStream;
use arrow_array::{
    Array, ArrayRef, Float64Array, Int64Array, LargeStringArray, RecordBatch, RecordBatchIterator,
    RecordBatchOptions, StringArray,
};
use arrow_schema::ffi::FFI_ArrowSchema;
use arrow_schema::{ArrowError, Field, Schema};
use edgenail::table::{Data, Table};
use pyo3::exceptions::PyValueError;
use pyo3::prelude::*;
use pyo3::types::PyCapsule;
use std::collections::HashMap;
use std::sync::Arc;

/// A table as one batch of Arrow columns; every export hands out the same buffers.
#[pyclass(frozen, module = "edgenail._edgenail")]
#[derive(Debug)]
pub(crate) struct ArrowTable {
    batch: RecordBatch,
}

/// One column as (name, kind, unit, meaning, values).
type GivenColumn<'py> = (String, String, Option<String>, String, Bound<'py, PyAny>);

#[pymethods]
impl ArrowTable {
    /// The table of columns of plain values, each as (name, kind, unit, meaning, values).
    #[new]
    #[pyo3(signature = (name, meaning, columns, /))]
    fn new(py: Python<'_>, name: String, meaning: String, columns: Vec<GivenColumn<'_>>) -> PyResult<Self> {
        let mut made: Vec<(Field, ArrayRef)> = Vec::with_capacity(columns.len());
        for (head, kind, unit, says, values) in columns {
            let data = data(&kind, &values).map_err(|error| {
                let note = format!("column {head} of the table {name}");
                let noted = error.value(py).call_method1("add_note", (note,));
                noted.err().unwrap_or(error)
            })?;
            let rows = made.first().map_or(data.len(), |(_, first)| first.len());
            if data.len() != rows {
                let found = format!("column {head} has {} values, the first column {rows}", data.len());
                return Err(PyValueError::new_err(found));
            }
            made.push(column(head, unit, says, data));
        }
        Self::of(name, meaning, made).map_err(invalid)
    }

    /// An `ArrowSchema` in a capsule.
    fn __arrow_c_schema__<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyCapsule>> {
        let schema = FFI_ArrowSchema::try_from(self.batch.schema_ref().as_ref()).map_err(invalid)?;
        PyCapsule::new_with_value(py, schema, c"arrow_schema")
    }

    /// An `ArrowArrayStream` of one batch in a capsule; a schema that is asked for is not cast to.
    #[pyo3(signature = (requested_schema=None))]
    #[expect(
        clippy::needless_pass_by_value,
        reason = "arguments are taken out of Python by value"
    )]
    fn __arrow_c_stream__<'py>(
        &self,
        py: Python<'py>,
        requested_schema: Option<Bound<'py, PyAny>>,
    ) -> PyResult<Bound<'py, PyCapsule>> {
        // The interface leaves it to the producer; whoever asked casts what it gets.
        let _ = requested_schema;
        let reader = RecordBatchIterator::new([Ok(self.batch.clone())], self.batch.schema());
        let stream = FFI_ArrowArrayStream::new(Box::new(reader));
        PyCapsule::new_with_value(py, stream, c"arrow_array_stream")
    }
}

impl TryFrom<Table> for ArrowTable {
    type Error = PyErr;

    fn try_from(table: Table) -> PyResult<Self> {
        let columns = table.columns.into_iter().map(|given| {
            let head = given.head;
            column(
                head.name.into(),
                head.unit.map(str::to_owned),
                head.meaning.into(),
                given.data,
            )
        });
        Self::of(table.name.into(), table.meaning.into(), columns).map_err(invalid)
    }
}

impl ArrowTable {
    fn of(
        name: String,
        meaning: String,
        columns: impl IntoIterator<Item = (Field, ArrayRef)>,
    ) -> Result<Self, ArrowError> {
        let (fields, arrays): (Vec<_>, Vec<_>) = columns.into_iter().unzip();
        let says = HashMap::from([("name".into(), name), ("meaning".into(), meaning)]);
        // A table without columns would not know its length.
        let rows = arrays.first().map_or(0, Array::len);
        let options = RecordBatchOptions::new().with_row_count(Some(rows));
        let schema = Arc::new(Schema::new_with_metadata(fields, says));
        Ok(Self {
            batch: RecordBatch::try_new_with_options(schema, arrays, &options)?,
        })
    }
}

fn data(kind: &str, values: &Bound<'_, PyAny>) -> PyResult<Data> {
    Ok(match kind {
        "int" => Data::Int(values.extract()?),
        "float" => Data::Float(values.extract()?),
        "text" => Data::Text(values.extract()?),
        _ => return Err(PyValueError::new_err(format!("no kind of column: {kind}"))),
    })
}

/// A column that has a value in every row, its unit and meaning beside its name.
fn column(name: String, unit: Option<String>, meaning: String, data: Data) -> (Field, ArrayRef) {
    let values: ArrayRef = match data {
        Data::Int(values) => Arc::new(Int64Array::from(values)),
        Data::Float(values) => Arc::new(Float64Array::from(values)),
        Data::Text(values) => texts(&values),
    };
    let mut says = HashMap::from([("meaning".into(), meaning)]);
    says.extend(unit.map(|unit| ("unit".into(), unit)));
    let field = Field::new(name, values.data_type().clone(), false).with_metadata(says);
    (field, values)
}

/// Texts whose places are 32 bits wide, or 64 where so much text is not reached by 32.
fn texts(values: &[String]) -> ArrayRef {
    let bytes = values.iter().map(String::len).sum::<usize>();
    if i32::try_from(bytes).is_ok() {
        Arc::new(StringArray::from_iter_values(values))
    } else {
        Arc::new(LargeStringArray::from_iter_values(values))
    }
}

#[expect(
    clippy::needless_pass_by_value,
    reason = "it is called with the error of a result"
)]
fn invalid(error: ArrowError) -> PyErr {
    PyValueError::new_err(error.to_string())
}
