//! The sheet of paper: border, title block, columns of text.

use super::glyphs::{fitted, line, wrapped};
use super::place::Room;
use super::{Drawing, Extent, Form, Label, Layer, MM, Micron, Says, Spot};
use crate::caution::CAUTION;

/// Width of an A3 sheet lying on its side (ISO 216).
pub(super) const SHEET_WIDTH: Micron = 420 * MM;
/// Its height.
pub(super) const SHEET_HEIGHT: Micron = 297 * MM;
/// From the edge of the paper to the border.
pub(super) const MARGIN: Micron = 10 * MM;
/// Height of the title block.
pub(super) const TITLE_HEIGHT: Micron = 24 * MM;
/// Height of ordinary type.
pub(super) const TYPE: Micron = 3_000;
/// Height of small type.
pub(super) const SMALL: Micron = 2_700;
/// Height of the smallest type that is still read on paper: capitals of 1.8 mm, the least nominal size of ISO 3098-1
/// (from memory).
pub(super) const LEAST_TYPE: Micron = 2_500;

/// One cell of the title block: a heading, and lines that follow it.
#[derive(Clone, Debug)]
pub(super) struct Cell {
    /// Its share of the width, in hundredths.
    pub share: Micron,
    /// What it is about.
    pub heading: &'static str,
    /// The first line is set larger.
    pub lines: Vec<String>,
}

/// Adds a label and takes its place.
pub(super) fn put(drawing: &mut Drawing, room: &mut Room, label: Label) {
    room.take(label.extent);
    drawing.labels.push(label);
}

/// Border and title block of a page that lies here on the drawing.
pub(super) fn frame_page(drawing: &mut Drawing, room: &mut Room, page: Extent, cells: &[Cell]) {
    let border = page.grown(-MARGIN);
    drawing.rect(Layer::Border, &border);
    let top = border.y1 - TITLE_HEIGHT;
    drawing.line(
        Layer::Border,
        &[Spot::new(border.x0, top), Spot::new(border.x1, top)],
    );
    // A wide sheet leaves the title block as wide as on an ordinary one, at its right end.
    let width = border.width().min(SHEET_WIDTH - 2 * MARGIN);
    let mut x = border.x1 - width;
    for cell in cells {
        let wide = width * cell.share / 100;
        if x > border.x0 {
            drawing.line(Layer::Table, &[Spot::new(x, top), Spot::new(x, border.y1)]);
        }
        let inner = wide - 4 * MM;
        let corner = Spot::new(x + 2 * MM, top + 1_200);
        put(
            drawing,
            room,
            Label::new(Says::Note, cell.heading, corner, LEAST_TYPE),
        );
        let mut y = corner.y + line(LEAST_TYPE) + 300;
        let mut rows: Vec<(String, Micron, bool)> = Vec::new();
        for (index, text) in cell.lines.iter().enumerate() {
            if index == 0 {
                rows.push((fitted(text, inner, 3_600, true), 3_600, true));
            } else {
                rows.extend(
                    wrapped(text, inner, SMALL)
                        .into_iter()
                        .map(|row| (row, SMALL, false)),
                );
            }
        }
        for (text, size, bold) in rows {
            if text.is_empty() || y + line(size) > border.y1 - 300 {
                continue;
            }
            let label = Label::new(Says::Note, text, Spot::new(corner.x, y), size);
            y += line(size) + 200;
            put(drawing, room, if bold { label.bold() } else { label });
        }
        x += wide;
    }
    caution(
        drawing,
        room,
        Extent::new(border.x1 - width, top, border.x1, border.y1),
        cells,
    );
}

/// The caution fills what the cells leave of the title block.
fn caution(drawing: &mut Drawing, room: &mut Room, block: Extent, cells: &[Cell]) {
    let used: Micron = cells.iter().map(|cell| block.width() * cell.share / 100).sum();
    let x = block.x0 + used;
    drawing.line(Layer::Table, &[Spot::new(x, block.y0), Spot::new(x, block.y1)]);
    let inner = block.x1 - x - 4 * MM;
    let heading = Label::new(
        Says::Note,
        "CAUTION",
        Spot::new(x + 2 * MM, block.y0 + 1_200),
        SMALL,
    )
    .bold();
    let mut y = heading.extent.y1 + 300;
    put(drawing, room, heading);
    let fits = |size: Micron| {
        let rows = Micron::try_from(wrapped(CAUTION, inner, size).len()).unwrap_or(Micron::MAX);
        y + rows * line(size) <= block.y1 - 300
    };
    let size = if fits(SMALL) { SMALL } else { LEAST_TYPE };
    for text in wrapped(CAUTION, inner, size) {
        put(
            drawing,
            room,
            Label::new(Says::Note, text, Spot::new(x + 2 * MM, y), size),
        );
        y += line(size);
    }
}

/// A row of a list: cells of text, or one text over the whole width.
#[derive(Clone, Debug)]
pub(super) enum Row {
    /// A heading.
    Heading(String),
    /// Cells, each in its column.
    Cells(Vec<String>),
    /// A text that is broken into lines, with what stands before it.
    Text(String, String),
    /// A sample of a layer with its meaning.
    Sample(Sample, String),
}

/// How a layer is shown in the legend.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Sample {
    /// A line of this layer.
    Line(Layer),
    /// A patch of this layer.
    Patch(Layer),
    /// Nails of this layer: the diameter of their dots, and whether they are square.
    Nails(Layer, Micron, bool),
    /// An arrow with two tips.
    Axis,
    /// A number in a ring.
    Ring,
    /// A flag.
    Flag,
}

/// A list of rows set in columns from a top line downwards.
#[derive(Clone, Debug, Default)]
pub(super) struct List {
    /// Widths of the columns of cells.
    pub columns: Vec<Micron>,
    /// The rows.
    pub rows: Vec<Row>,
    /// The room from left to right.
    pub width: Micron,
}

/// Height of one line of a list.
pub(super) const ROW: Micron = 3_900;

impl List {
    /// The lines that a row takes.
    fn lines(&self, row: &Row) -> Micron {
        let count = match row {
            Row::Heading(_) | Row::Cells(_) => 1,
            Row::Sample(_, text) => wrapped(text, self.width - 16 * MM, SMALL).len(),
            Row::Text(_, text) => wrapped(text, self.width - 8 * MM, SMALL).len(),
        };
        Micron::try_from(count.max(1)).unwrap_or(1)
    }

    /// Height of the whole list.
    pub(super) fn height(&self) -> Micron {
        self.rows.iter().map(|row| self.lines(row) * ROW).sum()
    }

    /// Sets the list with its upper left corner at a place.
    pub(super) fn set(&self, drawing: &mut Drawing, room: &mut Room, corner: Spot) {
        let mut at = corner;
        for row in &self.rows {
            at.y += self.set_row(drawing, room, row, at) * ROW;
        }
    }

    /// Sets a row, and tells how many lines it took.
    fn set_row(&self, drawing: &mut Drawing, room: &mut Room, row: &Row, at: Spot) -> Micron {
        match row {
            Row::Heading(text) => {
                let text = fitted(text, self.width, TYPE, true);
                put(drawing, room, Label::new(Says::Note, text, at, TYPE).bold());
                let y = at.y + ROW - 300;
                drawing.line(
                    Layer::Table,
                    &[Spot::new(at.x, y), Spot::new(at.x + self.width, y)],
                );
                1
            }
            Row::Cells(cells) => {
                let mut x = at.x;
                for (text, &width) in cells.iter().zip(&self.columns) {
                    let text = fitted(text, width - MM, SMALL, false);
                    if !text.is_empty() {
                        put(
                            drawing,
                            room,
                            Label::new(Says::Note, text, Spot::new(x, at.y + 400), SMALL),
                        );
                    }
                    x += width;
                }
                1
            }
            Row::Text(lead, text) => {
                let lead = fitted(lead, 7 * MM, SMALL, true);
                if !lead.is_empty() {
                    let label = Label::new(Says::Note, lead, at.moved(0, 400), SMALL).bold();
                    put(drawing, room, label);
                }
                self.paragraph(drawing, room, text, at, 8 * MM)
            }
            Row::Sample(sample, text) => {
                show(
                    drawing,
                    *sample,
                    Extent::sized(at.moved(0, 300), 13 * MM, ROW - 600),
                );
                self.paragraph(drawing, room, text, at, 16 * MM)
            }
        }
    }

    /// Sets a text in lines, and tells how many: one at least.
    fn paragraph(
        &self,
        drawing: &mut Drawing,
        room: &mut Room,
        text: &str,
        at: Spot,
        indent: Micron,
    ) -> Micron {
        let mut lines = 0;
        for text in wrapped(text, self.width - indent, SMALL) {
            let corner = Spot::new(at.x + indent, at.y + 400 + lines * ROW);
            put(drawing, room, Label::new(Says::Note, text, corner, SMALL));
            lines += 1;
        }
        lines.max(1)
    }
}

/// Draws a sample of a layer.
pub(super) fn show(drawing: &mut Drawing, sample: Sample, patch: Extent) {
    let middle = patch.middle();
    let (left, right) = (Spot::new(patch.x0, middle.y), Spot::new(patch.x1, middle.y));
    match sample {
        Sample::Line(layer) => drawing.line(layer, &[left, right]),
        Sample::Patch(layer) => drawing.rect(layer, &patch),
        Sample::Nails(layer, dot, square) => drawing.mark(
            layer,
            Form::Nails {
                from: left,
                to: right,
                spaces: 5,
                first: 0,
                last: 5,
                dot,
                square,
            },
        ),
        Sample::Axis => arrow(drawing, left.moved(2 * MM, 0), right.moved(-2 * MM, 0)),
        Sample::Ring => drawing.mark(
            Layer::Ring,
            Form::Circle {
                middle,
                radius: patch.height() / 2,
            },
        ),
        Sample::Flag => flag(drawing, middle, patch.height()),
    }
}

/// An arrow with a tip at both ends.
pub(super) fn arrow(drawing: &mut Drawing, from: Spot, to: Spot) {
    let (long, half) = (1_800, 550);
    let upright = from.x == to.x;
    let toward = |end: Spot, other: Spot| {
        if upright {
            (0, (other.y - end.y).signum())
        } else {
            ((other.x - end.x).signum(), 0)
        }
    };
    for (end, other) in [(from, to), (to, from)] {
        let (dx, dy) = toward(end, other);
        let back = end.moved(dx * long, dy * long);
        let corners = [
            end,
            back.moved(dy * half, dx * half),
            back.moved(-dy * half, -dx * half),
        ];
        drawing.mark(Layer::StrengthAxis, Form::Tip { corners });
    }
    drawing.line(Layer::StrengthAxis, &[from, to]);
}

/// The triangle around the number of a finding.
pub(super) fn flag(drawing: &mut Drawing, middle: Spot, height: Micron) {
    let half = height * 6 / 10;
    let corners = vec![
        middle.moved(0, -height / 2),
        middle.moved(half, height / 2),
        middle.moved(-half, height / 2),
    ];
    drawing.mark(Layer::Flag, Form::Polygon { rings: vec![corners] });
}
