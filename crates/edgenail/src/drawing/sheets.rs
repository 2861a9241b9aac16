//! The drawing of cut sheets: pieces, cuts in their order, what is kept, what is thrown away.

use super::glyphs::{line, width};
use super::input::CutDrawingInput;
use super::page::{Cell, MARGIN, SHEET_HEIGHT, SHEET_WIDTH, SMALL, TITLE_HEIGHT, TYPE, frame_page, put};
use super::place::Room;
use super::view::on_paper;
use super::{Drawing, Extent, Label, Layer, MM, Micron, Says, Spot};
use crate::cutting::{CutNode, CutSheet, Source};
use crate::length::{Length, Rounding};

/// Scale of the sheets: 1/2 in. to the foot.
const SCALE: i64 = 24;
/// Between two sheets, and over each for its heading.
const BETWEEN: Micron = 10 * MM;

/// One sheet being drawn.
struct Pen<'a> {
    input: &'a CutDrawingInput<'a>,
    drawing: &'a mut Drawing,
    room: &'a mut Room,
    kerf: Length,
    cuts: u32,
}

/// Draws the cut sheets of a house, or those that one wall takes a piece from.
///
/// A sheet stands on its width, its length going up. Numbers beside the cuts are the order of cutting.
pub fn cut_sheets(input: &CutDrawingInput<'_>) -> Drawing {
    let sheets: Vec<(usize, &CutSheet)> = input
        .cutting
        .sheets
        .iter()
        .enumerate()
        .filter(|(_, s)| serves(input, s))
        .collect();
    let widest = sheets
        .iter()
        .map(|(_, s)| on_paper(s.width, SCALE))
        .max()
        .unwrap_or(0);
    let highest = sheets
        .iter()
        .map(|(_, s)| on_paper(s.length, SCALE))
        .max()
        .unwrap_or(0);
    let inner = SHEET_WIDTH - 2 * MARGIN - 2 * BETWEEN;
    let across = usize::try_from(inner / (widest + BETWEEN).max(1))
        .unwrap_or(1)
        .max(1);
    let width = SHEET_WIDTH.max(widest + 2 * MARGIN + 3 * BETWEEN);
    let mut drawing = Drawing {
        title: "Cut sheets".into(),
        width,
        height: Micron::MAX / 4,
        ..Drawing::default()
    };
    let mut room = Room::new(drawing.sheet().grown(-MARGIN));
    let heading = Label::new(
        Says::Note,
        "Cut sheets: numbers are the order of cutting; sizes round down",
        Spot::new(MARGIN + 4 * MM, MARGIN + 3 * MM),
        2_800,
    );
    put(&mut drawing, &mut room, heading.bold());
    let mut bottom = MARGIN + 10 * MM;
    for (row, shelf) in sheets.chunks(across).enumerate() {
        let top = MARGIN + 22 * MM + Micron::try_from(row).unwrap_or(0) * (highest + 2 * BETWEEN);
        for (place, (index, sheet)) in shelf.iter().enumerate() {
            let left = MARGIN + BETWEEN + Micron::try_from(place).unwrap_or(0) * (widest + BETWEEN);
            let kerf = input
                .house
                .walls
                .first()
                .map_or(Length::ZERO, |wall| wall.practice.kerf);
            let mut pen = Pen {
                input,
                drawing: &mut drawing,
                room: &mut room,
                kerf,
                cuts: 0,
            };
            pen.sheet(*index, sheet, Spot::new(left, top + highest));
        }
        bottom = top + highest + BETWEEN;
    }
    drawing.height = SHEET_HEIGHT.max(bottom + TITLE_HEIGHT + MARGIN + 3 * MM);
    let count = format!("{} sheets", sheets.len());
    let walls: Vec<String> = input
        .house
        .walls
        .iter()
        .enumerate()
        .map(|(i, wall)| format!("{} = {}", i + 1, wall.name))
        .collect();
    let cells = [
        Cell {
            share: 22,
            heading: "HOUSE",
            lines: vec![input.house.name.clone(), count],
        },
        Cell {
            share: 40,
            heading: "WALLS",
            lines: vec![
                "Marks: wall-piece".into(),
                walls.join(", "),
                "Red: saw cut. Hatched: waste. Dotted: kept.".into(),
            ],
        },
    ];
    frame_page(&mut drawing, &mut room, &cells);
    drawing
}

/// The wall that was asked for takes a piece from this sheet.
fn serves(input: &CutDrawingInput<'_>, sheet: &CutSheet) -> bool {
    fn any(node: &CutNode, wanted: &dyn Fn(u32) -> bool) -> bool {
        match node {
            CutNode::Split { first, second, .. } => any(first, wanted) || any(second, wanted),
            CutNode::Piece { blank, .. } => wanted(*blank),
            CutNode::Offcut { .. } | CutNode::Waste => false,
        }
    }
    input.wall.is_none_or(|wall| {
        any(&sheet.tree, &|blank| {
            input
                .cutting
                .blanks
                .get(blank as usize)
                .is_some_and(|blank| blank.wall == wall)
        })
    })
}

impl Pen<'_> {
    fn sheet(&mut self, index: usize, sheet: &CutSheet, corner: Spot) {
        let extent = area(corner, Length::ZERO, Length::ZERO, sheet.width, sheet.length);
        self.drawing.rect(Layer::Sheet, &extent);
        let (name, from) = match sheet.source {
            Source::Sheet { sheet } => (
                self.input
                    .house
                    .stock
                    .sheets
                    .get(sheet as usize)
                    .map(|s| s.name.clone()),
                "",
            ),
            Source::Offcut { offcut } => (
                self.input
                    .house
                    .stock
                    .offcuts
                    .get(offcut as usize)
                    .map(|o| o.sheet.clone()),
                "off-cut of ",
            ),
            Source::Drop { .. } => (None, "drop cut out of a panel"),
        };
        let text = format!("{}  {from}{}", index + 1, name.unwrap_or_default());
        let text = super::glyphs::fitted(&text, extent.width(), TYPE, true);
        let label = Label::new(Says::Note, text, Spot::new(extent.x0, extent.y0 - 4 * MM), TYPE).bold();
        put(self.drawing, self.room, label);
        self.node(
            &sheet.tree,
            corner,
            (Length::ZERO, Length::ZERO),
            (sheet.width, sheet.length),
        );
    }

    fn node(&mut self, node: &CutNode, corner: Spot, at: (Length, Length), size: (Length, Length)) {
        let extent = area(corner, at.0, at.1, size.0, size.1);
        match node {
            CutNode::Split {
                across,
                at: part,
                first,
                second,
            } => {
                self.cuts += 1;
                let kerf = self.kerf;
                let (ends, first_size, second_at, second_size) = if *across {
                    let y = corner.y - on_paper(at.1 + *part, SCALE);
                    let rest = (size.0, size.1 - *part - kerf);
                    (
                        [Spot::new(extent.x0, y), Spot::new(extent.x1, y)],
                        (size.0, *part),
                        (at.0, at.1 + *part + kerf),
                        rest,
                    )
                } else {
                    let x = corner.x + on_paper(at.0 + *part, SCALE);
                    let rest = (size.0 - *part - kerf, size.1);
                    (
                        [Spot::new(x, extent.y0), Spot::new(x, extent.y1)],
                        (*part, size.1),
                        (at.0 + *part + kerf, at.1),
                        rest,
                    )
                };
                self.drawing.line(Layer::Cut, &ends);
                let middle = Spot::new(ends[0].x.midpoint(ends[1].x), ends[0].y.midpoint(ends[1].y));
                self.text(&self.cuts.to_string(), middle, SMALL, true);
                self.node(first, corner, at, first_size);
                self.node(second, corner, second_at, second_size);
            }
            CutNode::Piece { blank, .. } => {
                self.drawing.rect(Layer::Panel, &extent);
                let mark = self.input.cutting.blanks.get(*blank as usize).map(|blank| {
                    let layout = self.input.layouts.iter().find(|(wall, _)| *wall == blank.wall);
                    let piece = layout.and_then(|(_, layout)| layout.pieces.get(blank.piece as usize));
                    format!(
                        "{}-{}",
                        blank.wall + 1,
                        piece.map_or("", |piece| piece.mark.as_str())
                    )
                });
                let middle = extent.middle();
                self.text(&mark.unwrap_or_default(), middle, 3_000, true);
                self.text(&self.size(size), middle.moved(0, 4 * MM), SMALL, false);
            }
            CutNode::Offcut { .. } => {
                self.drawing.rect(Layer::Leftover, &extent);
                self.text(
                    &format!("keep {}", self.size(size)),
                    extent.middle(),
                    SMALL,
                    false,
                );
            }
            CutNode::Waste => self.drawing.rect(Layer::Waste, &extent),
        }
    }

    fn size(&self, size: (Length, Length)) -> String {
        let show = |length: Length| length.show(self.input.style, Rounding::Down).text;
        format!("{} × {}", show(size.0), show(size.1))
    }

    /// Writes a text at the nearest free place; smaller where there is none.
    fn text(&mut self, text: &str, at: Spot, size: Micron, bold: bool) {
        for size in [size, size * 3 / 4, size / 2] {
            if let Some(place) = self
                .room
                .nearest(at, width(text, size, bold), line(size), 25 * MM)
            {
                let label = Label::centred(Says::Note, text, place.middle(), size, bold, false).backed();
                put(self.drawing, self.room, label);
                return;
            }
        }
    }
}

/// A rectangle of a sheet whose lower left corner lies at a place on paper.
fn area(corner: Spot, x: Length, y: Length, wide: Length, long: Length) -> Extent {
    let paper = |length: Length| on_paper(length, SCALE);
    Extent::new(
        corner.x + paper(x),
        corner.y - paper(y + long),
        corner.x + paper(x + wide),
        corner.y - paper(y),
    )
}
