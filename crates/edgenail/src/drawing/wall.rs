//! The drawing of one wall: what a framer builds from.

mod flags;
mod measures;
mod nails;
mod notes;
mod panels;

mod wood;

use super::input::WallDrawingInput;
use super::page::{MARGIN, SHEET_HEIGHT, SHEET_WIDTH, TITLE_HEIGHT, frame_page, put};
use super::place::Room;
use super::view::{View, scale_for};
use super::{Drawing, Label, MM, Micron, Says, Spot};
use crate::geometry::Rect;
use crate::house::{End, Face, Wall};
use crate::length::{Length, Rounding};

/// Room for levels beside the wall.
const SIDE: Micron = 30 * MM;
/// Room for the heading and the layout marks over the wall.
const HEAD: Micron = 26 * MM;

/// A drawing in the making.
struct Canvas<'a> {
    input: &'a WallDrawingInput<'a>,
    wall: &'a Wall,
    drawing: Drawing,
    room: Room,
    view: View,
    /// The wall on paper, from the lowest to the highest of frame and sheathing.
    place: super::Extent,
}

/// Which way the drawing of a wall shows it.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Shows {
    Sheathing,
    Frame,
}

/// Draws a wall with its sheathing; `None` where the frame names a wall that the house has not.
///
/// ```no_run
/// # fn demo(input: &edgenail::drawing::WallDrawingInput<'_>) {
/// if let Some(drawing) = edgenail::drawing::wall(input) {
///     assert!(drawing.svg().starts_with("<svg"));
/// }
/// # }
/// ```
pub fn wall(input: &WallDrawingInput<'_>) -> Option<Drawing> {
    draw(input, Shows::Sheathing)
}

/// Draws the frame of a wall alone: members, layout marks, openings, and what was added for the sheathing.
pub fn frame(input: &WallDrawingInput<'_>) -> Option<Drawing> {
    draw(input, Shows::Frame)
}

fn draw(input: &WallDrawingInput<'_>, shows: Shows) -> Option<Drawing> {
    let wall = input.house.walls.get(input.frame.wall as usize)?;
    let whole = bounds(input);
    let inner = (SHEET_WIDTH - 2 * (MARGIN + SIDE), 132 * MM);
    let (denominator, scale) = scale_for(input.style, whole.width(), whole.height(), inner);
    let view = View {
        denominator,
        zero: Spot::default(),
    };
    let rows = measures::rows(input, shows);
    let (left, right) = measures::levels(input, shows);
    let size = view.extent(&whole);
    let crowded = rows.iter().map(measures::Row::least_width).max().unwrap_or(0);
    let width = (size.width().max(crowded) + 2 * (MARGIN + SIDE)).max(SHEET_WIDTH);
    let high = size
        .height()
        .max(measures::least_height(left.len().max(right.len())));
    let zero = Spot::new(
        (width - size.width()) / 2 - size.x0,
        MARGIN + HEAD + (high - size.height()) - size.y0,
    );
    let view = View { denominator, zero };
    let place = view.extent(&whole);
    let title = match shows {
        Shows::Sheathing => format!("{}: sheathing", wall.name),
        Shows::Frame => format!("{}: frame", wall.name),
    };
    let drawing = Drawing {
        title,
        width,
        height: Micron::MAX / 4,
        ..Drawing::default()
    };
    let room = Room::new(drawing.sheet().grown(-MARGIN));
    let mut canvas = Canvas {
        input,
        wall,
        drawing,
        room,
        view,
        place,
    };
    canvas.heading(shows, scale);
    canvas.wood(shows);
    let mut y = canvas.rows(&rows);
    canvas.levels(&left, &right);
    canvas.layout_marks();
    canvas.openings(shows);
    if shows == Shows::Sheathing {
        canvas.panels();
        canvas.nails();
        canvas.start();
        canvas.piece_labels();
        canvas.segment_marks();
        canvas.flags();
        canvas.block_keys();
    } else {
        canvas.block_keys();
    }
    y += 4 * MM;
    let height = canvas.lists(shows, y);
    canvas.finish(shows, scale, height)
}

/// Everything that the drawing of the wall has to hold.
fn bounds(input: &WallDrawingInput<'_>) -> Rect {
    let members = input.frame.members.iter().map(|member| member.face.bounds());
    let pieces = input.layout.pieces.iter().map(|piece| piece.cell.bounds());
    let joined = members.chain(pieces).reduce(|a, b| Rect {
        x0: a.x0.min(b.x0),
        y0: a.y0.min(b.y0),
        x1: a.x1.max(b.x1),
        y1: a.y1.max(b.y1),
    });
    joined.unwrap_or_else(|| Rect::new(Length::ZERO, Length::ZERO, Length::feet(8), Length::feet(8)))
}

impl Canvas<'_> {
    /// A length in the words of the drawing.
    fn show(&self, length: Length, rounding: Rounding) -> String {
        length.show(self.input.style, rounding).text
    }

    /// A size in the words of the drawing: width × height.
    fn size(&self, width: Length, height: Length, rounding: Rounding) -> String {
        format!("{} × {}", self.show(width, rounding), self.show(height, rounding))
    }

    /// Where dimensions along the wall start.
    fn start_x(&self) -> Length {
        start_x(self.input)
    }

    fn put(&mut self, label: Label) {
        put(&mut self.drawing, &mut self.room, label);
    }

    fn heading(&mut self, shows: Shows, scale: &str) {
        let corner = Spot::new(MARGIN + 4 * MM, MARGIN + 3 * MM);
        let what = match shows {
            Shows::Sheathing => "Sheathing as seen from the sheathed face",
            Shows::Frame => "Frame as seen from the sheathed face",
        };
        let face = match self.wall.face {
            Face::Exterior => "outside",
            Face::Interior => "a room",
            Face::Party => "the party wall side",
        };
        let text = format!("{what}, from {face}. Scale {scale}. Do not scale: use the written sizes.");
        let room = self.drawing.width - 2 * (MARGIN + 4 * MM);
        let text = super::glyphs::fitted(&text, room, 2_800, true);
        self.put(Label::new(Says::Note, text, corner, 2_800).bold());
    }

    #[expect(
        clippy::unnecessary_wraps,
        reason = "it ends functions that may have no drawing"
    )]
    fn finish(mut self, shows: Shows, scale: &str, lists_end: Micron) -> Option<Drawing> {
        let needed = lists_end + 3 * MM + TITLE_HEIGHT + MARGIN;
        self.drawing.height = needed.max(SHEET_HEIGHT);
        let cells = self.title_cells(shows, scale);
        frame_page(&mut self.drawing, &mut self.room, &cells);
        Some(self.drawing)
    }
}

/// Where dimensions along the wall start: the end of the sheathing at the starting end.
fn start_x(input: &WallDrawingInput<'_>) -> Length {
    let span = input.frame.lower.span();
    match input.start.end {
        End::Left => span.lo,
        End::Right => span.hi,
    }
}

#[cfg(test)]
mod tests;
