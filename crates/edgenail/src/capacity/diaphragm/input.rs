//! Lines and force of a storey in plan.

use crate::length::Length;
use serde::Serialize;

/// A direction in plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum PlanAxis {
    /// Along x.
    X,
    /// Along y.
    Y,
}

/// A wall line.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct DiaphragmLine {
    /// What the user calls it.
    pub name: String,
    /// Which way it runs, and resists.
    pub along: PlanAxis,
    /// Where it is: y of a line along x, x of a line along y.
    pub at: Length,
    /// Force for one inch of movement of its top, in pounds per inch, at the level of the force.
    pub stiffness: f64,
    /// Width of the diaphragm whose force comes to it where the diaphragm is flexible.
    pub tributary: Length,
}

/// The force on a storey: all that comes down from above with its own.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct StoreyForce {
    /// Pounds, at the level that the user wants answers at: nothing is converted.
    pub size: f64,
    /// Which way it acts.
    pub along: PlanAxis,
    /// Where its resultant acts: y of a force along x, x of a force along y. A flexible diaphragm takes the tributary
    /// widths in its place.
    pub at: Length,
    /// How far it may act to either side of that by accident; nothing is taken, and listed, where the user gives none.
    pub accidental: Option<Length>,
}
