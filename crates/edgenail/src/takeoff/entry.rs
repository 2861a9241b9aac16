//! Everything that a wall takes, thing by thing.

use super::{BuiltWall, Charge, Kernel, Part, Place, Serves, TakeoffWhat, cut_length};
use crate::amount::Amount;
use crate::cutting::{CutNode, CutPlan, Source};
use crate::frame::Frame;
use crate::geometry::Rect;
use crate::house::{House, Method};
use crate::layout::storey_of;
use crate::length::Length;
use std::collections::BTreeMap;

/// What entries are added up by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Key {
    pub what: TakeoffWhat,
    /// Place in the stock's list; of work, the part's.
    pub item: usize,
    pub serves: Serves,
    pub place: Option<Place>,
}

/// So much of one thing.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Sum {
    pub used: i64,
    pub sheets: i64,
    pub square_units: i128,
    pub length: Length,
    pub minutes: Amount,
    pub charged: Amount,
}

impl Sum {
    pub fn include(&mut self, other: &Self) {
        self.used += other.used;
        self.sheets += other.sheets;
        self.square_units += other.square_units;
        self.length += other.length;
        self.minutes += other.minutes;
        self.charged += other.charged;
    }
}

/// One thing with where it is.
#[derive(Clone, Copy, Debug)]
pub(super) struct Entry<'a> {
    pub wall: u32,
    pub storey: &'a str,
    pub key: Key,
    pub sum: Sum,
}

/// Whole sheets of the cut plan, by the piece that is cut from each and hangs first.
pub(super) fn sheets_by_piece(cutting: &CutPlan) -> BTreeMap<(u32, u32), Vec<Source>> {
    let mut found: BTreeMap<(u32, u32), Vec<Source>> = BTreeMap::new();
    for sheet in &cutting.sheets {
        let mut blanks = Vec::new();
        gather(&sheet.tree, &mut blanks);
        let first = blanks
            .iter()
            .filter_map(|blank| cutting.blanks.get(*blank as usize))
            .min_by_key(|blank| blank.order);
        if let Some(first) = first {
            found
                .entry((first.wall, first.piece))
                .or_default()
                .push(sheet.source);
        }
    }
    found
}

fn gather(node: &CutNode, blanks: &mut Vec<u32>) {
    match node {
        CutNode::Split { first, second, .. } => {
            gather(first, blanks);
            gather(second, blanks);
        }
        CutNode::Piece { blank, .. } => blanks.push(*blank),
        CutNode::Offcut { .. } | CutNode::Waste => {}
    }
}

/// What a piece serves: a shear segment before a braced panel before nothing.
fn serves(frame: &Frame, blank: &Rect) -> Serves {
    let under = frame
        .segments
        .iter()
        .filter(|segment| segment.rect.overlaps(blank));
    under
        .map(|segment| match segment.method {
            Method::BracedPanel => Serves::Braced,
            Method::Segmented | Method::Perforated | Method::ForceTransfer | Method::Portal => Serves::Shear,
        })
        .min()
        .unwrap_or(Serves::Rest)
}

struct Entries<'a> {
    wall: u32,
    kernel: Kernel<'a>,
    list: Vec<Entry<'a>>,
}

/// What this wall takes.
pub(super) fn entries<'a>(
    house: &'a House,
    wall: &BuiltWall<'a>,
    opened: &BTreeMap<(u32, u32), Vec<Source>>,
) -> Vec<Entry<'a>> {
    let Some(kernel) = Kernel::new(house, wall.frame) else {
        return Vec::new();
    };
    let mut entries = Entries {
        wall: wall.wall,
        kernel,
        list: Vec::new(),
    };
    entries.pieces(wall, opened);
    entries.wood(wall);
    let x = wall.frame.lower.span();
    for band in &wall.layout.bands {
        let rect = Rect::new(x.lo, band.y0, x.hi, band.y1);
        entries.charge(kernel.line(x), &rect, Serves::All, None);
    }
    entries.list
}

impl<'a> Entries<'a> {
    fn add(&mut self, rect: &Rect, key: Key, sum: Sum) {
        let frame: &'a Frame = self.kernel.frame;
        let storey = storey_of(frame, rect).map_or("", |(_, storey)| storey.name.as_str());
        self.list.push(Entry {
            wall: self.wall,
            storey,
            key,
            sum,
        });
    }

    /// Work.
    fn charge(&mut self, charge: Charge, rect: &Rect, serves: Serves, place: Option<Place>) {
        let key = Key {
            what: TakeoffWhat::Labour,
            item: charge.part as usize,
            serves,
            place,
        };
        let sum = Sum {
            used: charge.quantity,
            minutes: charge.minutes,
            charged: charge.worth(self.kernel.rates),
            ..Sum::default()
        };
        self.add(rect, key, sum);
    }

    /// So many of a thing in stock.
    fn bought(
        &mut self,
        what: TakeoffWhat,
        item: u32,
        charge: Charge,
        rect: &Rect,
        serves: Serves,
        sum: Sum,
    ) {
        let key = Key {
            what,
            item: item as usize,
            serves,
            place: None,
        };
        let sum = Sum {
            used: charge.quantity,
            charged: charge.worth(self.kernel.rates),
            ..sum
        };
        self.add(rect, key, sum);
    }

    fn pieces(&mut self, wall: &BuiltWall<'a>, opened: &BTreeMap<(u32, u32), Vec<Source>>) {
        let kernel = self.kernel;
        let mut of_piece = BTreeMap::new();
        for piece in &wall.layout.pieces {
            let blank = piece.blank();
            let serves = serves(kernel.frame, &blank);
            of_piece.insert(piece.id, (blank, serves));
            let Some(sheet) = kernel.stock.sheets.get(piece.sheet as usize) else {
                continue;
            };
            let sources = opened.get(&(wall.wall, piece.id)).map_or(&[][..], Vec::as_slice);
            let place = Place::of(kernel.frame, kernel.practice, kernel.rates, &blank);
            kernel.piece(
                &piece.outline,
                sheet,
                piece.running,
                &mut |charge| match charge.part {
                    Part::Sheets => {
                        let sum = Sum {
                            square_units: piece.outline.area2() / 2,
                            ..Sum::default()
                        };
                        self.bought(TakeoffWhat::Pieces, piece.sheet, charge, &blank, serves, sum);
                    }
                    part => self.charge(charge, &blank, serves, part.is_setting().then_some(place)),
                },
            );
            for source in sources {
                self.opened(*source, &blank, serves);
            }
        }
        for row in &wall.nailing.rows {
            let Some((blank, serves)) = of_piece.get(&row.piece).copied() else {
                continue;
            };
            kernel.nail_row(row, &mut |charge| match charge.part {
                Part::Nails => {
                    self.bought(
                        TakeoffWhat::Nails,
                        row.nail,
                        charge,
                        &blank,
                        serves,
                        Sum::default(),
                    );
                }
                _ => self.charge(charge, &blank, serves, None),
            });
        }
    }

    /// A sheet whose first piece this is: a new one is counted, anything else is fetched.
    fn opened(&mut self, source: Source, blank: &Rect, serves: Serves) {
        match source {
            Source::Sheet { sheet } => {
                let sum = Sum {
                    sheets: 1,
                    ..Sum::default()
                };
                let none = Charge::buy(Part::Sheets, 0, Amount::ZERO);
                self.bought(TakeoffWhat::Pieces, sheet, none, blank, serves, sum);
            }
            Source::Offcut { .. } | Source::Drop { .. } => {
                let fetch = Charge::work(Part::FetchedOffcuts, 1, self.kernel.rates.fetch_offcut);
                self.charge(fetch, blank, serves, None);
                if let Some(last) = self.list.last_mut() {
                    last.sum.charged = Amount::ZERO;
                }
            }
        }
    }

    fn wood(&mut self, wall: &BuiltWall<'a>) {
        let kernel = self.kernel;
        for block in &wall.blocking.blocks {
            kernel.block(block, &mut |charge| {
                let sum = Sum {
                    length: block.length,
                    ..Sum::default()
                };
                match (charge.part, kernel.block_nail()) {
                    (Part::BlockLumber, _) => {
                        self.bought(
                            TakeoffWhat::Blocks,
                            block.stick,
                            charge,
                            &block.rect,
                            Serves::All,
                            sum,
                        );
                    }
                    (Part::Nails, Some(nail)) => {
                        self.bought(
                            TakeoffWhat::Nails,
                            nail,
                            charge,
                            &block.rect,
                            Serves::All,
                            Sum::default(),
                        );
                    }
                    _ => self.charge(charge, &block.rect, Serves::All, None),
                }
            });
        }
        let studs = wall.blocking.studs.iter().map(|stud| (stud.stick, stud.rect));
        let widened = wall.blocking.widened.iter().map(|wide| (wide.stick, wide.rect));
        for (stick, rect) in studs.chain(widened) {
            kernel.upright(stick, &rect, &mut |charge| match charge.part {
                Part::StudLumber => {
                    let sum = Sum {
                        length: cut_length(&rect),
                        ..Sum::default()
                    };
                    self.bought(TakeoffWhat::AddedStuds, stick, charge, &rect, Serves::All, sum);
                }
                _ => self.charge(charge, &rect, Serves::All, None),
            });
        }
    }
}
