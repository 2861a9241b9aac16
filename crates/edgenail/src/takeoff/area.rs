//! The area method: what the sheathed area alone would ask for.

use super::BuiltWall;
use crate::frame::Frame;
use crate::geometry::{Interval, Toward};
use crate::house::{House, Sheet};
use crate::length::{Area, Length, Rounding};

/// The area of one storey of one wall.
#[derive(Clone, Copy, Debug)]
pub(super) struct StoreyArea<'a> {
    pub wall: u32,
    pub storey: &'a str,
    /// With every opening, in square units.
    pub gross: i128,
    /// What the method deducts.
    pub deducted: i128,
}

/// The area of a sheet as it is counted in estimates: a side up to 1/8 in. short of a whole inch counts as that inch,
/// since sheets are cut so much short of what they are called (PS 1 and PS 2, as described in a trade primer).
///
/// ```
/// use edgenail::Length;
/// use edgenail::takeoff::nominal_area;
/// let foot = Length::feet(1);
/// let sized = nominal_area(Length::sixteenths(47 * 16 + 14), Length::sixteenths(95 * 16 + 14));
/// assert_eq!(sized, 32 * (foot * foot).square_units());
/// ```
pub fn nominal_area(width: Length, length: Length) -> i128 {
    let called = |side: Length| {
        let inch = side.round_to(Length::inches(1), Rounding::Up);
        if inch - side <= Length::sixteenths(2) {
            inch
        } else {
            side
        }
    };
    (called(width) * called(length)).square_units()
}

/// Sheets for an area, rounded up: area over the area of one, nothing added.
///
/// ```
/// use edgenail::takeoff::area_sheets;
/// assert_eq!(area_sheets(65, 32), 3);
/// ```
pub fn area_sheets(area: i128, sheet: i128) -> i64 {
    let sheet = sheet.max(1);
    i64::try_from((area + sheet - 1) / sheet).unwrap_or(i64::MAX)
}

/// The sheet that the method counts in: of the kinds that are used, the one that most of the area is cut from.
pub(super) fn counted_in<'a>(house: &'a House, walls: &[BuiltWall<'_>]) -> Option<&'a Sheet> {
    let area = |index: usize| -> i128 {
        let pieces = walls.iter().flat_map(|wall| &wall.layout.pieces);
        pieces
            .filter(|piece| piece.sheet as usize == index)
            .map(|piece| piece.outline.area2())
            .sum()
    };
    let kinds = house.stock.sheets.iter().enumerate();
    kinds
        .map(|(index, sheet)| (area(index), sheet))
        .filter(|(area, _)| *area > 0)
        .reduce(|most, other| if other.0 > most.0 { other } else { most })
        .map(|(_, sheet)| sheet)
}

/// The areas of every storey of every wall, and the sheet that they are counted in.
pub(super) struct Areas<'a> {
    pub storeys: Vec<StoreyArea<'a>>,
    pub sheet: Option<&'a Sheet>,
}

/// Each storey from its lowest plate, the lowest from where sheathing begins, up to the next storey or to where
/// sheathing ends.
pub(super) fn areas<'a>(house: &'a House, walls: &[BuiltWall<'a>]) -> Areas<'a> {
    let mut storeys = Vec::new();
    for wall in walls {
        let frame = wall.frame;
        let Some(practice) = house.walls.get(wall.wall as usize).map(|wall| &wall.practice) else {
            continue;
        };
        let least = practice
            .area_method_opening_least
            .scaled(Area::SQUARE_FOOT.square_units(), 1, 0)
            .and_then(|least| least.in_units_of(0))
            .map_or(i128::MAX, i128::from);
        for (storey, index) in frame.storeys.iter().zip(0u32..) {
            let openings = frame.openings.iter().filter(|opening| opening.storey == index);
            let deducted = openings
                .map(|opening| opening.rect.area())
                .filter(|area| practice.area_method_deducts && *area > least)
                .sum();
            storeys.push(StoreyArea {
                wall: wall.wall,
                storey: &storey.name,
                gross: gross(frame, index),
                deducted,
            });
        }
    }
    Areas {
        storeys,
        sheet: counted_in(house, walls),
    }
}

fn gross(frame: &Frame, index: u32) -> i128 {
    let Some(storey) = frame.storeys.get(index as usize) else {
        return 0;
    };
    let Some(section) = frame.sections.get(storey.section as usize) else {
        return 0;
    };
    let others = || {
        frame
            .storeys
            .iter()
            .filter(|other| other.section == storey.section)
    };
    let from = others()
        .any(|other| other.base < storey.base)
        .then_some(storey.base);
    let to = others()
        .map(|other| other.base)
        .filter(|base| *base > storey.base)
        .min();
    let all = frame.lower.span();
    let first = storey.section == 0;
    let last = storey.section as usize + 1 == frame.sections.len();
    let x = Interval {
        lo: if first { all.lo } else { section.x.lo },
        hi: if last { all.hi } else { section.x.hi },
    };
    let mut xs: Vec<Length> = frame.lower.breaks();
    xs.extend(frame.upper.breaks());
    xs.extend([x.lo, x.hi]);
    xs.retain(|at| x.lo <= *at && *at <= x.hi);
    xs.sort_unstable();
    xs.dedup();
    let height = |at: Length, toward: Toward| {
        let lower = from.or_else(|| frame.lower.y_at(at, toward)).unwrap_or_default();
        let upper = to.or_else(|| frame.upper.y_at(at, toward)).unwrap_or_default();
        (upper - lower).max(Length::ZERO)
    };
    let strips = xs.iter().zip(xs.iter().skip(1));
    let doubled: i128 = strips
        .map(|(a, b)| ((height(*a, Toward::Right) + height(*b, Toward::Left)) * (*b - *a)).square_units())
        .sum();
    doubled / 2
}
