//! Levels where courses may meet.

use super::Space;
use crate::house::Level as StackLevel;
use crate::length::Length;

/// Levels where courses may begin and end.
#[derive(Debug)]
pub(super) struct Levels {
    /// All of them, rising, the bottom line first.
    pub all: Vec<Length>,
    /// Those where the uppermost course may end.
    pub ends: Vec<Length>,
}

/// Levels above the bottom line: plate laps, rims, block rows, breaks that practice asks for, and whole sheets stepped
/// up and down from each of these.
pub(super) fn levels(space: &Space<'_>, bottom: Length) -> Levels {
    let top = space.top;
    if !space.practice.breaks.is_empty() {
        let mut levels: Vec<Length> = space
            .practice
            .breaks
            .iter()
            .copied()
            .filter(|y| bottom < *y && *y < top)
            .collect();
        levels.push(bottom);
        return with_ends(space, bottom, levels);
    }
    let mut levels = vec![bottom];
    levels.extend(fixed_levels(space));
    if space.least_strips {
        levels.extend(least_strips(space, bottom));
    }
    // Whole sheets hang down from the top too.
    levels.extend(space.sizes.iter().flat_map(|size| space.seams_under(top - *size)));
    let mut front = levels.clone();
    // Two steps of whole sheets from a fixed level reach every plate of a storey.
    for _ in 0..2 {
        let mut next = Vec::new();
        for y in &front {
            let half = space.half_gap(*y);
            let start = if *y == bottom { bottom } else { *y + half };
            for size in &space.sizes {
                next.extend(space.seams_over(start + *size));
                next.extend(space.seams_under(*y - half - *size));
            }
        }
        next.retain(|y| bottom < *y && *y <= top);
        next.sort_unstable();
        next.dedup();
        levels.extend(next.iter().copied());
        front = next;
    }
    levels.retain(|y| bottom <= *y && *y < top && (*y == bottom || space.seam_may_lie_at(*y)));
    with_ends(space, bottom, levels)
}

fn with_ends(space: &Space<'_>, bottom: Length, mut levels: Vec<Length>) -> Levels {
    let ends = space.end_levels(bottom, &levels);
    levels.extend(&ends);
    levels.sort_unstable();
    levels.dedup();
    Levels { all: levels, ends }
}

/// A least strip from the bottom line, and from the top.
fn least_strips(space: &Space<'_>, bottom: Length) -> [Length; 2] {
    let least = space.practice.strip_least;
    let (low, high) = (bottom + least, space.top - least);
    [low + space.half_gap(low), high - space.half_gap(high)]
}

/// Plate laps, rims, block rows, the nearest levels to a plate line under a gable truss.
fn fixed_levels(space: &Space<'_>) -> Vec<Length> {
    let mut levels = Vec::new();
    let frame = space.frame;
    for storey in &frame.storeys {
        let topmost = storey.top - storey.topmost_from;
        levels.push(storey.topmost_from + topmost.half());
        levels.push(storey.base + (storey.studs_from - storey.base).half());
        levels.push(storey.studs_to + (storey.top - storey.studs_to).half());
    }
    for band in &frame.bands {
        if let Some((rim, _)) = &band.rim {
            levels.push((rim.lo + rim.hi).half());
        }
        levels.extend([band.y.lo, band.y.hi]);
    }
    let clear = space.practice.gable_seam_clear;
    for section in frame.sections.iter().filter(|section| section.gable) {
        levels.extend([section.top - clear, section.top + clear]);
    }
    for (section, place) in space.wall.sections.iter().zip(0u32..) {
        let storeys = section.stack.iter().filter_map(|level| match level {
            StackLevel::Storey(storey) => Some(storey),
            StackLevel::FloorBand(_) => None,
        });
        let places = frame.storeys.iter().filter(|storey| storey.section == place);
        for (storey, place) in storeys.zip(places) {
            levels.extend(storey.block_rows.iter().map(|row| place.base + *row));
        }
    }
    levels
}
