//! What a course between two levels seems to cost before its seams are known.

use super::alike::Alike;
use super::level::Levels;
use super::space::{Space, up_and_across};
use crate::amount::Amount;
use crate::geometry::{Interval, Rect};
use crate::house::Sheet;
use crate::layout::{Joint, Running, Sides};
use crate::length::Length;
use crate::takeoff::Place;

/// More than any wall costs: what practice forbids is proposed only where there is nothing else.
const FORBIDDING: Amount = Amount::whole(100_000);

/// Prices courses between levels.
pub(super) struct Guesses<'s, 'a> {
    space: &'s Space<'a>,
    /// Levels, rising, the bottom line first.
    pub levels: &'s [Length],
    /// Levels where the uppermost course may end.
    pub ends: Vec<bool>,
    /// Half the gap at each level.
    gaps: Vec<Length>,
    /// The seam at each level, nothing where the uppermost course ends, with the line of the course below it.
    seams: Vec<Amount>,
}

/// A course up to some level.
#[derive(Clone, Copy)]
pub(super) struct Guess {
    /// The place of the level that it starts at.
    pub from: usize,
    pub running: Running,
    /// What it seems to cost.
    pub price: Amount,
}

/// The sheets of one direction.
struct Row<'a> {
    sheet: &'a Sheet,
    up: Length,
    across: Length,
    /// How many of them stand side by side.
    count: i64,
    /// What one of them costs by its height, for each place that it is set from and along a floor band or not.
    alike: Alike<Amount>,
}

impl<'s, 'a> Guesses<'s, 'a> {
    pub fn new(space: &'s Space<'a>, levels: &'s Levels) -> Self {
        let Levels { all: levels, ends } = levels;
        let ends: Vec<bool> = levels.iter().map(|level| ends.contains(level)).collect();
        let mut line = Amount::ZERO;
        space.prices.line(space.x, &mut line);
        let seam = |(level, end): (&Length, &bool)| {
            if *end {
                line
            } else {
                line + level_seam(space, *level)
            }
        };
        Self {
            space,
            levels,
            gaps: levels.iter().map(|level| space.half_gap(*level)).collect(),
            seams: levels.iter().zip(&ends).map(seam).collect(),
            ends,
        }
    }

    /// Every course that may run so, by the level that it ends at.
    pub fn courses(&self, running: Running) -> Vec<Vec<Guess>> {
        let mut rows = self.rows(running);
        let mut course = |from, to| {
            let price = self.price(running, &mut rows, from, to)?;
            Some(Guess { from, running, price })
        };
        let to = 0..self.levels.len();
        to.map(|to| (0..to).filter_map(|from| course(from, to)).collect())
            .collect()
    }

    fn rows(&self, running: Running) -> Vec<Row<'a>> {
        let sheets = self.space.sheets.iter();
        let row = |sheet: &'a Sheet| {
            let (up, across) = up_and_across(sheet, running);
            Row {
                sheet,
                up,
                across,
                count: self.space.x.len().spaces(across + self.space.gap),
                alike: Alike::new(self.space.prices.breaks(across, &[up]), 2 * Place::COUNT),
            }
        };
        sheets
            .filter_map(|index| Some(row(self.space.sheet(*index)?)))
            .collect()
    }

    /// The course from one level to another as if there were no openings. `None` where no sheet fits or the course is a
    /// mere filler.
    fn price(&self, running: Running, rows: &mut [Row<'_>], from: usize, to: usize) -> Option<Amount> {
        let y = Interval::new(*self.levels.get(from)?, *self.levels.get(to)?);
        let (lowest, uppermost) = (from == 0, *self.ends.get(to)?);
        let gap = |level: usize, end: bool| {
            if end {
                Some(Length::ZERO)
            } else {
                self.gaps.get(level).copied()
            }
        };
        let net = y.len() - gap(from, lowest)? - gap(to, uppermost)?;
        let short = if lowest || uppermost {
            self.space.practice.end_short
        } else {
            Length::ZERO
        };
        let mut high = rows.iter_mut().filter(|row| net <= row.up + short).peekable();
        high.peek()?;
        if *self.ends.get(from)? || !self.fits(y, net, uppermost) || self.space.runs_past_rim(y) {
            return None;
        }
        let end = |at_end: bool| if at_end { Joint::End } else { Joint::Seam };
        let sides = Sides {
            left: Joint::Seam,
            right: Joint::Seam,
            bottom: end(lowest),
            top: end(uppermost),
        };
        let prices = &self.space.prices;
        // Sheets of one width make the same piece.
        let mut last = None;
        let sheets = high.filter_map(|row| {
            let blank = Rect::from_size(Length::ZERO, y.lo, row.across, net.min(row.up));
            if blank.is_empty() {
                return None;
            }
            let group = match last {
                Some((other, group)) if other == blank => group,
                _ => self.group(&blank),
            };
            last = Some((blank, group));
            let price =
                || prices.set_rectangle(&blank, sides) + prices.cut_rectangle(&blank, row.sheet, running);
            let each = row.alike.of(group, blank.height(), price);
            Some(each.times(row.count).unwrap_or_default())
        });
        Some(sheets.min()? + *self.seams.get(to)?)
    }

    /// Pieces of one row and height cost the same where they are set from one place, along a floor band or not.
    fn group(&self, blank: &Rect) -> usize {
        let along_band = self.space.frame.ties_band(blank.y_span());
        2 * (self.space.prices.place(blank) as usize) + usize::from(along_band)
    }

    /// The course is no mere filler, and short of the top a last one ends only where that saves a cut.
    fn fits(&self, y: Interval, net: Length, uppermost: bool) -> bool {
        let space = self.space;
        if net < space.practice.filler_least
            || (uppermost && y.hi != space.top && !space.last_sizes.contains(&net))
        {
            return false;
        }
        net >= space.practice.strip_least || space.frame.ties_band(y)
    }
}

/// A level seam with its nails, and with a row of blocks where nothing carries it.
fn level_seam(space: &Space<'_>, y: Length) -> Amount {
    let rows = if space.level_on_wood(y) {
        space.prices.level_rows(space.x, 2)
    } else if space.level_blocked(y) {
        space.prices.block_row(space.x)
    } else {
        Amount::ZERO
    };
    let parted = if space.parts_gable(y) {
        FORBIDDING
    } else {
        Amount::ZERO
    };
    let mut price = rows + parted;
    space.prices.level(y, space.x, &mut price);
    price
}
