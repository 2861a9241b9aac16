//! Texts that are called out.

use super::Canvas;
use crate::drawing::glyphs::{line, width};
use crate::drawing::page::LEAST_TYPE;
use crate::drawing::{Label, Layer, MM, Micron, Says, Spot};

impl Canvas<'_> {
    /// Writes a text as near to a place as there is room, with a line to it where the text is moved away.
    pub(super) fn call_out(&mut self, says: Says, text: &str, at: Spot, size: Micron, bold: bool) {
        for size in [size, LEAST_TYPE] {
            let (wide, high) = (width(text, size, bold), line(size));
            let Some(place) = self.room.nearest(at, wide, high, 120 * MM) else {
                continue;
            };
            let mut label = Label::centred(says, text, place.middle(), size, bold, false).backed();
            if !label.extent.grown(600).holds(at) {
                let end = label.extent.middle();
                let side = Spot::new(
                    at.x.clamp(label.extent.x0, label.extent.x1),
                    at.y.clamp(label.extent.y0, label.extent.y1),
                );
                self.drawing
                    .line(Layer::Leader, &[at, if side == at { end } else { side }]);
            }
            label.points_at = Some(at);
            self.put(label);
            return;
        }
    }
}
