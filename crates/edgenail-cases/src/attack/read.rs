//! Any bytes into the reader.

use super::{Reached, laws};
use edgenail::length::Length;
use edgenail::plan::plan_house;
use edgenail::{Error, read_house};

/// A house that is read from bytes is planned too, unless a plan would take long: so many walls at most,
const WALLS_MOST: usize = 3;
/// of so great a length together,
const LENGTH_MOST: Length = Length::feet(100);
/// with so many arcs for the search of each.
const EFFORT_MOST: u64 = 20_000;

/// Any bytes: a house with every assumption at its field, or issues that name theirs. A small house is planned.
pub fn read(bytes: &[u8]) -> Reached {
    let (mut house, assumed) = match read_house(bytes) {
        Ok(read) => read,
        Err(issues) => {
            laws::issues(bytes, &issues);
            return Reached::Refused;
        }
    };
    for assumed in &assumed {
        assert!(
            assumed.path.starts_with('/') && !assumed.why.is_empty(),
            "{assumed:?}"
        );
    }
    let length: Length = house.walls.iter().map(|wall| wall.length).sum();
    if house.walls.len() > WALLS_MOST || length > LENGTH_MOST {
        return Reached::Nothing;
    }
    for wall in &mut house.walls {
        wall.practice.effort_most = wall.practice.effort_most.min(EFFORT_MOST);
    }
    match plan_house(house, assumed) {
        Ok(plan) => {
            laws::plan(&plan);
            Reached::Nailing
        }
        Err(Error::NoLayout { .. }) => Reached::NoLayout,
        Err(error) => panic!("{error:?}"),
    }
}
