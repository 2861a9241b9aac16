//! The cost read off finished stages.

use super::part::Tally;
use super::{Cost, Prices};
use crate::blocking::Blocking;
use crate::geometry::Interval;
use crate::layout::Layout;
use crate::nailing::Nailing;

/// What a wall costs, read off its layout, its blocking and its nailing.
pub fn cost(prices: &Prices<'_>, layout: &Layout, blocking: &Blocking, nailing: &Nailing) -> Cost {
    let mut tally = Tally::default();
    for piece in &layout.pieces {
        if let Some(sheet) = prices.stock.sheets.get(piece.sheet as usize) {
            tally.include(&prices.piece(&piece.outline, piece.sides, sheet, piece.running));
        }
    }
    let x = prices.frame.lower.span();
    for (index, band) in layout.bands.iter().enumerate() {
        tally.include(&prices.line(x));
        for seam in &band.seams {
            tally.include(&prices.seam(
                *seam,
                Interval {
                    lo: band.y0,
                    hi: band.y1,
                },
            ));
        }
        let sheets: Vec<u32> = layout
            .pieces
            .iter()
            .filter(|piece| piece.band as usize == index)
            .map(|piece| piece.sheet)
            .collect();
        tally.include(&prices.unlike(&sheets));
        if let Some(below) = index.checked_sub(1).and_then(|below| layout.bands.get(below)) {
            tally.include(&prices.level(band.y0, x));
            tally.include(&prices.offsets(
                (below.running, band.running),
                &below.seams,
                &band.seams,
                prices.half_sheet(layout, index),
            ));
        }
    }
    for block in &blocking.blocks {
        tally.include(&prices.block(block));
    }
    for stud in &blocking.studs {
        tally.include(&prices.stud(stud));
    }
    for row in &nailing.rows {
        tally.include(&prices.nail_row(row));
    }
    tally.cost()
}

impl Prices<'_> {
    /// Half the length of the sheet that a course is mostly laid with.
    fn half_sheet(&self, layout: &Layout, band: usize) -> crate::length::Length {
        let piece = layout.pieces.iter().find(|piece| piece.band as usize == band);
        let sheet = piece.and_then(|piece| self.stock.sheets.get(piece.sheet as usize));
        sheet.map_or(crate::length::Length::ZERO, |sheet| {
            (sheet.length + self.practice.gap).half()
        })
    }
}
