//! Placing blanks one by one, told slowly: rectangles with their places on a sheet instead of trees of cuts.

use edgenail::Length;
use edgenail::cutting::{Blank, interchangeable};
use edgenail::house::{Sheet, Stock};
use std::cmp::Reverse;

/// Which blank comes first.
#[derive(Clone, Copy, Debug)]
pub enum First {
    Largest,
    Longest,
    Widest,
    LongestSide,
}

/// Which of the two cuts that free a blank comes first.
#[derive(Clone, Copy, Debug)]
pub enum Cut {
    Rip,
    Across,
    /// The one after which the larger single part is left.
    LeavesMost,
}

/// Which kind of sheet is opened.
#[derive(Clone, Copy, Debug)]
pub enum Opens {
    AskedFor,
    Cheapest,
    CheapestByArea,
    Largest,
}

/// One way of placing.
#[derive(Clone, Copy, Debug)]
pub struct Way {
    pub first: First,
    pub cut: Cut,
    /// The part with the least left over on one side, then on the other; else the part that was there first.
    pub closest: bool,
    pub opens: Opens,
}

impl Way {
    pub fn all() -> Vec<Self> {
        let mut ways = Vec::new();
        for first in [First::Largest, First::Longest, First::Widest, First::LongestSide] {
            for cut in [Cut::Rip, Cut::Across, Cut::LeavesMost] {
                for closest in [false, true] {
                    for opens in [
                        Opens::AskedFor,
                        Opens::Cheapest,
                        Opens::CheapestByArea,
                        Opens::Largest,
                    ] {
                        ways.push(Self {
                            first,
                            cut,
                            closest,
                            opens,
                        });
                    }
                }
            }
        }
        ways
    }
}

/// What plans are compared by: blanks not cut, price, new sheets, cuts, the largest single rest. Less is better.
pub type Rank = (usize, i64, usize, usize, Reverse<i128>);

/// A rectangle on a sheet.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Part {
    sheet: usize,
    corner: (Length, Length),
    size: (Length, Length),
}

#[derive(Debug)]
struct Open {
    kind: usize,
    /// A new sheet costs its price.
    new: bool,
    born: Option<u32>,
    size: (Length, Length),
    pieces: Vec<Part>,
    /// Across or along, and where on the sheet.
    cuts: Vec<(bool, Length)>,
}

struct Bench<'a> {
    stock: &'a Stock,
    kerf: Length,
    way: Way,
    left: Vec<Option<u32>>,
    opens: Vec<Open>,
    free: Vec<Part>,
}

fn area(size: (Length, Length)) -> i128 {
    i128::from(size.0.units()) * i128::from(size.1.units())
}

/// Places blanks in this way.
pub fn place(stock: &Stock, kerf: Length, blanks: &[Blank], way: Way) -> Rank {
    let mut bench = Bench {
        stock,
        kerf,
        way,
        left: stock.sheets.iter().map(|sheet| sheet.on_hand).collect(),
        opens: Vec::new(),
        free: Vec::new(),
    };
    for offcut in &stock.offcuts {
        if let Some(kind) = stock.sheets.iter().position(|sheet| sheet.name == offcut.sheet) {
            bench.open(kind, false, None, (offcut.width, offcut.length));
        }
    }
    for blank in blanks {
        for drop in &blank.drops {
            bench.open(
                blank.sheet as usize,
                false,
                Some(blank.order),
                (drop.width, drop.length),
            );
        }
    }
    let mut order: Vec<&Blank> = blanks.iter().collect();
    order.sort_by_key(|blank| {
        let (w, l) = (blank.width, blank.length);
        let measure = match way.first {
            First::Largest => (Length::ZERO, Length::ZERO),
            First::Longest => (l, w),
            First::Widest => (w, l),
            First::LongestSide => (w.max(l), w.min(l)),
        };
        (Reverse((measure, area((w, l)), w, l)), blank.order)
    });
    let uncut = order.iter().filter(|blank| !bench.cut(blank)).count();
    bench.give_way();
    bench.rank(uncut)
}

/// As it is stated, then turned.
fn lies(blank: &Blank) -> Vec<(Length, Length)> {
    let mut ways = vec![(blank.width, blank.length)];
    if blank.may_turn {
        ways.push((blank.length, blank.width));
    }
    ways
}

impl Bench<'_> {
    fn open(&mut self, kind: usize, new: bool, born: Option<u32>, size: (Length, Length)) {
        self.free.push(Part {
            sheet: self.opens.len(),
            corner: (Length::ZERO, Length::ZERO),
            size,
        });
        self.opens.push(Open {
            kind,
            new,
            born,
            size,
            pieces: Vec::new(),
            cuts: Vec::new(),
        });
    }

    fn serves(&self, kind: usize, blank: &Blank) -> bool {
        interchangeable(&self.stock.sheets[kind], &self.stock.sheets[blank.sheet as usize])
    }

    /// Cuts a blank; it may find no sheet. On a new sheet it is not turned if it fits as it is.
    fn cut(&mut self, blank: &Blank) -> bool {
        let (place, size) = if let Some(found) = self.best(blank) {
            found
        } else {
            let Some(kind) = self.kind(blank) else {
                return false;
            };
            if let Some(left) = &mut self.left[kind] {
                *left -= 1;
            }
            let sheet = &self.stock.sheets[kind];
            self.open(kind, true, None, (sheet.width, sheet.length));
            let fits = |(w, l): &(Length, Length)| *w <= sheet.width && *l <= sheet.length;
            let Some(size) = lies(blank).into_iter().find(fits) else {
                return false;
            };
            (self.free.len() - 1, size)
        };
        let part = self.free.remove(place);
        self.saw(part, size);
        true
    }

    /// The free part that takes a blank, and how the blank lies in it.
    fn best(&self, blank: &Blank) -> Option<(usize, (Length, Length))> {
        let mut found = Vec::new();
        for (place, part) in self.free.iter().enumerate() {
            let open = &self.opens[part.sheet];
            if !self.serves(open.kind, blank) || open.born.is_some_and(|born| blank.order <= born) {
                continue;
            }
            for (turned, size) in lies(blank).into_iter().enumerate() {
                let over = [part.size.0 - size.0, part.size.1 - size.1];
                if over.iter().all(|over| *over >= Length::ZERO) {
                    let closeness = if self.way.closest {
                        [over[0].min(over[1]), over[0].max(over[1])]
                    } else {
                        [Length::ZERO; 2]
                    };
                    found.push((closeness, place, turned, size));
                }
            }
        }
        found.sort_unstable();
        found.first().map(|(_, place, _, size)| (*place, *size))
    }

    fn kind(&self, blank: &Blank) -> Option<usize> {
        let sheets = &self.stock.sheets;
        let large = |sheet: &Sheet| {
            lies(blank)
                .iter()
                .any(|(w, l)| *w <= sheet.width && *l <= sheet.length)
        };
        let mut kinds: Vec<usize> = (0..sheets.len())
            .filter(|kind| self.serves(*kind, blank) && large(&sheets[*kind]) && self.left[*kind] != Some(0))
            .collect();
        let price = |kind: usize| i128::from(sheets[kind].price.ten_thousandths());
        let size = |kind: usize| area((sheets[kind].width, sheets[kind].length));
        let own = blank.sheet as usize;
        kinds.sort_by(|a, b| {
            let (a, b) = (*a, *b);
            let by_way = match self.way.opens {
                Opens::AskedFor => std::cmp::Ordering::Equal,
                Opens::Cheapest => price(a).cmp(&price(b)),
                Opens::CheapestByArea => (price(a) * size(b)).cmp(&(price(b) * size(a))),
                Opens::Largest => size(b).cmp(&size(a)),
            };
            by_way.then((a != own, price(a), a).cmp(&(b != own, price(b), b)))
        });
        kinds.first().copied()
    }

    /// At most two cuts free a blank from a part; what lies beyond the kerf of each is free again.
    fn saw(&mut self, part: Part, size: (Length, Length)) {
        let rest = |whole: Length, taken: Length| (whole - taken - self.kerf).max(Length::ZERO);
        let (beside, beyond) = (rest(part.size.0, size.0), rest(part.size.1, size.1));
        let after_rip = [(beside, part.size.1), (size.0, beyond)];
        let after_across = [(beside, size.1), (part.size.0, beyond)];
        let most = |parts: [(Length, Length); 2]| area(parts[0]).max(area(parts[1]));
        let rip_first = match self.way.cut {
            Cut::Rip => true,
            Cut::Across => false,
            Cut::LeavesMost => most(after_rip) >= most(after_across),
        };
        let sizes = if rip_first { after_rip } else { after_across };
        let (x, y) = part.corner;
        let corners = [(x + size.0 + self.kerf, y), (x, y + size.1 + self.kerf)];
        let open = &mut self.opens[part.sheet];
        for across in [!rip_first, rip_first] {
            let (at, whole, start) = if across {
                (size.1, part.size.1, y)
            } else {
                (size.0, part.size.0, x)
            };
            if at < whole {
                open.cuts.push((across, start + at));
                let which = usize::from(across);
                self.free.push(Part {
                    sheet: part.sheet,
                    corner: corners[which],
                    size: sizes[which],
                });
            }
        }
        open.pieces.push(Part { size, ..part });
    }

    /// A new sheet gives way to a cheaper kind, no larger, that holds its blanks where they lie.
    fn give_way(&mut self) {
        for open in self.opens.iter_mut().filter(|open| open.new) {
            let width = open
                .pieces
                .iter()
                .map(|piece| piece.corner.0 + piece.size.0)
                .max()
                .unwrap_or_default();
            let length = open
                .pieces
                .iter()
                .map(|piece| piece.corner.1 + piece.size.1)
                .max()
                .unwrap_or_default();
            let own = &self.stock.sheets[open.kind];
            let mut better: Vec<usize> = (0..self.stock.sheets.len())
                .filter(|kind| {
                    let sheet = &self.stock.sheets[*kind];
                    interchangeable(own, sheet)
                        && sheet.price < own.price
                        && (width <= sheet.width && sheet.width <= open.size.0)
                        && (length <= sheet.length && sheet.length <= open.size.1)
                        && self.left[*kind] != Some(0)
                })
                .collect();
            better.sort_by_key(|kind| self.stock.sheets[*kind].price);
            if let Some(kind) = better.first() {
                for (of, taken) in [(*kind, true), (open.kind, false)] {
                    if let Some(left) = &mut self.left[of] {
                        *left = if taken { *left - 1 } else { *left + 1 };
                    }
                }
                open.kind = *kind;
                open.size = (self.stock.sheets[*kind].width, self.stock.sheets[*kind].length);
            }
        }
    }

    fn rank(&self, uncut: usize) -> Rank {
        let used: Vec<&Open> = self.opens.iter().filter(|open| !open.pieces.is_empty()).collect();
        let new = || used.iter().filter(|open| open.new);
        let price = new()
            .map(|open| self.stock.sheets[open.kind].price.ten_thousandths())
            .sum();
        let on =
            |open: &Open, (across, at): (bool, Length)| at < if across { open.size.1 } else { open.size.0 };
        let cuts = used
            .iter()
            .map(|open| open.cuts.iter().filter(|cut| on(open, **cut)).count())
            .sum();
        let rest = |part: &Part| {
            let open = &self.opens[part.sheet];
            let side = |start: Length, size: Length, edge: Length| {
                (edge.min(start + size) - start).max(Length::ZERO)
            };
            let width = side(part.corner.0, part.size.0, open.size.0);
            let length = side(part.corner.1, part.size.1, open.size.1);
            if open.pieces.is_empty() {
                0
            } else {
                area((width, length))
            }
        };
        let largest = self.free.iter().map(rest).max().unwrap_or(0);
        (uncut, price, new().count(), cuts, Reverse(largest))
    }
}
