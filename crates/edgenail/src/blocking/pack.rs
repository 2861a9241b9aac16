//! Lengths cut from sticks.

use super::StickCut;
use crate::length::Length;

/// Cuts lengths from sticks: the longest first, each from the first stick that has enough left.
///
/// Every cut takes a kerf, unless it ends the stick. Lengths longer than the stick are left out.
///
/// ```
/// use edgenail::Length;
/// use edgenail::blocking::pack_sticks;
/// // Six blocks of 14 7/16 in. come from one stick of 96 in.: six blocks and five kerfs are 87 1/4.
/// let block = Length::sixteenths(231);
/// let sticks = pack_sticks(&[block; 7], 0, Length::inches(96), Length::sixteenths(2));
/// assert_eq!(sticks.iter().map(|stick| stick.cuts.len()).collect::<Vec<_>>(), [6, 1]);
/// ```
pub fn pack_sticks(lengths: &[Length], stick: u32, stick_length: Length, kerf: Length) -> Vec<StickCut> {
    let mut longest_first: Vec<Length> = lengths
        .iter()
        .copied()
        .filter(|length| *length <= stick_length)
        .collect();
    longest_first.sort_unstable_by(|a, b| b.cmp(a));
    let mut sticks: Vec<StickCut> = Vec::new();
    for length in longest_first {
        let cut = |stick: &mut StickCut| {
            stick.left = if stick.left == length {
                Length::ZERO
            } else {
                (stick.left - length - kerf).max(Length::ZERO)
            };
            stick.cuts.push(length);
        };
        if let Some(open) = sticks.iter_mut().find(|stick| stick.left >= length) {
            cut(open);
        } else {
            let mut fresh = StickCut {
                stick,
                cuts: Vec::new(),
                left: stick_length,
            };
            cut(&mut fresh);
            sticks.push(fresh);
        }
    }
    sticks
}

#[cfg(test)]
mod tests;
