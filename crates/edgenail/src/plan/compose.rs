//! From a house to its plan: every wall through its stages, then cutting over the house, then the take-off.

use super::shared::shared;
use super::{Plan, Resistance, WallPlan, given, impossible, law, resisted, short};
use crate::capacity::{schedule_house, storey_lines};
use crate::error::Error;
use crate::evaluate::{Evaluated, evaluate};
use crate::faces;
use crate::finding::Finding;
use crate::frame::{Frame, frame_wall};
use crate::house::{End, House};
use crate::inspection::inspect;
use crate::joint::{self, Joint, Options};
use crate::layout::starting_end;
use crate::proof::Proof;
use crate::reading::Assumed;
use crate::search::{Found, Rival, alternative, by_area, search};
use crate::start::start;
use crate::steps::steps;
use crate::takeoff::{BuiltWall, takeoff};
use std::num::NonZeroUsize;
use std::thread;

/// Plans a house that was read or built, its walls on as many threads as the machine offers.
///
/// # Errors
///
/// [`Error::NoLayout`] when a wall has no layout that keeps the rules; [`Error::Internal`] when the library
/// contradicts itself.
pub fn plan_house(house: House, assumed: Vec<Assumed>) -> Result<Plan, Error> {
    let threads = thread::available_parallelism().unwrap_or(NonZeroUsize::MIN);
    plan_house_on(threads, house, assumed)
}

/// As [`plan_house`], on at most so many threads. The plan is the same for any number of them.
///
/// # Errors
///
/// As [`plan_house`].
///
/// ```
/// use std::num::NonZeroUsize;
/// let (house, assumed) = edgenail::read_house(edgenail::demo::HOUSE_JSON.as_bytes()).unwrap();
/// let plan = edgenail::plan::plan_house_on(NonZeroUsize::MIN, house, assumed)?;
/// assert_eq!(plan.json(), edgenail::plan_json(edgenail::demo::HOUSE_JSON)?.json());
/// # Ok::<(), edgenail::Error>(())
/// ```
pub fn plan_house_on(threads: NonZeroUsize, mut house: House, assumed: Vec<Assumed>) -> Result<Plan, Error> {
    let schedules = schedule_house(&mut house);
    let searched = shared(house.walls.len(), threads, |index| search_wall(&house, index));
    let explained = |(index, wall): (usize, Result<Searched, Error>)| {
        wall.map_err(|error| impossible::explained(&house, index, error))
    };
    let mut searched = searched
        .into_iter()
        .enumerate()
        .map(explained)
        .collect::<Result<Vec<_>, _>>()?;
    let Some(practice) = house.walls.first().map(|wall| &wall.practice) else {
        return Err(Error::Internal {
            message: "a house without walls was read".to_owned(),
        });
    };
    // What one face of a wall may have depends on the other: both keep what was found for them.
    let pairs = faces::pairs(&house);
    let paired = |wall: usize| pairs.iter().any(|(there, here)| wall == *there || wall == *here);
    let options: Vec<Options<'_>> = searched
        .iter()
        .map(|wall| wall.options(!paired(wall.index)))
        .collect();
    let Joint {
        chosen,
        cutting,
        cost,
    } = joint::choose(&house, practice, &options);
    for (wall, place) in searched.iter_mut().zip(chosen) {
        wall.exchange(place);
    }
    let mut walls = shared(searched.len(), threads, |index| {
        searched.get(index).and_then(|wall| finish_wall(&house, wall))
    })
    .into_iter()
    .flatten()
    .collect::<Vec<_>>();
    both_faces(&house, &mut walls);
    let short = short::findings(&house, practice, &walls, &cutting);
    let built: Vec<BuiltWall<'_>> = walls
        .iter()
        .map(|wall| BuiltWall {
            wall: wall.index,
            frame: &wall.frame,
            layout: &wall.built.layout,
            blocking: &wall.built.blocking,
            nailing: &wall.built.nailing,
        })
        .collect();
    let takeoff = takeoff(&house, &built, &cutting);
    law::check(threads, &house, &walls, &takeoff)?;
    let evaluated: Vec<&Evaluated> = walls.iter().map(|wall| &wall.built).collect();
    let capacity = storey_lines(&house, &evaluated);
    for line in &capacity {
        if let Some(wall) = walls.iter_mut().find(|wall| wall.index == line.wall) {
            wall.findings.extend(resisted::findings(&wall.name, line));
            wall.findings.sort_by_key(|finding| finding.severity);
        }
    }
    for (index, finding) in short {
        if let Some(wall) = walls.iter_mut().find(|wall| wall.index == index) {
            wall.findings.push(finding);
            wall.findings.sort_by_key(|finding| finding.severity);
        }
    }
    for schedule in schedules.iter().filter(|schedule| schedule.chosen().is_none()) {
        if let Some(wall) = walls.iter_mut().find(|wall| wall.index == schedule.wall) {
            wall.findings.push(resisted::unscheduled(&wall.name, schedule));
            wall.findings.sort_by_key(|finding| finding.severity);
        }
    }
    let resistance = Resistance {
        schedules,
        lines: capacity,
    };
    Ok(Plan::new(
        house, assumed, walls, cutting, cost, takeoff, resistance,
    ))
}

/// A wall with what was found for it.
struct Searched {
    index: usize,
    frame: Frame,
    found: Found,
    given: bool,
}

impl Searched {
    /// What the house may choose among: the cheapest alone, or what is as good too.
    fn options(&self, others: bool) -> Options<'_> {
        let rivals = self.found.rivals.iter();
        let as_good = rivals.take_while(|rival| others && rival.as_good);
        let first = std::iter::once(&self.found.chosen);
        Options {
            wall: self.index,
            layouts: first.chain(as_good.map(|rival| &rival.built)).collect(),
            bound_by_area: self.found.bound_by_area,
            proven: self.found.proof == Proof::Proven,
        }
    }

    /// Takes the layout at this place of its options for the one that was chosen.
    fn exchange(&mut self, place: usize) {
        let found = &mut self.found;
        let Some(at) = place.checked_sub(1).filter(|at| *at < found.rivals.len()) else {
            return;
        };
        let rival = found.rivals.remove(at);
        let cheapest = std::mem::replace(&mut found.chosen, rival.built);
        found.rivals.insert(
            0,
            Rival {
                built: cheapest,
                as_good: true,
            },
        );
        found.proof = Proof::Gap {
            amount: found.chosen.cost.total - found.bound,
        };
    }
}

/// One wall: framed, laid out or taken as given.
fn search_wall(house: &House, index: usize) -> Result<Searched, Error> {
    let wall = house.walls.get(index).ok_or_else(|| Error::Internal {
        message: "a wall has no place in its house".to_owned(),
    })?;
    let frame = frame_wall(house, index).ok_or_else(|| Error::Internal {
        message: format!("{}: a wall that was read has no frame", wall.name),
    })?;
    let found = match &wall.given_layout {
        Some(given) => as_given(house, &frame, evaluate(house, &frame, given::spec(house, given))),
        None => search(house, &frame)?,
    };
    Ok(Searched {
        index,
        frame,
        found,
        given: wall.given_layout.is_some(),
    })
}

/// One wall with its layout: begun, stepped through, told beside its alternatives.
fn finish_wall(house: &House, searched: &Searched) -> Option<WallPlan> {
    let (frame, found) = (&searched.frame, &searched.found);
    let mut built = found.chosen.clone();
    let mut findings: Vec<Finding> = inspect(house, frame);
    findings.append(&mut built.findings);
    if searched.given {
        // Whoever checks a layout of their own wants to know what it asks for, mended or not.
        findings.append(&mut built.mended);
        findings.sort_by_key(|finding| finding.severity);
    }
    let start = start(house, frame, &built, found.start);
    let steps = start
        .as_ref()
        .map_or_else(Vec::new, |start| steps(house, frame, &built, start));
    let rivals = found.rivals.iter();
    Some(WallPlan {
        name: house.walls.get(searched.index)?.name.clone(),
        index: u32::try_from(searched.index).unwrap_or(u32::MAX),
        alternatives: rivals
            .map(|rival| alternative(house, &rival.built, &found.chosen))
            .collect(),
        frame: frame.clone(),
        built,
        findings,
        start,
        steps,
        given: searched.given,
        effort: found.effort,
        layouts_built: found.built,
        bound: found.bound,
        proof: (!searched.given).then(|| found.proof.clone()),
    })
}

/// What is wrong between the two faces of one wall is told on the face that comes later.
fn both_faces(house: &House, walls: &mut [WallPlan]) {
    for (there, here) in faces::pairs(house) {
        let (earlier, later) = walls.split_at_mut(here);
        if let (Some(there), Some(here)) = (earlier.get(there), later.first_mut()) {
            here.findings
                .extend(faces::findings(house, &here.built, &there.built));
            here.findings.sort_by_key(|finding| finding.severity);
        }
    }
}

/// A layout that somebody else made: nothing was chosen.
fn as_given(house: &House, frame: &Frame, chosen: Evaluated) -> Found {
    let wall = house.walls.get(frame.wall as usize);
    let start = wall.map_or(End::Left, |wall| starting_end(&wall.practice, frame));
    Found {
        bound: chosen.cost.total,
        bound_by_area: by_area(house, frame, &chosen),
        proof: Proof::Proven,
        chosen,
        start,
        rivals: Vec::new(),
        effort: 0,
        built: 1,
    }
}
