//! What has to be added to the wood so that every edge that wants backing has it.

mod added;

pub use added::{AddedStud, Block, BlockLie, Blocking, Impossible, StickCut, WidenedMember};
