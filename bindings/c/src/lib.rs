//! The C interface of edgenail: each function checks what it was given, calls the core and hands back plain
//! data. No rule of the trade is stated here.
//!
//! All `unsafe` code of the project lies in this crate. `handle`, `text` and `fill` turn pointers into Rust
//! values and back; every exported function runs inside `guard`, so that no panic reaches the caller.

#![allow(non_camel_case_types, reason = "C names are written as C programs write them")]

pub mod batch;
pub mod capacity;
pub mod cells;
pub mod choice;
pub mod derivation;
pub mod error;
mod fill;
mod guard;
mod handle;
pub mod house;
pub mod length;
pub mod plan;
#[rustfmt::skip]
pub mod rows;
pub mod status;
pub mod street;
pub mod table;
mod text;
pub mod version;
pub mod wall_cells;
pub mod wall_line;
pub mod wall_schedule;
pub mod what_if;
