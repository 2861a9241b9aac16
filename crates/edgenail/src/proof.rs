//! How good a result is known to be.

use crate::amount::Amount;
use serde::Serialize;

/// How good a result is known to be.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Proof {
    /// Nothing better exists.
    Proven,
    /// Something better by at most this may exist.
    Gap {
        /// In the unit of the bound.
        amount: Amount,
    },
    /// The limit of effort was reached.
    Stopped {
        /// In the unit of the bound.
        gap: Amount,
        /// What was spent.
        effort: u64,
    },
}
