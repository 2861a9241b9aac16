//! Racking nail by nail: rigid sheets on nails on a hinged frame, from the place of every nail.
//!
//! Members are hinged at their ends, sheets stay as they are, nails carry everything between them. All sheets of a frame
//! share its shear angle, so their forces add. [`rack`] gives how the force spreads over the nails while they are linear,
//! the force at which the first nail reaches its strength, and two bounds for nails that keep their strength as they slip.
//! This is analysis: it explains a wall and compares repairs, and no value of a code rests on it.

mod check;
mod elastic;
mod explain;
mod explain_wall;
mod found;
mod from_plan;
mod input;
mod limit;
mod plastic;
mod unanchored;
mod wall;

pub use elastic::{Elastic, NailForce};
pub use found::FoundNails;
pub use from_plan::{AtOpenings, NailResistance, StoreyRacking, racking_of_storey};
pub use input::{RackingNail, RackingSheet, RackingWall};
pub use plastic::Plastic;
pub use unanchored::{explain_unanchored_length, unanchored_length};
pub use wall::{NATURE, Racking, SheetRacking, rack};

#[cfg(test)]
mod tests;
