//! Nails that were found missing or driven too deep: what the model takes of them.

use super::RackingWall;
use crate::capacity::fault::fault;
use crate::geometry::Rect;
use crate::issue::{Code, Issue};

/// A place where nails hold less than they should.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FoundNails {
    /// Where, in the coordinates of the wall.
    pub place: Rect,
    /// What they keep of strength and stiffness: 0 where they are missing or hit no wood, at most 1.
    pub holds: f64,
}

impl RackingWall {
    /// The wall with its nails as they were found.
    ///
    /// # Errors
    /// A place without nails, or nails that hold less than nothing or more than they should.
    pub fn as_found(mut self, found: &[FoundNails]) -> Result<Self, Vec<Issue>> {
        let mut issues = Vec::new();
        for (index, one) in found.iter().enumerate() {
            if !(0.0..=1.0).contains(&one.holds) {
                issues.push(fault(
                    Code::OutOfRange,
                    &format!("found/{index}/holds"),
                    &one.holds.to_string(),
                    "0 to 1",
                    "what nails keep of their strength",
                ));
                continue;
            }
            let mut hit = false;
            for sheet in &mut self.sheets {
                for nail in sheet.nails.iter_mut().filter(|nail| one.place.contains(nail.at)) {
                    hit = true;
                    nail.strength *= one.holds;
                    nail.stiffness *= one.holds;
                }
            }
            if !hit {
                issues.push(fault(
                    Code::NothingResists,
                    &format!("found/{index}"),
                    "no nail",
                    "a place with nails of the storey's sheets",
                    "nothing was found there",
                ));
            }
        }
        for sheet in &mut self.sheets {
            sheet.nails.retain(|nail| nail.strength > 0.0);
        }
        if issues.is_empty() { Ok(self) } else { Err(issues) }
    }
}
