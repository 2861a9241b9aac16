//! Which sheet every piece comes from.

mod plan;

pub use plan::{Blank, Bounds, CutNode, CutPlan, CutSheet, Leftover, Proof, Source};
