//! A storey's force on its wall lines: by a flexible diaphragm, by a rigid one, and the larger of both.
//!
//! A flexible diaphragm gives each parallel line what comes from its tributary width. A rigid one moves and turns as a
//! whole: lines take part by stiffness, and what acts off the centre of rigidity turns it, which parallel and perpendicular
//! lines resist together. A wood diaphragm lies between; [`share_storey_force`] gives both and their envelope.

mod check;
mod explain;
mod input;
mod share;

pub use input::{DiaphragmLine, PlanAxis, StoreyForce};
pub use share::{Diaphragm, LineShare, RigidDiaphragm, share_storey_force};

#[cfg(test)]
mod tests;
