//! The full-height segments of a line, and what acts on their ends.

use super::{EndAbove, LinePier, WallLine, feet};
use crate::capacity::pier::{EndLoads, Overturning, Pier, overturning};
use crate::length::Length;

/// An end post is under the one above where their outer faces are no further apart; own value.
const UNDER: Length = Length::inches(6);

impl LinePier {
    /// What of the segment's length is counted in a perforated wall: shortened for its proportion.
    pub(super) fn counted_length(&self) -> f64 {
        self.pier.length * self.aspect.factor.unwrap_or(0.0)
    }

    fn ends_near(&self, at: Length) -> bool {
        [self.from, self.to]
            .into_iter()
            .any(|end| (end - at).abs() <= UNDER)
    }
}

impl WallLine {
    /// Full-height segments between the openings, not loaded yet.
    pub(super) fn segments(&self, design: f64) -> Vec<LinePier> {
        let mut found = Vec::new();
        let mut from = Length::ZERO;
        let ends = self
            .openings
            .iter()
            .map(|opening| (opening.left, opening.left + opening.width));
        for (to, next) in ends.chain([(self.length, self.length)]) {
            if to > from {
                let pier = Pier::new(to - from, self.height);
                let query = &self.query;
                let aspect =
                    pier.aspect_factor(query.edition, query.load, self.sharing, query.assembly.blocked);
                found.push(LinePier {
                    from,
                    to,
                    pier,
                    aspect,
                    capacity: design * pier.length * aspect.factor.unwrap_or(0.0),
                    shear: 0.0,
                    ends: Overturning {
                        chord: 0.0,
                        arm: 0.0,
                        tension: 0.0,
                    },
                    drift: None,
                });
            }
            from = next;
        }
        found
    }

    /// The ends of a segment under unit shear.
    pub(super) fn ends_of(&self, pier: &LinePier, shear: f64) -> Overturning {
        overturning(&pier.pier, shear, &self.loads_on(pier))
    }

    /// What acts on the ends of a segment.
    pub(super) fn loads_on(&self, pier: &LinePier) -> EndLoads {
        EndLoads {
            dead: self.dead,
            inset: feet(self.inset),
            floor: self.floor(),
            above: self.tension_above(|end| pier.ends_near(end.at)),
        }
    }

    /// Depth of the floor above in feet, times the part of the shear that comes through it.
    pub(super) fn floor(&self) -> f64 {
        match &self.above {
            Some(above) if self.demand > 0.0 => feet(above.floor) * above.shear / self.demand,
            _ => 0.0,
        }
    }

    /// The largest tension that comes down on ends of a kind; none below zero.
    fn tension_above(&self, on: impl Fn(&EndAbove) -> bool) -> f64 {
        let ends = self.above.iter().flat_map(|above| &above.ends);
        ends.filter(|end| on(end))
            .map(|end| end.tension)
            .fold(0.0, f64::max)
    }

    /// Tension that comes down on the ends of the line.
    pub(super) fn tension_on_line(&self) -> f64 {
        let of_line = [Length::ZERO, self.length];
        self.tension_above(|end| of_line.iter().any(|own| (*own - end.at).abs() <= UNDER))
    }

    /// Tensions from above that land on no end post of the line.
    pub(super) fn unsupported(&self, piers: &[LinePier]) -> Vec<EndAbove> {
        let counted = || piers.iter().filter(|pier| pier.capacity > 0.0);
        let ends = self.above.iter().flat_map(|above| &above.ends);
        let pulled = ends.filter(|end| end.tension > 0.0);
        let perforated = self.method == super::LineMethod::Perforated;
        pulled
            .filter(|end| {
                let held = if perforated {
                    [Length::ZERO, self.length]
                        .into_iter()
                        .any(|own| (own - end.at).abs() <= UNDER)
                } else {
                    counted().any(|pier| pier.ends_near(end.at))
                };
                !held
            })
            .copied()
            .collect()
    }
}
