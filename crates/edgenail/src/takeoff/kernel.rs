//! What one thing takes: kernels that prices and take-offs are folded from.

use super::{Charge, Part, Place};
use crate::blocking::{Block, BlockLie};
use crate::cutting::{CutWork, cuts_of_blank, cuts_of_piece};
use crate::frame::Frame;
use crate::geometry::{Interval, Rect, Shape};
use crate::house::{House, JobRates, NailTool, Practice, Sheet, Stock};
use crate::layout::Running;
use crate::length::{Area, Length};
use crate::nailing::NailRow;

/// The rates of a house applied to one wall: each function tells what one thing takes, charge by charge, each charge
/// rounded once.
#[derive(Clone, Copy, Debug)]
pub struct Kernel<'a> {
    /// What is in stock.
    pub stock: &'a Stock,
    /// What the work takes.
    pub rates: &'a JobRates,
    /// How the wall is worked.
    pub practice: &'a Practice,
    /// Its frame.
    pub frame: &'a Frame,
    /// Twice the area under which a piece is small.
    small2: i128,
}

impl<'a> Kernel<'a> {
    /// For the wall of this frame; `None` if the house does not have it.
    pub fn new(house: &'a House, frame: &'a Frame) -> Option<Self> {
        let foot2 = 2 * Area::SQUARE_FOOT.square_units();
        let small = house.rates.small_under.scaled(foot2, 1, 0);
        Some(Self {
            stock: &house.stock,
            rates: &house.rates,
            practice: &house.walls.get(frame.wall as usize)?.practice,
            frame,
            small2: small
                .and_then(|area| area.in_units_of(0))
                .unwrap_or(i64::MAX)
                .into(),
        })
    }

    /// A piece of this outline, cut from this sheet: its sheet, cutting it, setting it.
    pub fn piece(&self, outline: &Shape, sheet: &Sheet, running: Running, charge: &mut impl FnMut(Charge)) {
        let blank = outline.bounds();
        charge(self.material(&blank, sheet, running));
        self.cut(cuts_of_piece(outline, sheet, running), charge);
        self.setting(&blank, outline.area2(), charge);
    }

    /// What [`Kernel::piece`] takes to make a piece that is its whole blank: its sheet, cutting it.
    pub fn rectangle(&self, blank: &Rect, sheet: &Sheet, running: Running, charge: &mut impl FnMut(Charge)) {
        charge(self.material(blank, sheet, running));
        self.cut(cuts_of_blank(blank, sheet, running), charge);
    }

    /// What [`Kernel::piece`] takes to set a piece that is its whole blank, whatever sheet it was cut from.
    pub fn set_rectangle(&self, blank: &Rect, charge: &mut impl FnMut(Charge)) {
        self.setting(blank, 2 * blank.area(), charge);
    }

    /// Setting a piece with this blank and twice this area.
    fn setting(&self, blank: &Rect, area2: i128, charge: &mut impl FnMut(Charge)) {
        let set = self.set(area2, blank);
        charge(set);
        let place = Place::of(self.frame, self.practice, self.rates, blank);
        if let Some((part, factor)) = place.factor(self.rates) {
            charge(Charge {
                part,
                minutes: Place::adds(factor, set.minutes),
                ..set
            });
        }
    }

    /// The saw work of a piece.
    fn cut(&self, work: CutWork, charge: &mut impl FnMut(Charge)) {
        let mut cut = |part, count: u32, each| {
            if count > 0 {
                charge(Charge::work(part, count.into(), each));
            }
        };
        cut(Part::CrossCuts, work.cross_cuts, self.rates.cross_cut);
        cut(Part::Rips, work.rips, self.rates.rip);
        cut(Part::Notches, work.notches, self.rates.notch);
        cut(Part::RakeCuts, work.rake_cuts, self.rates.rake_cut);
        cut(Part::Openings, work.openings, self.rates.opening);
        if work.openings > 0 {
            charge(Charge {
                minutes: work.edge_minutes(self.rates),
                ..Charge::work(
                    Part::OpeningEdges,
                    work.opening_edge.spaces(Length::inches(1)),
                    crate::amount::Amount::ZERO,
                )
            });
        }
    }

    /// One of as many equal blanks as the sheet gives, kerf lost between them: what is left of a sheet that gives
    /// only one is no saving. Which pieces do share a sheet is known only when the whole house is cut.
    fn material(&self, blank: &Rect, sheet: &Sheet, running: Running) -> Charge {
        let (up, across) = match running {
            Running::Upright => (sheet.length, sheet.width),
            Running::Flat => (sheet.width, sheet.length),
        };
        let fit = |size: Length, of: Length| {
            let kerf = self.practice.kerf;
            ((of + kerf).units() / (size + kerf).units().max(1)).max(1)
        };
        let gives = fit(blank.width(), across) * fit(blank.height(), up);
        let share = sheet.price.scaled(1, i128::from(gives));
        Charge::buy(Part::Sheets, 1, share.unwrap_or_default())
    }

    fn set(&self, area2: i128, blank: &Rect) -> Charge {
        let rates = self.rates;
        let long = blank.width().max(blank.height());
        let [up_to_8, up_to_9, up_to_10] = self.set_up_to();
        let (part, each) = if self.is_small(area2) {
            (Part::SetSmall, rates.set_small)
        } else if long <= up_to_8 {
            (Part::Set8, rates.set_8)
        } else if long <= up_to_9 {
            (Part::Set9, rates.set_9)
        } else if long <= up_to_10 {
            (Part::Set10, rates.set_10)
        } else {
            (Part::SetLonger, rates.set_longer)
        };
        Charge::work(part, 1, each)
    }

    /// What [`Kernel::set_rectangle`] takes if the piece counts as small.
    pub(crate) fn set_small(&self, blank: &Rect, charge: &mut impl FnMut(Charge)) {
        self.setting(blank, 0, charge);
    }

    /// How wide a piece of this height is at least that is not small.
    pub(crate) fn small_width(&self, height: Length) -> Length {
        let width = self.small2.div_euclid(2 * i128::from(height.units().max(1)));
        i64::try_from(width).map_or(Length::LIMIT, Length::from_units)
    }

    /// A piece with twice this area is set as a small one.
    pub(crate) fn is_small(&self, area2: i128) -> bool {
        area2 < self.small2
    }

    /// The longest pieces that are set as sheets of 8, 9 and 10 ft.
    fn set_up_to(&self) -> [Length; 3] {
        [8, 9, 10].map(|feet| Length::feet(feet) + self.rates.length_allowance)
    }

    /// Sizes of one side of a rectangle at which setting it changes, while the other side stays.
    pub(crate) fn setting_breaks(&self, other: Length) -> Vec<Length> {
        let twice = 2 * i128::from(other.units().max(1));
        let no_longer_small = (self.small2 + twice - 1).div_euclid(twice);
        let mut breaks: Vec<Length> = self
            .set_up_to()
            .map(|longest| longest + Length::from_units(1))
            .into();
        breaks.extend(i64::try_from(no_longer_small).ok().map(Length::from_units));
        breaks
    }

    /// A row of nails: its share of a box, driving it.
    pub fn nail_row(&self, row: &NailRow, charge: &mut impl FnMut(Charge)) {
        let count = i64::from(row.count());
        if let Some(nail) = self.stock.nails.get(row.nail as usize) {
            let (part, each) = match nail.tool {
                NailTool::Gun => (Part::GunNails, self.rates.nail_gun),
                NailTool::Hand => (Part::HandNails, self.rates.nail_hand),
            };
            charge(Charge::work(part, count, each));
            charge(self.nails(row.nail, count));
        }
    }

    /// So many nails by their share of a box.
    fn nails(&self, nail: u32, count: i64) -> Charge {
        let share = self.stock.nails.get(nail as usize).and_then(|nail| {
            nail.price
                .scaled(i128::from(count), i128::from(nail.per_box.max(1)))
        });
        Charge::buy(Part::Nails, count, share.unwrap_or_default())
    }

    /// The nail that block ends take, as a place in the stock's list: the first bright one; without one, none is
    /// counted.
    pub fn block_nail(&self) -> Option<u32> {
        let mut nails = (0..).zip(&self.stock.nails);
        nails
            .find(|(_, nail)| !nail.coating.resists_corrosion())
            .map(|(index, _)| index)
    }

    /// Nails in both ends of a block.
    pub fn block_end_nails(&self) -> i64 {
        2 * i64::from(self.practice.block_end_nails)
    }

    /// A block: its share of a stick, its end nails, setting it.
    pub fn block(&self, block: &Block, charge: &mut impl FnMut(Charge)) {
        let (part, each) = match block.lie {
            BlockLie::Flat => (Part::FlatBlocks, self.rates.block_flat),
            BlockLie::OnEdge => (Part::BlocksOnEdge, self.rates.block_on_edge),
        };
        charge(Charge::work(part, 1, each));
        charge(self.stick(Part::BlockLumber, block.stick, block.length));
        if let Some(nail) = self.block_nail() {
            charge(self.nails(nail, self.block_end_nails()));
        }
    }

    /// An added stud, or what widens a member: its share of a stick, setting it.
    pub fn upright(&self, stick: u32, rect: &Rect, charge: &mut impl FnMut(Charge)) {
        charge(Charge::work(Part::AddedStuds, 1, self.rates.added_stud));
        charge(self.stick(Part::StudLumber, stick, cut_length(rect)));
    }

    fn stick(&self, part: Part, stick: u32, length: Length) -> Charge {
        let share = self.stock.sticks.get(stick as usize).and_then(|stick| {
            stick
                .price
                .scaled(i128::from(length.units()), i128::from(stick.length.units()))
        });
        Charge::buy(part, 1, share.unwrap_or_default())
    }

    /// The line that a course is laid to, snapped in pulls.
    pub fn line(&self, x: Interval) -> Charge {
        let most = self.practice.line_pull_most;
        let pulls = if most > Length::ZERO {
            x.len().spaces(most)
        } else {
            0
        };
        Charge::work(Part::ChalkLines, pulls, self.rates.chalk_line)
    }
}

/// What an added stud or what widens a member is cut to.
pub fn cut_length(rect: &Rect) -> Length {
    rect.height().max(rect.width())
}
