//! Lengths: read, made from doubles, and shown.

use crate::errors::call;
use edgenail::Length;
use edgenail::length::{Finest, Rounding, Style, Unit};
use pyo3::exceptions::PyValueError;
use pyo3::prelude::*;

/// Reads a length: (units of 1/40640 in., whether that is what was written).
#[pyfunction]
#[pyo3(signature = (text, unit, /))]
pub(crate) fn parse_length(py: Python<'_>, text: &str, unit: &str) -> PyResult<(i64, bool)> {
    let unit = unit_named(unit)?;
    let parsed = call(py, || Ok(Length::parse(text, unit)?))?;
    Ok((parsed.length.units(), parsed.exact))
}

/// A length from a double: (units of 1/40640 in., whether no more than conversion noise was rounded away).
#[pyfunction]
#[pyo3(signature = (value, unit, /))]
pub(crate) fn length_from_float(py: Python<'_>, value: f64, unit: &str) -> PyResult<(i64, bool)> {
    let unit = unit_named(unit)?;
    let parsed = call(py, || Ok(Length::from_double(value, unit)?))?;
    Ok((parsed.length.units(), parsed.exact))
}

/// A length as exact text.
#[pyfunction]
#[pyo3(signature = (units, /))]
pub(crate) fn length_text(units: i64) -> String {
    Length::from_units(units).to_string()
}

/// A length as a person reads it: (text, whether it is rounded).
#[pyfunction]
#[pyo3(signature = (units, style, finest, rounding, /))]
pub(crate) fn show_length(units: i64, style: &str, finest: i64, rounding: &str) -> PyResult<(String, bool)> {
    let finest = match finest {
        16 => Finest::Sixteenth,
        32 => Finest::ThirtySecond,
        64 => Finest::SixtyFourth,
        _ => return Err(PyValueError::new_err("finest: 16, 32 or 64")),
    };
    let style = match style {
        "inches" => Style::Inches(finest),
        "feet_inches" => Style::FeetInches(finest),
        "decimal_inches" => Style::DecimalInches,
        "millimetres" => Style::Millimetres,
        _ => {
            return Err(PyValueError::new_err(
                "style: inches, feet_inches, decimal_inches or millimetres",
            ));
        }
    };
    let rounding = match rounding {
        "down" => Rounding::Down,
        "up" => Rounding::Up,
        "nearest" => Rounding::Nearest,
        _ => return Err(PyValueError::new_err("rounding: down, up or nearest")),
    };
    let shown = Length::from_units(units).show(style, rounding);
    Ok((shown.text, shown.rounded))
}

fn unit_named(name: &str) -> PyResult<Unit> {
    Unit::named(name)
        .ok_or_else(|| PyValueError::new_err("unit: inch, foot, millimetre, centimetre or metre"))
}
