//! What a plan shows its drawings.

use super::WallPlan;
use crate::capacity::StoreyLine;
use crate::cutting::CutPlan;
use crate::drawing::{self, CutDrawingInput, Drawing, DrawnStart, WallDrawingInput};
use crate::house::{End, House};
use crate::layout::Layout;
use crate::start::{DatumIs, Start};
use crate::wording::counted;

/// The drawing of a wall with its sheathing.
pub(super) fn wall(house: &House, wall: &WallPlan, capacity: &[StoreyLine]) -> Option<Drawing> {
    of_wall(house, wall, capacity, drawing::wall)
}

/// The drawing of a wall's frame, with what is added before the sheets.
pub(super) fn frame(house: &House, wall: &WallPlan) -> Option<Drawing> {
    of_wall(house, wall, &[], drawing::frame)
}

/// Shows a wall to its drawing.
fn of_wall(
    house: &House,
    wall: &WallPlan,
    capacity: &[StoreyLine],
    draw: impl FnOnce(&WallDrawingInput<'_>) -> Option<Drawing>,
) -> Option<Drawing> {
    let start = match &wall.start {
        Some(start) => DrawnStart {
            end: start.end,
            datum: Some(start.datum),
            notes: notes(start),
        },
        None => DrawnStart {
            end: End::Left,
            datum: None,
            notes: Vec::new(),
        },
    };
    draw(&WallDrawingInput {
        house,
        frame: &wall.built.backed,
        layout: &wall.built.layout,
        edges: &wall.built.runs,
        blocking: &wall.built.blocking,
        nailing: &wall.built.nailing,
        capacity,
        findings: &wall.findings,
        start: &start,
        style: house.drawn_in.style(),
    })
}

/// How many pages the drawing of all sheets that are cut has.
pub(super) fn cut_pages(house: &House, walls: &[WallPlan], cutting: &CutPlan) -> usize {
    cuts(house, walls, cutting, drawing::cut_sheet_pages)
}

/// A page of the drawing of all sheets that are cut.
pub(super) fn cut_page(house: &House, walls: &[WallPlan], cutting: &CutPlan, page: usize) -> Option<Drawing> {
    cuts(house, walls, cutting, |input| drawing::cut_sheets(input, page))
}

/// Shows the cut plan to its drawing.
fn cuts<T>(
    house: &House,
    walls: &[WallPlan],
    cutting: &CutPlan,
    draw: impl FnOnce(&CutDrawingInput<'_>) -> T,
) -> T {
    let layouts: Vec<(u32, &Layout)> = walls
        .iter()
        .map(|wall| (wall.index, &wall.built.layout))
        .collect();
    draw(&CutDrawingInput {
        house,
        layouts: &layouts,
        cutting,
        wall: None,
        style: house.drawn_in.style(),
    })
}

fn notes(start: &Start) -> Vec<String> {
    let edge = match start.datum_is {
        DatumIs::LowerEdge => "lower",
        DatumIs::UpperEdge => "upper",
    };
    let mut notes = vec![
        format!(
            "Snap the line in {}, parallel to the plates: the {edge} edge of the first course.",
            counted(start.pulls.len(), "pull", "pulls")
        ),
        format!(
            "First piece {}, {}.",
            start.first_piece,
            if start.first_is_full {
                "a full sheet"
            } else {
                "cut"
            }
        ),
    ];
    if start.far_end_off_layout {
        notes.push("The far end is off layout: the last pieces are cut there.".to_owned());
    }
    notes
}

#[cfg(test)]
mod tests;
