//! A line as one perforated wall.

use super::{LinePier, Perforation, WallLine, feet, perforated_factor};
use crate::capacity::assembly::Edition;
use crate::capacity::fault::{fault, inches};
use crate::issue::{Code, Issue};
use crate::length::Length;

/// The highest perforated wall; recalled.
const HEIGHT_MOST: Length = Length::feet(20);

impl WallLine {
    /// The factor of a perforated wall with the true area of its openings.
    pub(super) fn perforated(&self, piers: &[LinePier]) -> Result<f64, Vec<Issue>> {
        if self.height > HEIGHT_MOST {
            return Err(vec![fault(
                Code::OutOfRange,
                "height",
                &inches(self.height),
                "at most 20 ft",
                "perforated walls are no higher (SDPWS 4.3.5.3, recalled)",
            )]);
        }
        let at_ends = [Length::ZERO, self.length];
        let held = |end: Length| {
            piers
                .iter()
                .any(|pier| pier.capacity > 0.0 && (pier.from == end || pier.to == end))
        };
        if !at_ends.into_iter().all(held) {
            return Err(vec![fault(
                Code::NothingResists,
                "openings",
                "an end without a segment that counts",
                "a full-height segment at each end",
                "a perforated wall needs a full-height segment at each of its ends",
            )]);
        }
        if self.query.edition == Edition::Sdpws2021 {
            return Err(vec![fault(
                Code::UnlistedValue,
                "query/edition",
                self.query.edition.name(),
                "SDPWS 2008 or SDPWS 2015",
                "the factor for openings was changed in 2021 and its new form was not collected",
            )]);
        }
        Ok(perforated_factor(&self.perforation(piers)).value)
    }

    /// The line as the perforated method sees it: true areas; a segment that does not count is an opening of the whole
    /// height.
    pub(super) fn perforation(&self, piers: &[LinePier]) -> Perforation {
        let openings = self
            .openings
            .iter()
            .map(|opening| feet(opening.width) * feet(opening.height));
        let slender = piers.iter().filter(|pier| pier.capacity <= 0.0);
        let counted = piers.iter().filter(|pier| pier.capacity > 0.0);
        Perforation {
            height: feet(self.height),
            full_height: counted.map(LinePier::counted_length).sum(),
            length: feet(self.length),
            opening_area: openings.sum::<f64>()
                + slender
                    .map(|pier| pier.pier.length * pier.pier.height)
                    .sum::<f64>(),
        }
    }

    /// Tension at the ends of a perforated wall, `V h / (C_o sum L_i)`, with the floor above and what comes down.
    pub(super) fn perforated_tension(&self, counted: f64) -> f64 {
        self.demand * (feet(self.height) + self.floor()) / counted + self.tension_on_line()
    }
}
