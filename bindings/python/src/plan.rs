//! A plan, its tables and its drawings.

use crate::errors::call;
use crate::table::{Plain, plain};
use pyo3::exceptions::{PyIndexError, PyKeyError};
use pyo3::prelude::*;

/// What the core made of a house; `edgenail.Plan` is the typed view of it.
#[pyclass(frozen, module = "edgenail._edgenail")]
#[derive(Debug)]
pub(crate) struct Planned {
    pub(crate) plan: edgenail::Plan,
}

impl From<edgenail::Plan> for Planned {
    fn from(plan: edgenail::Plan) -> Self {
        Self { plan }
    }
}

#[pymethods]
impl Planned {
    /// The whole plan as JSON, with the same bytes in every language.
    fn json(&self, py: Python<'_>) -> PyResult<String> {
        call(py, || Ok(self.plan.json()))
    }

    /// The names of the tables.
    #[staticmethod]
    fn table_names() -> Vec<&'static str> {
        edgenail::report::definitions()
            .iter()
            .map(|table| table.name)
            .collect()
    }

    /// A table as (meaning, columns, CSV, Arrow data), each column as (name, kind, unit, meaning, values).
    fn table<'py>(&self, py: Python<'py>, name: &str) -> PyResult<Plain<'py>> {
        let table = call(py, || Ok(self.plan.table(name)))?;
        plain(py, table.ok_or_else(|| PyKeyError::new_err(name.to_owned()))?)
    }

    /// The drawing of a wall with its sheathing as SVG.
    fn wall_svg(&self, py: Python<'_>, wall: &str) -> PyResult<String> {
        let drawing = call(py, || Ok(self.plan.wall_svg(wall)))?;
        drawing.ok_or_else(|| PyKeyError::new_err(wall.to_owned()))
    }

    /// The drawing of a wall's frame as SVG.
    fn frame_svg(&self, py: Python<'_>, wall: &str) -> PyResult<String> {
        let drawing = call(py, || Ok(self.plan.frame_svg(wall)))?;
        drawing.ok_or_else(|| PyKeyError::new_err(wall.to_owned()))
    }

    /// Why the layout of a wall and not another, as text.
    fn why(&self, py: Python<'_>, wall: &str) -> PyResult<String> {
        let text = call(py, || Ok(self.plan.why(wall)))?;
        text.ok_or_else(|| PyKeyError::new_err(wall.to_owned()))
    }

    /// How many pages the drawing of cut sheets has.
    fn cut_sheet_pages(&self, py: Python<'_>) -> PyResult<usize> {
        call(py, || Ok(self.plan.cut_sheet_pages()))
    }

    /// A page of the drawing of cut sheets as SVG.
    fn cut_sheets_svg(&self, py: Python<'_>, page: i64) -> PyResult<String> {
        let drawing = call(py, || {
            Ok(usize::try_from(page)
                .ok()
                .and_then(|page| self.plan.cut_sheets_svg(page)))
        })?;
        drawing.ok_or_else(|| PyIndexError::new_err(format!("there is no page {page} of cut sheets")))
    }
}

/// Plans the house that JSON text or bytes describe.
#[pyfunction]
#[pyo3(signature = (house, /))]
pub(crate) fn plan(py: Python<'_>, house: &[u8]) -> PyResult<Planned> {
    call(py, || edgenail::plan_bytes(house)).map(Planned::from)
}

/// A house made from a number, as JSON text, with the names of what it has in it.
#[pyfunction]
#[pyo3(signature = (seed, /))]
pub(crate) fn generated_house(seed: u64) -> (String, Vec<&'static str>) {
    let (house, mix) = edgenail::generate::house_json(seed);
    let classes = mix.classes().into_iter().filter(|(_, has)| *has);
    (house, classes.map(|(name, _)| name).collect())
}

/// The demo house as JSON text.
#[pyfunction]
pub(crate) fn demo_house() -> &'static str {
    edgenail::demo::HOUSE_JSON
}
