//! Findings on the wall.

use super::Canvas;
use crate::drawing::page::{LEAST_TYPE, flag};
use crate::drawing::{Label, Layer, MM, Says, Spot};
use crate::finding::{Finding, Severity};
use crate::geometry::Point;

/// Findings that are told in the drawing; the plan lists all of them.
pub(super) const MOST: usize = 40;
/// What is not refused and comes more often than this is told once and flagged nowhere.
const FLAGGED: usize = 3;

/// A finding as the drawing tells it.
pub(super) struct Told<'a> {
    pub first: &'a Finding,
    /// It has a flag where it was found.
    pub flagged: bool,
    /// Other pieces with findings of the same kind.
    pub likewise: Vec<&'a str>,
}

impl<'a> Canvas<'a> {
    /// The findings that are told, gravest first.
    pub(super) fn told(&self) -> Vec<Told<'a>> {
        let mut findings: Vec<&Finding> = self.input.findings.iter().collect();
        findings.sort_by_key(|finding| finding.severity);
        let mut told: Vec<Told<'_>> = Vec::new();
        for first in findings {
            let same = |other: &&Finding| other.code == first.code && other.severity == first.severity;
            let often = self.input.findings.iter().filter(same).count() > FLAGGED;
            if first.severity == Severity::Refuse || !often {
                let flagged = first.at.is_some();
                told.push(Told {
                    first,
                    flagged,
                    likewise: Vec::new(),
                });
            } else if let Some(before) = told.iter_mut().find(|told| same(&told.first)) {
                let piece = first.piece.as_str();
                if !piece.is_empty() && piece != before.first.piece && !before.likewise.contains(&piece) {
                    before.likewise.push(piece);
                }
            } else {
                told.push(Told {
                    first,
                    flagged: false,
                    likewise: Vec::new(),
                });
            }
        }
        told
    }

    /// A numbered flag at the place of each finding that has one.
    pub(super) fn flags(&mut self) {
        let told = self.told();
        let flagged = told
            .iter()
            .filter(|told| told.flagged)
            .filter_map(|told| told.first.at);
        for (number, (x, y)) in (1..).zip(flagged) {
            let at = self.view.spot(Point::new(x, y));
            let Some(place) = self.room.clearest(at, 7_600, 6_600, 60 * MM) else {
                continue;
            };
            let middle = place.middle();
            flag(&mut self.drawing, middle, place.height());
            if !place.holds(at) {
                let side = Spot::new(
                    at.x.clamp(place.x0 + 1_900, place.x1 - 1_900),
                    at.y.clamp(place.y0 + 2_000, place.y1),
                );
                self.drawing.line(Layer::Leader, &[at, side]);
            }
            let text = number.to_string();
            let mut label = Label::centred(Says::Note, text, middle.moved(0, 1_300), LEAST_TYPE, true, false);
            label.points_at = Some(at);
            self.room.take(place);
            self.drawing.labels.push(label);
        }
    }
}
