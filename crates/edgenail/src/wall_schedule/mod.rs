//! A wall schedule: one row a wall, as an estimator's sheet has it, and the house that the rows describe.
//!
//! A row says less than a house: a wall of one storey on concrete under a treated bottom plate, two top plates, a level
//! top. What it does not say the house fills in, and lists. Rows become the house's JSON, which is read and planned as any
//! other; nothing here computes.

mod list;
mod place;
mod preset;
mod row;

pub use list::entries;
pub use preset::{Preset, presets};
pub use row::Row;

use crate::error::Error;
use crate::house::{DesignMethod, Edition, LoadLevel, Sharing};
use crate::plan::{Plan, plan_json};
use crate::reading::read_house;
use row::Written;
use serde::Serialize;
use serde_json::{Value, json};

/// By which rules walls resist what their rows say; see [`crate::house::LateralDemand`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Design {
    /// Edition of the Special Design Provisions for Wind and Seismic.
    pub edition: Edition,
    /// How nominal becomes design.
    pub method: DesignMethod,
    /// How segments of one line share the shear.
    pub sharing: Sharing,
    /// The building is in seismic design category D, E or F.
    pub high_seismic: bool,
    /// Values that were recalled and not checked against print may be used.
    pub accept_unverified: bool,
    /// At which level the loads of all rows are given; not a field of the house's demand, but of each load.
    #[serde(skip)]
    pub level: LoadLevel,
}

/// The rows of a schedule, each read and checked when it was added.
///
/// ```
/// use edgenail::wall_schedule::{Row, WallSchedule};
/// let mut schedule = WallSchedule::new("shed", None);
/// schedule.add(&Row { name: "back", length: 144.0, openings: "36, 40, 48, 36", practice: "upright", ..Row::default() })?;
/// let plan = schedule.plan()?;
/// assert_eq!(plan.walls()[0].name, "back");
///
/// let blank = Row { name: "front", length: 144.0, openings: "36, 0, wide, 82 1/2", ..Row::default() };
/// assert_eq!(schedule.add(&blank).unwrap_err().issues()[0].path, "/openings/0/width");
/// # Ok::<(), edgenail::Error>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct WallSchedule {
    name: String,
    design: Option<Design>,
    rows: Vec<Written>,
}

impl WallSchedule {
    /// A schedule without rows, for a house of this name. Rows may say loads only where `design` says the rules.
    pub fn new(name: &str, design: Option<Design>) -> Self {
        Self {
            name: name.to_owned(),
            design,
            rows: Vec::new(),
        }
    }

    /// Adds a wall; the schedule stays as it was where the row has a fault.
    ///
    /// # Errors
    /// Every fault of the row. Paths are JSON pointers into the row, such as `/openings/1/width`, counted from 0.
    pub fn add(&mut self, row: &Row<'_>) -> Result<(), Error> {
        let written = row.written(self.design.as_ref(), self.rows.iter().map(Written::name))?;
        let alone = self.house(std::slice::from_ref(&written)).to_string();
        read_house(alone.as_bytes()).map_err(|issues| Error::Issues {
            issues: issues
                .into_iter()
                .map(|issue| place::in_row(issue, &written))
                .collect(),
        })?;
        self.rows.push(written);
        Ok(())
    }

    /// How many rows it has.
    pub fn len(&self) -> usize {
        self.rows.len()
    }

    /// No row was added yet.
    pub fn is_empty(&self) -> bool {
        self.rows.is_empty()
    }

    /// The house that the rows describe, as the JSON that [`plan_json`] takes.
    pub fn house_json(&self) -> String {
        self.house(&self.rows).to_string()
    }

    /// Plans the house.
    ///
    /// # Errors
    /// As [`plan_json`]; a schedule without rows has too few walls.
    pub fn plan(&self) -> Result<Plan, Error> {
        plan_json(&self.house_json())
    }

    fn house(&self, rows: &[Written]) -> Value {
        let walls: Vec<&Value> = rows.iter().map(|row| &row.wall).collect();
        let loads: Vec<&Value> = rows.iter().flat_map(|row| &row.loads).collect();
        let mut house = json!({"name": self.name, "unit": "in", "walls": walls});
        if let Some(design) = self.design.filter(|_| !loads.is_empty()) {
            house["demand"] = json!(design);
            house["demand"]["loads"] = json!(loads);
        }
        house
    }
}

#[cfg(test)]
mod tests;
