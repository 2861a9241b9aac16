//! How far inputs came.

use std::sync::atomic::{AtomicU64, Ordering};

/// How far one input came.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reached {
    /// The bytes are too few to make an input of.
    Nothing,
    /// It was refused, with every fault named.
    Refused,
    /// It was read, and no layout of a wall keeps the rules.
    NoLayout,
    /// Every stage up to nailing ran, and their laws were checked.
    Nailing,
}

/// How many inputs there were and how many came to nailing.
#[derive(Debug)]
pub struct Share {
    inputs: AtomicU64,
    nailed: AtomicU64,
}

impl Share {
    /// Nothing counted yet.
    pub const fn new() -> Self {
        Self {
            inputs: AtomicU64::new(0),
            nailed: AtomicU64::new(0),
        }
    }

    /// Counts an input; after 1024, 2048, 4096 … a line on the standard error tells the share that reached nailing.
    pub fn count(&self, target: &str, reached: Reached) {
        let more = u64::from(reached == Reached::Nailing);
        let nailed = self.nailed.fetch_add(more, Ordering::Relaxed) + more;
        let inputs = self.inputs.fetch_add(1, Ordering::Relaxed) + 1;
        if inputs.is_power_of_two() && inputs >= 1024 {
            let percent = nailed * 100 / inputs;
            eprintln!("{target}: {nailed} of {inputs} inputs reached nailing, {percent} %");
        }
    }
}

impl Default for Share {
    fn default() -> Self {
        Self::new()
    }
}
