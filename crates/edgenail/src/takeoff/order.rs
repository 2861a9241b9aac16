//! What is ordered for the whole house.

use super::line::{Serves, TakeoffLine, TakeoffWhat};
use super::lines::{feet, pounds, practice, raised, whole};
use super::{BuiltWall, cut_length};
use crate::cutting::{CutPlan, StickCut, cut_sticks};
use crate::house::House;
use crate::length::Length;
use crate::wording::{counted, wording};

/// Sheets of the cut plan by kind, and spare.
pub(super) fn sheets(house: &House, cutting: &CutPlan) -> Vec<TakeoffLine> {
    let spare = practice(house)
        .map(|practice| practice.spare_percent)
        .unwrap_or_default();
    let mut lines = Vec::new();
    for (sheet, index) in house.stock.sheets.iter().zip(0u32..) {
        let used = i64::from(cutting.new_sheets(index));
        if used == 0 {
            continue;
        }
        let extra = raised(used, spare) - used;
        let area = (sheet.width * sheet.length).square_units();
        lines.push(TakeoffLine {
            used: whole(used),
            ordered: u32::try_from(used + extra).ok(),
            unit: "sheets".to_owned(),
            order_unit: "sheets".to_owned(),
            pounds: pounds(sheet, area * i128::from(used)),
            money: sheet.price.times(used + extra).unwrap_or_default(),
            because: format!("{used} in the cut plan, {extra} spare ({spare} %, rounded up)"),
            extra,
            sheets: used,
            ..TakeoffLine::of_house(TakeoffWhat::Sheets, &sheet.name)
        });
    }
    lines
}

/// Lengths that are cut from one kind of stick.
struct Cuts {
    blocks: Vec<Length>,
    studs: Vec<Length>,
}

fn cuts(walls: &[BuiltWall<'_>], stick: u32) -> Cuts {
    let blocks = walls.iter().flat_map(|wall| &wall.blocking.blocks);
    let studs = walls.iter().flat_map(|wall| &wall.blocking.studs);
    let widened = walls.iter().flat_map(|wall| &wall.blocking.widened);
    Cuts {
        blocks: blocks
            .filter(|block| block.stick == stick)
            .map(|block| block.length)
            .collect(),
        studs: studs
            .map(|stud| (stud.stick, stud.rect))
            .chain(widened.map(|wide| (wide.stick, wide.rect)))
            .filter(|(of, _)| *of == stick)
            .map(|(_, rect)| cut_length(&rect))
            .collect(),
    }
}

/// Lumber by the stick, packed over the house, and the blocks that come out of what added studs leave.
pub(super) fn sticks(house: &House, walls: &[BuiltWall<'_>]) -> Vec<TakeoffLine> {
    let practice = practice(house);
    let kerf = practice.map(|practice| practice.kerf).unwrap_or_default();
    let effort_most = practice.map_or(0, |practice| practice.cutting_effort_most);
    let mut lines = Vec::new();
    for (stick, index) in house.stock.sticks.iter().zip(0u32..) {
        let cuts = cuts(walls, index);
        let lengths: Vec<Length> = cuts.blocks.iter().chain(&cuts.studs).copied().collect();
        if lengths.is_empty() {
            continue;
        }
        let plan = cut_sticks(&lengths, index, stick.length, kerf, effort_most);
        let packed = &plan.sticks;
        let count = i64::try_from(packed.len()).unwrap_or(i64::MAX);
        let fewer = count - i64::from(plan.least);
        let known = match fewer {
            0 => "; fewer do not hold them".to_owned(),
            fewer => format!("; at most {fewer} fewer may hold them"),
        };
        let total: Length = lengths.iter().copied().sum();
        let from_scrap = beside_studs(packed, &cuts.studs);
        if !from_scrap.is_empty() {
            lines.push(TakeoffLine {
                used: whole(i64::try_from(from_scrap.len()).unwrap_or(i64::MAX)),
                unit: "blocks".to_owned(),
                feet: feet(from_scrap.iter().copied().sum()),
                because: "of the blocks, those cut from what added studs leave of their sticks".to_owned(),
                ..TakeoffLine::of_house(TakeoffWhat::BlocksFromScrap, &stick.name)
            });
        }
        lines.push(TakeoffLine {
            used: whole(count),
            ordered: u32::try_from(count).ok(),
            unit: "sticks".to_owned(),
            order_unit: "sticks".to_owned(),
            money: stick.price.times(count).unwrap_or_default(),
            because: wording![
                counted(lengths.len(), "length", "lengths"),
                " packed into sticks of ",
                stick.length,
                " with kerf ",
                kerf,
                known
            ]
            .written(house.drawn_in.in_text()),
            feet: feet(total),
            ..TakeoffLine::of_house(TakeoffWhat::Sticks, &stick.name)
        });
    }
    lines
}

/// Lengths that share a stick with a stud and are no studs themselves.
fn beside_studs(packed: &[StickCut], studs: &[Length]) -> Vec<Length> {
    let mut left = studs.to_vec();
    let mut beside = Vec::new();
    for stick in packed {
        let (mut blocks, before) = (Vec::new(), left.len());
        for cut in &stick.cuts {
            match left.iter().position(|stud| stud == cut) {
                Some(at) => {
                    left.swap_remove(at);
                }
                None => blocks.push(*cut),
            }
        }
        if left.len() < before {
            beside.append(&mut blocks);
        }
    }
    beside
}

impl TakeoffLine {
    /// A line for the whole house with nothing in it.
    fn of_house(what: TakeoffWhat, item: &str) -> Self {
        Self::blank(what, item.to_owned(), "house".to_owned(), Serves::All)
    }
}
