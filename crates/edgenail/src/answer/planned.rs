//! The wall of a question that carries a house.

use crate::error::Error;
use crate::house::House;
use crate::issue::{Code, Issue};
use crate::plan::{Plan, WallPlan, plan_house};

/// Plans the house.
pub(super) fn planned(house: &House) -> Result<Plan, Error> {
    plan_house(house.clone(), Vec::new())
}

/// The wall of this name.
pub(super) fn wall_of<'p>(plan: &'p Plan, name: &str) -> Result<&'p WallPlan, Error> {
    let names = || plan.walls().iter().map(|wall| wall.name.as_str()).take(20);
    plan.walls().iter().find(|wall| wall.name == name).ok_or_else(|| {
        unknown(
            "/wall",
            name,
            &names().collect::<Vec<_>>().join(", "),
            "the house has no wall of this name",
        )
    })
}

/// A name that nothing has.
pub(super) fn unknown(path: &str, found: &str, allowed: &str, message: &str) -> Error {
    Error::Issues {
        issues: vec![Issue {
            code: Code::UnknownName,
            path: path.to_owned(),
            wall: String::new(),
            found: found.to_owned(),
            allowed: allowed.to_owned(),
            message: message.to_owned(),
        }],
    }
}
