//! A layout of sheets on a wall: courses, seams, pieces. Evaluates, never chooses.
//!
//! [`lay_out`] makes pieces from a specification, [`Cutter`] is its kernel for one strip. [`rules()`]
//! judges a layout, whoever made it.

mod build;
mod category;
mod cutter;
mod mark;
mod piece;
mod rules;
mod side;
mod spec;
mod starting_end;
mod turn;

#[cfg(test)]
pub(crate) mod foreign;
#[cfg(test)]
pub(crate) mod trial;

pub use build::lay_out;
pub use category::category_thickness;
pub(crate) use cutter::on_sawn_rim;
pub use cutter::{Cutter, Part};
pub(crate) use mark::marks;
pub use piece::{Layout, LayoutBand, Piece, Running};
pub use rules::rules;
pub(crate) use rules::{is_weak, rules_of_pieces, rules_of_seams};
pub use side::{Joint, Side, Sides};
pub use spec::{BandSpec, LayoutSpec, PieceSpec};
pub use starting_end::starting_end;
pub use turn::{Turn, When, hung_on_deck, hung_on_deck_of, laps, section_of, storey_of};

#[cfg(test)]
mod tests;
