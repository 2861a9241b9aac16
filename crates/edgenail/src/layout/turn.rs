//! When a piece can be hung: on the deck, or once something stands.

use crate::frame::{Axis, EndCondition, Frame, MemberKind, SectionPlace, StoreyPlace};
use crate::geometry::Rect;
use crate::house::{Practice, SheathingPlace};
use crate::length::Length;
use serde::Serialize;

/// What has to stand before a piece is hung; the later, the more.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum When {
    /// Nothing: the wall lies on the deck.
    Deck,
    /// The storey's wall stands.
    Raised,
    /// The floor above is framed.
    FloorAbove,
    /// The trusses are set.
    Roof,
}

/// A piece's turn: storey by storey, and in each what has to stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub struct Turn {
    /// The storey whose wall has to be framed, counted from 0 at the bottom of its section.
    pub stage: u32,
    /// What has to stand besides.
    pub when: When,
}

impl Turn {
    /// When a piece with this blank can be hung (common practice, no source).
    ///
    /// On the deck go pieces that stay within a storey; from the lowest one they may hang over what is below. A piece
    /// that laps past a neighbour, one that reaches over the floor above, one on a gable truss, and all pieces of a wall
    /// that is sheathed standing wait.
    pub fn of(frame: &Frame, practice: &Practice, blank: &Rect) -> Self {
        let stage = stage_below(frame, blank);
        let sections = || {
            let places = frame.sections.iter().zip(0u32..);
            places.filter(|(place, _)| place.x.overlaps(blank.x_span()))
        };
        // A sheet that only sticks up to hold the truss hangs before it.
        let gable = frame.members.iter().any(|member| {
            let web = member.kind == MemberKind::TrussWeb
                || (member.kind == MemberKind::TrussChord && member.axis == Axis::Sloped);
            let over = |(place, _): (&SectionPlace, u32)| place.gable && place.top < blank.y1;
            web && member.face.bounds().overlaps(blank) && sections().any(over)
        });
        let floor = sections().any(|(_, section)| {
            let top = storey_at(frame, section, stage).map(|storey| storey.top);
            let mut bands = frame.bands.iter().filter(|band| band.section == section);
            top.is_some_and(|top| bands.any(|band| top <= band.y.lo && band.y.lo < blank.y1))
        });
        let when = if gable {
            When::Roof
        } else if floor {
            When::FloorAbove
        } else if hung_on_deck(frame, practice, blank) {
            When::Deck
        } else {
            When::Raised
        };
        Self { stage, when }
    }
}

/// The highest storey, counted from 0 at the bottom of its section, whose wall a piece with this blank lies on.
fn stage_below(frame: &Frame, blank: &Rect) -> u32 {
    let reached = frame.storeys.iter().filter(|storey| {
        let section = frame.sections.get(storey.section as usize);
        storey.base < blank.y1 && section.is_some_and(|place| place.x.overlaps(blank.x_span()))
    });
    reached.map(|storey| storey.stage).max().unwrap_or(0)
}

fn storey_at(frame: &Frame, section: u32, stage: u32) -> Option<&StoreyPlace> {
    let mut storeys = frame.storeys.iter();
    storeys.find(|storey| storey.section == section && storey.stage == stage)
}

/// A piece reaches past an end of the frame where it laps the neighbour.
pub fn laps(frame: &Frame, blank: &Rect) -> bool {
    let past = |end: EndCondition, past: bool| matches!(end, EndCondition::Laps { .. }) && past;
    let first = frame.sections.first().map(|section| section.x.lo);
    let last = frame.sections.last().map(|section| section.x.hi);
    past(frame.left, first.is_some_and(|end| blank.x0 < end))
        || past(frame.right, last.is_some_and(|end| end < blank.x1))
}

/// A piece with this blank is set while the wall lies on the deck: it stays within a storey's wall and does not lap past a
/// neighbour, who is not there yet.
pub fn hung_on_deck(frame: &Frame, practice: &Practice, blank: &Rect) -> bool {
    storey_of(frame, blank).is_some_and(|(_, storey)| hung_on_deck_of(frame, practice, storey, blank))
}

/// As [`hung_on_deck`], for a piece that belongs to this storey.
pub fn hung_on_deck_of(frame: &Frame, practice: &Practice, storey: &StoreyPlace, blank: &Rect) -> bool {
    practice.sheathed == SheathingPlace::Deck && fits_deck(frame, storey, blank) && !laps(frame, blank)
}

/// A piece with this blank stays within the wall of its storey; from the lowest storey it may hang over what is below.
fn fits_deck(frame: &Frame, storey: &StoreyPlace, blank: &Rect) -> bool {
    let section = frame.sections.get(storey.section as usize);
    let gable = section.is_some_and(|section| section.gable);
    let uppermost = !frame
        .storeys
        .iter()
        .any(|other| other.section == storey.section && other.stage > storey.stage);
    let top = section
        .filter(|_| uppermost && !gable)
        .map_or(storey.top, |section| section.sheathing_top.max(storey.top));
    blank.y1 <= top && (storey.stage == 0 || blank.y0 >= storey.base)
}

/// The section that something with its middle here belongs to, as a place in the frame's list.
pub fn section_of(frame: &Frame, x: Length) -> Option<usize> {
    let mut sections = frame.sections.iter();
    sections
        .position(|section| x <= section.x.hi)
        .or_else(|| frame.sections.len().checked_sub(1))
}

/// The storey that something belongs to, with its place in the frame's list: of its section, the highest that begins
/// at or below its middle, else the lowest. What lies on a floor band belongs to the storey below it.
pub fn storey_of<'f>(frame: &'f Frame, rect: &Rect) -> Option<(usize, &'f StoreyPlace)> {
    let middle = (rect.y0 + rect.y1).half();
    let section = section_of(frame, (rect.x0 + rect.x1).half())?;
    // Once over the storeys, since every price of a piece asks this.
    let (mut lowest, mut highest) = (None::<(usize, &StoreyPlace)>, None::<(usize, &StoreyPlace)>);
    for (index, storey) in frame.storeys.iter().enumerate() {
        if storey.section as usize != section {
            continue;
        }
        if lowest.is_none_or(|(_, other)| storey.base < other.base) {
            lowest = Some((index, storey));
        }
        if storey.base <= middle && highest.is_none_or(|(_, other)| other.base <= storey.base) {
            highest = Some((index, storey));
        }
    }
    highest.or(lowest)
}
