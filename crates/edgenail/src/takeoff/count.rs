//! Counting sheets, lumber and nails.

use super::weight::nail_micropounds;
use super::{BuiltWall, TakeoffLine, TakeoffWhat};
use crate::amount::Amount;
use crate::blocking::{StickCut, pack_sticks};
use crate::cutting::{CutPlan, Source};
use crate::decimal::Decimal;
use crate::house::{House, NailTool, Practice, Sheet};
use crate::length::{Area, Length};

fn whole(count: i64) -> Decimal {
    Decimal::new(count, 0).unwrap_or_default()
}

fn practice(house: &House) -> Option<&Practice> {
    house.walls.first().map(|wall| &wall.practice)
}

/// A count raised by a percentage, rounded up.
fn raised(count: i64, percent: Decimal) -> i64 {
    let share = percent
        .scaled(i128::from(count), 100, 4)
        .and_then(|share| share.in_units_of(4))
        .unwrap_or_default();
    count + Length::from_units(share).spaces(Length::from_units(10_000))
}

/// Pounds of an area of sheet, to a tenth.
fn pounds(sheet: &Sheet, area: i128) -> Decimal {
    sheet
        .pounds_per_square_foot
        .scaled(area, Area::SQUARE_FOOT.square_units(), 1)
        .unwrap_or_default()
}

/// Sheets of the cut plan by kind, with spare, beside what the area alone would ask for.
pub(super) fn sheets(house: &House, walls: &[BuiltWall<'_>], cutting: &CutPlan) -> Vec<TakeoffLine> {
    let spare = practice(house)
        .map(|practice| practice.spare_percent)
        .unwrap_or_default();
    let mut lines = Vec::new();
    for (sheet, index) in house.stock.sheets.iter().zip(0u32..) {
        let used = cutting
            .sheets
            .iter()
            .filter(|cut| cut.source == Source::Sheet { sheet: index })
            .count();
        let used = i64::try_from(used).unwrap_or(i64::MAX);
        let pieces: i128 = walls
            .iter()
            .flat_map(|wall| &wall.layout.pieces)
            .filter(|piece| piece.sheet == index)
            .map(|piece| piece.outline.area2() / 2)
            .sum();
        if used == 0 && pieces == 0 {
            continue;
        }
        let ordered = raised(used, spare);
        let sheet_area = (sheet.width * sheet.length).square_units();
        let by_area = (pieces + sheet_area - 1) / sheet_area.max(1);
        lines.push(TakeoffLine {
            what: TakeoffWhat::Sheets,
            item: sheet.name.clone(),
            scope: "house".to_owned(),
            used: whole(used),
            ordered: u32::try_from(ordered).ok(),
            unit: "sheets".to_owned(),
            order_unit: "sheets".to_owned(),
            pounds: pounds(sheet, sheet_area * i128::from(ordered)),
            money: sheet.price.times(ordered).unwrap_or_default(),
            minutes: Amount::default(),
            because: format!("{used} in the cut plan, {} spare ({spare} %); the pieces' area alone is {by_area} sheets, openings deducted", ordered - used),
        });
    }
    lines
}

/// Pieces of a wall and what they weigh.
pub(super) fn pieces(house: &House, wall: &BuiltWall<'_>, scope: &str) -> Vec<TakeoffLine> {
    let mut lines = Vec::new();
    for (sheet, index) in house.stock.sheets.iter().zip(0u32..) {
        let own = wall.layout.pieces.iter().filter(|piece| piece.sheet == index);
        let (count, area) = own.fold((0, 0), |(count, area), piece| {
            (count + 1, area + piece.outline.area2() / 2)
        });
        if count > 0 {
            lines.push(TakeoffLine {
                what: TakeoffWhat::Sheets,
                item: sheet.name.clone(),
                scope: scope.to_owned(),
                used: whole(count),
                ordered: None,
                unit: "pieces".to_owned(),
                order_unit: String::new(),
                pounds: pounds(sheet, area),
                money: sheet
                    .price
                    .scaled(area, (sheet.width * sheet.length).square_units())
                    .unwrap_or_default(),
                minutes: Amount::default(),
                because: "pieces of the wall; money by the area of the pieces".to_owned(),
            });
        }
    }
    lines
}

/// Blocks and added studs.
pub(super) fn blocks(house: &House, walls: &[BuiltWall<'_>], scope: &str) -> Vec<TakeoffLine> {
    let mut lines = Vec::new();
    for (stick, index) in house.stock.sticks.iter().zip(0u32..) {
        let all = cuts(walls, index);
        for (what, lengths, unit) in [
            (TakeoffWhat::Blocks, &all.blocks, "blocks"),
            (TakeoffWhat::AddedStuds, &all.studs, "studs"),
        ] {
            if lengths.is_empty() {
                continue;
            }
            let feet: Length = lengths.iter().copied().sum();
            lines.push(TakeoffLine {
                what,
                item: stick.name.clone(),
                scope: scope.to_owned(),
                used: whole(i64::try_from(lengths.len()).unwrap_or(i64::MAX)),
                ordered: None,
                unit: unit.to_owned(),
                order_unit: String::new(),
                pounds: Decimal::default(),
                money: Amount::default(),
                minutes: Amount::default(),
                because: format!("{} lineal feet", whole_feet(feet)),
            });
        }
    }
    lines
}

fn whole_feet(length: Length) -> i64 {
    length.spaces(Length::feet(1))
}

struct Cuts {
    blocks: Vec<Length>,
    studs: Vec<Length>,
}

fn cuts(walls: &[BuiltWall<'_>], stick: u32) -> Cuts {
    let blocks = walls
        .iter()
        .flat_map(|wall| &wall.blocking.blocks)
        .filter(|block| block.stick == stick)
        .map(|block| block.length);
    let added = walls
        .iter()
        .flat_map(|wall| &wall.blocking.studs)
        .filter(|stud| stud.stick == stick)
        .map(|stud| stud.rect);
    let wide = walls
        .iter()
        .flat_map(|wall| &wall.blocking.widened)
        .filter(|wide| wide.stick == stick)
        .map(|wide| wide.rect);
    Cuts {
        blocks: blocks.collect(),
        studs: added
            .chain(wide)
            .map(|rect| rect.height().max(rect.width()))
            .collect(),
    }
}

/// Lumber by the stick, packed over the house.
pub(super) fn sticks(house: &House, walls: &[BuiltWall<'_>]) -> Vec<TakeoffLine> {
    let kerf = practice(house).map(|practice| practice.kerf).unwrap_or_default();
    let mut lines = Vec::new();
    for (stick, index) in house.stock.sticks.iter().zip(0u32..) {
        let all = cuts(walls, index);
        let lengths: Vec<Length> = all.blocks.into_iter().chain(all.studs).collect();
        if lengths.is_empty() {
            continue;
        }
        let packed: Vec<StickCut> = pack_sticks(&lengths, index, stick.length, kerf);
        let count = i64::try_from(packed.len()).unwrap_or(i64::MAX);
        lines.push(TakeoffLine {
            what: TakeoffWhat::Sticks,
            item: stick.name.clone(),
            scope: "house".to_owned(),
            used: whole(count),
            ordered: u32::try_from(count).ok(),
            unit: "sticks".to_owned(),
            order_unit: "sticks".to_owned(),
            pounds: Decimal::default(),
            money: stick.price.times(count).unwrap_or_default(),
            minutes: Amount::default(),
            because: format!(
                "{} lengths packed into sticks of {} with kerf {kerf}",
                lengths.len(),
                stick.length
            ),
        });
    }
    lines
}

/// Nails by kind; ordered by the box with their loss, block nails included.
pub(super) fn nails(house: &House, walls: &[BuiltWall<'_>], scope: &str, order: bool) -> Vec<TakeoffLine> {
    let Some(practice) = practice(house) else {
        return Vec::new();
    };
    let blocks: usize = walls.iter().map(|wall| wall.blocking.blocks.len()).sum();
    let end_nails = i64::try_from(blocks)
        .unwrap_or(i64::MAX)
        .saturating_mul(2 * i64::from(practice.block_end_nails));
    let plain = house
        .stock
        .nails
        .iter()
        .position(|nail| !nail.coating.resists_corrosion());
    let mut lines = Vec::new();
    for (nail, index) in house.stock.nails.iter().zip(0u32..) {
        let rows = walls
            .iter()
            .flat_map(|wall| &wall.nailing.rows)
            .filter(|row| row.nail == index);
        let sheets: i64 = rows.map(|row| i64::from(row.count())).sum();
        let ends = if plain == Some(index as usize) {
            end_nails
        } else {
            0
        };
        let used = sheets + ends;
        if used == 0 {
            continue;
        }
        let (loss, rate) = match nail.tool {
            NailTool::Gun => (practice.gun_loss_percent, house.rates.nail_gun),
            NailTool::Hand => (practice.hand_loss_percent, house.rates.nail_hand),
        };
        let boxes =
            Length::from_units(raised(used, loss)).spaces(Length::from_units(i64::from(nail.per_box.max(1))));
        let pounds =
            Decimal::new(nail_micropounds(nail), 6).and_then(|each| each.scaled(i128::from(used), 1, 1));
        lines.push(TakeoffLine {
            what: TakeoffWhat::Nails,
            item: nail.name.clone(),
            scope: scope.to_owned(),
            used: whole(used),
            ordered: if order { u32::try_from(boxes).ok() } else { None },
            unit: "nails".to_owned(),
            order_unit: if order {
                format!("boxes of {}", nail.per_box)
            } else {
                String::new()
            },
            pounds: pounds.unwrap_or_default(),
            money: if order {
                nail.price.times(boxes).unwrap_or_default()
            } else {
                Amount::default()
            },
            minutes: rate.times(used).unwrap_or_default(),
            because: format!(
                "{sheets} in sheathing, {ends} in block ends; loss {loss} % before rounding to boxes"
            ),
        });
    }
    lines
}
