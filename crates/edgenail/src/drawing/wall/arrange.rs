//! How a wall and its lists share the paper.

use super::Canvas;
use crate::drawing::page::{List, MARGIN, ROW, Row, SHEET_HEIGHT, TITLE_HEIGHT};
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

/// Each row of a list as a list of its own, so that it can stand in any column. What is said of a row of cells stays
/// under it.
pub(super) fn split(columns: &[Micron], rows: Vec<Row>) -> Vec<List> {
    let mut lists: Vec<List> = Vec::new();
    for row in rows {
        let below = matches!(&row, Row::Text(lead, _) if lead.is_empty());
        match lists.last_mut() {
            Some(list) if below && matches!(list.rows.first(), Some(Row::Cells(_))) => list.rows.push(row),
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

/// Where each list stands, in columns from these corners down to a line; `None` where they need more room.
fn flow(lists: &[Flowing], corners: &[Spot], bottom: Micron) -> Option<Vec<Spot>> {
    let mut corners = corners.iter().copied();
    let mut top = corners.next()?;
    let mut at = top;
    let mut places = Vec::with_capacity(lists.len());
    for (index, list) in lists.iter().enumerate() {
        if list.is_heading && at.y > top.y {
            at.y += ROW * 2 / 3;
        }
        // A heading stays with what follows it.
        let next = if list.is_heading {
            lists.get(index + 1).map_or(0, |next| next.height)
        } else {
            0
        };
        while at.y + list.height + next > bottom {
            top = corners.next()?;
            at = top;
        }
        places.push(at);
        at.y += list.height;
    }
    Some(places)
}

impl Canvas<'_> {
    /// Corners of the columns: under the wall where it reaches over them, else under the heading.
    fn corners(&self, under: Micron) -> Vec<Spot> {
        let count = (self.drawing.width - BESIDE + PITCH - COLUMN) / PITCH;
        let free_from =
            taken(self.drawing.width, self.block).map_or(self.drawing.width, |wide| BESIDE / 2 + wide);
        (0..count.max(1))
            .map(|index| BESIDE / 2 + index * PITCH)
            .map(|x| Spot::new(x, if x >= free_from { TOP } else { under }))
            .collect()
    }

    /// The lists fit on an ordinary sheet under a wall that ends at this line.
    pub(super) fn fits(&self, lists: &[Flowing], under: Micron) -> bool {
        let bottom = bottom_of(SHEET_HEIGHT);
        under <= bottom && flow(lists, &self.corners(under), bottom).is_some()
    }

    /// Sets the lists; gives the height of the paper that they need.
    pub(super) fn set_lists(&mut self, lists: &[List], under: Micron) -> Micron {
        let corners = self.corners(under);
        let flowing = measured(lists);
        let mut height = SHEET_HEIGHT.max(under + ROW + SHEET_HEIGHT - bottom_of(SHEET_HEIGHT));
        // One column alone holds them all at last.
        let most = height + flowing.iter().map(|list| list.height).sum::<Micron>() * 2 + ROW;
        let places = loop {
            match flow(&flowing, &corners, bottom_of(height)) {
                Some(places) => break places,
                None if height > most => break Vec::new(),
                None => height += ROW,
            }
        };
        for (list, &place) in lists.iter().zip(&places) {
            list.set(&mut self.drawing, &mut self.room, place);
        }
        height
    }
}
