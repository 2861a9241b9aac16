//! What a whole wall costs: read off finished stages, and summed from local prices.

use super::{Account, Cost, Prices, Tally};
use crate::amount::Amount;
use crate::blocking::Blocking;
use crate::edges::{EdgeRun, Site};
use crate::geometry::Interval;
use crate::layout::{Layout, Piece};
use crate::length::Length;
use crate::nailing::{Nailing, nail_piece};

/// What a wall costs, read off its layout, its blocking and its nailing.
pub fn cost(prices: &Prices<'_>, layout: &Layout, blocking: &Blocking, nailing: &Nailing) -> Cost {
    let mut tally = Tally::default();
    of_layout(prices, layout, &mut tally);
    prices.wood(&mut tally, blocking);
    for row in &nailing.rows {
        prices.nail_row(row, &mut tally);
    }
    tally.cost()
}

/// The part of the [`cost`] that the layout alone tells: all but backing and nails.
pub fn layout_cost(prices: &Prices<'_>, layout: &Layout) -> Amount {
    let mut total = Amount::ZERO;
    of_layout(prices, layout, &mut total);
    total
}

fn of_layout(prices: &Prices<'_>, layout: &Layout, account: &mut impl Account) {
    for piece in &layout.pieces {
        prices.of_piece(piece, account);
    }
    prices.lines(account, layout);
    prices.courses(account, layout);
}

/// The sum of local prices: each piece for itself, with the nails that its own edges ask for, then seams, courses and
/// added wood. `runs` are the edges on the backed frame that `site` is for.
pub fn local(
    prices: &Prices<'_>,
    site: &Site<'_>,
    layout: &Layout,
    runs: &[EdgeRun],
    blocking: &Blocking,
) -> Tally {
    let mut tally = Tally::default();
    let (mut rows, mut snags) = (Vec::new(), Vec::new());
    for piece in &layout.pieces {
        prices.of_piece(piece, &mut tally);
        let own: Vec<EdgeRun> = runs.iter().filter(|run| run.piece == piece.id).cloned().collect();
        rows.clear();
        nail_piece(site, piece, &own, &mut rows, &mut snags);
        for row in &rows {
            prices.nail_row(row, &mut tally);
        }
    }
    prices.lines(&mut tally, layout);
    prices.courses(&mut tally, layout);
    prices.wood(&mut tally, blocking);
    tally
}

/// What a framer would rather not do about a layout: no take-off lists it.
pub fn judgement(prices: &Prices<'_>, layout: &Layout) -> Tally {
    let mut tally = Tally::default();
    let in_stock = |piece: &&Piece| (piece.sheet as usize) < prices.kernel.stock.sheets.len();
    for piece in layout.pieces.iter().filter(in_stock) {
        prices.narrow(&mut tally, &piece.outline.bounds(), piece.sides);
    }
    prices.courses(&mut tally, layout);
    tally
}

impl Prices<'_> {
    /// Adds a piece of a layout.
    pub(crate) fn of_piece(&self, piece: &Piece, account: &mut impl Account) {
        if let Some(sheet) = self.kernel.stock.sheets.get(piece.sheet as usize) {
            self.piece(&piece.outline, piece.sides, sheet, piece.running, account);
        }
    }

    /// The line of every course.
    fn lines(&self, account: &mut impl Account, layout: &Layout) {
        for _ in &layout.bands {
            self.line(self.kernel.frame.lower.span(), account);
        }
    }

    /// Seams, and how courses fit with one another and with the wall.
    fn courses(&self, account: &mut impl Account, layout: &Layout) {
        let x = self.kernel.frame.lower.span();
        for (index, band) in layout.bands.iter().enumerate() {
            for seam in &band.seams {
                let y = Interval {
                    lo: band.y0,
                    hi: band.y1,
                };
                self.seam(*seam, y, account);
            }
            let sheets: Vec<u32> = layout
                .pieces
                .iter()
                .filter(|piece| piece.band as usize == index)
                .map(|piece| piece.sheet)
                .collect();
            self.unlike(&sheets, account);
            if let Some(below) = index.checked_sub(1).and_then(|below| layout.bands.get(below)) {
                self.level(band.y0, x, account);
                self.offsets(
                    (below.running, band.running),
                    &below.seams,
                    &band.seams,
                    self.half_sheet(layout, index),
                    account,
                );
            }
        }
    }

    /// Adds blocks, added studs, widened members.
    pub fn wood(&self, account: &mut impl Account, blocking: &Blocking) {
        for block in &blocking.blocks {
            self.block(block, account);
        }
        for stud in &blocking.studs {
            self.upright(stud.stick, &stud.rect, account);
        }
        for widened in &blocking.widened {
            self.upright(widened.stick, &widened.rect, account);
        }
    }

    /// Half the length of the sheet that a course is mostly laid with.
    fn half_sheet(&self, layout: &Layout, band: usize) -> Length {
        let of_course = || layout.pieces.iter().filter(|piece| piece.band as usize == band);
        let count = |sheet: u32| of_course().filter(|piece| piece.sheet == sheet).count();
        let most = of_course()
            .map(|piece| piece.sheet)
            .max_by_key(|sheet| (count(*sheet), *sheet));
        let sheet = most.and_then(|sheet| self.kernel.stock.sheets.get(sheet as usize));
        sheet.map_or(Length::ZERO, |sheet| {
            (sheet.length + self.kernel.practice.gap).half()
        })
    }
}
