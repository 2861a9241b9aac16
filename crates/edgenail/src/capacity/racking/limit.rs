//! The largest force at which nails that keep their strength can be in equilibrium at all.

use super::elastic::NailForce;
use super::input::{RackingSheet, from_middle};
use nalgebra::{Matrix3, Vector2, Vector3};

/// The limit moment of a sheet, between two bounds, with the field of forces that proves the lower.
///
/// Static: the largest moment of nail forces, each at most its strength, that cancel and turn alike both ways. Kinematic:
/// the least work of a mechanism, strength times slip over all nails, in which the frame racks by one share of a unit angle
/// and the sheet turns by the rest. Both are the same number. The work is minimized over the three numbers of the
/// mechanism by Newton's method on slips that are rounded off near zero; where its slope vanishes, strength along each
/// nail's slip is a field in equilibrium. What is left of the slope is taken out by a linear field and everything is turned
/// down until no nail is above its strength, so the lower bound holds however well the search went.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Limit {
    /// The moment of the field, in inch-pounds: a lower bound.
    pub moment: f64,
    /// The work of the mechanism, in inch-pounds: an upper bound.
    pub work: f64,
    /// The field, in the order of the sheet's nails.
    pub forces: Vec<NailForce>,
}

/// A nail with its strength.
struct Place {
    x: f64,
    y: f64,
    strength: f64,
}

/// Rounding of slips, as parts of half the sheet's diagonal, from coarse to fine.
const ROUNDINGS: [f64; 7] = [1e-1, 1e-2, 1e-3, 1e-4, 1e-5, 1e-6, 1e-7];
/// Newton steps for one rounding; what is missing then only widens the bounds.
const STEPS: usize = 60;

impl Limit {
    /// Of a sheet with its nails.
    pub(super) fn of(sheet: &RackingSheet) -> Self {
        let places: Vec<Place> = sheet
            .nails
            .iter()
            .map(|nail| {
                let (x, y) = from_middle(&sheet.outline, nail.at);
                Place {
                    x,
                    y,
                    strength: nail.strength,
                }
            })
            .collect();
        let (half_width, half_height) = (
            sheet.outline.width().as_inches() / 2.0,
            sheet.outline.height().as_inches() / 2.0,
        );
        let size = (half_width * half_width + half_height * half_height).sqrt();
        // From the mechanism in which sheet and frame turn in inverse proportion to the sides.
        let mut mechanism = Vector3::new(half_width / (half_width + half_height), 0.0, 0.0);
        for rounding in ROUNDINGS {
            descend(&places, &mut mechanism, rounding * size);
        }
        let work = places
            .iter()
            .map(|place| place.strength * slip(place, &mechanism).norm())
            .sum();
        let last = ROUNDINGS[ROUNDINGS.len() - 1] * size;
        let forces = admissible(&places, &mechanism, last);
        let moment = places
            .iter()
            .zip(&forces)
            .map(|(place, force)| force.along_plates * place.y)
            .sum::<f64>()
            .max(0.0);
        Self { moment, work, forces }
    }
}

/// Slip of a nail in a mechanism: the frame's share of the angle, then where neither slips along the plates and posts.
fn slip(place: &Place, mechanism: &Vector3<f64>) -> Vector2<f64> {
    Vector2::new(
        mechanism.x * place.y - mechanism.y,
        (1.0 - mechanism.x) * place.x - mechanism.z,
    )
}

/// Rounded slip.
fn rounded(slip: &Vector2<f64>, rounding: f64) -> f64 {
    (slip.norm_squared() + rounding * rounding).sqrt()
}

fn rounded_work(places: &[Place], mechanism: &Vector3<f64>, rounding: f64) -> f64 {
    places
        .iter()
        .map(|place| place.strength * rounded(&slip(place, mechanism), rounding))
        .sum()
}

/// Newton's method with steps halved until the work falls.
fn descend(places: &[Place], mechanism: &mut Vector3<f64>, rounding: f64) {
    let mut work = rounded_work(places, mechanism, rounding);
    for _ in 0..STEPS {
        let (mut slope, mut curve) = (Vector3::zeros(), Matrix3::zeros());
        for place in places {
            let slip = slip(place, mechanism);
            let size = rounded(&slip, rounding);
            // How the slip changes with the three numbers, and what of the slip lies along each change.
            let (across, up) = (
                Vector3::new(place.y, -1.0, 0.0),
                Vector3::new(-place.x, 0.0, -1.0),
            );
            let along = across * slip.x + up * slip.y;
            slope += along * (place.strength / size);
            let turned = (across * across.transpose() + up * up.transpose()) / size
                - along * along.transpose() / (size * size * size);
            curve += turned * place.strength;
        }
        let Some(factors) = curve.cholesky() else {
            return;
        };
        let step = factors.solve(&slope);
        let gain = slope.dot(&step);
        if !gain.is_finite() || gain <= 1e-15 * work {
            return;
        }
        let mut part = 1.0;
        let next = loop {
            let next = *mechanism - step * part;
            let reached = rounded_work(places, &next, rounding);
            if reached <= work - 1e-4 * part * gain {
                break Some((next, reached));
            }
            part /= 2.0;
            if part < 1e-9 {
                break None;
            }
        };
        let Some((next, reached)) = next else {
            return;
        };
        (*mechanism, work) = (next, reached);
    }
}

/// Strength along every slip, made exactly balanced and nowhere above strength.
fn admissible(places: &[Place], mechanism: &Vector3<f64>, rounding: f64) -> Vec<NailForce> {
    let mut forces: Vec<Vector2<f64>> = places
        .iter()
        .map(|place| {
            let slip = slip(place, mechanism);
            slip * (place.strength / rounded(&slip, rounding))
        })
        .collect();
    let mut left = Vector3::<f64>::zeros();
    let mut balance = Matrix3::zeros();
    for (place, force) in places.iter().zip(&forces) {
        let (right, up) = directions(place);
        left += right * force.x + up * force.y;
        balance += (right * right.transpose() + up * up.transpose()) * place.strength;
    }
    let Some(factors) = balance.cholesky() else {
        return vec![NailForce::default(); places.len()];
    };
    let linear = factors.solve(&left);
    let mut over = 1.0_f64;
    for (place, force) in places.iter().zip(&mut forces) {
        let (right, up) = directions(place);
        force.x -= place.strength * right.dot(&linear);
        force.y -= place.strength * up.dot(&linear);
        over = over.max(force.norm() / place.strength);
    }
    forces
        .iter()
        .map(|force| NailForce {
            along_plates: force.x / over,
            along_posts: force.y / over,
        })
        .collect()
}

/// What a pound along plates and a pound along posts add to the sums that have to vanish: both forces, and the turning.
fn directions(place: &Place) -> (Vector3<f64>, Vector3<f64>) {
    (Vector3::new(1.0, 0.0, -place.y), Vector3::new(0.0, 1.0, place.x))
}
