//! The Python extension: parses arguments, calls the core off the interpreter's lock, hands back plain values.
//! The typed package around it is `python/edgenail`; no rule of the trade is stated here.

mod arrow;
mod batch;
mod capacity;
mod errors;
mod length;
mod plan;
mod rows;
mod schedule;
mod street;
mod table;
mod what_if;

use pyo3::prelude::*;

/// The compiled part of edgenail. Import from `edgenail`.
#[pymodule]
mod _edgenail {
    #[pymodule_export]
    use crate::arrow::ArrowTable;
    #[pymodule_export]
    use crate::batch::Batched;
    #[pymodule_export]
    use crate::capacity::capacity;
    #[pymodule_export]
    use crate::length::{length_from_float, length_text, parse_length, show_length};
    #[pymodule_export]
    use crate::plan::{Planned, demo_house, generated_house, plan};
    #[pymodule_export]
    use crate::rows::capacity_columns;
    #[pymodule_export]
    use crate::schedule::Scheduled;
    #[pymodule_export]
    use crate::street::street;
    #[pymodule_export]
    use crate::what_if::what_if;

    /// Whether the library was built without optimisation.
    #[pymodule_export]
    const DEBUG: bool = cfg!(debug_assertions);

    /// The version of the library.
    #[pymodule_export]
    #[expect(non_upper_case_globals, reason = "Python's name for it")]
    const __version__: &str = env!("CARGO_PKG_VERSION");
}
