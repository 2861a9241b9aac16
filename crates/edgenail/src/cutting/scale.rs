//! Dual feasible functions: weights of sizes whose sum over parts that fit into a whole is at most one.
//!
//! Both families, the one that cuts off at ε and the stepped one, are those of Fekete and Schepers, *New classes of
//! lower bounds for bin packing problems* (2001); from memory, not checked against print. A size counts with its kerf
//! and so does the whole: the last part beside the edge of a sheet needs none.

use crate::length::Length;

/// One, as a weight.
pub(super) const ONE: i128 = 1 << 30;

/// A dual feasible function. All of them grow with the size and are superadditive, so that what comes out of a part
/// weighs no more than the part.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Scale {
    /// The share of the whole.
    Share,
    /// Sizes below this, counted with their kerf, weigh nothing; sizes that leave less than it weigh one.
    Without(Length),
    /// Steps of 1/n: the size times n + 1, in whole wholes. For one step, sizes above half the whole weigh one, below it
    /// nothing.
    Steps(i64),
}

impl Scale {
    /// The weight of a size in a whole, rounded down. Neither is below zero.
    pub(super) fn weigh(self, size: Length, whole: Length, kerf: Length) -> i128 {
        let size = i128::from((size + kerf).units());
        let whole = i128::from((whole + kerf).units()).max(1);
        let share = size * ONE / whole;
        match self {
            Self::Share => share,
            Self::Without(least) => cut_off(size, whole, 2 * i128::from(least.units()), share),
            Self::Steps(n) => {
                let n = i128::from(n.max(1));
                let steps = (n + 1) * size;
                if steps % whole == 0 {
                    share
                } else {
                    steps / whole * ONE / n
                }
            }
        }
    }
}

/// `twice_least` is at most the whole for a function to be feasible; else the share is taken.
fn cut_off(size: i128, whole: i128, twice_least: i128, share: i128) -> i128 {
    if twice_least > whole {
        share
    } else if 2 * size > 2 * whole - twice_least {
        ONE
    } else if 2 * size < twice_least {
        0
    } else {
        share
    }
}
