//! Force transfer around openings by the classical free-body method, for one opening or several.

mod explain;
mod ratio;

pub use explain::explain_transfer;
pub use ratio::{TransferRatio, explain_transfer_ratio, transfer_ratio};

use super::fault::fault;
use crate::issue::{Code, Issue};
use serde::Serialize;

/// A wall whose sheathing is strapped and blocked around its openings. Feet and pounds.
///
/// All openings are taken with the least height of sheathing above and below any of them, which overstates the forces
/// around the others.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TransferWall {
    /// Height of the wall.
    pub height: f64,
    /// Lengths of the full-height segments from left to right: one more than there are openings.
    pub piers: Vec<f64>,
    /// Widths of the openings from left to right.
    pub openings: Vec<f64>,
    /// Height of sheathing above and below an opening, together; the least of all openings.
    pub above_and_below: f64,
    /// Shear at the top.
    pub shear: f64,
}

/// Forces around the openings.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Transfer {
    /// Tension and compression at the ends of the wall in pounds.
    pub hold_down: f64,
    /// Unit shear above and below the openings in pounds per foot.
    pub above_and_below: f64,
    /// For each segment, unit shear beside the openings in pounds per foot.
    pub beside: Vec<f64>,
    /// For each segment, unit shear in its corners above and below the openings; below zero it turns round.
    pub corners: Vec<f64>,
    /// For each opening, the strap force at its left and at its right corners in pounds.
    pub straps: Vec<(f64, f64)>,
}

impl Transfer {
    /// The largest unit shear anywhere, which sheathing and nails have to carry.
    pub fn largest(&self) -> f64 {
        let all = self.beside.iter().chain(&self.corners).map(|shear| shear.abs());
        all.fold(self.above_and_below, f64::max)
    }

    /// The largest strap force.
    pub fn strap(&self) -> f64 {
        self.straps
            .iter()
            .map(|(left, right)| left.max(*right))
            .fold(0.0, f64::max)
    }
}

/// Forces around the openings of a wall.
///
/// # Errors
/// Sizes that no wall has, or another number of segments than the openings leave.
///
/// ```
/// use edgenail::capacity::{TransferWall, transfer};
/// let wall = TransferWall { height: 8.0, piers: vec![4.0, 4.0], openings: vec![6.0], above_and_below: 4.0, shear: 2800.0 };
/// let forces = transfer(&wall).unwrap();
/// // 2,800 lb on 14 ft of 8 ft wall pull 1,600 lb at its ends; each segment takes half over its 4 ft.
/// assert_eq!((forces.hold_down, forces.beside[0]), (1600.0, 350.0));
/// ```
pub fn transfer(wall: &TransferWall) -> Result<Transfer, Vec<Issue>> {
    check(wall)?;
    let length: f64 = wall.piers.iter().chain(&wall.openings).sum();
    let hold_down = wall.shear * wall.height / length;
    let above_and_below = hold_down / wall.above_and_below;
    let mut straps = Vec::with_capacity(wall.openings.len());
    let mut forces = vec![0.0; wall.piers.len()];
    let mut counted = wall.piers.clone();
    for (index, (opening, pair)) in wall.openings.iter().zip(wall.piers.windows(2)).enumerate() {
        let [left, right] = [pair[0], pair[1]];
        let force = above_and_below * opening;
        let (of_left, of_right) = (force * left / (left + right), force * right / (left + right));
        straps.push((of_left, of_right));
        forces[index] += of_left;
        forces[index + 1] += of_right;
        counted[index] += opening * left / (left + right);
        counted[index + 1] += opening * right / (left + right);
    }
    let beside: Vec<f64> = wall
        .piers
        .iter()
        .zip(&counted)
        .map(|(pier, counted)| wall.shear / length * counted / pier)
        .collect();
    let corners = wall
        .piers
        .iter()
        .zip(&beside)
        .zip(&forces)
        .map(|((pier, beside), force)| beside - force / pier)
        .collect();
    Ok(Transfer {
        hold_down,
        above_and_below,
        beside,
        corners,
        straps,
    })
}

fn check(wall: &TransferWall) -> Result<(), Vec<Issue>> {
    let mut issues = Vec::new();
    let mut positive = |field: String, value: f64| {
        if !value.is_finite() || value <= 0.0 {
            issues.push(fault(
                Code::OutOfRange,
                &field,
                &value.to_string(),
                "above 0, a number",
                "a size or force of the wall",
            ));
        }
    };
    positive("height".to_owned(), wall.height);
    positive("shear".to_owned(), wall.shear);
    positive("above_and_below".to_owned(), wall.above_and_below);
    for (name, lengths) in [("piers", &wall.piers), ("openings", &wall.openings)] {
        for (index, length) in lengths.iter().enumerate() {
            positive(format!("{name}/{index}"), *length);
        }
    }
    if wall.openings.is_empty() || wall.piers.len() != wall.openings.len() + 1 {
        issues.push(fault(
            Code::OutOfRange,
            "piers",
            &format!("{} segments, {} openings", wall.piers.len(), wall.openings.len()),
            "one segment more than openings, at least one opening",
            "segments stand on both sides of every opening",
        ));
    }
    if wall.above_and_below >= wall.height {
        issues.push(fault(
            Code::OutOfRange,
            "above_and_below",
            &wall.above_and_below.to_string(),
            "less than the wall's height",
            "an opening takes some of the height",
        ));
    }
    if issues.is_empty() { Ok(()) } else { Err(issues) }
}
