//! The anchors of a line's bottom plate.

use super::{LineCapacity, WallLine, feet};
use crate::capacity::anchorage::{PlateAnchors, plate_anchors};
use crate::capacity::derivation::Derivation;
use crate::capacity::question::AnchorageQuery;
use crate::issue::Issue;

/// What the plate asks of its anchors, washers and sill; none where no anchor was given.
pub(super) fn of(line: &WallLine, found: &LineCapacity) -> Result<Option<PlateAnchors>, Vec<Issue>> {
    let Some(query) = query(line, found) else {
        return Ok(None);
    };
    let anchors = plate_anchors(&query, &mut Derivation::default()).map_err(|issues| {
        // The question's fields are the plate's own; of a line only the anchor is given.
        let of_line = issues.into_iter().map(|issue| Issue {
            path: format!("/anchor{}", issue.path),
            ..issue
        });
        of_line.collect::<Vec<_>>()
    })?;
    Ok(Some(anchors))
}

impl LineCapacity {
    /// The steps to the anchors of the plate.
    pub(super) fn explain_anchors(&self, line: &WallLine, derivation: &mut Derivation) {
        if let Some(query) = query(line, self) {
            // What had an answer has its steps.
            let _ = plate_anchors(&query, derivation);
        }
    }
}

fn query(line: &WallLine, found: &LineCapacity) -> Option<AnchorageQuery> {
    let anchor = line.anchor?;
    let query = &line.query;
    Some(AnchorageQuery {
        shear: found.plate,
        length: feet(line.length),
        each: anchor.each,
        uplift: if found.openings.is_some() {
            found.plate
        } else {
            0.0
        },
        each_uplift: anchor.each_uplift,
        nominal: Some(found.construction.nominal()),
        sill: query.high_seismic.then_some(query.method),
        accept_unverified: query.accept_unverified,
    })
}
