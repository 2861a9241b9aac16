//! The drawing of cut sheets: pages of sheets with their pieces, cuts in their order, what is kept, what is thrown
//! away.

mod pattern;

use super::glyphs::{fitted, width};
use super::input::CutDrawingInput;
use super::page::{
    Cell, MARGIN, SHEET_HEIGHT, SHEET_WIDTH, SMALL, Sample, TITLE_HEIGHT, TYPE, frame_page, put, show,
};
use super::place::Room;
use super::view::on_paper;
use super::{Drawing, Extent, Label, Layer, MM, Micron, Says, Spot};
use crate::cutting::{CutNode, CutSheet, WhyUncut};
use crate::length::{Length, Rounding};
use pattern::{HEADING, Pattern};

/// Between two sheets: room for the strength axis and for what does not fit into a piece.
const BETWEEN: Micron = 12 * MM;
/// Under the upper border: the page's heading and the legend.
const HEAD: Micron = 14 * MM;
/// Scales that are tried, as units of the sheet to one on paper.
const SCALES: [i64; 7] = [16, 20, 24, 28, 32, 40, 48];
/// Sheets that a page holds at least, where the smallest scale allows it.
const LEAST: usize = 10;

/// How the sheets of a cut plan stand on pages.
#[derive(Clone, Copy)]
struct Grid {
    denominator: i64,
    /// The largest sheet on paper.
    sheet: (Micron, Micron),
    /// How many stand beside and over each other.
    count: (usize, usize),
    /// From one sheet to the next.
    step: (Micron, Micron),
}

impl Grid {
    fn new(sheets: &[(usize, &CutSheet)]) -> Self {
        let most = |of: fn(&CutSheet) -> Length| sheets.iter().map(|(_, s)| of(s)).max().unwrap_or_default();
        let (wide, long) = (most(|s| s.width), most(|s| s.length));
        let grid = |denominator: i64| {
            let sheet = (on_paper(wide, denominator), on_paper(long, denominator));
            let room = (
                SHEET_WIDTH - 2 * MARGIN - BETWEEN,
                SHEET_HEIGHT - 2 * MARGIN - HEAD - TITLE_HEIGHT,
            );
            let (across, wide) = shared(room.0, sheet.0 + BETWEEN);
            let (down, high) = shared(room.1, sheet.1 + HEADING);
            Self {
                denominator,
                sheet,
                count: (across, down),
                step: (wide, high),
            }
        };
        let grids = SCALES.map(grid);
        let [.., smallest] = grids;
        grids
            .into_iter()
            .find(|grid| grid.per_page() >= LEAST)
            .unwrap_or(smallest)
    }

    const fn per_page(&self) -> usize {
        self.count.0 * self.count.1
    }

    /// Upper left corner of the sheet at a place of a page.
    fn corner(&self, place: usize) -> Spot {
        let steps = |count: usize, each: Micron| Micron::try_from(count).unwrap_or(0) * each;
        let (across, _) = self.count;
        Spot::new(
            MARGIN + BETWEEN + steps(place % across, self.step.0),
            MARGIN + HEAD + HEADING + steps(place / across, self.step.1),
        )
    }
}

/// How many steps of at least this size a room holds, at least one, and how large they are then.
fn shared(room: Micron, least: Micron) -> (usize, Micron) {
    let count = (room / least).max(1);
    (usize::try_from(count).unwrap_or(1), (room / count).max(least))
}

/// How many pages the drawing of cut sheets has: at least one.
pub fn cut_sheet_pages(input: &CutDrawingInput<'_>) -> usize {
    let sheets = served(input);
    sheets.len().div_ceil(Grid::new(&sheets).per_page()).max(1)
}

/// Draws a page of the cut sheets of a house, or of those that one wall takes a piece from; pages count from 0.
/// `None` past the last page.
///
/// A sheet stands on its width, its length going up. Numbers in rings are the order of cutting; every size is the
/// sheet's width × its length.
///
/// ```no_run
/// # fn demo(input: &edgenail::drawing::CutDrawingInput<'_>) {
/// use edgenail::drawing::{cut_sheet_pages, cut_sheets};
/// for page in 0..cut_sheet_pages(input) {
///     assert!(cut_sheets(input, page).is_some_and(|drawing| drawing.svg().starts_with("<svg")));
/// }
/// # }
/// ```
pub fn cut_sheets(input: &CutDrawingInput<'_>, page: usize) -> Option<Drawing> {
    let sheets = served(input);
    let grid = Grid::new(&sheets);
    let pages = sheets.len().div_ceil(grid.per_page()).max(1);
    if page >= pages {
        return None;
    }
    let on_page: Vec<(usize, &CutSheet)> = sheets
        .iter()
        .copied()
        .skip(page * grid.per_page())
        .take(grid.per_page())
        .collect();
    let mut drawing = Drawing {
        title: format!("Cut sheets, page {} of {pages}", page + 1),
        width: SHEET_WIDTH.max(grid.sheet.0 + 2 * MARGIN + 2 * BETWEEN),
        height: SHEET_HEIGHT.max(grid.sheet.1 + HEAD + HEADING + TITLE_HEIGHT + 2 * MARGIN),
        ..Drawing::default()
    };
    let border = drawing.sheet().grown(-MARGIN);
    let mut room = Room::new(Extent {
        y1: border.y1 - TITLE_HEIGHT,
        ..border
    });
    heading(input, &mut drawing, &mut room, &on_page, sheets.len());
    legend(&mut drawing, &mut room);
    let mut pattern = Pattern {
        input,
        drawing: &mut drawing,
        room: &mut room,
        denominator: grid.denominator,
        kerf: kerf(input),
        cuts: 0,
    };
    for (place, (index, sheet)) in on_page.iter().enumerate() {
        pattern.stand(sheet, grid.corner(place), *index + 1);
    }
    for (place, (_, sheet)) in on_page.iter().enumerate() {
        pattern.write(sheet, grid.corner(place));
    }
    let cells = cells(
        input,
        &on_page,
        &format!("cut sheets, page {} of {pages}", page + 1),
    );
    let mut room = Room::new(border);
    let page = drawing.sheet();
    frame_page(&mut drawing, &mut room, page, &cells);
    Some(drawing)
}

/// What the saw takes.
fn kerf(input: &CutDrawingInput<'_>) -> Length {
    input
        .house
        .walls
        .first()
        .map_or(Length::ZERO, |wall| wall.practice.kerf)
}

/// The sheets that are drawn, with their places in the plan.
fn served<'a>(input: &CutDrawingInput<'a>) -> Vec<(usize, &'a CutSheet)> {
    let sheets = input.cutting.sheets.iter().enumerate();
    sheets
        .filter(|(_, sheet)| input.wall.is_none_or(|wall| walls(input, sheet).contains(&wall)))
        .collect()
}

/// The walls that a sheet gives pieces to.
fn walls(input: &CutDrawingInput<'_>, sheet: &CutSheet) -> Vec<u32> {
    fn collect(node: &CutNode, wall_of: &dyn Fn(u32) -> Option<u32>, walls: &mut Vec<u32>) {
        match node {
            CutNode::Split { first, second, .. } => {
                collect(first, wall_of, walls);
                collect(second, wall_of, walls);
            }
            CutNode::Piece { blank, .. } => walls.extend(wall_of(*blank)),
            CutNode::Offcut { .. } | CutNode::Waste => {}
        }
    }
    let mut walls = Vec::new();
    let wall_of = |blank: u32| input.cutting.blanks.get(blank as usize).map(|blank| blank.wall);
    collect(&sheet.tree, &wall_of, &mut walls);
    walls
}

fn heading(
    input: &CutDrawingInput<'_>,
    drawing: &mut Drawing,
    room: &mut Room,
    on_page: &[(usize, &CutSheet)],
    count: usize,
) {
    let mut text = match (on_page.first(), on_page.last()) {
        (Some((first, _)), Some((last, _))) => {
            format!(
                "Cut sheets {} to {}, {count} in all, seen from the face that is turned out.",
                first + 1,
                last + 1
            )
        }
        _ => "Nothing is cut.".to_owned(),
    };
    let uncut = input.cutting.uncut.iter().filter_map(|uncut| {
        let why = match uncut.why {
            WhyUncut::TooLarge => "no sheet is large enough",
            WhyUncut::NoneLeft => "no sheet is left",
        };
        Some(format!("{} ({why})", input.piece_mark(uncut.blank)?))
    });
    let uncut: Vec<String> = uncut.collect();
    if !uncut.is_empty() {
        text = format!("NOT CUT: {}. {text}", uncut.join(", "));
    }
    let wide = drawing.width - 2 * MARGIN - 8 * MM;
    let corner = Spot::new(MARGIN + 4 * MM, MARGIN + 1_600);
    let label = Label::new(Says::Note, fitted(&text, wide, TYPE, true), corner, TYPE);
    put(drawing, room, label.bold());
}

/// What the lines and hatches mean, in one line under the heading.
fn legend(drawing: &mut Drawing, room: &mut Room) {
    let entries = [
        (Sample::Line(Layer::Sheet), "edge of the sheet"),
        (Sample::Line(Layer::Cut), "saw cut"),
        (Sample::Ring, "turn of the cut on its sheet"),
        (Sample::Line(Layer::Notch), "notch, hole or slope"),
        (Sample::Patch(Layer::Leftover), "off-cut to keep"),
        (Sample::Patch(Layer::Waste), "waste"),
        (Sample::Axis, "strength axis"),
    ];
    let mut x = MARGIN + 4 * MM;
    let top = MARGIN + 7 * MM;
    for (sample, text) in entries {
        show(
            drawing,
            sample,
            Extent::sized(Spot::new(x, top + 500), 12 * MM, 2_700),
        );
        let corner = Spot::new(x + 13_500, top);
        put(drawing, room, Label::new(Says::Note, text, corner, SMALL));
        x += 13_500 + width(text, SMALL, false) + 4 * MM;
    }
}

fn cells(input: &CutDrawingInput<'_>, on_page: &[(usize, &CutSheet)], page: &str) -> Vec<Cell> {
    let mut kinds: Vec<(u32, usize)> = Vec::new();
    let mut keys: Vec<u32> = Vec::new();
    for (_, sheet) in on_page {
        match kinds.iter_mut().find(|(kind, _)| *kind == sheet.sheet) {
            Some((_, count)) => *count += 1,
            None => kinds.push((sheet.sheet, 1)),
        }
        keys.extend(walls(input, sheet));
    }
    kinds.sort_unstable();
    keys.sort_unstable();
    keys.dedup();
    let stock = |kind: u32| input.house.stock.sheets.get(kind as usize);
    let mut names: Vec<String> = kinds
        .iter()
        .filter_map(|&(kind, _)| stock(kind))
        .map(|sheet| format!("{} {}", sheet.category, sheet.grade))
        .collect();
    names.dedup();
    let counted =
        |(kind, count): &(u32, usize)| stock(*kind).map(|sheet| format!("{count} of {}", sheet.name));
    let counts: Vec<String> = kinds.iter().filter_map(counted).collect();
    let walls: Vec<String> = keys
        .iter()
        .filter_map(|&key| {
            Some(format!(
                "{} = {}",
                key + 1,
                input.house.walls.get(key as usize)?.name
            ))
        })
        .collect();
    let kerf = kerf(input).show(input.style, Rounding::Nearest).text;
    let of = |share: Micron, heading: &'static str, lines: Vec<String>| Cell {
        share,
        heading,
        lines,
    };
    vec![
        of(16, "HOUSE", vec![input.house.name.clone(), page.to_owned()]),
        of(15, "SHEETS ON THIS PAGE", vec![names.join(", "), counts.join(", ")]),
        of(
            23,
            "CUTTING",
            vec![
                format!("kerf {kerf}"),
                "Sizes are width × length of the sheet, rounded down. Measure from the lower left corner. Not to scale."
                    .to_owned(),
            ],
        ),
        of(18, "MARKS: WALL-PIECE", vec![String::new(), walls.join(", ")]),
    ]
}
