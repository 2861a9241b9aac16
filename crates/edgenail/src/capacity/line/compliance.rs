//! How far the top of each segment moves with its unit shear, and the shears at which all move alike.

use super::{LinePier, WallLine};
use crate::capacity::drift::{Racked, drift_three_terms};

/// The three-term equation over the unit shear of one segment: posts, panels and nails, and the hold-down once it pulls.
#[derive(Clone, Copy, Debug)]
pub(super) struct Compliance {
    /// Length of the segment in feet.
    pub length: f64,
    /// Inches for each pound per foot, without the hold-down.
    pub body: f64,
    /// Inches for each pound per foot that the hold-down adds once it pulls.
    pub anchor: f64,
    /// Inches that it adds without shear: below zero where dead load has to be lifted first.
    pub offset: f64,
}

impl Compliance {
    /// That of a segment under the line's loads; none where posts, hold-down or stiffness are not known.
    pub fn of(line: &WallLine, pier: &LinePier, stiffness: Option<f64>) -> Option<Self> {
        let (posts, hold_down, stiffness) = (line.posts?, line.hold_down?, stiffness?);
        let racked = |shear: f64, anchor: f64| Racked {
            shear,
            height: pier.pier.height,
            length: pier.pier.length,
            elasticity: posts.elasticity,
            post_area: posts.area,
            anchor,
        };
        let give = hold_down.elongation / hold_down.capacity;
        // The tension is a line over the unit shear: its values at 0 and at 1 plf tell it.
        let tension = |shear: f64| line.ends_of(pier, shear).tension;
        let gives = |tension: f64| drift_three_terms(&racked(0.0, give * tension), stiffness).anchor;
        let offset = gives(tension(0.0));
        Some(Self {
            length: pier.pier.length,
            body: drift_three_terms(&racked(1.0, 0.0), stiffness).total,
            anchor: gives(tension(1.0)) - offset,
            offset,
        })
    }

    /// The hold-down pulls under this shear.
    pub fn pulls(&self, shear: f64) -> bool {
        self.anchor * shear + self.offset > 0.0
    }

    /// Drift in inches.
    pub fn drift(&self, shear: f64) -> f64 {
        self.body * shear + (self.anchor * shear + self.offset).max(0.0)
    }

    /// The unit shear that gives a drift; none below zero.
    pub fn shear(&self, drift: f64) -> f64 {
        let free = drift / self.body;
        let shear = if self.pulls(free) {
            (drift - self.offset) / (self.body + self.anchor)
        } else {
            free
        };
        shear.max(0.0)
    }

    /// The drift at which its line over the shear has its corner.
    fn corner(&self) -> f64 {
        if self.offset < 0.0 {
            self.body * (-self.offset / self.anchor)
        } else {
            self.offset
        }
    }
}

/// Shear of all segments at a drift, in pounds.
pub(super) fn total(of: &[Compliance], drift: f64) -> f64 {
    of.iter().map(|one| one.length * one.shear(drift)).sum()
}

/// The drift at which all segments together take a shear: exact, because each is two straight lines.
pub(super) fn common_drift(of: &[Compliance], shear: f64) -> f64 {
    let mut corners: Vec<f64> = of.iter().map(Compliance::corner).collect();
    corners.sort_by(f64::total_cmp);
    let (mut low, mut at_low) = (0.0, 0.0);
    for corner in corners {
        let at_corner = total(of, corner);
        if at_corner >= shear {
            return between(low, at_low, corner, at_corner, shear);
        }
        (low, at_low) = (corner, at_corner);
    }
    let beyond = low + 1.0;
    between(low, at_low, beyond, total(of, beyond), shear)
}

/// Where a straight line through two points takes a value.
fn between(low: f64, at_low: f64, high: f64, at_high: f64, value: f64) -> f64 {
    if at_high > at_low {
        low + (value - at_low) * (high - low) / (at_high - at_low)
    } else {
        low
    }
}
