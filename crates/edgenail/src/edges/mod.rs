//! What each panel edge lands on.

mod run;

pub use run::{EdgeRun, Side, Support, Unsupported};
