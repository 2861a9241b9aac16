//! One nail where two rows meet.

use super::NailRow;
use crate::geometry::{Interval, Point, Rect};
use crate::length::Length;
use std::ops::RangeInclusive;

/// Leaves out nails, of the rows from this one on, that stand where an earlier one of them stands.
pub(super) fn drive_once(rows: &mut Vec<NailRow>, from: usize) {
    let doubles = doubles(rows.get(from..).unwrap_or_default());
    if doubles.is_empty() {
        return;
    }
    let own = rows.split_off(from);
    for (at, row) in own.iter().enumerate() {
        let mut first = row.first;
        let left_out = doubles
            .iter()
            .filter(|(row, _)| *row == at)
            .map(|(_, index)| *index);
        for end in left_out.chain([row.last + 1]) {
            if first < end {
                rows.push(NailRow {
                    first,
                    last: end - 1,
                    ..row.clone()
                });
            }
            first = end + 1;
        }
    }
}

/// Nails that stand where one of an earlier row stands: row and number, rising.
fn doubles(rows: &[NailRow]) -> Vec<(usize, u32)> {
    let around: Vec<Rect> = rows.iter().map(around).collect();
    let mut doubles = Vec::new();
    for (at, (row, mine)) in rows.iter().zip(&around).enumerate() {
        for (earlier, theirs) in rows.iter().zip(&around).take(at) {
            let meet =
                mine.x0 <= theirs.x1 && theirs.x0 <= mine.x1 && mine.y0 <= theirs.y1 && theirs.y0 <= mine.y1;
            if meet {
                let stands = |index: &u32| has_nail_at(earlier, row.position(*index));
                doubles.extend(near(row, theirs).filter(stands).map(|index| (at, index)));
            }
        }
    }
    doubles.sort_unstable();
    doubles.dedup();
    doubles
}

/// The smallest rectangle round a row's nails.
fn around(row: &NailRow) -> Rect {
    let (first, last) = (row.position(row.first), row.position(row.last));
    Rect::from_spans(Interval::new(first.x, last.x), Interval::new(first.y, last.y))
}

fn has_nail_at(row: &NailRow, at: Point) -> bool {
    near(row, &Rect::new(at.x, at.y, at.x, at.y)).any(|index| row.position(index) == at)
}

/// Numbers of the nails of a row that may stand in a rectangle: all that do, and perhaps one or two beside it.
fn near(row: &NailRow, rect: &Rect) -> RangeInclusive<u32> {
    let (right, up) = (row.to.x - row.from.x, row.to.y - row.from.y);
    let (from, way, span) = if right.abs() < up.abs() {
        (row.from.y, up, rect.y_span())
    } else {
        (row.from.x, right, rect.x_span())
    };
    if way == Length::ZERO {
        return row.first..=row.last;
    }
    let share = |place: Length| {
        let along = (place - from).units() * i64::from(row.spaces);
        along.div_euclid(way.units())
    };
    let (a, b) = (share(span.lo), share(span.hi));
    // Rounding puts a nail less than one space off its share of the way.
    let (least, most) = (a.min(b) - 1, a.max(b) + 1);
    let whole = |index: i64| u32::try_from(index.max(0)).unwrap_or(u32::MAX);
    whole(least).max(row.first)..=whole(most).min(row.last)
}

#[cfg(test)]
mod tests;
