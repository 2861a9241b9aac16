//! A layout of sheets on a wall: courses, seams, pieces. Evaluates, never chooses.

mod build;
mod piece;
mod spec;

pub use build::lay_out;
pub use piece::{Joint, Layout, LayoutBand, Piece, Running, Sides};
pub use spec::{BandSpec, LayoutSpec, PieceSpec};
