//! One sheet of a cut plan: its parts as lines and hatches, then what is written on them.

use crate::cutting::{CutNode, CutSheet, Source};
use crate::drawing::glyphs::{fitted, line, width};
use crate::drawing::input::CutDrawingInput;
use crate::drawing::page::{LEAST_TYPE, SMALL, TYPE, arrow, put};
use crate::drawing::place::Room;
use crate::drawing::tag::{Tag, Words};
use crate::drawing::view::on_paper;
use crate::drawing::{Drawing, Extent, Form, Label, Layer, MM, Micron, Says, Spot};
use crate::geometry::{Point, Rect};
use crate::house::StrengthAxis;
use crate::layout::{Piece, Running};
use crate::length::{Length, Rounding};

/// Over a sheet, for its number and its name.
pub(super) const HEADING: Micron = 6_400;
/// Scales of type that are tried in a part, in hundredths.
const TYPES: [Micron; 2] = [100, 90];

/// Sheets being drawn on a page.
pub(super) struct Pattern<'a> {
    pub input: &'a CutDrawingInput<'a>,
    pub drawing: &'a mut Drawing,
    pub room: &'a mut Room,
    pub denominator: i64,
    pub kerf: Length,
    /// Cuts of the present sheet so far.
    pub cuts: u32,
}

/// A part of a sheet: where it lies and how large it is, along the sheet's width and length.
#[derive(Clone, Copy)]
struct Area {
    x: Length,
    y: Length,
    width: Length,
    length: Length,
}

impl Area {
    const fn whole(sheet: &CutSheet) -> Self {
        Self {
            x: Length::ZERO,
            y: Length::ZERO,
            width: sheet.width,
            length: sheet.length,
        }
    }

    /// The two parts on either side of a cut.
    fn parted(self, across: bool, at: Length, kerf: Length) -> (Self, Self) {
        let beyond = at + kerf;
        if across {
            let rest = Self {
                y: self.y + beyond,
                length: self.length - beyond,
                ..self
            };
            (Self { length: at, ..self }, rest)
        } else {
            let rest = Self {
                x: self.x + beyond,
                width: self.width - beyond,
                ..self
            };
            (Self { width: at, ..self }, rest)
        }
    }
}

impl Pattern<'_> {
    /// Lines and hatches of a sheet, and what stands over it.
    pub(super) fn stand(&mut self, sheet: &CutSheet, corner: Spot, number: usize) {
        let extent = self.extent(sheet, corner, Area::whole(sheet));
        self.drawing.rect(Layer::Sheet, &extent);
        let text = format!("Sheet {number}: {}", self.name(sheet));
        let wide = extent.width() + 8 * MM;
        let at = Spot::new(extent.x0, extent.y0 - line(TYPE) - 500);
        let label = Label::new(Says::Note, fitted(&text, wide, TYPE, true), at, TYPE);
        put(self.drawing, self.room, label.bold());
        self.axis(sheet, &extent);
        self.lines(sheet, &sheet.tree, corner, Area::whole(sheet));
    }

    fn name(&self, sheet: &CutSheet) -> String {
        let stock = &self.input.house.stock;
        let kind = stock
            .sheets
            .get(sheet.sheet as usize)
            .map_or("", |sheet| sheet.name.as_str());
        match sheet.source {
            Source::Sheet { .. } => kind.to_owned(),
            Source::Offcut { .. } => format!("off-cut of {kind}"),
            Source::Drop { blank, .. } => {
                format!("cut-out of {}", self.input.piece_mark(blank).unwrap_or_default())
            }
        }
    }

    /// The direction in which the sheet is strong, beside or over it.
    fn axis(&mut self, sheet: &CutSheet, extent: &Extent) {
        let stock = self.input.house.stock.sheets.get(sheet.sheet as usize);
        let across = stock.is_some_and(|sheet| sheet.strength_axis == StrengthAxis::Width);
        let long = if across { extent.width() } else { extent.height() }.min(16 * MM);
        let middle = if across {
            Spot::new(extent.middle().x, extent.y1 + MM)
        } else {
            Spot::new(extent.x0 - 2_500, extent.middle().y)
        };
        let (right, down) = if across { (long / 2, 0) } else { (0, long / 2) };
        arrow(
            self.drawing,
            middle.moved(-right, -down),
            middle.moved(right, down),
        );
        self.room
            .take(Extent::around(middle, 2 * right + MM, 2 * down + MM));
    }

    fn lines(&mut self, sheet: &CutSheet, node: &CutNode, corner: Spot, area: Area) {
        let extent = self.extent(sheet, corner, area);
        match node {
            CutNode::Split {
                across,
                at,
                first,
                second,
            } => {
                let (near, far) = area.parted(*across, *at, self.kerf);
                let edge = self.extent(sheet, corner, near);
                let ends = if *across {
                    [Spot::new(edge.x0, edge.y0), Spot::new(edge.x1, edge.y0)]
                } else {
                    [Spot::new(edge.x1, edge.y1), Spot::new(edge.x1, edge.y0)]
                };
                self.drawing.line(Layer::Cut, &ends);
                self.lines(sheet, first, corner, near);
                self.lines(sheet, second, corner, far);
            }
            CutNode::Piece { blank, turned } => {
                self.notches(sheet, *blank, *turned, corner, area);
            }
            CutNode::Offcut { .. } => self.drawing.rect(Layer::Leftover, &extent),
            CutNode::Waste => self.drawing.rect(Layer::Waste, &extent),
        }
    }

    /// The sides of a piece that do not lie on its blank's.
    fn notches(&mut self, sheet: &CutSheet, blank: u32, turned: bool, corner: Spot, area: Area) {
        let Some(piece) = self.input.piece(blank) else {
            return;
        };
        if piece.outline.is_rect().is_some() {
            return;
        }
        let rect = piece.blank();
        let lines: Vec<[Spot; 2]> = piece
            .outline
            .boundary()
            .iter()
            .filter(|edge| !on_a_side(&rect, edge.a, edge.b))
            .map(|edge| {
                [edge.a, edge.b].map(|point| {
                    let (u, v) = on_sheet(piece, turned, point);
                    self.spot(sheet, corner, area.x + u, area.y + v)
                })
            })
            .collect();
        for [a, b] in lines {
            self.drawing.line(Layer::Notch, &[a, b]);
            let reach = Extent::new(a.x.min(b.x), a.y.min(b.y), a.x.max(b.x), a.y.max(b.y));
            self.room.spare(reach.grown(200));
        }
    }

    /// Marks, sizes and the numbers of cuts of a sheet, once its lines are known.
    pub(super) fn write(&mut self, sheet: &CutSheet, corner: Spot) {
        self.cuts = 0;
        self.numbers(sheet, &sheet.tree, corner, Area::whole(sheet));
        self.words(sheet, &sheet.tree, corner, Area::whole(sheet));
    }

    fn words(&mut self, sheet: &CutSheet, node: &CutNode, corner: Spot, area: Area) {
        let extent = self.extent(sheet, corner, area);
        match node {
            CutNode::Split {
                across,
                at,
                first,
                second,
            } => {
                let (near, far) = area.parted(*across, *at, self.kerf);
                self.words(sheet, first, corner, near);
                self.words(sheet, second, corner, far);
            }
            CutNode::Piece { blank, .. } => {
                let mark = self.input.piece_mark(*blank).unwrap_or_default();
                self.tag(*blank, &mark, area, &extent);
            }
            CutNode::Offcut { .. } => self.tag(u32::MAX, "keep", area, &extent),
            CutNode::Waste => {}
        }
    }

    /// Writes a name and the size of a part inside it, else beside it with a line to it.
    fn tag(&mut self, blank: u32, mark: &str, area: Area, extent: &Extent) {
        let show = |length: Length| length.show(self.input.style, Rounding::Down).text;
        let (wide, long) = (show(area.width), show(area.length));
        let says = if blank == u32::MAX { None } else { Some(blank) };
        let words = |size: Vec<String>| Words {
            piece: says,
            mark: mark.to_owned(),
            turn: String::new(),
            size,
        };
        let joined = words(vec![format!("{wide} × {long}")]);
        let split = words(vec![format!("{wide} ×"), long.clone()]);
        let tags = TYPES.iter().flat_map(|&scale| {
            [(&joined, false), (&split, false), (&joined, true), (&split, true)]
                .map(|(words, turned)| Tag::new(words, scale, turned))
        });
        for tag in tags {
            let places = places(extent, tag.size()).filter(|place| extent.covers(place));
            if let Some((place, _)) = self.room.best(places) {
                let (labels, marks) = tag.set(&place);
                self.drawing.marks.extend(marks);
                for label in labels {
                    put(self.drawing, self.room, label);
                }
                return;
            }
        }
        let says = says.map_or(Says::Note, |piece| Says::PieceMark { piece });
        self.beside(says, &format!("{mark}: {wide} × {long}"), extent.middle(), SMALL);
    }

    fn numbers(&mut self, sheet: &CutSheet, node: &CutNode, corner: Spot, area: Area) {
        let CutNode::Split {
            across,
            at,
            first,
            second,
        } = node
        else {
            return;
        };
        self.cuts += 1;
        let text = self.cuts.to_string();
        let (near, far) = area.parted(*across, *at, self.kerf);
        let edge = self.extent(sheet, corner, near);
        let side = width(&text, LEAST_TYPE, false).max(line(LEAST_TYPE)) + 600;
        // On the cut, its ends first: the middle is for what is written on the parts.
        let places = [12, 88, 25, 75, 6, 94, 37, 63, 50].map(|share: Micron| {
            let middle = if *across {
                Spot::new(edge.x0 + edge.width() * share / 100, edge.y0)
            } else {
                Spot::new(edge.x1, edge.y1 - edge.height() * share / 100)
            };
            Extent::around(middle, side, side)
        });
        if let Some((place, _)) = self.room.best(places) {
            let middle = place.middle();
            self.drawing.mark(
                Layer::Ring,
                Form::Circle {
                    middle,
                    radius: side / 2,
                },
            );
            self.room.take(place);
            let label = Label::centred(Says::Note, text, middle, LEAST_TYPE, false, false);
            self.drawing.labels.push(label);
        } else {
            let at = if *across {
                Spot::new(edge.middle().x, edge.y0)
            } else {
                Spot::new(edge.x1, edge.middle().y)
            };
            self.beside(Says::Note, &text, at, LEAST_TYPE);
        }
        self.numbers(sheet, first, corner, near);
        self.numbers(sheet, second, corner, far);
    }

    /// Writes a text at the nearest free place, with a line to what it names.
    fn beside(&mut self, says: Says, text: &str, at: Spot, size: Micron) {
        let (wide, high) = (width(text, size, false), line(size));
        let Some(place) = self.room.nearest(at, wide, high, 120 * MM) else {
            return;
        };
        let side = Spot::new(at.x.clamp(place.x0, place.x1), at.y.clamp(place.y0, place.y1));
        if side != at {
            self.drawing.line(Layer::Leader, &[at, side]);
        }
        let mut label = Label::centred(says, text, place.middle(), size, false, false).backed();
        label.points_at = Some(at);
        put(self.drawing, self.room, label);
    }

    fn extent(&self, sheet: &CutSheet, corner: Spot, area: Area) -> Extent {
        let low = self.spot(sheet, corner, area.x, area.y);
        let high = self.spot(sheet, corner, area.x + area.width, area.y + area.length);
        Extent::new(low.x, high.y, high.x, low.y)
    }

    /// A place of a sheet, from its lower left corner, on paper, where its upper left corner is known.
    fn spot(&self, sheet: &CutSheet, corner: Spot, x: Length, y: Length) -> Spot {
        let paper = |length: Length| on_paper(length, self.denominator);
        corner.moved(paper(x), paper(sheet.length) - paper(y))
    }
}

/// Both ends lie on one side of a rectangle.
fn on_a_side(rect: &Rect, a: Point, b: Point) -> bool {
    (a.x == b.x && (a.x == rect.x0 || a.x == rect.x1)) || (a.y == b.y && (a.y == rect.y0 || a.y == rect.y1))
}

/// A point of a piece as it hangs, along the width and the length of its sheet: turned by a quarter, never over.
fn on_sheet(piece: &Piece, turned: bool, point: Point) -> (Length, Length) {
    let rect = piece.blank();
    let quarter = |(x, y): (Length, Length), high: Length| (high - y, x);
    let hung = (point.x - rect.x0, point.y - rect.y0);
    let (laid, long) = match piece.running {
        Running::Upright => (hung, rect.height()),
        Running::Flat => (quarter(hung, rect.height()), rect.width()),
    };
    if turned { quarter(laid, long) } else { laid }
}

/// Boxes of a size over a part, its middle first.
fn places(extent: &Extent, size: (Micron, Micron)) -> impl Iterator<Item = Extent> + use<> {
    const SHARES: [Micron; 9] = [50, 40, 60, 30, 70, 20, 80, 12, 88];
    let extent = *extent;
    SHARES.into_iter().flat_map(move |down| {
        SHARES.into_iter().map(move |right| {
            let middle = Spot::new(
                extent.x0 + extent.width() * right / 100,
                extent.y0 + extent.height() * down / 100,
            );
            Extent::around(middle, size.0, size.1)
        })
    })
}
