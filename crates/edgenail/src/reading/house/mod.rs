//! Records to the house, each object in a file of its own.

mod demand;
mod document;
mod given;
mod limits;
mod opening;
mod practice;
mod rates;
mod section;
mod segment;
mod stock;
mod storey;
mod top;
mod wall;

pub(super) use document::document;
pub(super) use rates::rates;
pub(super) use stock::stock;
