//! Outlines of pieces for the tests of cutting, and what is known of them without asking the library.

#![expect(clippy::expect_used, reason = "an outline that cannot be made fails the test")]
#![allow(dead_code, reason = "each test uses its own part of this")]

use edgenail::cutting::Blank;
use edgenail::geometry::{Point, Profile, Rect, Region, Shape};
use edgenail::house::{House, Sheet, StrengthAxis};
use edgenail::layout::{Joint, Layout, Piece, Running, Sides};
use edgenail::{Amount, Decimal, Length, demo, read_house};
use proptest::prelude::*;

pub const WIDTH: i64 = 48;
pub const HEIGHT: i64 = 96;

pub fn inch(count: i64) -> Length {
    Length::inches(count)
}

/// Points of a limit from left to right, by place along the wall and height in inches.
pub type Line = Vec<(i64, i64)>;

/// A wall's face within a sheet: limits below and above, and what is left out.
#[derive(Clone, Debug)]
pub struct Face {
    pub lower: Line,
    pub upper: Line,
    pub holes: Vec<Rect>,
    /// Where all of this is on the wall.
    pub corner: Point,
    /// What holes are smaller by on each side.
    pub shrunk: Length,
}

fn profile(line: &Line, corner: Point) -> Profile {
    let points = line
        .iter()
        .map(|(x, y)| Point::new(corner.x + inch(*x), corner.y + inch(*y)));
    Profile::new(points.collect()).expect("a line from left to right")
}

impl Face {
    /// What one sheet of this size covers of it.
    pub fn outlines(&self) -> Vec<Shape> {
        let region = Region {
            lower: profile(&self.lower, self.corner),
            upper: profile(&self.upper, self.corner),
            holes: self.holes_on_wall(),
        };
        region.pieces_in(Rect::from_size(
            self.corner.x,
            self.corner.y,
            inch(WIDTH),
            inch(HEIGHT),
        ))
    }

    /// What is left out, on the wall.
    pub fn holes_on_wall(&self) -> Vec<Rect> {
        let placed = |hole: &Rect| hole.shifted(self.corner.x, self.corner.y).grown(-self.shrunk);
        self.holes.iter().map(placed).collect()
    }
}

/// A limit of up to three straight parts, level or sloping, perhaps with steps.
fn line(heights: std::ops::Range<i64>) -> impl Strategy<Value = Line> {
    let level = heights.clone().prop_map(|y| vec![(-4, y), (WIDTH + 4, y)]);
    let height = move || heights.clone();
    let sloped = (height(), height()).prop_map(|(a, b)| vec![(-4, a), (WIDTH + 4, b)]);
    let heel = (height(), height(), 1..12_i64, any::<bool>()).prop_map(|(a, b, at, left)| {
        if left {
            vec![(-4, a), (4 * at, a), (WIDTH + 4, b)]
        } else {
            vec![(-4, b), (4 * at, a), (WIDTH + 4, a)]
        }
    });
    let gable = (height(), height(), height(), 1..12_i64)
        .prop_map(|(a, b, c, at)| vec![(-4, a), (4 * at, b), (WIDTH + 4, c)]);
    let step = (height(), height(), 1..12_i64)
        .prop_map(|(a, b, at)| vec![(-4, a), (4 * at, a), (4 * at, b), (WIDTH + 4, b)]);
    prop_oneof![3 => level, 1 => sloped, 1 => heel, 1 => gable, 1 => step]
}

prop_compose! {
    fn hole()(left in -1_i64..12, bottom in -1_i64..26, width in 1_i64..10, height in 1_i64..14) -> Rect {
        Rect::from_size(inch(4 * left), inch(4 * bottom), inch(4 * width), inch(4 * height))
    }
}

prop_compose! {
    /// Faces with limits and holes of every kind.
    pub fn any_face()(lower in line(-20..30), upper in line(60..120), holes in prop::collection::vec(hole(), 0..4)) -> Face {
        Face { lower, upper, holes, corner: Point::default(), shrunk: Length::ZERO }
    }
}

/// Where a point of a blank is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// On the piece.
    Piece,
    /// Beyond a sloping edge, or beyond a level one that goes on from it.
    BeyondSlope,
    /// Anywhere else.
    LeftOut,
}

/// An edge of a ring that is not plumb, told by corners alone.
struct Edge {
    from: Point,
    to: Point,
    slopes: bool,
}

/// Edges of rings that are not plumb, each with whether it is a slope or goes on from one in the same direction.
fn edges(rings: &[Vec<Point>]) -> Vec<Edge> {
    let mut found = Vec::new();
    for ring in rings {
        let next = |index: usize| ring[(index + 1) % ring.len()];
        let heading = |index: usize| (next(index).x - ring[index].x).units().signum();
        let sloped = |index: usize| heading(index) != 0 && next(index).y != ring[index].y;
        let mut slopes: Vec<bool> = (0..ring.len()).map(sloped).collect();
        // A slope passes on to its neighbours until nothing changes.
        for _ in 0..ring.len() {
            for index in 0..ring.len() {
                let after = (index + 1) % ring.len();
                if heading(index) != 0 && heading(index) == heading(after) {
                    let either = slopes[index] || slopes[after];
                    (slopes[index], slopes[after]) = (either, either);
                }
            }
        }
        for index in (0..ring.len()).filter(|index| heading(*index) != 0) {
            found.push(Edge {
                from: ring[index],
                to: next(index),
                slopes: slopes[index],
            });
        }
    }
    found
}

/// Says of any point in a blank where it is, by counting the edges below it.
pub fn places(outline: &Shape) -> impl Fn(Point) -> Place {
    let edges = edges(&outline.rings());
    move |point| {
        let mut met: Vec<(f64, bool)> = Vec::new();
        for edge in &edges {
            let (left, right) = if edge.from.x < edge.to.x {
                (edge.from, edge.to)
            } else {
                (edge.to, edge.from)
            };
            if left.x <= point.x && point.x < right.x {
                let share = (point.x - left.x).as_inches() / (right.x - left.x).as_inches();
                let y = left.y.as_inches() + share * (right.y - left.y).as_inches();
                met.push((y, edge.slopes));
            }
        }
        met.sort_by(|a, b| a.0.total_cmp(&b.0));
        let below = met.iter().filter(|(y, _)| *y < point.y.as_inches()).count();
        let beyond = |edge: Option<&(f64, bool)>| edge.is_some_and(|(_, slopes)| *slopes);
        if below % 2 == 1 {
            Place::Piece
        } else if (below == met.len() && beyond(met.last())) || (below == 0 && beyond(met.first())) {
            Place::BeyondSlope
        } else {
            Place::LeftOut
        }
    }
}

/// Points all over a blank, none of them on a whole inch.
pub fn points(blank: &Rect) -> impl Iterator<Item = Point> + use<> {
    let (start, end) = (Point::new(blank.x0, blank.y0), Point::new(blank.x1, blank.y1));
    let off = (Length::from_units(13_331), Length::from_units(9_973));
    let xs = (0..)
        .map(move |i| start.x + inch(2 * i) + off.0)
        .take_while(move |x| *x < end.x);
    xs.flat_map(move |x| {
        let ys = (0..).map(move |i| start.y + inch(2 * i) + off.1);
        ys.take_while(move |y| *y < end.y).map(move |y| Point::new(x, y))
    })
}

/// A rectangle holds a point.
pub fn holds(rect: &Rect, point: Point) -> bool {
    rect.x0 <= point.x && point.x <= rect.x1 && rect.y0 <= point.y && point.y <= rect.y1
}

/// Panels cut from faces, with numbers and marks by their place; how they run, their sheets and their turns are given
/// for each.
pub fn layout(outlines: Vec<Shape>, of: impl Fn(usize) -> (Running, u32, u32)) -> Layout {
    let piece = |(number, outline): (usize, Shape)| {
        let (running, sheet, hang_order) = of(number);
        Piece {
            id: u32::try_from(number).expect("few pieces"),
            mark: format!("P{number}"),
            band: 0,
            strip: 0,
            cell: outline.clone(),
            outline,
            sides: Sides {
                left: Joint::End,
                right: Joint::End,
                bottom: Joint::End,
                top: Joint::End,
            },
            sheet,
            running,
            hang_order,
        }
    };
    Layout {
        pieces: outlines.into_iter().enumerate().map(piece).collect(),
        ..Layout::default()
    }
}

/// The demo house, for what is not cut.
pub fn house() -> House {
    read_house(demo::HOUSE_JSON.as_bytes())
        .expect("the demo house is read")
        .0
}

/// A sheet of this size.
pub fn sheet(width: Length, length: Length) -> Sheet {
    Sheet {
        name: "sheet".into(),
        width,
        length,
        category: "7/16".into(),
        grade: "sheathing".into(),
        span_rating: "24/16".into(),
        strength_axis: StrengthAxis::Length,
        plies: None,
        faces_alike: false,
        may_turn: false,
        gap: None,
        price: Amount::whole(16),
        on_hand: None,
        pounds_per_square_foot: Decimal::tenths(14),
        unit_count: 66,
    }
}

/// A blank of this size in inches, alone of its order.
pub fn blank(order: u32, width: i64, length: i64) -> Blank {
    Blank {
        wall: 0,
        piece: order,
        order,
        sheet: 0,
        width: inch(width),
        length: inch(length),
        may_turn: false,
        drops: vec![],
    }
}
