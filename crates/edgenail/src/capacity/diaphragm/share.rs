//! Shares of the lines.

use super::check::{faults, nothing};
use super::input::{DiaphragmLine, PlanAxis, StoreyForce};
use crate::issue::Issue;
use crate::length::Length;
use crate::reading::Assumed;
use serde::Serialize;

/// Rounding of a coordinate, as a part of it.
const NOISE: f64 = 1e-12;

/// What one line takes, in pounds along itself; below zero against the force, or of a perpendicular line towards lower
/// coordinates.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct LineShare {
    /// Under a flexible diaphragm, by tributary width; nothing of a perpendicular line.
    pub flexible: f64,
    /// Under a rigid diaphragm by stiffness, before it turns; nothing of a perpendicular line.
    pub direct: f64,
    /// What turning adds where the force acts at the place given and the accidental eccentricity beyond it.
    pub turning_beyond: f64,
    /// What turning adds where the force acts the accidental eccentricity short of the place given.
    pub turning_short: f64,
    /// The largest size of the flexible share and both rigid shares.
    pub envelope: f64,
}

/// A rigid diaphragm on its lines.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct RigidDiaphragm {
    /// Sum of the stiffnesses of the lines along the force, in pounds per inch.
    pub total: f64,
    /// Centre of rigidity of the lines along the force, in inches: y for lines along x, x for lines along y.
    pub centre: f64,
    /// Centre of rigidity of the perpendicular lines, in inches; none without such lines.
    pub centre_across: Option<f64>,
    /// Torsional stiffness about the centre in inch-pounds.
    pub torsional: f64,
    /// From the centre to the place of the force, in inches, without accidental eccentricity.
    pub eccentricity: f64,
}

/// A storey's force shared.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Diaphragm {
    /// Each line's share, in the order given.
    pub lines: Vec<LineShare>,
    /// The rigid diaphragm.
    pub rigidity: RigidDiaphragm,
    /// The accidental eccentricity that was taken to both sides.
    pub accidental: Length,
    /// Sum of the tributary widths of the lines along the force, in inches.
    pub tributary: f64,
    /// What was taken where the user gave nothing.
    pub assumed: Vec<Assumed>,
}

/// Shares a storey's force.
///
/// # Errors
/// Every field that cannot be taken; that no line runs along the force or none of those has a tributary width; that the
/// force turns the diaphragm and no line resists it.
///
/// ```
/// use edgenail::Length;
/// use edgenail::capacity::{DiaphragmLine, PlanAxis, StoreyForce, share_storey_force};
/// let line = |name: &str, at: i64| DiaphragmLine {
///     name: name.to_owned(),
///     along: PlanAxis::X,
///     at: Length::feet(at),
///     stiffness: 20_000.0,
///     tributary: Length::feet(12),
/// };
/// let force = StoreyForce { size: 4000.0, along: PlanAxis::X, at: Length::feet(6), accidental: None };
/// let shared = share_storey_force(&[line("south", 0), line("north", 24)], &force).unwrap();
/// // Half each where flexible; a quarter of the way up, three quarters and one quarter where rigid.
/// assert_eq!(shared.lines[0].flexible, 2000.0);
/// assert!((shared.lines[0].envelope - 3000.0).abs() < 1e-9 && (shared.lines[1].envelope - 2000.0).abs() < 1e-9);
/// ```
pub fn share_storey_force(lines: &[DiaphragmLine], force: &StoreyForce) -> Result<Diaphragm, Vec<Issue>> {
    let issues = faults(lines, force);
    if !issues.is_empty() {
        return Err(issues);
    }
    let parallel = |line: &&DiaphragmLine| line.along == force.along;
    let accidental = force.accidental.unwrap_or_default();
    let rigidity = rigidity(lines, force);
    let (beyond, short) = (
        rigidity.eccentricity + accidental.as_inches(),
        rigidity.eccentricity - accidental.as_inches(),
    );
    // A rounded centre is no eccentricity.
    let least = NOISE * (1.0 + rigidity.centre.abs());
    let turns = force.size > 0.0 && beyond.abs().max(short.abs()) > least;
    let resisted = rigidity.torsional > 0.0;
    if turns && !resisted {
        return Err(vec![nothing(
            "the force turns the diaphragm and no line resists that",
        )]);
    }
    let width: f64 = lines
        .iter()
        .filter(parallel)
        .map(|line| line.tributary.as_inches())
        .sum();
    let shares = lines
        .iter()
        .map(|line| {
            let (mut flexible, mut direct) = (0.0, 0.0);
            if parallel(&line) {
                flexible = force.size * line.tributary.as_inches() / width;
                direct = force.size * line.stiffness / rigidity.total;
            }
            let turning = |eccentricity: f64| {
                if resisted {
                    force.size * eccentricity * line.stiffness * rigidity.arm(line, force.along)
                        / rigidity.torsional
                } else {
                    0.0
                }
            };
            let (turning_beyond, turning_short) = (turning(beyond), turning(short));
            let envelope = flexible
                .max((direct + turning_beyond).abs())
                .max((direct + turning_short).abs());
            LineShare {
                flexible,
                direct,
                turning_beyond,
                turning_short,
                envelope,
            }
        })
        .collect();
    let assumed = match force.accidental {
        Some(_) => Vec::new(),
        None => vec![Assumed {
            path: "/force/accidental".to_owned(),
            value: "0".to_owned(),
            why: "none was given; codes ask for one under a rigid diaphragm".to_owned(),
        }],
    };
    Ok(Diaphragm {
        lines: shares,
        rigidity,
        accidental,
        tributary: width,
        assumed,
    })
}

/// The centre of stiffness of the lines along one direction, with the sum of their stiffnesses.
fn centre(lines: &[DiaphragmLine], along: PlanAxis) -> Option<(f64, f64)> {
    let of_these = || lines.iter().filter(|line| line.along == along);
    let total: f64 = of_these().map(|line| line.stiffness).sum();
    let first: f64 = of_these().map(|line| line.stiffness * line.at.as_inches()).sum();
    (total > 0.0).then(|| (first / total, total))
}

fn rigidity(lines: &[DiaphragmLine], force: &StoreyForce) -> RigidDiaphragm {
    let across = match force.along {
        PlanAxis::X => PlanAxis::Y,
        PlanAxis::Y => PlanAxis::X,
    };
    let (centre_along, total) = centre(lines, force.along).unwrap_or_default();
    let mut found = RigidDiaphragm {
        total,
        centre: centre_along,
        centre_across: centre(lines, across).map(|(centre, _)| centre),
        torsional: 0.0,
        eccentricity: force.at.as_inches() - centre_along,
    };
    found.torsional = lines
        .iter()
        .map(|line| {
            let arm = found.arm(line, force.along);
            line.stiffness * (arm * arm)
        })
        .sum();
    // Lines that lie on one another have arms that are rounding only.
    let least = NOISE
        * (1.0
            + found
                .centre
                .abs()
                .max(found.centre_across.unwrap_or_default().abs()));
    if lines
        .iter()
        .all(|line| found.arm(line, force.along).abs() <= least)
    {
        found.torsional = 0.0;
    }
    found
}

impl RigidDiaphragm {
    /// A line's arm about the centre in inches, below zero where a force beyond the centre pushes it back: a perpendicular
    /// line beyond its centre is pushed towards lower coordinates.
    pub(super) fn arm(&self, line: &DiaphragmLine, along: PlanAxis) -> f64 {
        if line.along == along {
            line.at.as_inches() - self.centre
        } else {
            self.centre_across.unwrap_or_default() - line.at.as_inches()
        }
    }
}
