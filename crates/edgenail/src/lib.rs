//! Plans the structural sheathing of wood-frame walls.

#![forbid(unsafe_code)]

pub mod issue;
pub mod length;

pub use length::Length;
