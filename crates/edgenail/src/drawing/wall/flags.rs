//! Findings on the wall.

use super::Canvas;
use crate::drawing::page::flag;
use crate::drawing::{Label, Layer, MM, Says};
use crate::finding::Finding;
use crate::geometry::Point;

/// Findings that get a flag and a line in the list; the plan lists all of them.
pub(super) const MOST: usize = 40;

impl Canvas<'_> {
    /// The findings that are listed, gravest first.
    pub(super) fn listed(&self) -> Vec<&Finding> {
        let mut findings: Vec<&Finding> = self.input.findings.iter().collect();
        findings.sort_by_key(|finding| finding.severity);
        findings.truncate(MOST);
        findings
    }

    /// A numbered flag at the place of each finding that has one.
    pub(super) fn flags(&mut self) {
        let places: Vec<(usize, Point)> = self
            .listed()
            .iter()
            .enumerate()
            .filter_map(|(index, finding)| finding.at.map(|(x, y)| (index, Point::new(x, y))))
            .collect();
        for (index, point) in places {
            let at = self.view.spot(point);
            let text = (index + 1).to_string();
            let size = 1_700;
            let Some(place) = self.room.nearest(at, 5_400, 4_600, 60 * MM) else {
                continue;
            };
            let middle = place.middle();
            flag(&mut self.drawing, middle, place.height());
            if !place.holds(at) {
                let side = crate::drawing::Spot::new(
                    at.x.clamp(place.x0 + 1_000, place.x1 - 1_000),
                    at.y.clamp(place.y0, place.y1),
                );
                self.drawing.line(Layer::Leader, &[at, side]);
            }
            let mut label = Label::centred(Says::Note, text, middle.moved(0, 700), size, true, false);
            label.points_at = Some(at);
            self.room.take(place);
            self.drawing.labels.push(label);
        }
    }
}
