//! What one strip of a course weighs, from its own pieces taken through the stages.

use super::course::Slot;
use super::space::{Space, up_and_across};
use super::weight::Weight;
use crate::amount::Amount;
use crate::edges::{EdgeRun, Lie, PanelEdge, runs_of_first};
use crate::finding::Severity;
use crate::geometry::{Interval, Rect};
use crate::house::{BlockedEdges, Sheet};
use crate::layout::{Cutter, Joint, Layout, Piece, Side, Sides, is_weak, on_sawn_rim, rules_of_pieces};
use crate::length::Length;
use crate::nailing::{NailRow, nail_piece};

/// How wide the strips are that stand in for the neighbours of a strip.
const BESIDE: Length = Length::feet(1);

/// Takes single strips of a course through the stages, on the frame as it stands, between neighbours that stand in for
/// any.
#[derive(Debug)]
pub(super) struct Exact<'s, 'a> {
    space: &'s Space<'a>,
    slot: Slot,
    cutter: Cutter<'a>,
    /// From the lowest point of the course to its highest, gaps not taken off.
    y: Interval,
    nail: Amount,
    stud: Amount,
}

impl<'s, 'a> Exact<'s, 'a> {
    pub fn new(space: &'s Space<'a>, slot: Slot) -> Self {
        let cutter = Cutter::new(space.practice, space.frame, slot.reach);
        let low = if slot.lowest {
            cutter.bounds().y0
        } else {
            slot.y.lo
        };
        Self {
            space,
            slot,
            y: Interval::new(low, slot.y.hi),
            nail: space.prices.least_nail(),
            stud: space.prices.least_stud(),
            cutter,
        }
    }

    fn level_joint(&self, y: Length, at_end: bool) -> Joint {
        match (at_end, on_sawn_rim(self.space.practice, self.space.frame, y)) {
            (true, _) => Joint::End,
            (false, true) => Joint::RimSeam,
            (false, false) => Joint::Seam,
        }
    }

    /// What the four sides of a strip meet.
    fn sides(&self, strip: Interval) -> Sides {
        let bounds = self.cutter.bounds();
        let end = |at_end: bool| if at_end { Joint::End } else { Joint::Seam };
        let top_end = self.slot.uppermost || self.slot.y.hi >= bounds.y1;
        Sides {
            left: end(strip.lo == bounds.x0),
            right: end(strip.hi == bounds.x1),
            bottom: self.level_joint(self.slot.y.lo, self.slot.lowest),
            top: self.level_joint(self.slot.y.hi, top_end),
        }
    }

    fn add_pieces(&self, layout: &mut Layout, strip: Rect, sides: Sides, sheet: u32, from: &Sheet) {
        for part in self.cutter.strip(strip, sides, from, self.slot.running) {
            layout.pieces.push(Piece {
                id: u32::try_from(layout.pieces.len()).unwrap_or(u32::MAX),
                mark: String::new(),
                band: 0,
                strip: 0,
                cell: part.cell,
                outline: part.outline,
                sides,
                sheet,
                running: self.slot.running,
                hang_order: 0,
            });
        }
    }

    /// The pieces of a strip from this sheet.
    fn pieces(&self, strip: Interval, sheet: u32, from: &Sheet) -> Layout {
        let mut layout = Layout {
            reach: self.slot.reach,
            ..Layout::default()
        };
        let rect = Rect::from_spans(strip, self.y);
        self.add_pieces(&mut layout, rect, self.sides(strip), sheet, from);
        layout
    }

    /// Their price alone, and how many pieces there are; nothing where the sheet does not cover one of them.
    pub fn cut(&self, strip: Interval, sheet: u32) -> Option<Weight> {
        let from = self.space.sheet(sheet)?;
        let layout = self.pieces(strip, sheet, from);
        self.priced(&layout, from)
    }

    fn priced(&self, layout: &Layout, from: &Sheet) -> Option<Weight> {
        let (up, across) = up_and_across(from, self.slot.running);
        let mut cost = Amount::ZERO;
        for piece in &layout.pieces {
            let blank = piece.blank();
            if blank.width() > across || blank.height() > up {
                return None;
            }
            self.space.prices.of_piece(piece, &mut cost);
        }
        Some(Weight {
            pieces: u32::try_from(layout.pieces.len()).unwrap_or(u32::MAX),
            ..Weight::of(cost)
        })
    }

    /// What a strip from this sheet weighs: its pieces and their nails exactly as in any layout that adds no wood here;
    /// of wood that is to be added, the least that it costs. `first` says that it is the first strip of the lowest
    /// course.
    pub fn weigh(&self, strip: Interval, sheet: u32, first: bool) -> Option<Weight> {
        let space = self.space;
        let from = space.sheet(sheet)?;
        let layout = self.pieces(strip, sheet, from);
        let mut weight = self.priced(&layout, from)?;
        let found = rules_of_pieces(space.house, space.frame, &layout);
        let count = |severity| {
            found
                .iter()
                .filter(|finding| finding.severity == severity)
                .count()
        };
        weight.refused += u32::try_from(count(Severity::Refuse)).unwrap_or(u32::MAX);
        weight.mend += u32::try_from(count(Severity::Mend)).unwrap_or(u32::MAX);
        // The rule speaks once for all pieces of a layout.
        if first && is_weak(space.house, space.frame, &layout) {
            weight.mend += 1;
        }
        let (runs, rows) = self.nailed(layout, strip, sheet, from);
        for row in &rows {
            space.prices.nail_row(row, &mut weight.cost);
        }
        for run in runs.iter().filter(|run| run.lacks_backing()) {
            self.backing(run, &mut weight);
        }
        for edge in runs.chunk_by(|a, b| (a.piece, a.edge) == (b.piece, b.edge)) {
            self.blocked_row(edge, &rows, &mut weight);
        }
        Some(weight)
    }

    /// Edges and nails of the pieces of a strip.
    fn nailed(
        &self,
        mut layout: Layout,
        strip: Interval,
        sheet: u32,
        from: &Sheet,
    ) -> (Vec<EdgeRun>, Vec<NailRow>) {
        let site = &self.space.site;
        let own = layout.pieces.len();
        self.add_neighbours(&mut layout, strip, sheet, from);
        let runs = runs_of_first(site, &layout, own, &[], 0);
        let (mut rows, mut snags) = (Vec::new(), Vec::new());
        let mut rest = runs.as_slice();
        for piece in layout.pieces.iter().take(own) {
            let of_piece = rest.iter().take_while(|run| run.piece == piece.id).count();
            let (of_piece, others) = rest.split_at(of_piece);
            rest = others;
            nail_piece(site, piece, of_piece, &mut rows, &mut snags);
        }
        (runs, rows)
    }

    /// Edges and nails of the whole course as if it were one piece.
    pub fn whole(&self) -> Option<(Vec<EdgeRun>, Vec<NailRow>)> {
        let bounds = self.cutter.bounds();
        self.of(Interval::new(bounds.x0, bounds.x1))
    }

    /// Edges and nails of a strip of any width, from whatever sheet.
    fn of(&self, strip: Interval) -> Option<(Vec<EdgeRun>, Vec<NailRow>)> {
        let sheet = self.space.sheets.first().copied()?;
        let from = self.space.sheet(sheet)?;
        let layout = self.pieces(strip, sheet, from);
        Some(self.nailed(layout, strip, sheet, from))
    }

    /// What the edge at this side of a strip costs: its nails but for one of each row, and the least of its backing.
    pub fn side(&self, x: Length, side: Side) -> Amount {
        let bounds = self.cutter.bounds();
        let strip = match side {
            Side::Left => Interval::new(x, (x + BESIDE).min(bounds.x1)),
            _ => Interval::new((x - BESIDE).max(bounds.x0), x),
        };
        if strip.len() < BESIDE {
            return Amount::ZERO;
        }
        let Some((runs, rows)) = self.of(strip) else {
            return Amount::ZERO;
        };
        let near = |at: Length| (at - x).abs() <= self.space.inset();
        let mut weight = Weight::default();
        for row in rows
            .iter()
            .filter(|row| row.from.x == row.to.x && near(row.from.x))
        {
            let mut cost = Amount::ZERO;
            self.space.prices.nail_row(row, &mut cost);
            weight.cost += (cost - self.nail.times(1).unwrap_or_default()).max(Amount::ZERO);
        }
        for run in runs.iter().filter(|run| run.lacks_backing() && run.side == side) {
            self.backing(run, &mut weight);
        }
        weight.cost
    }

    /// Strips up to this width are covered by any sheet that may be used, their gaps taken off.
    pub fn sized(&self) -> Length {
        let sheets = self
            .space
            .sheets
            .iter()
            .filter_map(|index| self.space.sheet(*index));
        let least = sheets
            .map(|sheet| up_and_across(sheet, self.slot.running).1)
            .min();
        least.unwrap_or_default() + self.space.gap
    }

    /// The course's height, gaps not taken off.
    pub const fn height(&self) -> Interval {
        self.y
    }

    /// The wall's limits come into the course.
    pub fn is_sloped(&self) -> bool {
        let frame = self.space.frame;
        let level = |points: &[crate::geometry::Point]| {
            points
                .iter()
                .all(|point| Some(point.y) == points.first().map(|first| first.y))
        };
        let upper = frame.upper.points();
        (upper.iter().any(|point| point.y < self.y.hi) && !level(upper)) || !level(frame.lower.points())
    }

    /// The least that backing a stretch of edge costs.
    pub fn backing_of(&self, run: &EdgeRun) -> Amount {
        let mut weight = Weight::default();
        self.backing(run, &mut weight);
        weight.cost
    }

    /// Height, length and spacing of the row along a level edge that blocks stand behind where nothing else does; nothing
    /// for other edges.
    pub fn blocked_edge(&self, edge: &[EdgeRun]) -> Option<(Length, Interval, Length)> {
        let (first, last) = (edge.first()?, edge.last()?);
        let bare = |run: &&EdgeRun| run.member().is_none();
        let blocked = edge
            .iter()
            .filter(bare)
            .all(|run| run.must_back && self.may_block(run));
        if first.side.is_plumb()
            || first.from.y != last.to.y
            || !blocked
            || !edge.iter().any(|run| bare(&run))
        {
            return None;
        }
        let (y, x) = (first.from.y, Interval::new(first.from.x, last.to.x));
        let spacing = self
            .space
            .site
            .edge_spacing(Rect::from_spans(x, Interval::new(y, y)));
        Some((y, x, spacing.max(Length::from_units(1))))
    }

    /// The nails that a level edge takes more once blocks stand behind it: then one row runs from end to end.
    fn blocked_row(&self, edge: &[EdgeRun], rows: &[NailRow], weight: &mut Weight) {
        let Some((y, x, spacing)) = self.blocked_edge(edge) else {
            return;
        };
        let inset = self.space.inset();
        let piece = edge.first().map_or(0, |run| run.piece);
        let least = (x.len() - inset * 2).spaces(spacing) - 1;
        let driven = rows.iter().filter(|row| {
            let (along, at) = (row.from.y == row.to.y, row.from.y);
            row.piece == piece && along && (at - y).abs() <= inset
        });
        let driven: i64 = driven.map(|row| i64::from(row.count())).sum();
        weight.cost += self.nail.times((least - driven).max(0)).unwrap_or_default();
    }

    /// Blocks go behind a level edge in whatever bay, and a stud that divides the bay does not do without them.
    fn may_block(&self, run: &EdgeRun) -> bool {
        run.joint == Joint::Opening || self.space.practice.blocked_edges != BlockedEdges::SegmentsOnly
    }

    /// Adds strips beside a strip, over it and under it, so that its edges meet what they will meet.
    fn add_neighbours(&self, layout: &mut Layout, strip: Interval, sheet: u32, from: &Sheet) {
        let (sides, bounds) = (self.sides(strip), self.cutter.bounds());
        let seam = Joint::Seam;
        if strip.lo != bounds.x0 {
            let beside = Rect::from_spans(Interval::new(strip.lo - BESIDE, strip.lo), self.y);
            let meets = Sides {
                left: seam,
                right: seam,
                ..sides
            };
            self.add_pieces(layout, beside, meets, sheet, from);
        }
        if strip.hi != bounds.x1 {
            let beside = Rect::from_spans(Interval::new(strip.hi, strip.hi + BESIDE), self.y);
            let meets = Sides {
                left: seam,
                right: seam,
                ..sides
            };
            self.add_pieces(layout, beside, meets, sheet, from);
        }
        if sides.top != Joint::End {
            let over = Rect::from_spans(strip, Interval::new(self.y.hi, self.y.hi + BESIDE));
            let meets = Sides {
                bottom: sides.top,
                top: seam,
                ..sides
            };
            self.add_pieces(layout, over, meets, sheet, from);
        }
        if sides.bottom != Joint::End {
            let under = Rect::from_spans(strip, Interval::new(self.y.lo - BESIDE, self.y.lo));
            let meets = Sides {
                top: sides.bottom,
                bottom: seam,
                ..sides
            };
            self.add_pieces(layout, under, meets, sheet, from);
        }
    }

    /// The least that backing a stretch of edge costs with the nails that it takes. An edge that cannot be backed costs
    /// nothing, but has to be mended, which goes before.
    ///
    /// A stud is shared by the two panels at a seam and by the courses that it runs past, a block by the stretches over
    /// its bay: each carries its share.
    fn backing(&self, run: &EdgeRun, weight: &mut Weight) {
        let space = self.space;
        let edge = PanelEdge {
            side: run.side,
            from: run.from,
            to: run.to,
        };
        if edge.lie() == Lie::Sloped {
            weight.mend += 1;
            return;
        }
        if run.length <= space.practice.free_edge_most {
            return;
        }
        let share = |whole: Amount, of: Length| {
            let part = whole.scaled(
                i128::from(run.length.units()),
                i128::from(of.max(run.length).units()),
            );
            part.unwrap_or_default()
        };
        let spacing = space.site.edge_spacing(run.area()).max(Length::from_units(1));
        let nails = run.length.units() / spacing.units();
        if run.side.is_plumb() {
            // A stud that divides a wide bay may leave nothing there that wants a block.
            if space.blocks_wide_bays || run.joint == Joint::Opening {
                return;
            }
            let clear = space
                .frame
                .storeys
                .iter()
                .map(|storey| storey.studs_to - storey.studs_from);
            let bay = clear.fold(self.y.len(), Length::max);
            let stud = share(self.stud, bay);
            // Both sides of a seam carry half of it, so that no hand is preferred.
            weight.cost += match run.partner {
                None => stud,
                Some(_) => stud.scaled(1, 2).unwrap_or_default() - Amount::from_ten_thousandths(1),
            }
            .max(Amount::ZERO);
            weight.cost += self.nail.times((nails - 3).max(0)).unwrap_or_default();
        } else if self.may_block(run) && (run.side == Side::Top || run.partner.is_none()) {
            let bay = run.bay.unwrap_or(run.length);
            weight.cost += share(space.block(bay), bay);
        }
    }
}
