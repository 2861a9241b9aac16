//! From which end a wall is sheathed.

use crate::frame::Frame;
use crate::house::{End, Practice, StartChoice};

/// The end that sheets are laid from: what practice says, else the end that layout is pulled from.
pub fn starting_end(practice: &Practice, frame: &Frame) -> End {
    match practice.starting_end {
        StartChoice::Left => End::Left,
        StartChoice::Right => End::Right,
        StartChoice::Either => {
            if frame.storeys.first().is_some_and(|storey| storey.from_right) {
                End::Right
            } else {
                End::Left
            }
        }
    }
}
