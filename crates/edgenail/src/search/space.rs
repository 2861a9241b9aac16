//! What a search may choose from, prepared once for a wall.

use super::weight::Weight;
use crate::amount::Amount;
use crate::blocking::{Block, block_lumber};
use crate::edges::Site;
use crate::finding::Severity;
use crate::frame::{Axis, Frame};
use crate::geometry::{Interval, Rect, Toward};
use crate::house::{BlockedEdges, House, Method, Practice, Sheet, Stock, Wall};
use crate::layout::{Layout, Running, on_sawn_rim, rules_of_seams};
use crate::length::Length;
use crate::nailing::{NailRow, Zone};
use crate::price::Prices;

/// A wall with everything that a search asks of it.
#[derive(Debug)]
pub(super) struct Space<'a> {
    pub house: &'a House,
    pub stock: &'a Stock,
    pub wall: &'a Wall,
    pub practice: &'a Practice,
    pub frame: &'a Frame,
    pub prices: Prices<'a>,
    /// Sheets that may be used, as places in the stock's list.
    pub sheets: Vec<u32>,
    /// Heights that a whole sheet can cover, upright or flat, falling.
    pub sizes: Vec<Length>,
    /// The same with equal parts of a sheet, none wasted: what a last course may be high, falling.
    pub last_sizes: Vec<Length>,
    /// The joint gap.
    pub gap: Length,
    /// Sawn rims that no course should run past, as practice parts the sheathing there.
    pub parted_rims: Vec<Interval>,
    /// Courses may begin or end a least strip from the bottom line and from the top, which whole sheets do not lead to.
    pub least_strips: bool,
    /// From the left end of the sheathing to its right end.
    pub x: Interval,
    /// Where sheathing ends at the top.
    pub top: Length,
    /// Openings and bare zones.
    pub holes: Vec<Rect>,
    /// Level and upright faces that hold nails: rectangle around each, and its direction.
    pub faces: Vec<(Rect, Axis)>,
    /// Practice backs level edges over wide bays alone, and bays are wide.
    pub blocks_wide_bays: bool,
    /// What a nail costs at least.
    pub nail: Amount,
    /// What a sheet of another length costs in a course.
    pub unlike: Amount,
    /// The kind of sheet that is cheapest by area: its price, and its area with the kerf taken on.
    pub cheapest: Option<(Amount, i128)>,
    /// A segment has rules of its own for where seams may stand.
    pub has_portals: bool,
    /// What the rules refuse whatever is laid.
    pub refused: u32,
    /// The frame with its rules; all faces, found by their place.
    pub site: Site<'a>,
}

impl<'a> Space<'a> {
    /// Prepares a wall; `None` if the house does not have it.
    pub fn new(house: &'a House, frame: &'a Frame) -> Option<Self> {
        let wall = house.walls.get(frame.wall as usize)?;
        let practice = &wall.practice;
        let category = wall.sheet_category();
        let fits = |sheet: &Sheet| sheet.category == category && sheet.on_hand != Some(0);
        let sheets: Vec<u32> = (0u32..)
            .zip(&house.stock.sheets)
            .filter(|(_, sheet)| fits(sheet))
            .map(|(index, _)| index)
            .collect();
        let mut sizes = Vec::new();
        let mut gap = practice.gap;
        for sheet in sheets
            .iter()
            .filter_map(|index| house.stock.sheets.get(*index as usize))
        {
            gap = gap.max(sheet.gap.unwrap_or(practice.gap));
            for running in directions(practice) {
                sizes.push(up_and_across(sheet, *running).0);
            }
        }
        let mut last_sizes: Vec<Length> = sizes
            .iter()
            .flat_map(|size| {
                (1..=i64::from(practice.end_parts_most)).map(|parts| part(*size, parts, practice.kerf))
            })
            .filter(|size| *size >= practice.filler_least)
            .collect();
        for sizes in [&mut sizes, &mut last_sizes] {
            sizes.sort_unstable_by(|a, b| b.cmp(a));
            sizes.dedup();
        }
        let faces = frame
            .members
            .iter()
            .filter(|member| member.nailable && member.axis != Axis::Sloped)
            .map(|member| (member.face.bounds(), member.axis))
            .collect();
        let top = frame.upper.points().iter().map(|point| point.y).max()?;
        let prices = Prices::new(house, frame)?;
        let mut portals = wall
            .segments
            .iter()
            .filter(|segment| segment.method == Method::Portal);
        Some(Self {
            blocks_wide_bays: practice.blocked_edges == BlockedEdges::WideBays
                && frame
                    .storeys
                    .iter()
                    .any(|storey| storey.spacing - storey.stud_width > practice.clear_bay_most),
            nail: prices.least_nail(),
            unlike: prices.least_judged(house.rates.judgement.unlike_length),
            has_portals: portals.next().is_some(),
            cheapest: cheapest(house, category),
            refused: always(house, frame, Length::ZERO).refused,
            house,
            stock: &house.stock,
            wall,
            practice,
            frame,
            prices,
            sheets,
            sizes,
            last_sizes,
            gap,
            parted_rims: parted_rims(practice, frame),
            least_strips: false,
            x: frame.lower.span(),
            top,
            holes: frame.holes(),
            faces,
            site: Site::new(house, frame)?,
        })
    }

    /// What a blank of this size costs at least, whatever it shares its sheet with.
    pub fn by_area(&self, width: Length, height: Length) -> Amount {
        let kerf = kerf_of(self.house);
        self.by_square(((width + kerf) * (height + kerf)).square_units())
    }

    /// What so much of a sheet costs at least, in square units with the kerf taken on: by the kind that is cheapest by area.
    pub fn by_square(&self, square: i128) -> Amount {
        let Some((price, whole)) = self.cheapest else {
            return Amount::ZERO;
        };
        let share = price.scaled(square, whole).unwrap_or_default();
        (self.prices.bought(share) - Amount::from_ten_thousandths(1)).max(Amount::ZERO)
    }

    /// A course from so low to so high runs past a rim at which practice parts the sheathing.
    pub fn runs_past_rim(&self, y: Interval) -> bool {
        self.parted_rims
            .iter()
            .any(|rim| y.lo <= rim.lo && rim.hi <= y.hi)
    }

    /// What a course stays short of a level seam at this height: half its gap, which is wider on a sawn rim.
    pub fn half_gap(&self, y: Length) -> Length {
        self.gap_at(y).half()
    }

    fn gap_at(&self, y: Length) -> Length {
        if on_sawn_rim(self.practice, self.frame, y) {
            self.practice.rim_gap.max(self.gap)
        } else {
            self.gap
        }
    }

    /// Seams whose lower course ends so high up.
    pub fn seams_over(&self, high: Length) -> impl Iterator<Item = Length> {
        self.seams_near(high, 1)
    }

    /// Seams whose upper course starts so high up.
    pub fn seams_under(&self, low: Length) -> impl Iterator<Item = Length> {
        self.seams_near(low, -1)
    }

    fn seams_near(&self, edge: Length, toward: i64) -> impl Iterator<Item = Length> {
        let gaps = [self.gap, self.practice.rim_gap.max(self.gap)];
        let near = gaps.into_iter().map(move |gap| (edge + gap.half() * toward, gap));
        near.filter(|(y, gap)| self.gap_at(*y) == *gap).map(|(y, _)| y)
    }

    /// Lets courses run past sawn rims; nothing changes where there are none.
    pub fn run_past_rims(&mut self) -> bool {
        !std::mem::take(&mut self.parted_rims).is_empty()
    }

    /// Lets whole sheets be cut down, where they leave a strip too narrow to be hung, for a least strip.
    pub fn cut_for_least_strips(&mut self) -> bool {
        !std::mem::replace(&mut self.least_strips, true)
    }

    /// Levels where the uppermost course may end: the sheathing's top, and, where plates are level, where whole
    /// sheets or equal parts of them from one of these levels cover enough of the topmost plate.
    pub fn end_levels(&self, bottom: Length, levels: &[Length]) -> Vec<Length> {
        let mut ends = vec![self.top];
        let tops: Vec<(Length, Length)> = self
            .frame
            .storeys
            .iter()
            .filter(|storey| storey.top == self.top)
            .map(|storey| (storey.topmost_from, storey.top))
            .collect();
        let flat = !tops.is_empty() && self.frame.upper.points().iter().all(|point| point.y == self.top);
        if flat {
            let least = tops
                .iter()
                .map(|(from, _)| *from + self.practice.plate_cover_least)
                .max()
                .unwrap_or(self.top);
            for from in levels {
                let start = if *from == bottom {
                    bottom
                } else {
                    *from + self.half_gap(*from)
                };
                let reached = self.last_sizes.iter().map(|size| start + *size);
                ends.extend(reached.filter(|y| least <= *y && *y < self.top));
            }
        }
        ends.sort_unstable();
        ends.dedup();
        ends
    }

    /// A level seam at this height has wood for both nail lines wherever a level member carries it, or lies clear of
    /// level members, where blocks can carry it.
    pub fn seam_may_lie_at(&self, y: Length) -> bool {
        let reach = self.seam_half() + self.half_gap(y) - self.gap.half();
        self.faces
            .iter()
            .filter(|(_, axis)| *axis == Axis::Horizontal)
            .all(|(face, _)| {
                let carries = face.y0 + reach <= y && y + reach <= face.y1;
                let clear = y + reach <= face.y0 || face.y1 + reach <= y;
                carries || clear || face.width() < Length::feet(2)
            })
    }

    /// A seam at this height would part a gable truss from the plates that it stands on.
    pub fn parts_gable(&self, y: Length) -> bool {
        let mut gables = self.frame.sections.iter().filter(|section| section.gable);
        gables.any(|section| (section.top - y).abs() < self.practice.gable_seam_clear)
    }

    /// A level member carries a seam at this height along most of the wall.
    pub fn level_on_wood(&self, y: Length) -> bool {
        let reach = self.seam_half() + self.half_gap(y) - self.gap.half();
        let carried: Vec<Interval> = self
            .faces
            .iter()
            .filter(|(face, axis)| *axis == Axis::Horizontal && face.y0 + reach <= y && y + reach <= face.y1)
            .map(|(face, _)| face.x_span())
            .collect();
        let length: Length = Interval::union(carried).iter().map(|span| span.len()).sum();
        length * 2 >= self.x.len()
    }

    /// Stretches of a level seam at this height that may be backed, or where there is no seam, somewhere across the gap.
    pub fn maybe_backed(&self, y: Length) -> Vec<Interval> {
        let reach = self.practice.edge_distance_most.max(self.practice.rim_gap) + self.gap;
        let near = Interval::new(y - reach, y + reach);
        let level = self
            .faces
            .iter()
            .filter(|(face, axis)| *axis == Axis::Horizontal && face.y_span().intersect(near).is_some());
        let upright = self
            .faces
            .iter()
            .filter(|(face, axis)| *axis == Axis::Vertical && face.y_span().intersect(near).is_some());
        let segments = self
            .site
            .segments
            .iter()
            .filter(|site| site.rect.y_span().intersect(near).is_some());
        let holes = self
            .holes
            .iter()
            .filter(|hole| hole.y_span().intersect(near).is_some());
        let spans = level
            .chain(upright)
            .map(|(face, _)| face.x_span())
            .chain(segments.map(|site| site.rect.x_span()))
            .chain(holes.map(Rect::x_span));
        Interval::union(spans.collect())
    }

    /// Practice backs a level seam at this height all along, whatever lies behind it.
    pub fn level_blocked(&self, y: Length) -> bool {
        match self.practice.blocked_edges {
            BlockedEdges::All => true,
            BlockedEdges::SegmentsOnly => false,
            BlockedEdges::WideBays => {
                let mut storeys = self.frame.storeys.iter();
                let storey = storeys.find(|storey| storey.base < y && y < storey.top);
                storey.is_some_and(|storey| storey.spacing - storey.stud_width > self.practice.clear_bay_most)
            }
        }
    }

    /// A block over a bay, with its lumber and the nails in its ends.
    pub fn block(&self, bay: Length) -> Amount {
        let Some(lumber) = block_lumber(&self.site, None) else {
            return Amount::ZERO;
        };
        let mut cost = Amount::ZERO;
        let block = Block {
            id: 0,
            rect: Rect::from_size(Length::ZERO, Length::ZERO, bay, lumber.face),
            length: (bay - self.practice.block_clearance).max(Length::ZERO),
            lie: lumber.lie,
            depth: lumber.depth,
            stick: lumber.stick,
            fills_depth: false,
            serves: Vec::new(),
        };
        self.prices.block(&block, &mut cost);
        cost
    }

    /// From a seam's centre to the far side of the wood that its nail line needs.
    pub fn seam_half(&self) -> Length {
        self.practice.edge_distance_least + self.practice.member_edge_least + self.gap.half()
    }

    /// How much of a vertical seam over this height has no wood behind it.
    pub fn bare_length(&self, x: Length, y: Interval) -> Length {
        self.bare(x, y).iter().map(|span| span.len()).sum()
    }

    /// Where a vertical seam over this height has no wood behind it.
    pub fn bare(&self, x: Length, y: Interval) -> Vec<Interval> {
        let reach = self.seam_half() - self.practice.seam_off_wood_most;
        let high = self
            .frame
            .upper
            .y_at(x, Toward::Left)
            .map_or(y.hi, |high| high.clamp(y.lo, y.hi));
        let y = Interval::new(y.lo, high);
        let line = Rect::new(x, y.lo, x, y.hi);
        let behind = self.site.wood.near(line).filter(|face| face.nailable);
        let mut taken: Vec<Interval> = behind
            .filter_map(|face| {
                let member = self.site.wood.member(face.member)?;
                if member.axis == Axis::Sloped {
                    return member.face.span_at_x(x);
                }
                let holds = face.bounds.x0 + reach <= x && x + reach <= face.bounds.x1;
                holds.then(|| face.bounds.y_span())
            })
            .collect();
        taken.extend(
            self.holes
                .iter()
                .filter(|hole| hole.x0 <= x && x <= hole.x1)
                .map(Rect::y_span),
        );
        let mut taken = Interval::union(taken);
        taken.retain(|span| span.overlaps(y));
        Interval::subtract(y, &taken)
    }

    /// The widest spacing of nails along edges and between them that is asked for anywhere; nothing where it is the same
    /// everywhere.
    fn widest_spacings(&self) -> Option<(Length, Length)> {
        let assembly = &self.practice.assembly;
        let segments = || self.site.segments.iter().map(|site| site.segment);
        segments().next()?;
        let edge = segments().map(|segment| segment.edge_spacing);
        let field = segments().map(|segment| segment.field_spacing);
        Some((
            edge.fold(assembly.edge_spacing, Length::max),
            field.fold(assembly.field_spacing, Length::max),
        ))
    }

    /// From a panel's edge to where the rows at its other edges may begin.
    pub fn inset(&self) -> Length {
        self.practice.edge_distance_most.max(self.practice.free_edge_most)
    }

    /// The widest spacing at which a level row may be nailed elsewhere: a segment closes rows up that begin outside of it.
    pub fn widest_pitch(&self, zone: Zone) -> Option<Length> {
        let (edge, field) = self.widest_spacings()?;
        Some(match zone {
            Zone::Edge | Zone::Opening => edge,
            Zone::Boundary | Zone::Field => edge.max(field),
        })
    }

    /// Openings, and where bare zones, holes or straps may do without nails.
    pub fn patches(&self) -> impl Iterator<Item = Rect> {
        let frame = self.frame;
        let patches = frame
            .bare_zones
            .iter()
            .chain(&frame.penetrations)
            .chain(&frame.straps);
        let openings = frame.openings.iter().map(|place| place.rect);
        openings.chain(patches.map(|patch| patch.rect))
    }

    /// The row may be one of a portal's grid, which only pieces at its segment have.
    pub fn is_of_portal(&self, row: &NailRow) -> bool {
        self.has_portals && row.zone == Zone::Boundary
    }

    /// The widest strip that a sheet can cover.
    pub fn widest(&self, running: Running) -> Length {
        let across = self
            .sheets
            .iter()
            .filter_map(|index| Some(up_and_across(self.sheet(*index)?, running).1));
        across.max().unwrap_or_default() + self.gap + self.practice.end_short
    }

    /// The sheet at this place in the stock's list.
    pub fn sheet(&self, index: u32) -> Option<&'a Sheet> {
        self.stock.sheets.get(index as usize)
    }
}

/// What the rules say of a wall that is sheathed from so far below its lowest plate, whatever is laid.
pub(super) fn always(house: &House, frame: &Frame, reach: Length) -> Weight {
    let layout = Layout {
        reach,
        ..Layout::default()
    };
    let mut weight = Weight::default();
    for finding in rules_of_seams(house, frame, &layout) {
        match finding.severity {
            Severity::Refuse => weight.refused += 1,
            Severity::Mend => weight.mend += 1,
            Severity::Advise => {}
        }
    }
    weight
}

/// Rims between storeys at whose middle a seam is parted for shrinkage.
fn parted_rims(practice: &Practice, frame: &Frame) -> Vec<Interval> {
    let rims = frame.bands.iter().filter_map(|band| band.rim);
    let above_storey = |y: Length| frame.storeys.iter().any(|storey| storey.top <= y);
    rims.map(|(rim, _)| rim)
        .filter(|rim| above_storey(rim.lo) && on_sawn_rim(practice, frame, (rim.lo + rim.hi).half()))
        .collect()
}

/// One of so many equal parts of a sheet, the kerf lost between them.
fn part(size: Length, parts: i64, kerf: Length) -> Length {
    Length::from_units((size.units() - kerf.units() * (parts - 1)) / parts)
}

/// Directions that practice allows.
pub(super) fn directions(practice: &Practice) -> &'static [Running] {
    use crate::house::RunningChoice;
    match practice.running {
        RunningChoice::Upright => &[Running::Upright],
        RunningChoice::Flat => &[Running::Flat],
        RunningChoice::Either => &[Running::Upright, Running::Flat],
    }
}

/// Size of a sheet up the wall and along it.
pub(super) fn up_and_across(sheet: &Sheet, running: Running) -> (Length, Length) {
    match running {
        Running::Upright => (sheet.length, sheet.width),
        Running::Flat => (sheet.width, sheet.length),
    }
}

/// What the sheets of a whole house are cut with.
fn kerf_of(house: &House) -> Length {
    let first = house.walls.first();
    first.map(|wall| wall.practice.kerf).unwrap_or_default()
}

/// The kind of this category that is cheapest by area, its area with the kerf taken on.
fn cheapest(house: &House, category: &str) -> Option<(Amount, i128)> {
    let kerf = kerf_of(house);
    let kinds = house
        .stock
        .sheets
        .iter()
        .filter(|sheet| sheet.category == category);
    let area = |sheet: &Sheet| ((sheet.width + kerf) * (sheet.length + kerf)).square_units();
    kinds
        .map(|sheet| (sheet.price, area(sheet)))
        .min_by(|(a, of), (b, whole)| {
            let [a, b] = [a, b].map(|price| i128::from(price.ten_thousandths()));
            (a.saturating_mul(*whole)).cmp(&b.saturating_mul(*of))
        })
}
