//! The pieces worth most that one sheet can be cut into.

use super::lay::lay;
use super::patterns::{Room, Wanted, patterns};
use super::problem::{Item, Origin, Problem};
use crate::cutting::open::Open;
use crate::cutting::{Blank, Source};
use crate::length::Length;
use std::collections::BTreeMap;

/// One sheet, filled.
pub(in crate::cutting) struct Filled {
    /// The sheet; nothing if no piece fits.
    pub(in crate::cutting) open: Option<Open>,
    pub(in crate::cutting) worth: i64,
    /// No pattern is worth more.
    pub(in crate::cutting) bound: i64,
}

/// Fills a sheet of this size with blanks of these worths; what is worth nothing is left out.
pub(in crate::cutting) fn fill(
    (width, length): (Length, Length),
    kerf: Length,
    blanks: &[Blank],
    worths: &[i64],
    mut work: u64,
) -> Filled {
    let mut sizes: BTreeMap<(Item, i64), Vec<(usize, u32)>> = BTreeMap::new();
    for ((index, blank), worth) in blanks
        .iter()
        .enumerate()
        .zip(worths)
        .filter(|(_, worth)| **worth > 0)
    {
        let item = Item {
            w: (blank.width + kerf).units(),
            l: (blank.length + kerf).units(),
            may_turn: blank.may_turn,
        };
        sizes
            .entry((item, *worth))
            .or_default()
            .push((index, blank.order));
    }
    let items: Vec<Item> = sizes.keys().map(|(item, _)| *item).collect();
    let values: Vec<i64> = sizes.keys().map(|(_, worth)| *worth).collect();
    let most: Vec<u32> = sizes
        .values()
        .map(|blanks| u32::try_from(blanks.len()).unwrap_or(u32::MAX))
        .collect();
    let size = ((width + kerf).units(), (length + kerf).units());
    let room = Room {
        size,
        items: &items,
        most: &most,
    };
    let outcome = patterns(&room, &values, Wanted::Best { above: 0 }, POINTS, &mut work);
    let found = outcome
        .found
        .first()
        .and_then(|found| outcome.parts.get(*found as usize));
    let Some(found) = found else {
        return Filled {
            open: None,
            worth: 0,
            bound: outcome.upper,
        };
    };
    let mut left: Vec<Vec<(usize, u32)>> = sizes.into_values().collect();
    let take = |item: &u16| {
        let (blank, order) = left.get_mut(usize::from(*item))?.pop()?;
        Some((blank, order, *item))
    };
    let load = found.items.iter().filter_map(take).collect();
    let origin = Origin {
        source: Source::Sheet { sheet: 0 },
        sheet: 0,
        size,
        price: 1,
        limit: Some(1),
        born: None,
        most: most.clone(),
    };
    let problem = Problem {
        kerf: kerf.units(),
        items,
        blanks: Vec::new(),
        demand: most,
        origins: vec![origin],
        step: 1,
    };
    Filled {
        open: lay(&problem, 0, &load),
        worth: found.value,
        bound: outcome.upper,
    }
}

/// Sizes told apart across and along a sheet: one table is made, so it may be large.
const POINTS: (usize, usize) = (256, 256);
