//! Placing blanks one by one.

use super::open::{Node, Open};
use super::policy::{FirstCut, Fit, Kind, Policy};
use super::sheet::{fits, lies, materials};
use super::{Blank, CutRules, CutSheet, Leftover, Source, Uncut, WhyUncut};
use crate::amount::Amount;
use crate::house::Stock;
use crate::length::{Area, Length};
use std::cmp::Reverse;

/// A free part: the open sheet and the node.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Spot {
    open: usize,
    node: usize,
    width: Length,
    length: Length,
}

/// Blanks placed on sheets.
#[derive(Clone, Debug)]
pub(super) struct Packed {
    opens: Vec<Open>,
    uncut: Vec<Uncut>,
    cost: Amount,
    cuts: usize,
    largest_rest: Area,
}

/// Places blanks, which are in building order, by one policy.
pub(super) fn pack(stock: &Stock, rules: &CutRules, blanks: &[Blank], policy: Policy) -> Packed {
    let mut packer = Packer {
        stock,
        kerf: rules.kerf,
        blanks,
        policy,
        materials: materials(stock),
        opens: Vec::new(),
        free: Vec::new(),
        left: stock.sheets.iter().map(|sheet| sheet.on_hand).collect(),
        least_side: blanks
            .iter()
            .map(|b| b.width.min(b.length))
            .min()
            .unwrap_or_default(),
    };
    packer.lay_out_stock();
    let mut order: Vec<usize> = (0..blanks.len()).collect();
    order.sort_by_cached_key(|index| blanks.get(*index).map(|blank| policy.order.key(blank)));
    let mut uncut = Vec::new();
    for index in order {
        if let Err(why) = packer.place(index) {
            uncut.push(Uncut {
                blank: place(index),
                why,
            });
        }
    }
    uncut.sort_by_key(|uncut| uncut.blank);
    packer.give_way();
    packer.finish(uncut)
}

struct Packer<'a> {
    stock: &'a Stock,
    kerf: Length,
    blanks: &'a [Blank],
    policy: Policy,
    materials: Vec<usize>,
    opens: Vec<Open>,
    free: Vec<Spot>,
    left: Vec<Option<u32>>,
    /// No blank is narrower.
    least_side: Length,
}

impl Packer<'_> {
    /// Off-cuts on hand, then drops: they cost nothing, so they come before every sheet.
    fn lay_out_stock(&mut self) {
        for (index, offcut) in self.stock.offcuts.iter().enumerate() {
            let kind = self
                .stock
                .sheets
                .iter()
                .position(|sheet| sheet.name == offcut.sheet);
            if let Some(kind) = kind {
                let source = Source::Offcut { offcut: place(index) };
                self.open(source, kind, (offcut.width, offcut.length), None);
            }
        }
        for (index, blank) in self.blanks.iter().enumerate() {
            for (number, drop) in blank.drops.iter().enumerate() {
                let source = Source::Drop {
                    blank: place(index),
                    drop: place(number),
                };
                self.open(
                    source,
                    blank.sheet as usize,
                    (drop.width, drop.length),
                    Some(blank.order),
                );
            }
        }
    }

    fn open(&mut self, source: Source, sheet: usize, size: (Length, Length), born: Option<u32>) -> Spot {
        let (width, length) = size;
        let spot = Spot {
            open: self.opens.len(),
            node: 0,
            width,
            length,
        };
        let nodes = vec![Node::Free { width, length }];
        self.opens.push(Open {
            source,
            sheet,
            width,
            length,
            born,
            nodes,
            first_order: u32::MAX,
        });
        self.release(spot);
        spot
    }

    /// A free part is offered to further blanks, unless all of them are too large.
    fn release(&mut self, spot: Spot) {
        if spot.width.min(spot.length) >= self.least_side {
            self.free.push(spot);
        }
    }

    fn place(&mut self, index: usize) -> Result<(), WhyUncut> {
        let blanks = self.blanks;
        let Some(blank) = blanks.get(index) else {
            return Ok(());
        };
        let (spot, turned) = match self.best_spot(blank) {
            Some(found) => found,
            None => self.open_sheet(blank)?,
        };
        self.free.retain(|free| *free != spot);
        self.cut(spot, index, blank, turned);
        Ok(())
    }

    fn serves(&self, spot: &Spot, blank: &Blank) -> bool {
        let material = |sheet: usize| self.materials.get(sheet);
        self.opens.get(spot.open).is_some_and(|open| {
            open.born.is_none_or(|born| blank.order > born)
                && material(open.sheet) == material(blank.sheet as usize)
        })
    }

    fn best_spot(&self, blank: &Blank) -> Option<(Spot, bool)> {
        let mut best = None;
        for (number, spot) in self.free.iter().enumerate() {
            for (width, length, turned) in lies(blank) {
                if width > spot.width || length > spot.length || !self.serves(spot, blank) {
                    continue;
                }
                let (across, along) = (spot.width - width, spot.length - length);
                let rank = match self.policy.fit {
                    Fit::First => (Length::ZERO, Length::ZERO, number, turned),
                    Fit::Closest => (across.min(along), across.max(along), number, turned),
                };
                if best.as_ref().is_none_or(|(least, _, _)| rank < *least) {
                    best = Some((rank, *spot, turned));
                }
            }
            if self.policy.fit == Fit::First && best.is_some() {
                break;
            }
        }
        best.map(|(_, spot, turned)| (spot, turned))
    }

    fn open_sheet(&mut self, blank: &Blank) -> Result<(Spot, bool), WhyUncut> {
        let own = blank.sheet as usize;
        let material = self.materials.get(own).copied();
        let serving = |kind: &usize| self.materials.get(*kind).copied() == material;
        let large: Vec<usize> = (0..self.stock.sheets.len())
            .filter(serving)
            .filter(|kind| {
                self.stock
                    .sheets
                    .get(*kind)
                    .is_some_and(|sheet| fits(blank, sheet.width, sheet.length))
            })
            .collect();
        if large.is_empty() {
            return Err(WhyUncut::TooLarge);
        }
        let in_stock = large
            .into_iter()
            .filter(|kind| self.left.get(*kind).is_some_and(|left| *left != Some(0)));
        let kind = in_stock
            .min_by_key(|kind| self.kind_rank(*kind, own))
            .ok_or(WhyUncut::NoneLeft)?;
        let Some(sheet) = self.stock.sheets.get(kind) else {
            return Err(WhyUncut::NoneLeft);
        };
        if let Some(Some(left)) = self.left.get_mut(kind) {
            *left -= 1;
        }
        let (width, length) = (sheet.width, sheet.length);
        let spot = self.open(Source::Sheet { sheet: place(kind) }, kind, (width, length), None);
        let straight = blank.width <= width && blank.length <= length;
        Ok((spot, !straight))
    }

    fn kind_rank(&self, kind: usize, own: usize) -> impl Ord + use<> {
        let sheet = self.stock.sheets.get(kind);
        let price = sheet.map_or(Amount::ZERO, |sheet| sheet.price);
        let area = sheet.map_or(Area::ZERO, |sheet| sheet.width * sheet.length);
        let square_inches = (area.square_units() / Area::SQUARE_INCH.square_units()).max(1);
        let key = match self.policy.kind {
            Kind::Own => 0,
            Kind::Cheapest => i128::from(price.ten_thousandths()),
            Kind::CheapestArea => i128::from(price.ten_thousandths()) * 1_000 / square_inches,
            Kind::Largest => -square_inches,
        };
        (key, kind != own, price, kind)
    }

    /// Each new sheet gives way to the cheapest kind that still holds its blanks where they lie.
    fn give_way(&mut self) {
        for open in &mut self.opens {
            let Source::Sheet { .. } = open.source else {
                continue;
            };
            let (width, length) = open.extent(self.kerf);
            let sheets = self.stock.sheets.iter().enumerate().zip(&self.materials);
            let serves = sheets.filter(|((_, sheet), material)| {
                Some(*material) == self.materials.get(open.sheet)
                    && (width..=open.width).contains(&sheet.width)
                    && (length..=open.length).contains(&sheet.length)
            });
            let left = &self.left;
            let in_stock = serves.filter(|((kind, _), _)| {
                *kind == open.sheet || left.get(*kind).is_some_and(|left| *left != Some(0))
            });
            let cheapest =
                in_stock.min_by_key(|((kind, sheet), _)| (sheet.price, *kind != open.sheet, *kind));
            let Some(((kind, sheet), _)) = cheapest.filter(|((kind, _), _)| *kind != open.sheet) else {
                continue;
            };
            if let Some(Some(left)) = self.left.get_mut(kind) {
                *left -= 1;
            }
            if let Some(Some(left)) = self.left.get_mut(open.sheet) {
                *left += 1;
            }
            open.source = Source::Sheet { sheet: place(kind) };
            open.sheet = kind;
            open.refit(sheet.width, sheet.length, self.kerf);
        }
    }

    /// Frees a blank from a part with at most two cuts.
    fn cut(&mut self, spot: Spot, index: usize, blank: &Blank, turned: bool) {
        let (width, length) = if turned {
            (blank.length, blank.width)
        } else {
            (blank.width, blank.length)
        };
        let rip_first = match self.policy.first_cut {
            FirstCut::Rip => true,
            FirstCut::Across => false,
            FirstCut::LargestRest => self.rest_of_rip(spot, width, length),
        };
        let piece = Node::Piece { blank: index, turned };
        let Some(open) = self.opens.get_mut(spot.open) else {
            return;
        };
        open.first_order = open.first_order.min(blank.order);
        let mut room = (spot.node, spot.width, spot.length);
        let mut freed = Vec::new();
        for across in [!rip_first, rip_first] {
            let (node, wide, long) = room;
            let (size, at) = if across { (long, length) } else { (wide, width) };
            if at >= size {
                continue;
            }
            let rest = (size - at - self.kerf).max(Length::ZERO);
            let (near, far) = if across {
                ((wide, at), (wide, rest))
            } else {
                ((at, long), (rest, long))
            };
            let first = open.nodes.len();
            open.nodes.push(Node::Free {
                width: near.0,
                length: near.1,
            });
            open.nodes.push(Node::Free {
                width: far.0,
                length: far.1,
            });
            if let Some(parted) = open.nodes.get_mut(node) {
                *parted = Node::Split {
                    across,
                    at,
                    first,
                    second: first + 1,
                };
            }
            freed.push(Spot {
                open: spot.open,
                node: first + 1,
                width: far.0,
                length: far.1,
            });
            room = (first, near.0, near.1);
        }
        if let Some(last) = open.nodes.get_mut(room.0) {
            *last = piece;
        }
        for spot in freed {
            self.release(spot);
        }
    }

    /// Ripping first leaves the larger single rest.
    fn rest_of_rip(&self, spot: Spot, width: Length, length: Length) -> bool {
        let left = |whole: Length, taken: Length| (whole - taken - self.kerf).max(Length::ZERO);
        let (beside, beyond) = (left(spot.width, width), left(spot.length, length));
        let rip = (beside * spot.length).max(beyond * width);
        let across = (beyond * spot.width).max(beside * length);
        rip >= across
    }

    fn finish(self, uncut: Vec<Uncut>) -> Packed {
        let used = self.opens.into_iter().filter(|open| open.first_order != u32::MAX);
        Packed::new(self.stock, used.collect(), uncut)
    }
}

impl Packed {
    /// Sheets that blanks were placed on.
    pub(super) fn new(stock: &Stock, opens: Vec<Open>, uncut: Vec<Uncut>) -> Self {
        let nodes: Vec<Node> = opens.iter().flat_map(Open::live).collect();
        let rest = |node: &Node| match node {
            Node::Free { width, length } => *width * *length,
            _ => Area::ZERO,
        };
        let cuts = nodes.iter().filter(|node| matches!(node, Node::Split { .. }));
        Self {
            cuts: cuts.count(),
            largest_rest: nodes.iter().map(rest).max().unwrap_or_default(),
            cost: opens.iter().filter_map(|open| price(stock, open)).sum(),
            opens,
            uncut,
        }
    }

    pub(super) fn opens(&self) -> &[Open] {
        &self.opens
    }

    pub(super) fn uncut(&self) -> &[Uncut] {
        &self.uncut
    }

    /// Less is better.
    pub(super) fn rank(&self) -> impl Ord + use<> {
        (
            self.uncut.len(),
            self.cost,
            self.new_sheets(),
            self.cuts,
            Reverse(self.largest_rest),
        )
    }

    /// What the new sheets come to, in the unit that plans are compared in.
    pub(super) fn compared(&self, counts: bool) -> Amount {
        if counts {
            Amount::whole(i32::try_from(self.new_sheets()).unwrap_or(i32::MAX))
        } else {
            self.cost
        }
    }

    /// As [`Packed::compared`] for some sheets, in ten-thousandths or as a number of sheets.
    pub(super) fn compare<'o>(stock: &Stock, opens: impl Iterator<Item = &'o Open>, counts: bool) -> i64 {
        let prices = opens.filter_map(|open| price(stock, open));
        prices
            .map(|price| if counts { 1 } else { price.ten_thousandths() })
            .sum()
    }

    fn new_sheets(&self) -> usize {
        self.opens
            .iter()
            .filter(|open| matches!(open.source, Source::Sheet { .. }))
            .count()
    }

    /// The cut sheets in the order of cutting, what is kept, what is not cut.
    pub(super) fn finish(mut self, rules: &CutRules) -> (Vec<CutSheet>, Vec<Leftover>, Vec<Uncut>) {
        self.opens.sort_by_key(|open| open.first_order);
        let mut leftovers = Vec::new();
        let mut sheets = Vec::new();
        for (number, open) in self.opens.iter().enumerate() {
            let tree = open.tree(&mut |width, length| {
                rules.keeps(width, length).then(|| {
                    let leftover = place(leftovers.len());
                    leftovers.push(Leftover {
                        cut_sheet: place(number),
                        sheet: place(open.sheet),
                        width,
                        length,
                    });
                    leftover
                })
            });
            let (width, length) = (open.width, open.length);
            sheets.push(CutSheet {
                source: open.source,
                sheet: place(open.sheet),
                width,
                length,
                tree,
            });
        }
        (sheets, leftovers, self.uncut)
    }
}

/// What a new sheet costs.
fn price(stock: &Stock, open: &Open) -> Option<Amount> {
    match open.source {
        Source::Sheet { sheet } => stock.sheets.get(sheet as usize).map(|sheet| sheet.price),
        _ => None,
    }
}

/// A place in a list. Lists of pieces are far shorter than that.
pub(super) fn place(index: usize) -> u32 {
    u32::try_from(index).unwrap_or(u32::MAX)
}
