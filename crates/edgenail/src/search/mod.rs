//! Choosing a layout: the only part of the library that does.
//!
//! A wall's candidates are stacks of courses: levels on plate laps, rims and whole sheets, and in each course seams on
//! studs and whole sheets. What a strip between two seams weighs is read off the strip itself, taken through the stages
//! between neighbours that stand in for any; of wood that is to be added, the least that it costs. The sum over a layout
//! is at most what the finished layout weighs. Layouts are taken in rising order of that sum and built through all
//! stages; when none that is left may weigh less than the best that was built, it is proven that none does. What layouts
//! are ranked by, each before the next: findings that refuse them, findings to mend, strips that practice avoids, cost,
//! ties.

mod alike;
mod alternative;
mod build;
mod columns;
mod course;
mod courses;
mod crude;
mod datum;
mod exact;
mod guess;
mod hunt;
mod level;
mod positions;
mod propose;
mod rows;
mod seam;
mod space;
mod stack;
mod strip;
mod sweep;
mod weight;

pub use alternative::Alternative;
pub(crate) use alternative::{alternative, summary};

use crate::amount::Amount;
use crate::error::Error;
use crate::evaluate::Evaluated;
use crate::finding::Severity;
use crate::frame::Frame;
use crate::house::{End, House};
use crate::layout::{Piece, starting_end};
use crate::price::Part;
use crate::proof::Proof;
use build::Rank;
use hunt::{Ended, Hunt, Until};
use space::Space;

/// What a search found.
#[derive(Debug)]
pub struct Found {
    /// The layout, built through all stages.
    pub chosen: Evaluated,
    /// The end that sheets are laid from.
    pub start: End,
    /// What else was built, the cheapest first: as many as practice lists.
    pub rivals: Vec<Rival>,
    /// Arcs that were priced.
    pub effort: u64,
    /// Layouts that were built through all stages and priced.
    pub built: u64,
    /// What every layout of the space costs at least that has no more to mend.
    pub bound: Amount,
    /// The same with no more of sheets than the area that is sheathed: what a layout costs at least, whatever its pieces
    /// share their sheets with.
    pub bound_by_area: Amount,
    /// How good the chosen one is known to be, among all layouts of the space.
    pub proof: Proof,
}

/// A layout that was built and not chosen.
#[derive(Clone, Debug)]
pub struct Rival {
    /// The layout, built through all stages.
    pub built: Evaluated,
    /// It breaks no more rules, has no more to mend and no more of what practice avoids: only cost decides.
    pub as_good: bool,
}

/// Searches a layout for a wall.
///
/// # Errors
///
/// [`Error::NoLayout`] when every layout that was built breaks a rule that may not be broken.
pub fn search(house: &House, frame: &Frame) -> Result<Found, Error> {
    let name = house
        .walls
        .get(frame.wall as usize)
        .map_or("", |wall| wall.name.as_str());
    let none = |message: &str| Error::NoLayout {
        wall: name.to_owned(),
        message: message.to_owned(),
        remedies: Vec::new(),
    };
    let space = Space::new(house, frame).ok_or_else(|| none("the house has no such wall"))?;
    if space.sheets.is_empty() {
        return Err(none("no sheet of the category that is asked for is on hand"));
    }
    let (space, ended) = hunted(space, Until::Proven);
    let Ended {
        built,
        effort,
        proof,
        least_by_area,
    } = ended;
    let count = built.count();
    let mut kept = built.kept.into_iter();
    let (rank, chosen) = kept
        .next()
        .ok_or_else(|| none("no row of sheets in stock covers the wall between its plates"))?;
    if let Some(refusal) = chosen
        .findings
        .iter()
        .find(|finding| finding.severity == Severity::Refuse)
    {
        let message = refusal.message.written(house.drawn_in.in_text());
        return Err(match proof {
            Proof::Stopped { .. } => none(&format!("{message}; the search stopped at its limit of effort")),
            _ => none(&message),
        });
    }
    let rival = |(other, built): (Rank, Evaluated)| Rival {
        as_good: other.weight.wrong() == rank.weight.wrong(),
        built,
    };
    Ok(Found {
        start: starting_end(space.practice, space.frame),
        rivals: kept
            .take(space.practice.alternatives as usize)
            .map(rival)
            .collect(),
        bound_by_area: least_by_area,
        effort,
        built: count,
        bound: match proof {
            Proof::Stopped { gap, .. } | Proof::Gap { amount: gap } => chosen.cost.total - gap,
            Proof::Proven => chosen.cost.total,
        },
        proof,
        chosen,
    })
}

/// The wall has a layout that breaks no rule which may not be broken, as far as the limit of effort tells.
pub(crate) fn has_layout(house: &House, frame: &Frame) -> bool {
    let Some(space) = Space::new(house, frame).filter(|space| !space.sheets.is_empty()) else {
        return false;
    };
    let (_, ended) = hunted(space, Until::Legal);
    ended.built.best().is_some_and(|best| best.refused == 0)
}

/// Hunts; where nothing can be laid, what practice would rather have is given up, one demand after the other.
fn hunted(mut space: Space<'_>, until: Until) -> (Space<'_>, Ended) {
    let hunt = |space: &Space<'_>| {
        let mut hunt = Hunt::new(space);
        hunt.run(until);
        hunt.ended()
    };
    let mut ended = hunt(&space);
    for give_up in [Space::run_past_rims, Space::cut_for_least_strips] {
        if ended.built.kept.is_empty() && give_up(&mut space) {
            ended = hunt(&space);
        }
    }
    (space, ended)
}

/// What a layout that is given costs at least, whatever its pieces share their sheets with.
pub(crate) fn by_area(house: &House, frame: &Frame, built: &Evaluated) -> Amount {
    let Some(space) = Space::new(house, frame) else {
        return Amount::ZERO;
    };
    let area = |piece: &Piece| space.by_square(piece.outline.area2() / 2);
    let sheets: Amount = built.layout.pieces.iter().map(area).sum();
    built.cost.without(Part::Sheets) + sheets
}

#[cfg(test)]
mod tests;
