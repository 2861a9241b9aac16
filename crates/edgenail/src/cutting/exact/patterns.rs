//! What one sheet can be cut into.

use super::estimate::Estimate;
use super::ground::Ground;
use super::part::{Made, Part, mark, together};
use super::problem::{Item, lies};
use std::cmp::Reverse;
use std::collections::{BinaryHeap, HashMap};

/// One sheet, and what may come out of it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Room<'a> {
    /// Width and length, with a kerf each.
    pub size: (i64, i64),
    pub items: &'a [Item],
    /// How many of each item.
    pub most: &'a [u32],
}

/// What a search for patterns ended with.
#[derive(Clone, Debug)]
pub(super) struct Outcome {
    /// Parts of the patterns that were found, which lead to one another.
    pub parts: Vec<Part>,
    /// The patterns asked for, the best first.
    pub found: Vec<u32>,
    /// No pattern is worth more.
    pub upper: i64,
    /// The work ran out: there may be patterns that were not found.
    pub stopped: bool,
}

/// Which patterns are wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Wanted {
    /// One that is worth most, if it is worth more than this.
    Best { above: i64 },
    /// All that are worth so much.
    All { least: i64 },
}

/// Finds patterns by setting parts side by side, those first that may lead to most.
///
/// `work` is what may be spent, in parts looked at, and falls.
pub(super) fn patterns(
    room: &Room<'_>,
    values: &[i64],
    wanted: Wanted,
    points: (usize, usize),
    work: &mut u64,
) -> Outcome {
    let estimate = Estimate::new(room.size, room.items, room.most, values, points);
    *work = work.saturating_sub(estimate.work());
    let search = Search {
        room,
        values,
        estimate,
        ground: Ground::new(room.items, room.most, values),
        limit: match wanted {
            Wanted::Best { above } => above,
            Wanted::All { least } => least - 1,
        },
        all: matches!(wanted, Wanted::All { .. }),
        joined: 0,
        better: Vec::new(),
        parts: Vec::new(),
        open: BinaryHeap::new(),
        by_width: Shelves::new(room.size.0),
        by_length: Shelves::new(room.size.1),
        seen: HashMap::new(),
    };
    search.run(work)
}

/// A part that was joined with others: what is looked at of it, together in memory.
#[derive(Clone, Copy)]
struct Closed {
    w: i64,
    l: i64,
    value: i64,
    part: u32,
}

/// Parts in rows of like size, so that those too large for a rest are not looked at.
struct Shelves {
    whole: i64,
    shelves: Vec<Vec<Closed>>,
}

const SHELVES: i64 = 64;

impl Shelves {
    fn new(whole: i64) -> Self {
        Self {
            whole: whole.max(1),
            shelves: (0..=SHELVES).map(|_| Vec::new()).collect(),
        }
    }

    fn put(&mut self, size: i64, part: Closed) {
        let place = self.up_to(size).saturating_sub(1);
        if let Some(shelf) = self.shelves.get_mut(place) {
            shelf.push(part);
        }
    }

    /// How many shelves may have parts that are no larger.
    fn up_to(&self, size: i64) -> usize {
        usize::try_from(size * SHELVES / self.whole + 1)
            .unwrap_or(0)
            .min(self.shelves.len())
    }
}

/// What joining two parts is worth in parts looked at.
const JOIN_WORK: u64 = 32;

struct Search<'a> {
    room: &'a Room<'a>,
    values: &'a [i64],
    estimate: Estimate,
    ground: Ground,
    /// Patterns that are worth no more are not wanted.
    limit: i64,
    all: bool,
    /// Parts that were joined since work was last counted.
    joined: u64,
    /// Patterns that were the best when they were found.
    better: Vec<u32>,
    parts: Vec<Part>,
    /// Parts to be joined with others, by what they may lead to.
    open: BinaryHeap<(i64, Reverse<u32>)>,
    /// Parts that were joined with others, by width and by length.
    by_width: Shelves,
    by_length: Shelves,
    /// Parts by the mark of their items.
    seen: HashMap<u64, Vec<u32>>,
}

impl Search<'_> {
    fn run(mut self, work: &mut u64) -> Outcome {
        for (index, item) in (0_u16..).zip(self.room.items) {
            let value = self.values.get(usize::from(index)).copied().unwrap_or(0);
            let asked = self
                .room
                .most
                .get(usize::from(index))
                .is_some_and(|most| *most > 0);
            let wanted = asked && (value > 0 || self.all);
            // What is worth nothing belongs to no best pattern, but somewhere it has to be cut.
            for (w, l, turned) in lies(item).filter(|_| wanted) {
                if w <= self.room.size.0 && l <= self.room.size.1 {
                    self.keep(Part {
                        w,
                        l,
                        items: Box::new([index]),
                        value,
                        made: Made::Piece { item: index, turned },
                    });
                }
            }
        }
        let (mut upper, mut stopped) = (self.limit, false);
        while let Some((reach, Reverse(next))) = self.open.pop() {
            if reach <= self.limit {
                break;
            }
            if *work == 0 {
                (upper, stopped) = (reach, true);
                break;
            }
            let looked = self.join_with_all(next);
            *work = work.saturating_sub(looked + JOIN_WORK * self.joined);
            self.joined = 0;
        }
        let found = if self.all {
            let maximal = self.maximal(work);
            stopped |= maximal.is_none();
            maximal.unwrap_or_default()
        } else {
            self.better.into_iter().rev().collect()
        };
        let best = found
            .first()
            .map_or(self.limit, |best: &u32| self.parts[*best as usize].value);
        Outcome {
            parts: self.parts,
            found,
            upper: upper.max(best),
            stopped,
        }
    }

    /// Sets a part beside and beyond all that fit, itself too; how many were looked at.
    fn join_with_all(&mut self, one: u32) -> u64 {
        let Part { w, l, value, .. } = self.parts[one as usize];
        let own = Closed {
            w,
            l,
            value,
            part: one,
        };
        self.by_width.put(w, own);
        self.by_length.put(l, own);
        let (width, length) = self.room.size;
        let mut looked = 8;
        for shelf in 0..self.by_width.up_to(width - w) {
            looked += self.by_width.shelves[shelf].len();
            for place in 0..self.by_width.shelves[shelf].len() {
                let other = self.by_width.shelves[shelf][place];
                if w + other.w <= width {
                    self.offer(
                        (w + other.w, l.max(other.l)),
                        value + other.value,
                        false,
                        (one, other.part),
                    );
                }
            }
        }
        for shelf in 0..self.by_length.up_to(length - l) {
            looked += self.by_length.shelves[shelf].len();
            for place in 0..self.by_length.shelves[shelf].len() {
                let other = self.by_length.shelves[shelf][place];
                if l + other.l <= length {
                    self.offer(
                        (w.max(other.w), l + other.l),
                        value + other.value,
                        true,
                        (one, other.part),
                    );
                }
            }
        }
        looked as u64
    }

    /// What can be added around a part of this size at most.
    fn around(&self, w: i64, l: i64) -> i64 {
        let (width, length) = self.room.size;
        let around = self.estimate.around(w, l);
        around.min(self.ground.worth(width * length - w * l))
    }

    /// Joins two parts if that may lead to a pattern that is wanted.
    fn offer(&mut self, (w, l): (i64, i64), value: i64, across: bool, (first, second): (u32, u32)) {
        if value + self.estimate.around(w, l) > self.limit && value + self.around(w, l) > self.limit {
            self.join(
                (w, l),
                value,
                Made::Join {
                    across,
                    first,
                    second,
                },
            );
        }
    }

    fn join(&mut self, (w, l): (i64, i64), value: i64, made: Made) {
        let Made::Join { first, second, .. } = made else {
            return;
        };
        self.joined += 1;
        let (first, second) = (&self.parts[first as usize], &self.parts[second as usize]);
        if let Some(items) = together(&first.items, &second.items, self.room.most) {
            self.keep(Part {
                w,
                l,
                items,
                value,
                made,
            });
        }
    }

    /// Keeps a part unless one with the same items is no larger.
    fn keep(&mut self, part: Part) {
        let same = self.seen.entry(mark(&part.items)).or_default();
        let parts = &self.parts;
        let covered = |other: &u32| {
            let other = &parts[*other as usize];
            other.w <= part.w && other.l <= part.l && other.items == part.items
        };
        if same.iter().any(covered) {
            return;
        }
        let Ok(index) = u32::try_from(self.parts.len()) else {
            return;
        };
        same.push(index);
        let reach = part.value + self.around(part.w, part.l);
        if part.value > self.limit && !self.all {
            self.limit = part.value;
            self.better.push(index);
        }
        // The last one found is worth its own value, though nothing can be added any more.
        if reach > self.limit {
            self.open.push((reach, Reverse(index)));
        }
        self.parts.push(part);
    }

    /// Patterns that are worth so much and are not part of another such pattern, the most valuable first; nothing if
    /// the work is spent before.
    fn maximal(&self, work: &mut u64) -> Option<Vec<u32>> {
        let worth = |index: &u32| self.parts[*index as usize].value > self.limit;
        let mut found: Vec<u32> = (0..self.parts.len())
            .filter_map(|index| u32::try_from(index).ok())
            .filter(worth)
            .collect();
        found.sort_by_key(|index| {
            let part = &self.parts[*index as usize];
            (Reverse(part.value), Reverse(part.items.len()), *index)
        });
        let mut kept: Vec<(u128, u32)> = Vec::new();
        for index in found {
            let items = &self.parts[index as usize].items;
            let own = kinds(items);
            *work = work.saturating_sub(kept.len() as u64 / 4);
            if *work == 0 {
                return None;
            }
            let held = |(kinds, other): &(u128, u32)| {
                own & !kinds == 0 && holds(&self.parts[*other as usize].items, items)
            };
            if !kept.iter().any(held) {
                kept.push((own, index));
            }
        }
        Some(kept.into_iter().map(|(_, index)| index).collect())
    }
}

/// Which items a list may have: a list that has all items of another has all its bits.
fn kinds(items: &[u16]) -> u128 {
    items.iter().fold(0, |kinds, item| kinds | 1 << (item % 128))
}

/// A rising list has every item of another, as often.
fn holds(all: &[u16], some: &[u16]) -> bool {
    let mut all = all.iter();
    some.iter().all(|item| all.any(|other| other == item))
}
