//! How far the top of a line moves.

use super::{Construction, LinePier, WallLine, feet};
use crate::capacity::drift::{Drift, Racked, Skin, drift_four_terms, drift_three_terms};
use crate::capacity::slip::{rigidity, slip_curve};

/// Drift by both equations.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SegmentDrift {
    /// The segment as the equations take it.
    pub wall: Racked,
    /// By three terms.
    pub three: Drift,
    /// By four terms; none where the rigidity of the panel was not collected, the nails are loaded beyond their curve, or
    /// another face acts with the first.
    pub four: Option<Drift>,
    /// Nails and panel of the four terms.
    pub skin: Option<Skin>,
}

/// Drift of a segment under its shear.
pub(super) fn of_segment(
    line: &WallLine,
    pier: &LinePier,
    construction: &Construction,
) -> Option<SegmentDrift> {
    both(
        line,
        construction,
        pier.shear,
        pier.pier.length,
        pier.ends.tension,
    )
}

/// Drift of a perforated wall: its largest shear on the length of its segments (recalled).
pub(super) fn of_perforated(
    line: &WallLine,
    construction: &Construction,
    shear: f64,
    counted: f64,
    factor: f64,
) -> Option<SegmentDrift> {
    let tension = line.perforated_tension(factor * counted);
    both(line, construction, shear, counted, tension)
}

/// That of the segment that moves the most; one that takes no share of the shear does not decide.
pub(super) fn largest(piers: &[LinePier], demand: f64) -> Option<SegmentDrift> {
    let loaded = piers.iter().filter(|pier| pier.shear > 0.0 || demand <= 0.0);
    let all = loaded.filter_map(|pier| pier.drift);
    all.reduce(|most, one| {
        if one.three.total > most.three.total {
            one
        } else {
            most
        }
    })
}

fn both(
    line: &WallLine,
    construction: &Construction,
    shear: f64,
    length: f64,
    tension: f64,
) -> Option<SegmentDrift> {
    let (posts, hold_down, stiffness) = (line.posts?, line.hold_down?, construction.stiffness()?);
    let wall = Racked {
        shear,
        height: feet(line.height),
        length,
        elasticity: posts.elasticity,
        post_area: posts.area,
        anchor: hold_down.elongation * tension.max(0.0) / hold_down.capacity,
    };
    let skin = skin(construction, shear);
    Some(SegmentDrift {
        wall,
        three: drift_three_terms(&wall, stiffness),
        four: skin.map(|skin| drift_four_terms(&wall, &skin)),
        skin,
    })
}

/// Nails and panel of one face, where their curve holds under the shear.
fn skin(construction: &Construction, shear: f64) -> Option<Skin> {
    let unit = &construction.unit;
    let assembly = &unit.query.assembly;
    // The curves hold for dry lumber, and the edge nailing of an unblocked wall is not all its nailing.
    if construction.both.is_some() || unit.estimate.is_some() || assembly.wet_framing || !assembly.blocked {
        return None;
    }
    let rigidity = rigidity(assembly.material, assembly.grade, assembly.thickness)?;
    let edge_spacing = assembly.edge_spacing.as_inches();
    let nail = unit.row.nail;
    (shear * edge_spacing / 12.0 <= slip_curve(nail).value.most).then_some(Skin {
        nail,
        grade: assembly.grade,
        edge_spacing,
        rigidity: rigidity.value,
    })
}
