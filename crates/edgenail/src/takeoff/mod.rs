//! What to buy, what it weighs, what it costs.

mod count;
mod line;
mod weight;

pub use line::{Takeoff, TakeoffLine, TakeoffWhat};
pub use weight::nail_micropounds;

use crate::blocking::Blocking;
use crate::cutting::CutPlan;
use crate::frame::Frame;
use crate::house::House;
use crate::layout::Layout;
use crate::nailing::Nailing;

/// A wall whose stages are finished.
#[derive(Clone, Copy, Debug)]
pub struct BuiltWall<'a> {
    /// Its place in the house's list.
    pub wall: u32,
    /// Its frame.
    pub frame: &'a Frame,
    /// Its layout.
    pub layout: &'a Layout,
    /// What is added to the wood.
    pub blocking: &'a Blocking,
    /// Its nails.
    pub nailing: &'a Nailing,
}

/// What a house takes: for the house what is ordered, then what each wall uses.
///
/// Sheets are those of the cut plan and spare on top; waste is never added to an area that was cut-planned. Nails
/// are those of the plan with their loss, rounded to boxes; sticks are packed from the lengths that are cut.
pub fn takeoff(house: &House, walls: &[BuiltWall<'_>], cutting: &CutPlan) -> Takeoff {
    let mut lines = count::sheets(house, walls, cutting);
    lines.extend(count::blocks(house, walls, "house"));
    lines.extend(count::sticks(house, walls));
    lines.extend(count::nails(house, walls, "house", true));
    for wall in walls {
        let scope = house
            .walls
            .get(wall.wall as usize)
            .map_or_else(String::new, |said| format!("wall: {}", said.name));
        let one = std::slice::from_ref(wall);
        lines.extend(count::pieces(house, wall, &scope));
        lines.extend(count::blocks(house, one, &scope));
        lines.extend(count::nails(house, one, &scope, false));
    }
    Takeoff { lines }
}

#[cfg(test)]
mod tests;
