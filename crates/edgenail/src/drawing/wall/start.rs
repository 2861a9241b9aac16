//! Where to begin: the end that the studs are laid out from, the corner of the first sheet, the line that is snapped.

use super::{Canvas, start_x};
use crate::drawing::glyphs::{line, width};
use crate::drawing::page::SMALL;
use crate::drawing::{Form, Label, Layer, MM, Micron, Says, Spot};
use crate::house::End;
use crate::length::{Length, Rounding};

impl Canvas<'_> {
    /// The end that the stud layout is pulled from, over the wall.
    pub(super) fn layout_marks(&mut self) {
        let mut seen: Vec<(Length, Length, bool)> = Vec::new();
        let storeys: Vec<_> = self
            .input
            .frame
            .storeys
            .iter()
            .map(|s| (s.zero, s.spacing, s.from_right))
            .collect();
        for layout in storeys {
            if !seen.contains(&layout) {
                seen.push(layout);
            }
        }
        for (index, &(zero, spacing, from_right)) in seen.iter().take(3).enumerate() {
            let lift = Micron::try_from(index).unwrap_or(0) * 4 * MM;
            let at = Spot::new(self.view.x(zero), self.place.y0 - 3 * MM - lift);
            let out: Micron = if from_right { -1 } else { 1 };
            let end = at.moved(out * 9 * MM, 0);
            self.drawing
                .line(Layer::Start, &[at.moved(0, -MM), at.moved(0, MM)]);
            self.drawing.line(Layer::Start, &[at, end]);
            let corners = [end, end.moved(-out * 2_200, -800), end.moved(-out * 2_200, 800)];
            self.drawing.mark(Layer::Start, Form::Tip { corners });
            let text = format!("stud layout from here, {} on centre", self.spacing(spacing));
            let label = Label::new(Says::Note, text, end.moved(out * MM, -line(SMALL) / 2), SMALL);
            let label = if from_right { label.ending() } else { label };
            if self.room.is_free(&label.extent) {
                self.put(label);
            }
        }
    }

    /// The corner that sheets are laid from, and the line that is snapped first.
    pub(super) fn start(&mut self) {
        let x = start_x(self.input);
        let out: Micron = if self.input.start.end == End::Left { 1 } else { -1 };
        let lowest = self
            .input
            .frame
            .lower
            .points()
            .iter()
            .filter(|p| p.x == x)
            .map(|p| p.y)
            .min();
        let y = lowest
            .unwrap_or(Length::ZERO)
            .min(lowest.unwrap_or(Length::ZERO) - self.input.layout.reach);
        let corner = Spot::new(self.view.x(x), self.view.y(y).max(self.place.y1) + 600);
        let corners = [
            corner,
            corner.moved(out * 4 * MM, 1_400),
            corner.moved(out * 1_400, 4 * MM),
        ];
        self.drawing.mark(Layer::Start, Form::Tip { corners });
        let label = Label::new(
            Says::Note,
            "START: lay sheets and measure from this corner",
            corner.moved(out * 5 * MM, 1_200),
            SMALL,
        )
        .bold()
        .backed();
        let label = if out < 0 { label.ending() } else { label };
        if self.room.is_free(&label.extent) {
            self.put(label);
        }
        let Some(datum) = self.input.start.datum else {
            return;
        };
        let y = self.view.y(datum);
        let (left, right) = (
            Spot::new(self.place.x0 - 3 * MM, y),
            Spot::new(self.place.x1 + 3 * MM, y),
        );
        self.drawing.line(Layer::Datum, &[left, right]);
        // Outside the wall at the end that work starts from, where no member is drawn.
        let text = format!("DATUM {}", self.show(datum, Rounding::Nearest));
        let wide = width(&text, SMALL, true);
        let (x, side) = if out > 0 {
            (self.place.x0 - 3 * MM, -1)
        } else {
            (self.place.x1 + 3 * MM, 1)
        };
        let under = Spot::new(x + side * (wide / 2), y + line(SMALL) / 2 + 600);
        self.call_out(Says::Note, &text, under, SMALL, true);
    }
}
