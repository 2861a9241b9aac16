//! Why a wall has no layout: which demands cannot be met, found by planning the wall again without them.

mod lift;
mod lifts;

use crate::error::{Error, Remedy};
use crate::frame::frame_wall;
use crate::house::House;
use crate::length::Length;
use crate::search::has_layout;
use lift::Lift;

/// The error of a wall without a layout, with every change of a single demand under which it has one; where none is
/// enough, one change of as few as are needed.
pub(super) fn explained(house: &House, index: usize, error: Error) -> Error {
    let Error::NoLayout { wall, message, .. } = error else {
        return error;
    };
    let trial = Trial { house, index };
    let lifts = lifts::lifts(house, index);
    let alone = lifts.iter().filter(|lift| trial.works(&[(lift, lift.loosest())]));
    let mut remedies: Vec<Remedy> = alone.map(|lift| trial.remedy(&[lift])).collect();
    if remedies.is_empty() {
        remedies.extend(trial.together(&lifts));
    }
    Error::NoLayout {
        wall,
        message,
        remedies,
    }
}

/// A wall that is laid out again under other demands.
struct Trial<'a> {
    house: &'a House,
    index: usize,
}

impl Trial<'_> {
    /// The wall has a layout if these demands are lifted so far.
    fn works(&self, lifted: &[(&Lift, Length)]) -> bool {
        let mut house = self.house.clone();
        for (lift, to) in lifted {
            lift.apply(&mut house, *to);
        }
        frame_wall(&house, self.index).is_some_and(|frame| has_layout(&house, &frame))
    }

    /// As few demands as are needed, of all together; nothing where even all are not enough.
    fn together(&self, lifts: &[Lift]) -> Option<Remedy> {
        let mut needed: Vec<&Lift> = lifts.iter().collect();
        if !self.works(&loosest(&needed)) {
            return None;
        }
        let mut place = 0;
        while place < needed.len() {
            let mut fewer = needed.clone();
            fewer.remove(place);
            if self.works(&loosest(&fewer)) {
                needed = fewer;
            } else {
                place += 1;
            }
        }
        Some(self.remedy(&needed))
    }

    /// These demands, each lifted no further than is needed beside the others.
    fn remedy(&self, lifts: &[&Lift]) -> Remedy {
        let mut lifted = loosest(lifts);
        for place in 0..lifted.len() {
            let Some((lift, _)) = lifted.get(place).copied() else {
                continue;
            };
            // The fewest steps from what is demanded that are enough, by halving.
            let (mut fails, mut works) = (0, lift.steps());
            while fails + 1 < works {
                let middle = fails + (works - fails) / 2;
                let mut trial = lifted.clone();
                if let Some(here) = trial.get_mut(place) {
                    here.1 = lift.at(middle);
                }
                if self.works(&trial) {
                    (works, lifted) = (middle, trial);
                } else {
                    fails = middle;
                }
            }
        }
        Remedy {
            changes: lifted.into_iter().map(|(lift, to)| lift.unmet(to)).collect(),
        }
    }
}

/// Demands lifted as far as is tried.
fn loosest<'l>(lifts: &[&'l Lift]) -> Vec<(&'l Lift, Length)> {
    lifts.iter().map(|lift| (*lift, lift.loosest())).collect()
}
