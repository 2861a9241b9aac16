//! Drawings: first plain data, then text.
//!
//! [`wall`] and [`frame`] turn the finished stages of a wall into a [`Drawing`], [`cut_sheets`] does so for a page of
//! a cut plan. A drawing knows its lines by what they stand for ([`Layer`]) and every text with the box that it may
//! fill, so that it can be checked before anything is written: no two texts meet, none leaves the paper.
//! [`Drawing::svg`] writes it.

mod glyphs;
mod input;
#[cfg(test)]
pub(crate) mod legible;
mod page;
mod place;
mod scene;
mod sheets;
mod style;
mod svg;
mod tag;
mod view;
mod wall;

pub use input::{CutDrawingInput, DrawnStart, WallDrawingInput};
pub use scene::{
    Along, Anchor, Dimension, Drawing, Extent, Form, Label, Layer, MM, Mark, Micron, Says, Spot,
};
pub use sheets::{cut_sheet_pages, cut_sheets};
pub use wall::{frame, wall};
