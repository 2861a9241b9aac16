//! Laws of layouts that nobody chose, on generated houses of every class: seams and levels anywhere.

#![expect(clippy::expect_used, reason = "a house that cannot be read fails the test")]

mod added_wood;
mod between;
mod edge_findings;
mod edge_lines;
mod edge_nails;
mod edge_rows;
mod edge_shape;
mod field_rows;
mod ground;
mod impossible;
mod laws;
mod nail_findings;
mod nailed;
mod nails;
mod runs;
mod shared_members;
mod sloped_runs;
mod slow;
mod strain;
