//! What to buy, what it weighs, what it costs, what work it is.
//!
//! [`Kernel`] tells what one piece, row, block or line takes; a take-off adds that up for the house, for each storey
//! and for each wall.

mod area;
mod charge;
mod entry;
mod kernel;
mod line;
mod lines;
mod order;
mod part;
mod place;
mod weight;

pub use area::{area_sheets, nominal_area};
pub use charge::Charge;
pub use kernel::{Kernel, cut_length};
pub use line::{Serves, Takeoff, TakeoffLine, TakeoffWhat};
pub use part::{Part, PartKind};
pub use place::Place;
pub use weight::nail_micropounds;

use crate::blocking::Blocking;
use crate::cutting::CutPlan;
use crate::frame::Frame;
use crate::house::House;
use crate::layout::Layout;
use crate::nailing::Nailing;
use entry::{Entry, entries, sheets_by_piece};

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

/// What a house takes: for the house with what is ordered, then for each storey, then for each wall.
///
/// Sheets are those of the cut plan and spare on top; waste is never added to an area that was cut-planned. Beside them
/// stands what the area method would ask for. Nails are those of the plan with their loss, rounded to boxes; sticks are
/// packed from the lengths that are cut. Work is listed by kind in person-minutes.
///
/// ```
/// use edgenail::takeoff::TakeoffWhat;
/// let plan = edgenail::plan_json(edgenail::demo::HOUSE_JSON)?;
/// let sheets = plan.takeoff().lines.iter().filter(|line| line.what == TakeoffWhat::Sheets);
/// assert!(sheets.map(|line| line.ordered).all(|ordered| ordered.is_some()));
/// # Ok::<(), edgenail::Error>(())
/// ```
pub fn takeoff(house: &House, walls: &[BuiltWall<'_>], cutting: &CutPlan) -> Takeoff {
    let opened = sheets_by_piece(cutting);
    let all: Vec<Entry<'_>> = walls
        .iter()
        .flat_map(|wall| entries(house, wall, &opened))
        .collect();
    let areas = area::areas(house, walls);
    let mut lines = order::sheets(house, cutting);
    lines.extend(lines::lines(house, &all, &areas, &lines::Scope::House));
    lines.extend(order::sticks(house, walls));
    let mut storeys: Vec<&str> = Vec::new();
    for entry in &all {
        if !storeys.contains(&entry.storey) {
            storeys.push(entry.storey);
        }
    }
    for storey in storeys {
        lines.extend(lines::lines(house, &all, &areas, &lines::Scope::Storey(storey)));
    }
    for wall in walls {
        lines.extend(lines::lines(house, &all, &areas, &lines::Scope::Wall(wall.wall)));
    }
    Takeoff { lines }
}

#[cfg(test)]
mod tests;
