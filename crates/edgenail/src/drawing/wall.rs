//! The drawing of one wall: what a framer builds from.

mod arrange;
mod call;
mod flags;
mod legend;
mod measures;
mod members;
mod nails;
mod notes;
mod panels;
mod resisted;
mod rows;
mod start;
mod title;

mod wood;

use super::input::WallDrawingInput;
use super::page::{List, MARGIN, SHEET_HEIGHT, SHEET_WIDTH, frame_page, put};
use super::place::Room;
use super::view::{View, scales};
use super::{Drawing, Extent, Label, MM, Micron, Says, Spot};
use crate::geometry::Rect;
use crate::house::{End, Face, Wall};
use crate::length::{Length, Rounding, Style};
use arrange::{Flowing, Pages, measured};

/// Room for levels and names beside the wall.
const SIDE: Micron = 32 * MM;
/// Room for the heading and the layout marks over the wall.
const HEAD: Micron = 24 * MM;
/// The smallest scale that is taken so that lists find room; a smaller one only where the wall needs it.
const LEAST_FOR_LISTS: i64 = 50;
/// The same where nothing is written on pieces.
const LEAST_FOR_FRAME: i64 = 64;

/// A drawing in the making.
struct Canvas<'a> {
    input: &'a WallDrawingInput<'a>,
    wall: &'a Wall,
    drawing: Drawing,
    room: Room,
    view: View,
    /// The wall on paper, from the lowest to the highest of frame and sheathing.
    place: Extent,
    /// Width of the wall with everything beside it.
    block: Micron,
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

/// Draws at the largest usual scale that leaves the lists their room.
fn draw(input: &WallDrawingInput<'_>, shows: Shows) -> Option<Drawing> {
    let wall = input.house.walls.get(input.frame.wall as usize)?;
    let rows = rows::rows(input, shows);
    let (left, right) = rows::levels(input, shows);
    let levels = rows::least_height(left.len().max(right.len()));
    let least = match shows {
        Shows::Sheathing => LEAST_FOR_LISTS,
        Shows::Frame => LEAST_FOR_FRAME,
    };
    // What the lists say does not depend on the scale, but for the legend.
    let mut said: Option<(Vec<List>, Vec<Flowing>)> = None;
    let mut chosen: Option<(Canvas<'_>, &str)> = None;
    let mut wall_fits = false;
    for &(denominator, scale) in scales(input.style) {
        // Lists that do not fit at a scale that is easily read go on on further pages instead.
        if wall_fits && denominator > least {
            break;
        }
        let canvas = Canvas::new(input, wall, shows, &rows, levels, denominator);
        let under = canvas.under(&rows);
        let fits = canvas.wall_fits(under) && {
            let (_, heights) = said.get_or_insert_with(|| {
                let lists = canvas.lists(shows);
                let legend = canvas.legend(shows, true);
                let heights = measured(&lists).into_iter().chain(measured(&legend));
                (lists, heights.collect())
            });
            canvas.fits(heights, under)
        };
        if !wall_fits || fits {
            wall_fits = canvas.wall_fits(under);
            chosen = Some((canvas, scale));
        }
        if fits {
            break;
        }
    }
    let (mut canvas, scale) = chosen?;
    canvas.heading(shows, scale);
    canvas.wood(shows);
    canvas.rows(&rows);
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
    }
    canvas.block_keys();
    let mut lists = said.map_or_else(|| canvas.lists(shows), |(lists, _)| lists);
    lists.extend(canvas.legend(shows, false));
    let pages = canvas.set_lists(&lists, canvas.under(&rows));
    Some(canvas.finish(shows, scale, pages))
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

impl<'a> Canvas<'a> {
    /// An empty sheet of paper with the place of the wall at a scale.
    fn new(
        input: &'a WallDrawingInput<'a>,
        wall: &'a Wall,
        shows: Shows,
        rows: &[rows::Row],
        levels: Micron,
        denominator: i64,
    ) -> Self {
        let whole = bounds(input);
        let size = View {
            denominator,
            zero: Spot::default(),
        }
        .extent(&whole);
        let crowded = rows.iter().map(rows::Row::least_width).max().unwrap_or(0);
        let block = size.width().max(crowded) + 2 * SIDE;
        let width = (block + 2 * MARGIN).max(SHEET_WIDTH);
        // The wall stands in the middle of its columns, or of the paper where it leaves none free.
        let middle = arrange::taken(width, block).map_or(width / 2, |wide| MARGIN + 3 * MM + wide / 2);
        let high = size.height().max(levels);
        let zero = Spot::new(
            middle - size.width() / 2 - size.x0,
            MARGIN + HEAD + (high - size.height()) - size.y0,
        );
        let view = View { denominator, zero };
        let title = match shows {
            Shows::Sheathing => format!("{}: sheathing", wall.name),
            Shows::Frame => format!("{}: frame", wall.name),
        };
        let drawing = Drawing {
            title,
            width,
            height: SHEET_HEIGHT.max(zero.y + SIDE),
            ..Drawing::default()
        };
        let room = Room::new(drawing.sheet().grown(-MARGIN));
        let place = view.extent(&whole);
        Self {
            input,
            wall,
            drawing,
            room,
            view,
            place,
            block,
        }
    }

    /// A length in the words of the drawing.
    fn show(&self, length: Length, rounding: Rounding) -> String {
        length.show(self.input.style, rounding).text
    }

    /// A spacing in the words of the drawing.
    fn spacing(&self, length: Length) -> String {
        spacing(length, self.input.style)
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

    fn finish(mut self, shows: Shows, scale: &str, pages: Pages) -> Drawing {
        self.drawing.height = pages.height * pages.count;
        for page in 0..pages.count {
            let top = page * pages.height;
            if page > 0 {
                let corner = Spot::new(MARGIN + 4 * MM, top + MARGIN + 3 * MM);
                let text = format!("{}, continued", self.drawing.title);
                let room = self.drawing.width - 2 * (MARGIN + 4 * MM);
                let text = super::glyphs::fitted(&text, room, 2_800, true);
                self.put(Label::new(Says::Note, text, corner, 2_800).bold());
            }
            let cells = self.title_cells(shows, scale, pages, page);
            let page = Extent::new(0, top, self.drawing.width, top + pages.height);
            frame_page(&mut self.drawing, &mut self.room, page, &cells);
        }
        self.drawing
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

/// A spacing as it is named: in inches where lengths are in feet, a decimal where sixteenths do not show it, as in
/// 19.2 in.
fn spacing(length: Length, style: Style) -> String {
    let style = match style {
        Style::FeetInches(finest) => Style::Inches(finest),
        Style::Inches(_) | Style::DecimalInches | Style::Millimetres => style,
    };
    let shown = length.show(style, Rounding::Nearest);
    if shown.rounded && style != Style::Millimetres {
        return length.show(Style::DecimalInches, Rounding::Nearest).text;
    }
    shown.text
}

#[cfg(test)]
mod tests;
