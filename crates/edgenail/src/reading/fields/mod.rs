//! The table of fields, one file for each part of a house.

mod band;
mod corner;
mod given;
mod house;
mod measured;
mod opening;
mod practice;
mod rates;
mod section;
mod segment;
mod stock;
mod storey;
mod top;
mod wall;

pub(crate) use house::HOUSE;

use crate::reading::field::{Field, Kind, Lengths};

/// The word that tells apart objects of several kinds.
pub(crate) const TAG: &str = "kind";

const TEXT: &Kind = &Kind::Text;
const PLACES: &Kind = &Kind::Length(Lengths::PLACE);

const fn size(name: &'static str, meaning: &'static str) -> Field {
    Field::new(name, Kind::Length(Lengths::SIZE), meaning)
}

const fn distance(name: &'static str, meaning: &'static str) -> Field {
    Field::new(name, Kind::Length(Lengths::DISTANCE), meaning)
}

const fn place(name: &'static str, meaning: &'static str) -> Field {
    Field::new(name, Kind::Length(Lengths::PLACE), meaning)
}

const fn text(name: &'static str, meaning: &'static str) -> Field {
    Field::new(name, Kind::Text, meaning)
}
