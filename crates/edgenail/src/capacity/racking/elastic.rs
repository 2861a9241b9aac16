//! Linear nails: how the force spreads over them.

use super::input::{RackingSheet, from_middle};

/// What a nail does to its sheet, in pounds.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct NailForce {
    /// Along the plates.
    pub along_plates: f64,
    /// Along the posts.
    pub along_posts: f64,
}

impl NailForce {
    /// The size of the force.
    pub fn size(self) -> f64 {
        (self.along_plates * self.along_plates + self.along_posts * self.along_posts).sqrt()
    }
}

/// A sheet on linear nails.
///
/// The sheet moves and turns freely until its nails are in equilibrium, three unknowns. A nail is as stiff along plates as
/// along posts, so about the centre of stiffness the three equations fall apart and the published closed form for doubly
/// symmetric patterns holds for every pattern: `f_x = M k y / S_yy`, `f_y = M k x / S_xx` with `S_xx = sum(k x^2)`,
/// `S_yy = sum(k y^2)` and `M` the sheet's share of force times height.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Elastic {
    /// Sum of the stiffnesses in pounds per inch.
    pub total: f64,
    /// Centre of stiffness from the middle of the sheet's outline, to the right, in inches.
    pub centre_x: f64,
    /// Centre of stiffness from the middle of the sheet's outline, up, in inches.
    pub centre_y: f64,
    /// Second moment of the stiffnesses to both sides of the centre, in inch-pounds.
    pub across: f64,
    /// Second moment of the stiffnesses above and below the centre, in inch-pounds.
    pub upright: f64,
}

impl Elastic {
    /// Of a sheet with its nails.
    pub fn of(sheet: &RackingSheet) -> Self {
        let (mut total, mut first_x, mut first_y) = (0.0, 0.0, 0.0);
        for nail in &sheet.nails {
            let (x, y) = from_middle(&sheet.outline, nail.at);
            total += nail.stiffness;
            first_x += nail.stiffness * x;
            first_y += nail.stiffness * y;
        }
        let (centre_x, centre_y) = if total > 0.0 {
            (first_x / total, first_y / total)
        } else {
            (0.0, 0.0)
        };
        let (mut across, mut upright) = (0.0, 0.0);
        for nail in &sheet.nails {
            let (x, y) = from_middle(&sheet.outline, nail.at);
            across += nail.stiffness * (x - centre_x) * (x - centre_x);
            upright += nail.stiffness * (y - centre_y) * (y - centre_y);
        }
        Self {
            total,
            centre_x,
            centre_y,
            across,
            upright,
        }
    }

    /// The nails hold the sheet both ways: nails on one level or plumb line do not, and the frame racks under it freely.
    ///
    /// The second moments of such a line are rounding noise, a share of what the nails would have an inch away.
    pub fn holds(&self) -> bool {
        let noise = 1e-12 * self.total;
        self.across > noise && self.upright > noise
    }

    /// Force times height for a shear angle of one, in inch-pounds; 0 where the nails do not hold the sheet.
    pub fn rigidity(&self) -> f64 {
        if self.holds() {
            self.across * self.upright / (self.across + self.upright)
        } else {
            0.0
        }
    }

    /// What each nail does to the sheet, in the order of its nails, under force times height in inch-pounds.
    pub fn forces(&self, sheet: &RackingSheet, moment: f64) -> Vec<NailForce> {
        let force = |nail: &super::RackingNail| {
            if !self.holds() {
                return NailForce::default();
            }
            let (x, y) = from_middle(&sheet.outline, nail.at);
            NailForce {
                along_plates: moment * nail.stiffness * (y - self.centre_y) / self.upright,
                along_posts: moment * nail.stiffness * (x - self.centre_x) / self.across,
            }
        };
        sheet.nails.iter().map(force).collect()
    }
}
