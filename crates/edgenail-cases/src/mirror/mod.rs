//! A house seen in a mirror: what stands at the left of a wall stands at its right.

mod house;
pub mod image;

pub use house::mirror_house;

use edgenail::Length;
use edgenail::geometry::{Interval, Point, Rect};
use edgenail::layout::{BandSpec, LayoutSpec, PieceSpec, Side};

/// The mirror of one wall: plumb, in the middle of its frame.
#[derive(Clone, Copy, Debug)]
pub struct Mirror {
    /// Length of the wall's frame.
    pub length: Length,
}

impl Mirror {
    /// A place along the wall.
    pub fn x(self, x: Length) -> Length {
        self.length - x
    }

    /// A stretch along the wall.
    pub fn span(self, x: Interval) -> Interval {
        Interval::new(self.x(x.hi), self.x(x.lo))
    }

    /// A point.
    pub fn point(self, point: Point) -> Point {
        Point::new(self.x(point.x), point.y)
    }

    /// A rectangle.
    pub fn rect(self, rect: Rect) -> Rect {
        Rect::from_spans(self.span(rect.x_span()), rect.y_span())
    }

    /// A line from left to right.
    pub fn line(self, points: &[Point]) -> Vec<Point> {
        points.iter().rev().map(|point| self.point(*point)).collect()
    }

    /// A layout.
    pub fn spec(self, spec: &LayoutSpec) -> LayoutSpec {
        match spec {
            LayoutSpec::Bands { reach, bands } => LayoutSpec::Bands {
                reach: *reach,
                bands: bands.iter().map(|band| self.band(band)).collect(),
            },
            LayoutSpec::Pieces(pieces) => {
                let mirrored = pieces.iter().map(|piece| PieceSpec {
                    rect: self.rect(piece.rect),
                    ..*piece
                });
                LayoutSpec::Pieces(mirrored.collect())
            }
        }
    }

    fn band(self, band: &BandSpec) -> BandSpec {
        BandSpec {
            seams: band.seams.iter().rev().map(|seam| self.x(*seam)).collect(),
            sheets: band.sheets.iter().rev().copied().collect(),
            ..band.clone()
        }
    }
}

/// The side of a panel that a side is in the mirror.
pub const fn mirror_side(side: Side) -> Side {
    if side.is_plumb() { side.opposite() } else { side }
}
