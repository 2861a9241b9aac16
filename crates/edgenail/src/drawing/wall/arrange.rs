//! How a wall and its lists share the paper.

use super::Canvas;
use crate::drawing::page::{List, MARGIN, ROW, Row, SHEET_HEIGHT, SHEET_WIDTH, TITLE_HEIGHT};
use crate::drawing::{MM, Micron, Spot};

/// Width of one column of lists.
const COLUMN: Micron = 95 * MM;
/// From column to column.
const PITCH: Micron = 98 * MM + 500;
/// Where columns begin that the wall leaves free: under the heading.
const TOP: Micron = MARGIN + 11 * MM;

/// How much of the paper's width lies beside the lists.
const BESIDE: Micron = 2 * (MARGIN + 3 * MM);

/// The width that a wall takes with everything beside it, in whole columns, if that leaves a column free.
pub(super) const fn taken(paper: Micron, block: Micron) -> Option<Micron> {
    let wide = (block + PITCH - 1) / PITCH * PITCH;
    if wide + COLUMN <= paper - BESIDE {
        Some(wide)
    } else {
        None
    }
}

/// The lower end of lists on a sheet of this height.
pub(super) const fn bottom_of(height: Micron) -> Micron {
    height - MARGIN - TITLE_HEIGHT - 3 * MM
}

/// Rows that are said of a row of cells and stay under it; more of them go their own way.
const TOGETHER: usize = 12;

/// Each row of a list as a list of its own, so that it can stand in any column. What is said of a row of cells stays
/// under it.
pub(super) fn split(columns: &[Micron], rows: Vec<Row>) -> Vec<List> {
    let mut lists: Vec<List> = Vec::new();
    for row in rows {
        let below = matches!(&row, Row::Text(lead, _) if lead.is_empty());
        match lists.last_mut() {
            Some(list)
                if below
                    && list.rows.len() < TOGETHER
                    && matches!(list.rows.first(), Some(Row::Cells(_))) =>
            {
                list.rows.push(row);
            }
            _ => lists.push(List {
                columns: columns.to_vec(),
                rows: vec![row],
                width: COLUMN,
            }),
        }
    }
    lists
}

/// What the flow of lists knows of one.
#[derive(Clone, Copy)]
pub(super) struct Flowing {
    height: Micron,
    is_heading: bool,
}

/// The heights of lists: breaking their texts into lines is the dear part.
pub(super) fn measured(lists: &[List]) -> Vec<Flowing> {
    let of = |list: &List| Flowing {
        height: list.height(),
        is_heading: matches!(list.rows.first(), Some(Row::Heading(_))),
    };
    lists.iter().map(of).collect()
}

/// The pages of a drawing, one under the other.
#[derive(Clone, Copy)]
pub(super) struct Pages {
    pub count: Micron,
    /// Height of each.
    pub height: Micron,
}

/// Room for lists under each other.
#[derive(Clone, Copy)]
struct Column {
    page: Micron,
    top: Spot,
    bottom: Micron,
}

/// Columns that are filled one after the other, and how far that has come.
#[derive(Clone)]
struct Pen {
    columns: Vec<Column>,
    current: usize,
    at: Spot,
}

impl Pen {
    fn new(columns: Vec<Column>) -> Option<Self> {
        let at = columns.first()?.top;
        Some(Self {
            columns,
            current: 0,
            at,
        })
    }

    /// Where each list stands, and the columns after them; `None` where they need more room.
    fn flow(&self, lists: &[Flowing]) -> Option<(Vec<Spot>, Self)> {
        let mut pen = self.clone();
        let mut column = *pen.columns.get(pen.current)?;
        let mut places = Vec::with_capacity(lists.len());
        for (index, list) in lists.iter().enumerate() {
            if list.is_heading && pen.at.y > column.top.y {
                pen.at.y += ROW * 2 / 3;
            }
            // A heading stays with what follows it.
            let next = if list.is_heading {
                lists.get(index + 1).map_or(0, |next| next.height)
            } else {
                0
            };
            // What no column holds stands alone in one of a further page.
            while pen.at.y + list.height + next > column.bottom
                && !(column.page > 0 && pen.at.y == column.top.y)
            {
                pen.current += 1;
                column = *pen.columns.get(pen.current)?;
                pen.at = column.top;
            }
            places.push(pen.at);
            pen.at.y += list.height;
        }
        Some((places, pen))
    }

    fn page(&self) -> Micron {
        self.columns.get(self.current).map_or(0, |column| column.page)
    }
}

impl Canvas<'_> {
    /// Left ends of columns.
    fn list_columns(&self) -> impl Iterator<Item = Micron> + use<> {
        let count = (self.drawing.width - BESIDE + PITCH - COLUMN) / PITCH;
        (0..count.max(1)).map(|index| BESIDE / 2 + index * PITCH)
    }

    /// Columns of the page with the wall: under the wall where it reaches over them, else under the heading.
    fn beside_wall(&self, under: Micron, height: Micron) -> Option<Pen> {
        let free_from =
            taken(self.drawing.width, self.block).map_or(self.drawing.width, |wide| BESIDE / 2 + wide);
        let columns = self.list_columns().map(|x| Column {
            page: 0,
            top: Spot::new(x, if x >= free_from { TOP } else { under }),
            bottom: bottom_of(height),
        });
        Pen::new(columns.collect())
    }

    /// Columns of a further page.
    fn further(&self, page: Micron, height: Micron) -> Vec<Column> {
        let columns = self.list_columns().map(|x| Column {
            page,
            top: Spot::new(x, page * height + TOP),
            bottom: page * height + bottom_of(height),
        });
        columns.collect()
    }

    /// A wall that ends at this line finds room on an ordinary sheet.
    pub(super) const fn wall_fits(&self, under: Micron) -> bool {
        self.drawing.width <= SHEET_WIDTH && under <= bottom_of(SHEET_HEIGHT)
    }

    /// The lists find room on the sheet of such a wall.
    pub(super) fn fits(&self, lists: &[Flowing], under: Micron) -> bool {
        let pen = self.beside_wall(under, SHEET_HEIGHT);
        pen.is_some_and(|pen| pen.flow(lists).is_some())
    }

    /// Sets the lists; what finds no room beside the wall goes on on further pages, short lists as a whole.
    pub(super) fn set_lists(&mut self, lists: &[List], under: Micron) -> Pages {
        let flowing = measured(lists);
        let height = SHEET_HEIGHT.max(under + SHEET_HEIGHT - bottom_of(SHEET_HEIGHT));
        let mut pages = Pages { count: 1, height };
        let Some(mut pen) = self.beside_wall(under, height) else {
            return pages;
        };
        let mut places: Vec<Spot> = Vec::with_capacity(lists.len());
        for group in flowing.chunk_by(|_, next| !next.is_heading) {
            let whole = group.iter().map(|list| list.height).sum::<Micron>() <= bottom_of(height) - TOP;
            let (set, after) = loop {
                if let Some(set) = pen.flow(group) {
                    break set;
                }
                let columns = self.further(pages.count, height);
                pages.count += 1;
                match Pen::new(columns.clone()).filter(|_| whole) {
                    Some(next) => pen = next,
                    None => pen.columns.extend(columns),
                }
            };
            places.extend(set);
            pen = after;
        }
        pages.count = pen.page() + 1;
        for (list, &place) in lists.iter().zip(&places) {
            list.set(&mut self.drawing, &mut self.room, place);
        }
        pages
    }
}
