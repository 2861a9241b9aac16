//! The answer of the anchors of a bottom plate.

use super::{Answer, refuse_recalled};
use crate::capacity::{AnchorageQuery, Derivation, PlateAnchors, SillNeeds, plate_anchors};
use crate::issue::Issue;
use serde::Serialize;

/// Numbers of the anchors.
#[derive(Debug, Serialize)]
pub(super) struct Numbers {
    shear_lb: f64,
    uplift_lb: f64,
    /// At least so many, by shear and by uplift each for itself.
    anchors: u32,
    spacing_in: Option<f64>,
    /// Nominal unit shear over that above which plate washers are asked for.
    washer_ratio: Option<f64>,
    plate_washers: Option<bool>,
    sill: Option<Sill>,
}

/// Of a wall in seismic design category D, E or F.
#[derive(Debug, Serialize)]
struct Sill {
    /// Unit shear over the most of a 2x sill.
    ratio: f64,
    /// The same with twice the bolts and plate washers.
    doubled_ratio: f64,
    needs: SillNeeds,
}

pub(super) fn answer(query: &AnchorageQuery) -> Result<Answer<Numbers>, Vec<Issue>> {
    let mut derivation = Derivation::default();
    let found = plate_anchors(query, &mut derivation)?;
    refuse_recalled(&derivation, query.accept_unverified)?;
    let numbers = Numbers::of(&found);
    Ok(Answer::new("anchorage", None, numbers, derivation))
}

impl Numbers {
    pub(super) fn of(found: &PlateAnchors) -> Self {
        Self {
            shear_lb: found.shear,
            uplift_lb: found.uplift,
            anchors: found.count,
            spacing_in: found.spacing,
            washer_ratio: found.washer_ratio,
            plate_washers: found.washer_ratio.map(|ratio| ratio > 1.0),
            sill: found.sill.map(|sill| Sill {
                ratio: sill.ratio,
                doubled_ratio: sill.doubled_ratio,
                needs: sill.needs,
            }),
        }
    }
}
