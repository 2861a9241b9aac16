//! What a plan shows its drawings.

use super::WallPlan;
use crate::cutting::CutPlan;
use crate::drawing::{self, CutDrawingInput, Drawing, DrawnStart, WallDrawingInput};
use crate::house::{End, House};
use crate::layout::Layout;
use crate::length::{Finest, Style};
use crate::start::{DatumIs, Start};

/// The drawing of a wall.
pub(super) fn wall(house: &House, wall: &WallPlan) -> Option<Drawing> {
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
    drawing::wall(&WallDrawingInput {
        house,
        frame: &wall.built.backed,
        layout: &wall.built.layout,
        edges: &wall.built.runs,
        blocking: &wall.built.blocking,
        nailing: &wall.built.nailing,
        findings: &wall.findings,
        start: &start,
        style: Style::Inches(Finest::Sixteenth),
    })
}

/// The drawing of all sheets that are cut.
pub(super) fn cuts(house: &House, walls: &[WallPlan], cutting: &CutPlan) -> Drawing {
    let layouts: Vec<(u32, &Layout)> = walls
        .iter()
        .map(|wall| (wall.index, &wall.built.layout))
        .collect();
    let style = Style::Inches(Finest::Sixteenth);
    drawing::cut_sheets(&CutDrawingInput {
        house,
        layouts: &layouts,
        cutting,
        wall: None,
        style,
    })
}

fn notes(start: &Start) -> Vec<String> {
    let edge = match start.datum_is {
        DatumIs::LowerEdge => "lower",
        DatumIs::UpperEdge => "upper",
    };
    let mut notes = vec![
        format!(
            "Snap the line in {} pulls, parallel to the plates: the {edge} edge of the first course.",
            start.pulls.len()
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
