//! Running dimensions along the wall and levels beside it.

use super::rows::{Row, STEP, least_height};
use super::{Canvas, SIDE};
use crate::drawing::glyphs::{line, width, wrapped};
use crate::drawing::page::{LEAST_TYPE, SMALL, TYPE};
use crate::drawing::place::spread;
use crate::drawing::{Along, Dimension, Label, Layer, MM, Micron, Says, Spot};
use crate::length::{Length, Rounding};

/// From the wall to the first row: room for what is said of the start.
const ROWS: Micron = 8 * MM + 500;

/// How the figures of a row are set.
struct Set {
    texts: Vec<String>,
    spots: Vec<Micron>,
    /// All stand level, side by side; otherwise all are turned.
    level: bool,
    /// From the row's top to its line.
    rule: Micron,
    /// From the wall's end to the row's name.
    aside: Micron,
    /// The row's name in lines.
    name: Vec<String>,
    /// The row's height.
    height: Micron,
}

impl Canvas<'_> {
    /// The line under the last of the rows.
    pub(super) fn under(&self, rows: &[Row]) -> Micron {
        let heights = rows.iter().map(|row| self.set_in(row).height);
        self.place.y1 + ROWS + heights.sum::<Micron>() + 2 * MM
    }

    /// Sets the rows under the wall.
    pub(super) fn rows(&mut self, rows: &[Row]) {
        let mut y = self.place.y1 + ROWS;
        for row in rows {
            let set = self.set_in(row);
            self.row(row, &set, y);
            y += set.height;
        }
    }

    /// How a row's figures are set.
    fn set_in(&self, row: &Row) -> Set {
        let from = self.start_x();
        let texts: Vec<String> = row
            .places
            .iter()
            .map(|&(x, rounding)| self.show((x - from).abs(), rounding))
            .collect();
        let spots: Vec<Micron> = row.places.iter().map(|&(x, _)| self.view.x(x)).collect();
        let wide: Vec<Micron> = texts.iter().map(|text| width(text, TYPE, false)).collect();
        let level = spots
            .windows(2)
            .zip(wide.windows(2))
            .all(|(x, w)| x[1] - x[0] > w[0].midpoint(w[1]) + MM);
        let rule = if row.brackets.is_empty() { 800 } else { 5_400 };
        let figures = match (row.places.is_empty(), level) {
            (true, _) => MM,
            (false, true) => line(TYPE) + 2_400,
            (false, false) => wide.iter().copied().max().unwrap_or(0) + 3_800,
        };
        // The name stands left of the wall, clear of a first figure that is centred on the wall's end.
        let aside = 3 * MM
            + if level {
                wide.first().map_or(0, |first| first / 2)
            } else {
                MM
            };
        let name = wrapped(&row.name, SIDE - aside, LEAST_TYPE);
        let named = Micron::try_from(name.len()).unwrap_or(0) * line(LEAST_TYPE) + MM;
        Set {
            height: (rule + figures + MM).max(named),
            texts,
            spots,
            level,
            rule,
            aside,
            name,
        }
    }

    fn row(&mut self, row: &Row, set: &Set, top: Micron) {
        let from = self.start_x();
        let Set {
            texts,
            spots,
            level,
            name,
            ..
        } = set;
        let level = *level;
        let rule = top + set.rule;
        self.brackets(row, top);
        let (left, right) = (self.view.across(self.input.frame.lower.span()), self.place);
        let ends = (left.0.min(right.x0), left.1.max(right.x1));
        if !row.places.is_empty() {
            self.drawing.line(
                Layer::Dimension,
                &[Spot::new(ends.0, rule), Spot::new(ends.1, rule)],
            );
        }
        let apart = if level {
            spots.clone()
        } else {
            spread(spots, STEP, (self.place.x0 - 20 * MM, self.place.x1 + 20 * MM))
        };
        for (((text, &(x, _)), &spot), &at) in texts.iter().zip(&row.places).zip(spots).zip(&apart) {
            let tick = Spot::new(spot, rule);
            self.drawing
                .line(Layer::Dimension, &[tick.moved(0, -800), tick.moved(0, 800)]);
            let bottom = rule + 2_200;
            if !level {
                self.drawing
                    .line(Layer::Leader, &[tick.moved(0, 800), Spot::new(at, bottom)]);
            }
            let middle = if level {
                Spot::new(at, rule + 1_200 + line(TYPE) / 2)
            } else {
                Spot::new(at, bottom + 200 + width(text, TYPE, false) / 2)
            };
            self.dimension(
                Along::Wall,
                from,
                x,
                Spot::new(self.view.x(from), rule),
                tick,
                text,
                middle,
                !level,
            );
        }
        let right = self.place.x0 - set.aside;
        for (index, text) in name.iter().enumerate() {
            let down = Micron::try_from(index).unwrap_or(0) * line(LEAST_TYPE);
            let corner = Spot::new(right, top + 100 + down);
            let label = Label::new(Says::Note, text.clone(), corner, LEAST_TYPE)
                .bold()
                .ending();
            if self.room.is_free(&label.extent) {
                self.put(label);
            }
        }
    }

    fn brackets(&mut self, row: &Row, top: Micron) {
        for (from, to, text) in &row.brackets {
            let (x0, x1) = (self.view.x(*from), self.view.x(*to));
            let y = top + 4_000;
            self.drawing.line(
                Layer::Dimension,
                &[
                    Spot::new(x0, y - MM),
                    Spot::new(x0, y),
                    Spot::new(x1, y),
                    Spot::new(x1, y - MM),
                ],
            );
            let middle = Spot::new(x0.midpoint(x1), top + 1_900);
            let sizes = [TYPE, SMALL, LEAST_TYPE];
            let label = sizes
                .iter()
                .map(|&size| Label::centred(Says::Note, text.clone(), middle, size, true, false));
            let fitting = label
                .into_iter()
                .find(|label| label.extent.width() < x1 - x0 + MM && self.room.is_free(&label.extent));
            if let Some(label) = fitting {
                self.put(label);
            } else {
                let short = text.split("  ").next().unwrap_or_default().to_owned();
                self.call_out(
                    Says::Note,
                    &short,
                    Spot::new(x0.midpoint(x1), y),
                    LEAST_TYPE,
                    true,
                );
            }
        }
    }

    #[expect(
        clippy::too_many_arguments,
        reason = "a dimension is its two ends in the wall and on paper, and its label"
    )]
    fn dimension(
        &mut self,
        along: Along,
        from: Length,
        to: Length,
        from_at: Spot,
        to_at: Spot,
        text: &str,
        middle: Spot,
        turned: bool,
    ) {
        let value = match along {
            Along::Wall => (to - from).abs(),
            Along::Height => to - from,
        };
        let dimension = u32::try_from(self.drawing.dimensions.len()).unwrap_or(u32::MAX);
        self.drawing.dimensions.push(Dimension {
            along,
            from,
            to,
            value,
            from_at,
            to_at,
        });
        let label = Label::centred(Says::Dimension { dimension }, text, middle, TYPE, false, turned);
        self.put(label);
    }

    /// Sets the levels at both sides.
    pub(super) fn levels(&mut self, left: &[Length], right: &[Length]) {
        self.level_side(left, true);
        self.level_side(right, false);
    }

    fn level_side(&mut self, levels: &[Length], left: bool) {
        let edge = if left {
            self.place.x0 - MM
        } else {
            self.place.x1 + MM
        };
        let out = if left { -1 } else { 1 };
        let spots: Vec<Micron> = levels.iter().rev().map(|&y| self.view.y(y)).collect();
        let top = self.place.y1 - self.place.height().max(least_height(levels.len()));
        let moved = spread(&spots, STEP, (top, self.place.y1 + 4 * MM));
        for ((&level, &spot), &at) in levels.iter().rev().zip(&spots).zip(&moved) {
            let text = self.show(level, Rounding::Nearest);
            let tick = Spot::new(edge, spot);
            let near = Spot::new(edge + out * 5 * MM, at);
            self.drawing
                .line(Layer::Dimension, &[tick, tick.moved(out * 2 * MM, 0), near]);
            let half = width(&text, TYPE, false) / 2;
            let middle = near.moved(out * (half + 600), 0);
            let zero = Spot::new(edge, self.view.y(Length::ZERO));
            self.dimension(
                Along::Height,
                Length::ZERO,
                level,
                zero,
                tick,
                &text,
                middle,
                false,
            );
        }
        if levels.is_empty() {
            return;
        }
        let text = if left { "sheathing levels" } else { "frame levels" };
        let y = moved.first().copied().unwrap_or(self.place.y0) - 4_400;
        let middle = Spot::new(edge + out * 14 * MM, y);
        let label = Label::centred(Says::Note, text, middle, LEAST_TYPE, true, false);
        if self.room.is_free(&label.extent) {
            self.put(label);
        }
    }
}
