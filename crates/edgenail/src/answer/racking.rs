//! The answer of a storey of a planned wall, nail by nail.

use super::Answer;
use super::planned::{planned, unknown, wall_of};
use crate::capacity::{
    NATURE, NailResistance, Racking, RackingQuery, StoreyRacking, rack, racking_of_storey,
};
use crate::error::Error;
use crate::evaluate::Evaluated;
use crate::issue::Issue;
use crate::plan::WallPlan;
use serde::Serialize;

/// Numbers of a racked storey.
#[derive(Debug, Serialize)]
pub(super) struct Numbers {
    /// Analysis, not code capacity.
    nature: &'static str,
    wall: String,
    storey: String,
    height_in: f64,
    stiffness_lb_per_in: f64,
    movement_in: f64,
    /// At which the first nail reaches its strength.
    first_nail_lb: f64,
    /// Force over strength of that nail.
    ratio: f64,
    /// The mark of its sheet.
    governing: String,
    /// What the wall carries at least where nails keep their strength and its ends are held down.
    plastic_lb: f64,
    /// The same by the largest field of nail forces found.
    limit_lb: f64,
    sheets: Vec<Sheet>,
    /// Marks of the pieces at openings that do not count.
    left_out: Vec<String>,
    /// Nails into other storeys or floor bands, which hold no member of this one.
    other_nails: u64,
}

#[derive(Debug, Serialize)]
struct Sheet {
    mark: String,
    nails: usize,
    /// 0 where its nails do not hold it.
    stiffness_lb_per_in: f64,
    force_lb: f64,
    first_nail_lb: f64,
    ratio: f64,
    plastic_lb: f64,
    limit_lb: f64,
}

pub(super) fn answer(query: &RackingQuery) -> Result<Answer<Numbers>, Error> {
    let resistances = resistances(query)?;
    let plan = planned(&query.house)?;
    let wall = wall_of(&plan, &query.wall)?;
    let storey = storey_of(wall, query.storey.as_deref())?;
    let mut taken = racking_of_storey(&wall.built, storey, &resistances, query.openings, query.force)
        .map_err(|issues| of_nails(query, issues))?;
    taken.wall = taken
        .wall
        .as_found(&query.found)
        .map_err(|issues| Error::Issues { issues })?;
    let racked = rack(&taken.wall).map_err(|issues| Error::Issues { issues })?;
    let derivation = racked.explain(&taken.wall);
    let name = wall.built.backed.storeys.get(storey as usize);
    let numbers = Numbers {
        storey: name.map_or_else(String::new, |storey| storey.name.clone()),
        wall: query.wall.clone(),
        ..numbers(&wall.built, &taken, &racked)
    };
    let answer = Answer::new("racking", None, numbers, derivation);
    // Analysis is no value of a standard.
    Ok(Answer {
        estimate: true,
        ..answer
    })
}

/// A place for each nail of the stock, filled by name.
fn resistances(query: &RackingQuery) -> Result<Vec<Option<NailResistance>>, Error> {
    let stock = &query.house.stock.nails;
    let mut places = vec![None; stock.len()];
    for (number, (name, resistance)) in query.nails.iter().enumerate() {
        let place = stock.iter().position(|nail| nail.name == *name);
        let Some(place) = place.and_then(|place| places.get_mut(place)) else {
            let names: Vec<&str> = stock.iter().map(|nail| nail.name.as_str()).collect();
            return Err(unknown(
                &format!("/nails/{number}/name"),
                name,
                &names.join(", "),
                "the house's stock has no nail of this name",
            ));
        };
        *place = Some(*resistance);
    }
    Ok(places)
}

/// The storey of this name, or the only one.
fn storey_of(wall: &WallPlan, name: Option<&str>) -> Result<u32, Error> {
    let storeys = &wall.built.backed.storeys;
    let found = match name {
        None if storeys.len() == 1 => Some(0),
        None => None,
        Some(name) => storeys.iter().position(|storey| storey.name == name),
    };
    let names: Vec<&str> = storeys.iter().map(|storey| storey.name.as_str()).collect();
    found.and_then(|place| u32::try_from(place).ok()).ok_or_else(|| {
        unknown(
            "/storey",
            name.unwrap_or("null"),
            &names.join(", "),
            "the wall has several storeys, or none of this name",
        )
    })
}

/// A nail without values is one of the question's list.
fn of_nails(query: &RackingQuery, issues: Vec<Issue>) -> Error {
    let issues = issues.into_iter().map(|issue| {
        let place = issue.path.strip_prefix("/resistances/").map(str::parse::<usize>);
        match place {
            Some(Ok(place)) => Issue {
                path: "/nails".to_owned(),
                found: query
                    .house
                    .stock
                    .nails
                    .get(place)
                    .map_or_else(String::new, |nail| nail.name.clone()),
                ..issue
            },
            _ => issue,
        }
    });
    Error::Issues {
        issues: issues.collect(),
    }
}

fn numbers(built: &Evaluated, taken: &StoreyRacking, racked: &Racking) -> Numbers {
    let mark = |piece: u32| {
        let found = built.layout.pieces.iter().find(|other| other.id == piece);
        found.map_or_else(String::new, |piece| piece.mark.clone())
    };
    let sheets = racked.sheets.iter().map(|sheet| Sheet {
        mark: mark(sheet.piece),
        nails: sheet.nails.len(),
        stiffness_lb_per_in: sheet.stiffness,
        force_lb: sheet.force,
        first_nail_lb: sheet.first_nail,
        ratio: sheet.worst,
        plastic_lb: sheet.plastic_force,
        limit_lb: sheet.limit_force,
    });
    let governing = racked.sheets.get(racked.governing);
    Numbers {
        nature: NATURE,
        wall: String::new(),
        storey: String::new(),
        height_in: taken.wall.height.as_inches(),
        stiffness_lb_per_in: racked.stiffness,
        movement_in: racked.movement,
        first_nail_lb: racked.first_nail,
        ratio: racked.worst,
        governing: governing.map_or_else(String::new, |sheet| mark(sheet.piece)),
        plastic_lb: racked.plastic_force,
        limit_lb: racked.limit_force,
        sheets: sheets.collect(),
        left_out: taken.at_openings.iter().map(|piece| mark(*piece)).collect(),
        other_nails: taken.other_nails,
    }
}
