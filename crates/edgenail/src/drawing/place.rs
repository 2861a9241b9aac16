//! Finding room for labels.

use super::{Extent, MM, Micron, Spot};
use std::ops::Range;

/// What is taken on the paper, so that nothing is written over something else.
#[derive(Debug)]
pub(super) struct Room {
    sheet: Extent,
    taken: Squares,
    rather_not: Squares,
}

/// Boxes, sorted into squares of paper so that neighbours are found without reading all.
#[derive(Debug)]
struct Squares {
    across: usize,
    squares: Vec<Vec<Extent>>,
}

const SQUARE: Micron = 10 * MM;

/// The square that holds a coordinate.
fn square(at: Micron) -> usize {
    usize::try_from(at.max(0) / SQUARE).unwrap_or(0)
}

impl Squares {
    fn new(width: Micron) -> Self {
        Self {
            across: square(width) + 1,
            squares: Vec::new(),
        }
    }

    /// The square that a place lies on.
    fn holding(&self, x: Micron, y: Micron) -> usize {
        square(y) * self.across + square(x).min(self.across - 1)
    }

    /// The squares that a box lies on, row by row.
    fn under(&self, extent: &Extent) -> impl Iterator<Item = Range<usize>> + use<> {
        let first = self.holding(extent.x0, extent.y0);
        let wide = self.holding(extent.x1, extent.y0).saturating_sub(first);
        let rows = square(extent.y1).saturating_sub(square(extent.y0));
        let across = self.across;
        (0..=rows)
            .map(move |row| first + row * across)
            .map(move |first| first..first + wide + 1)
    }

    fn add(&mut self, extent: Extent) {
        for row in self.under(&extent) {
            if row.end > self.squares.len() {
                self.squares.resize(row.end, Vec::new());
            }
            for square in self.squares.get_mut(row).into_iter().flatten() {
                square.push(extent);
            }
        }
    }

    /// How many boxes meet this one, counted up to a number: each where the overlap begins.
    fn meeting(&self, extent: &Extent, most: usize) -> usize {
        let mut count = 0;
        for row in self.under(extent) {
            let end = row.end.min(self.squares.len());
            for index in row.start..end {
                for taken in self.squares.get(index).into_iter().flatten() {
                    if count < most
                        && taken.meets(extent)
                        && self.holding(taken.x0.max(extent.x0), taken.y0.max(extent.y0)) == index
                    {
                        count += 1;
                    }
                }
                if count == most {
                    return count;
                }
            }
        }
        count
    }
}

impl Room {
    /// A sheet of paper with nothing on it.
    pub(super) fn new(sheet: Extent) -> Self {
        Self {
            sheet,
            taken: Squares::new(sheet.x1),
            rather_not: Squares::new(sheet.x1),
        }
    }

    /// Nothing is there, and it is on the sheet.
    pub(super) fn is_free(&self, extent: &Extent) -> bool {
        self.sheet.covers(extent) && self.taken.meeting(extent, 1) == 0
    }

    /// How many things lie there that had better stay visible, counted up to a number.
    fn hits(&self, extent: &Extent, most: usize) -> usize {
        self.rather_not.meeting(extent, most)
    }

    /// Takes a place.
    pub(super) fn take(&mut self, extent: Extent) {
        self.taken.add(extent);
    }

    /// Marks a place as better kept free.
    pub(super) fn spare(&mut self, extent: Extent) {
        self.rather_not.add(extent);
    }

    /// The first of the free places that covers the least.
    pub(super) fn best(&self, places: impl IntoIterator<Item = Extent>) -> Option<(Extent, usize)> {
        self.best_under(usize::MAX, places, |_| true)
    }

    /// The first of the free places that fit and cover the least, if that is less than a number.
    pub(super) fn best_under(
        &self,
        limit: usize,
        places: impl IntoIterator<Item = Extent>,
        fits: impl Fn(&Extent) -> bool,
    ) -> Option<(Extent, usize)> {
        let mut best: Option<(Extent, usize)> = None;
        for place in places {
            let least = best.map_or(limit, |(_, least)| least);
            // Most places cover too much: that is asked first.
            let hits = self.hits(&place, least);
            if hits < least && self.is_free(&place) && fits(&place) {
                best = Some((place, hits));
                if hits == 0 {
                    break;
                }
            }
        }
        best
    }

    /// The free box of this size nearest to a place, searched in widening rings up to a distance.
    pub(super) fn nearest(&self, at: Spot, width: Micron, height: Micron, most: Micron) -> Option<Extent> {
        around(at, width, height, most).find(|place| self.is_free(place))
    }

    /// The nearest free box that covers nothing better kept visible, if there is one close by; else the nearest.
    pub(super) fn clearest(&self, at: Spot, width: Micron, height: Micron, most: Micron) -> Option<Extent> {
        const CLOSE: Micron = 15 * MM;
        self.best(around(at, width, height, most.min(CLOSE)))
            .map(|(place, _)| place)
            .or_else(|| self.nearest(at, width, height, most))
    }
}

/// Boxes of a size in widening rings around a place.
fn around(at: Spot, width: Micron, height: Micron, most: Micron) -> impl Iterator<Item = Extent> {
    const STEP: Micron = 1_500;
    let rings = (0..=most / STEP).flat_map(move |ring| {
        let reach = ring * STEP;
        let sides = if ring == 0 { 1 } else { 16 };
        (0..sides).map(move |side| {
            let (right, down) = COMPASS.get(side).copied().unwrap_or((0, 0));
            at.moved(right * reach / 1_000, down * reach / 1_000)
        })
    });
    rings.map(move |middle| Extent::around(middle, width, height))
}

/// Sixteen directions in thousandths, upper right first.
const COMPASS: [(Micron, Micron); 16] = [
    (707, -707),
    (-707, -707),
    (707, 707),
    (-707, 707),
    (0, -1_000),
    (0, 1_000),
    (1_000, 0),
    (-1_000, 0),
    (383, -924),
    (-383, -924),
    (383, 924),
    (-383, 924),
    (924, -383),
    (-924, -383),
    (924, 383),
    (-924, 383),
];

/// Moves places along a line so that neighbours are at least so far apart, keeping their order and moving as
/// little as a sweep can. The places must rise; the result stays between the ends if there is room.
pub(super) fn spread(places: &[Micron], apart: Micron, ends: (Micron, Micron)) -> Vec<Micron> {
    let mut moved: Vec<Micron> = Vec::with_capacity(places.len());
    // Groups of places that push each other: sum of the starts that each of its places wants, and how many they are.
    let mut groups: Vec<(Micron, Micron)> = Vec::new();
    for &place in places {
        groups.push((place, 1));
        while let [.., (sum_a, n_a), (sum_b, n_b)] = groups[..] {
            if sum_a.div_euclid(n_a) + n_a * apart <= sum_b.div_euclid(n_b) {
                break;
            }
            groups.pop();
            if let Some(last) = groups.last_mut() {
                // Places of the second group stand so much further from the start of the first.
                *last = (sum_a + sum_b - n_b * n_a * apart, n_a + n_b);
            }
        }
    }
    for &(sum, count) in &groups {
        let start = sum.div_euclid(count);
        moved.extend((0..count).map(|k| start + k * apart));
    }
    // Push in from the far end, then from the near end, which wins if there is too little room.
    let mut limit = ends.1;
    for place in moved.iter_mut().rev() {
        *place = (*place).min(limit);
        limit = *place - apart;
    }
    let mut limit = ends.0;
    for place in &mut moved {
        *place = (*place).max(limit);
        limit = *place + apart;
    }
    moved
}

#[cfg(test)]
mod tests;
