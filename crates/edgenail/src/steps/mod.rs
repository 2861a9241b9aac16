//! The order of work on one wall, with its hold points.

use crate::evaluate::Evaluated;
use crate::frame::{EndCondition, Frame};
use crate::house::House;
use crate::start::{DatumIs, Start};
use crate::takeoff::Place;
use serde::Serialize;

/// From where a piece is nailed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Reach {
    /// From the deck or the ground.
    Ground,
    /// From a ladder or scaffold.
    Ladder,
    /// From a lift or the floor above.
    Lift,
}

/// One step.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Step {
    /// Its number, from 1.
    pub number: u32,
    /// What is done.
    pub action: String,
    /// Marks of the pieces, in their order.
    pub pieces: Vec<String>,
    /// Work stops here until somebody has looked.
    pub hold_point: bool,
    /// What has to have happened before.
    pub waits_for: String,
    /// From where it is done.
    pub reach: Reach,
    /// How many people it takes.
    pub people: u32,
}

/// The steps of a wall: check, line, blocks, courses in their order, openings, nailing, hold points.
///
/// The order is common practice, no source. Hold points defer to the inspections that the local code asks for.
pub fn steps(house: &House, frame: &Frame, built: &Evaluated, start: &Start) -> Vec<Step> {
    let mut list = List(Vec::new());
    let has_segments = !frame.segments.is_empty();
    list.add(
        "Check plumb, diagonals, openings and the first stud's mark; mend what is out of tolerance.",
        true,
        "",
    );
    if has_segments {
        list.add(
            "Check anchor bolts, plate washers and hold-down posts of the segments.",
            true,
            "",
        );
    }
    let added = built.blocking.blocks.len() + built.blocking.studs.len() + built.blocking.widened.len();
    if added > 0 {
        list.add(
            &format!(
                "Set {} blocks and {} studs before any sheet.",
                built.blocking.blocks.len(),
                built.blocking.studs.len() + built.blocking.widened.len()
            ),
            false,
            "",
        );
    }
    let edge = match start.datum_is {
        DatumIs::LowerEdge => "lower",
        DatumIs::UpperEdge => "upper",
    };
    list.add(
        &format!(
            "Snap a line at {} in {} pulls, parallel to the plates: the {edge} edge of the first course.",
            start.datum,
            start.pulls.len()
        ),
        false,
        "",
    );
    courses(&mut list, house, frame, built);
    if !frame.openings.is_empty() || !frame.penetrations.is_empty() {
        list.add(
            "Cut out openings and penetrations, never into the opening.",
            false,
            "the sheets around are nailed",
        );
    }
    list.add("Nail edges, boundary rows and field to schedule, heads flush; leave shared seams, strap and plate lines until the wall is plumbed.", false, "");
    if [frame.left, frame.right]
        .iter()
        .any(|end| matches!(end, EndCondition::Laps { .. }))
    {
        list.add(
            "Set and nail what laps the neighbour's end stud.",
            false,
            "both walls stand",
        );
    }
    list.add("Show the nailing before anything covers it.", true, "");
    if has_segments {
        list.add("Tighten hold-down nuts before the inside is covered.", true, "");
    }
    list.0
}

/// One step a course.
fn courses(list: &mut List, house: &House, frame: &Frame, built: &Evaluated) {
    let base = frame
        .sections
        .iter()
        .map(|section| section.base)
        .min()
        .unwrap_or_default();
    let practice = house.walls.get(frame.wall as usize).map(|wall| &wall.practice);
    let count = built
        .layout
        .pieces
        .iter()
        .map(|piece| piece.band + 1)
        .max()
        .unwrap_or(0);
    for band in 0..count {
        let mut pieces: Vec<_> = built
            .layout
            .pieces
            .iter()
            .filter(|piece| piece.band == band)
            .collect();
        pieces.sort_by_key(|piece| piece.hang_order);
        let long = pieces
            .iter()
            .map(|piece| piece.blank().width().max(piece.blank().height()))
            .max()
            .unwrap_or_default();
        let above = frame
            .storeys
            .iter()
            .filter(|storey| storey.base > base)
            .any(|storey| pieces.iter().any(|piece| piece.blank().y1 > storey.studs_from));
        let places = practice.iter().flat_map(|practice| {
            let place =
                |piece: &&crate::layout::Piece| Place::of(frame, practice, &house.rates, &piece.blank());
            pieces.iter().map(place)
        });
        let reach = match places.max() {
            Some(Place::UpperStorey | Place::High) => Reach::Lift,
            Some(Place::Ladder) => Reach::Ladder,
            Some(Place::Deck | Place::Standing) | None => Reach::Ground,
        };
        let waits = if above { "the storey above stands" } else { "" };
        let sheet = pieces
            .first()
            .and_then(|piece| house.stock.sheets.get(piece.sheet as usize))
            .map_or("", |sheet| sheet.name.as_str());
        list.0.push(Step {
            number: 0,
            action: format!("Set course {} of {sheet}.", band + 1),
            pieces: pieces.iter().map(|piece| piece.mark.clone()).collect(),
            hold_point: false,
            waits_for: waits.to_owned(),
            reach,
            people: if practice.is_some_and(|practice| long > practice.limits.one_person_most) {
                2
            } else {
                1
            },
        });
        list.number();
    }
}

struct List(Vec<Step>);

impl List {
    fn add(&mut self, action: &str, hold_point: bool, waits_for: &str) {
        self.0.push(Step {
            number: 0,
            action: action.to_owned(),
            pieces: Vec::new(),
            hold_point,
            waits_for: waits_for.to_owned(),
            reach: Reach::Ground,
            people: 1,
        });
        self.number();
    }

    fn number(&mut self) {
        let number = u32::try_from(self.0.len()).unwrap_or(u32::MAX);
        if let Some(step) = self.0.last_mut() {
            step.number = number;
        }
    }
}
