//! Every nail: its place, its member, its zone, its kind.

mod row;

pub use row::{Nail, NailRow, Nailing, Zone};
