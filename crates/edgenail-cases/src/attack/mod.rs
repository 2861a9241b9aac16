//! What the fuzz targets and the tests do with bytes: an input is made of them, goes through the library, and every
//! law of [`laws`] is asserted of what comes out. A broken law panics, with the bytes at hand.

#![expect(
    clippy::panic,
    clippy::missing_panics_doc,
    reason = "a broken law has to end the run"
)]

pub mod laws;

mod beyond;
mod foreign;
mod place;
mod read;
mod share;
mod spoil;
mod spoiled;

pub use beyond::beyond;
pub use foreign::foreign;
pub use place::{Place, places, write};
pub use read::read;
pub use share::{Reached, Share};
pub use spoil::spoil;
pub use spoiled::{spoiled, spoiled_house};
