//! What to buy, what it weighs, what it costs.

mod line;

pub use line::{Takeoff, TakeoffLine, TakeoffWhat};
