//! Wall schedules: rows of a sheet, written as a house.

use crate::errors::call;
use edgenail::house::{DesignMethod, Edition, LoadLevel, Sharing};
use edgenail::wall_schedule::{Design, Row, WallSchedule};
use pyo3::exceptions::PyValueError;
use pyo3::prelude::*;

/// The rows of a schedule; `edgenail.WallSchedule` is the typed view of it.
#[pyclass(module = "edgenail._edgenail")]
#[derive(Debug)]
pub(crate) struct Scheduled {
    schedule: WallSchedule,
}

#[pymethods]
impl Scheduled {
    /// A schedule without rows; the words of the design, then seismic design category and recalled values.
    #[new]
    #[pyo3(signature = (name, design, /))]
    fn new(name: &str, design: Option<(String, String, String, String, bool, bool)>) -> PyResult<Self> {
        let design = design.map(|words| rules(&words)).transpose()?;
        Ok(Self {
            schedule: WallSchedule::new(name, design),
        })
    }

    /// Adds a row.
    #[pyo3(signature = (name, length, plate_height, stud_spacing, openings, practice, segments, wind, seismic, /))]
    #[expect(clippy::too_many_arguments, reason = "the cells of a row")]
    fn add(
        &mut self,
        py: Python<'_>,
        name: &str,
        length: f64,
        plate_height: f64,
        stud_spacing: f64,
        openings: &str,
        practice: &str,
        segments: &str,
        wind: f64,
        seismic: f64,
    ) -> PyResult<()> {
        let row = Row {
            name,
            length,
            plate_height,
            stud_spacing,
            openings,
            practice,
            segments,
            wind,
            seismic,
        };
        call(py, || self.schedule.add(&row))
    }

    /// How many rows it has.
    fn count(&self) -> usize {
        self.schedule.len()
    }

    /// The house that the rows describe, as JSON.
    fn house_json(&self) -> String {
        self.schedule.house_json()
    }
}

/// The rules of design by their words.
fn rules(words: &(String, String, String, String, bool, bool)) -> PyResult<Design> {
    let (edition, method, level, sharing, high_seismic, accept_unverified) = words;
    Ok(Design {
        edition: chosen(
            edition,
            "edition",
            &[
                ("2008", Edition::Sdpws2008),
                ("2015", Edition::Sdpws2015),
                ("2021", Edition::Sdpws2021),
            ],
        )?,
        method: chosen(
            method,
            "method",
            &[("asd", DesignMethod::Asd), ("lrfd", DesignMethod::Lrfd)],
        )?,
        level: chosen(
            level,
            "level",
            &[("strength", LoadLevel::Strength), ("asd", LoadLevel::Asd)],
        )?,
        sharing: chosen(
            sharing,
            "sharing",
            &[
                ("reduced_strength", Sharing::ReducedStrength),
                ("equal_deflection", Sharing::EqualDeflection),
            ],
        )?,
        high_seismic: *high_seismic,
        accept_unverified: *accept_unverified,
    })
}

fn chosen<T: Copy>(word: &str, name: &str, known: &[(&str, T)]) -> PyResult<T> {
    let found = known.iter().find(|(known, _)| *known == word);
    found.map(|(_, value)| *value).ok_or_else(|| {
        let words: Vec<&str> = known.iter().map(|(word, _)| *word).collect();
        PyValueError::new_err(format!("{name}: `{word}` is none of {}", words.join(", ")))
    })
}
