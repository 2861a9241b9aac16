//! The wording of steps: a sentence or two from a step's kind and data.

use super::wall::Work;
use super::{Event, OpenEdge, OpenReason, Reach, Step, StepKind};
use crate::house::End;
use crate::layout::{Piece, Side};
use crate::length::{Length, Rounding};
use crate::start::DatumIs;
use crate::wording::counted;
use std::cmp::Ordering;

/// A step in words.
pub(super) fn of(work: &Work<'_>, step: &Step) -> String {
    let panels = ranges(&step.panels);
    let said = match step.kind {
        StepKind::Check if step.reach == Reach::Deck => format!(
            "Check the frame of {} as it lies: diagonals, straightness, openings, the first stud's mark; mend what is out of \
             tolerance.",
            the_storey(&step.storey)
        ),
        StepKind::Check => format!(
            "Check {}: plumb, diagonals, openings, the first stud's mark; mend what is out of tolerance.",
            the_storey(&step.storey)
        ),
        StepKind::Raise => format!(
            "Raise the wall of {}, plumb it and brace it.",
            the_storey(&step.storey)
        ),
        StepKind::CheckAnchors => format!(
            "Check anchors and hold-down posts of {} before {panels} {} hung.",
            listed(&step.concerns),
            is_are(step.panels.len())
        ),
        StepKind::SetBlocks => format!(
            "Set {} behind edges of {panels} before {} hung.",
            wood(step),
            it_is(step.panels.len())
        ),
        StepKind::SetStraps => format!(
            "Set {} before {panels} {} hung.",
            listed(&step.concerns),
            is_are(step.panels.len())
        ),
        StepKind::SnapLine => line(work),
        StepKind::HangPanels => hang(work, step, &panels),
        StepKind::Nail => nail(step, &panels),
        StepKind::NailLeftEdges => format!("Nail what was left: {}.", open(&step.takes_up, false)),
        StepKind::CutOut => format!(
            "Cut {} out of {panels}; leave nothing standing into an opening.",
            listed(&step.concerns)
        ),
        StepKind::Lap => format!(
            "Nail {panels} to the end stud and plates of {}.",
            listed(&step.concerns)
        ),
        StepKind::ShowNailing => "Show the nailing before the wrap covers it.".to_owned(),
        StepKind::TightenNuts => format!(
            "Tighten the hold-down nuts of {} before the inside is covered.",
            listed(&step.concerns)
        ),
    };
    match waiting(&step.waits_for) {
        Some(waiting) => format!("{waiting}: {}", lower(&said)),
        None => said,
    }
}

impl Event {
    /// The event in words, such as `the trusses are set`.
    pub fn words(&self) -> String {
        match self {
            Self::StoreyStands { storey } => format!("{} stands braced", the_storey(storey)),
            Self::FloorFramed { over } => format!("the floor over {} is framed", the_storey(over)),
            Self::TrussesSet => "the trusses are set".to_owned(),
            Self::WallStands { wall, storey } => format!("{wall} stands beside {}", the_storey(storey)),
        }
    }
}

/// A storey as it is spoken of, whatever its user named it: `the first floor`, `the upper storey`.
fn the_storey(name: &str) -> String {
    let names_a_floor = name
        .split_whitespace()
        .any(|word| ["floor", "storey", "story", "level"].contains(&word.to_lowercase().as_str()));
    let noun = if names_a_floor { "" } else { " storey" };
    format!("the {name}{noun}")
}

impl OpenReason {
    /// Until when an edge stays open for this reason.
    pub const fn until(self) -> &'static str {
        match self {
            Self::PlateLine | Self::StrapLine => "until the wall is plumbed",
            Self::BelowWall => "until the wall is raised and plumbed",
            Self::Trusses => "until the trusses are set",
            Self::SharedSeam => "until the neighbour stands",
        }
    }

    const fn name(self) -> &'static str {
        match self {
            Self::PlateLine => "the plate lines",
            Self::StrapLine => "the strap lines",
            Self::BelowWall => "what lies on members below the wall",
            Self::Trusses => "what lies on the trusses",
            Self::SharedSeam => "the seam shared with the neighbour",
        }
    }
}

fn waiting(events: &[Event]) -> Option<String> {
    let words: Vec<String> = events.iter().map(Event::words).collect();
    (!words.is_empty()).then(|| format!("When {}", words.join(" and ")))
}

/// A sentence after a colon.
fn lower(sentence: &str) -> String {
    let mut letters = sentence.chars();
    letters
        .next()
        .map_or_else(String::new, |first| first.to_lowercase().chain(letters).collect())
}

fn line(work: &Work<'_>) -> String {
    let start = work.start;
    let edge = match start.datum_is {
        DatumIs::LowerEdge => "lower",
        DatumIs::UpperEdge => "upper",
    };
    let base = work.frame.sections.iter().map(|section| section.base).min();
    let above = start.datum - base.unwrap_or_default();
    let shown = above.abs().show(work.house.drawn_in.style(), Rounding::Nearest);
    let place = match above.cmp(&Length::ZERO) {
        Ordering::Less => format!("{shown} below"),
        Ordering::Equal => "flush with".to_owned(),
        Ordering::Greater => format!("{shown} above"),
    };
    let pulls = counted(start.pulls.len(), "pull", "pulls");
    format!(
        "Snap the line of the first course's {edge} edge, {place} the underside of the lowest plate, parallel to the plates, \
         in {pulls}."
    )
}

fn hang(work: &Work<'_>, step: &Step, panels: &str) -> String {
    let first = work
        .pieces
        .iter()
        .find(|(_, piece)| step.panels.first() == Some(&piece.mark));
    let sheet = first.and_then(|(_, piece)| work.house.stock.sheets.get(piece.sheet as usize));
    let sheet = sheet.map_or_else(String::new, |sheet| format!(" of {}", sheet.name));
    let from = match (step.panels.len() > 1, work.start.end) {
        (false, _) => "",
        (true, End::Left) => ", from the left",
        (true, End::Right) => ", from the right",
    };
    let reach = match step.reach {
        Reach::Deck => " on the deck",
        Reach::Ground => "",
        Reach::Ladder => " from a ladder",
        Reach::Lift => " from a lift",
    };
    let people = if step.people > 1 {
        format!("; {} people", words(step.people))
    } else {
        String::new()
    };
    let place = first.and_then(|(_, piece)| place(work, piece));
    format!(
        "Hang {panels}{sheet}{reach}{from}{people}{}.",
        place.unwrap_or_default()
    )
}

/// Where the first panel stands whose neighbour towards the starting end is hung later.
fn place(work: &Work<'_>, first: &Piece) -> Option<String> {
    let blank = first.blank();
    let nearer = |piece: &Piece| match work.start.end {
        End::Left => piece.blank().x0 < blank.x0,
        End::Right => blank.x1 < piece.blank().x1,
    };
    let mut others = work.pieces.iter().map(|(_, piece)| piece);
    others.find(|piece| piece.band == first.band && piece.hang_order > first.hang_order && nearer(piece))?;
    let sections = &work.frame.sections;
    let (side, from) = match work.start.end {
        End::Left => ("left", blank.x0 - sections.first()?.x.lo),
        End::Right => ("right", sections.last()?.x.hi - blank.x1),
    };
    let shown = from.show(work.house.drawn_in.style(), Rounding::Nearest);
    Some(format!(
        "; {}'s {side} edge {shown} from the frame's {side} end",
        first.mark
    ))
}

fn nail(step: &Step, panels: &str) -> String {
    let said = format!("Nail {panels} to schedule, heads flush.");
    if step.leaves.is_empty() {
        said
    } else {
        format!("{said} Leave un-nailed for now {}.", open(&step.leaves, true))
    }
}

/// Edges by reason: `plate lines (bottom of A1 to A4) until the wall is plumbed`. Of edges on something that is not there
/// yet, what stands there tells which.
fn open(edges: &[OpenEdge], with_end: bool) -> String {
    let mut reasons: Vec<OpenReason> = edges.iter().map(|edge| edge.reason).collect();
    reasons.sort_unstable();
    reasons.dedup();
    let one = |reason: OpenReason| {
        let own: Vec<OpenEdge> = edges
            .iter()
            .filter(|edge| edge.reason == reason)
            .cloned()
            .collect();
        let which = match reason {
            OpenReason::PlateLine | OpenReason::StrapLine => sides(&own),
            OpenReason::BelowWall | OpenReason::Trusses | OpenReason::SharedSeam => {
                let mut marks: Vec<String> = own.iter().map(|edge| edge.panel.clone()).collect();
                marks.dedup();
                ranges(&marks)
            }
        };
        let end = if with_end {
            format!(" {}", reason.until())
        } else {
            String::new()
        };
        format!("{} ({which}){end}", reason.name())
    };
    let parts: Vec<String> = reasons.into_iter().map(one).collect();
    parts.join("; ")
}

/// Edges by side: `bottom of A1 to A4, top of A2`.
fn sides(edges: &[OpenEdge]) -> String {
    let of = |side: Side, name: &str| {
        let own = edges.iter().filter(|edge| edge.side == side);
        let marks: Vec<String> = own.map(|edge| edge.panel.clone()).collect();
        (!marks.is_empty()).then(|| format!("{name} of {}", ranges(&marks)))
    };
    let parts = [
        of(Side::Bottom, "bottom"),
        of(Side::Top, "top"),
        of(Side::Left, "left edge"),
        of(Side::Right, "right edge"),
    ];
    parts.into_iter().flatten().collect::<Vec<_>>().join(", ")
}

fn wood(step: &Step) -> String {
    let parts = [
        (step.blocks.len(), "block", "blocks"),
        (step.studs.len(), "stud", "studs"),
    ];
    let set = parts.into_iter().filter(|(count, ..)| *count > 0);
    let said: Vec<String> = set
        .map(|(count, one, several)| counted(count, one, several))
        .collect();
    said.join(" and ")
}

const fn is_are(count: usize) -> &'static str {
    if count == 1 { "is" } else { "are" }
}

const fn it_is(count: usize) -> &'static str {
    if count == 1 { "it is" } else { "they are" }
}

fn words(count: u32) -> String {
    match count {
        2 => "two".to_owned(),
        other => other.to_string(),
    }
}

fn listed(names: &[String]) -> String {
    names.join(", ")
}

/// Marks in words: three or more that follow each other are told by the first and the last.
fn ranges(marks: &[String]) -> String {
    let parsed: Vec<(&str, i64)> = marks.iter().map(|mark| parted(mark)).collect();
    let mut parts: Vec<String> = Vec::new();
    let mut from = 0;
    while from < marks.len() {
        let step = |a: usize| match (parsed.get(a), parsed.get(a + 1)) {
            (Some((course, first)), Some((next, second))) if course == next => second - first,
            _ => 0,
        };
        let way = step(from);
        let mut to = from;
        while way.abs() == 1 && step(to) == way {
            to += 1;
        }
        let name = |at: usize| marks.get(at).map_or("", String::as_str);
        if to >= from + 2 {
            parts.push(format!("{} to {}", name(from), name(to)));
            from = to + 1;
        } else {
            parts.push(name(from).to_owned());
            from += 1;
        }
    }
    parts.join(", ")
}

/// A mark's letters and number.
fn parted(mark: &str) -> (&str, i64) {
    let at = mark
        .find(|letter: char| letter.is_ascii_digit())
        .unwrap_or(mark.len());
    let (course, number) = mark.split_at(at);
    (course, number.parse().unwrap_or_default())
}

#[cfg(test)]
mod tests;
